/**
 * The movement sheet: what was carried where between two moments, as the record has it, with places to sign who handed
 * over and who received. What was set right stands with what set it right; nothing is left out.
 */
import type { Output } from '../contract/contract.ts'
import { type Cell, EMPTY, type TableSheet, textCell, withoutEmptyColumns } from './columns.ts'
import { text } from './crew-columns.ts'

type Movement = Output<'movement.list'>['movements'][number]

export interface MovementQuestion {
  /** The days in words. */
  readonly days: string
  readonly lines: readonly string[]
  readonly movements: readonly Movement[]
  /** A moment in words. */
  readonly when: (at: string) => string
  /** By which doorways a thing of a movement goes, in words; empty where that is not known. */
  readonly way: (movement: string, thing: string) => string
}

function stateOf({ corrects, correctedBy, struck }: Movement): string {
  if (correctedBy !== null) return 'set right by a later record'
  if (struck) return 'strikes an earlier record: it never was'
  return corrects === null ? '' : 'sets an earlier record right'
}

type Thing = Movement['things'][number]
const fromSaid = ({ fromWords }: Thing) => (fromWords === '' ? 'first recorded' : fromWords)

/** A part beneath its set: its own number, title and condition, and where it came from if that was elsewhere. */
function partCells(part: Thing, whole: Thing, way: string): readonly Cell[] {
  return [
    EMPTY,
    textCell(part.number),
    textCell(`with it: ${part.title === '' ? part.number : part.title}`),
    part.fromWords === whole.fromWords ? EMPTY : textCell(fromSaid(part)),
    EMPTY,
    textCell(way),
    ...Array.from({ length: 3 }, () => EMPTY),
    textCell(part.condition),
    EMPTY,
    EMPTY,
    textCell(part.planned),
    EMPTY,
    EMPTY,
  ]
}

export function movementSheet({ days, lines, movements, when, way }: MovementQuestion): TableSheet {
  const rows = movements.flatMap(movement => {
    const things = movement.things.length === 0 ? [null] : movement.things
    return things.map(thing => {
      // The set says it for them all.
      const whole = movement.things.find(({ id }) => id === thing?.partOf)
      const said = [movement.condition, thing?.condition ?? ''].filter(each => each !== '').join('; ')
      if (thing !== null && whole !== undefined) return partCells(thing, whole, way(movement.movement, thing.id))
      return [
        textCell(when(movement.at)),
        textCell(thing?.kind === 'crate' ? 'crate' : (thing?.number ?? '')),
        thing === null || thing.title === '' ? EMPTY : { kind: 'title' as const, text: thing.title },
        textCell(thing === null ? '' : fromSaid(thing)),
        textCell([movement.words, movement.spot].filter(each => each !== '').join(', ')),
        textCell(thing === null ? '' : way(movement.movement, thing.id)),
        textCell(movement.method),
        textCell(movement.people),
        textCell(movement.reason),
        textCell(said),
        textCell(`${movement.recordedBy}, ${when(movement.recordedAt)}`),
        textCell(stateOf(movement)),
        textCell(thing?.planned ?? ''),
        EMPTY,
        EMPTY,
      ]
    })
  })
  return withoutEmptyColumns({
    name: 'Movements',
    title: `Movements, ${days}`,
    lines: [...lines, ...(rows.length === 0 ? ['Nothing was moved.'] : [])],
    grouped: true,
    columns: [
      text('at', 'When', 13),
      text('number', 'Number', 11),
      text('title', 'What', 20),
      text('from', 'From', 16),
      text('to', 'To', 18),
      text('way', 'Way by the plan of today', 20),
      text('method', 'How', 10),
      text('people', 'Carried by', 14),
      text('reason', 'Why', 12),
      text('condition', 'Condition on arrival', 16),
      text('recorded', 'Recorded by', 16),
      text('state', 'Set right', 14),
      text('planned', 'As planned for', 14),
      text('tickGiven', 'Handed over, signed', 18),
      text('tickTaken', 'Received, signed', 18),
    ],
    rows,
  })
}
