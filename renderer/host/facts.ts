/** A fact of a work as typed, turned into what the contract takes; what can't be read comes back in words. */
import { parseLux } from '../../src/measure/lux.ts'

export type ReadFact = { readonly value: string | number | null } | { readonly problem: string }

/** The empty text of a fact that can be unknown is nothing. */
export function readFact(field: string, text: string): ReadFact {
  if (field === 'lender') return { value: text === '' ? null : text }
  if (field === 'handWeight') return readFactor(text.trim())
  if (field === 'frameColour') return readColour(text.trim())
  if (field !== 'lightLimit') return { value: text.trim() }
  if (text.trim() === '') return { value: null }
  const read = parseLux(text)
  return read.ok ? { value: read.lux } : { problem: read.message }
}

/** A hand's factor on how heavy a work looks. */
function readFactor(text: string): ReadFact {
  if (text === '') return { value: null }
  const value = Number(text.replace(',', '.').replace(/\s*[×x]$/, ''))
  return value >= 0.1 && value <= 10
    ? { value }
    : { problem: `“${text}” is no factor. Write it like 1.5: half as heavy again; from 0.1 to 10.` }
}

function readColour(text: string): ReadFact {
  return text === '' || /^#[0-9a-fA-F]{6}$/.test(text)
    ? { value: text }
    : { problem: `“${text}” is no colour. Write it like #4A4038, or choose it.` }
}
