/** A fact of a work as typed, turned into what the contract takes; what can't be read comes back in words. */
import { parseLux } from '../../src/measure/lux.ts'

export type ReadFact = { readonly value: string | number | null } | { readonly problem: string }

/** The empty text of a fact that can be unknown is nothing. */
export function readFact(field: string, text: string): ReadFact {
  if (field === 'lender') return { value: text === '' ? null : text }
  if (field !== 'lightLimit') return { value: text.trim() }
  if (text.trim() === '') return { value: null }
  const read = parseLux(text)
  return read.ok ? { value: read.lux } : { problem: read.message }
}
