/** What is said of sets and of numbers with parts when they are moved: which part stays, and which came from elsewhere. */
import type { Finding } from '../../../src/contract/shared.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Carry, wordsOf } from './carry.ts'
import { worksSaid } from './sets-stand.ts'
import { standingOf } from './standing.ts'
import { type Whole, wholesOf } from './wholes.ts'

export function partNotes(db: ReadHandle, carry: Carry): Finding[] {
  const works = carry.things.filter(({ kind }) => kind === 'work').map(({ id }) => id)
  return wholesOf(db, works).flatMap(whole => [...stayNotes(db, whole, carry), ...fromNotes(whole, carry)])
}

const settle = (code: string, id: string, text: string, figures: Finding['figures']): Finding => ({
  severity: 'settle',
  code,
  subject: { kind: 'work', id },
  text,
  figures,
})

/** Parts that are neither carried nor there already, by the place that they stay in. */
function stayNotes(db: ReadHandle, { name, parts }: Whole, { things, to, at }: Carry): Finding[] {
  const carried = new Set(things.map(({ id }) => id))
  const staying = new Map<string, string[]>()
  for (const part of parts) {
    if (carried.has(part)) continue
    const stood = standingOf(db, 'work', part, at)
    if (stood?.place === to.place) continue
    const words = stood === undefined ? '' : wordsOf(db, stood)
    staying.set(words, [...(staying.get(words) ?? []), part])
  }
  if (staying.size === 0) return []
  const groups = [...staying].map(([words, works]) => {
    const stay = `${worksSaid(db, works)} ${works.length === 1 ? 'stays' : 'stay'}`
    return words === '' ? `${stay} behind, in no place on record` : `${stay} behind at ${words}`
  })
  const left = [...staying.values()].flat()
  const text = `${name} is not whole at ${to.words}: ${groups.join('; ')}.`
  return [settle('part-stays', left[0] ?? '', text, { parts: left })]
}

/** A set that is moved as one, though the record has its parts in several places. */
function fromNotes({ set, name, parts }: Whole, { things, to }: Carry): Finding[] {
  if (set === null || !things.some(({ id }) => id === set)) return []
  const carried = things.filter(({ id }) => parts.includes(id))
  const from = Map.groupBy(carried, thing => thing.fromWords)
  if (from.size < 2) return []
  const groups = [...from].map(([words, of]) => {
    const said = of.length > 3 ? `${of.length} parts` : of.map(thing => thing.name).join(', ')
    return `${said} from ${words === '' ? 'no place on record' : words}`
  })
  const text = `The parts of ${name} come from several places: ${groups.join('; ')}. All of them are recorded at ${to.words}.`
  return [settle('parts-from-several', set, text, { parts: carried.map(({ id }) => id) })]
}
