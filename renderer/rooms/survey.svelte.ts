/**
 * What was measured of the room on show, kept fresh, and whether its section is open: the plan has corner letters then.
 * Sentences are made here in the reader's units; the rows and figures come from the catalogue.
 */
import type { RoomRow } from '../../src/contract/areas/rooms.ts'
import type { MeasureRow } from '../../src/contract/areas/survey.ts'
import type { Output } from '../../src/contract/contract.ts'
import { deviationOf } from '../../src/plan/survey.ts'
import { nextSaid, readSaid, surveyNote, suspectSaid } from '../../src/plan/survey-said.ts'
import { desk } from '../host/desk.svelte.ts'
import { rules } from '../host/rules.svelte.ts'

export type Survey = Output<'survey.get'>

const say = (mm: number) => desk.lengthWithUnit(mm)

class Surveying {
  open = $state(false)
  /** The row that has the keyboard or the pointer, so that the plan can show it. */
  held = $state<string | null>(null)
}

export const surveying = new Surveying()

/** How it closes, for the room's caption. */
export function closingSaid(survey: Survey, room: { readonly walls: readonly { readonly name: string }[] }): string {
  return surveyNote({ ...survey, walls: room.walls.map(wall => wall.name) }, say)
}

export function nextStep(survey: Survey): string {
  return nextSaid(survey.next, survey.open)
}

/** `read 340 mm long`, with “may be” where nothing tells it from others; empty where it does not stand out. */
export function standsOut(survey: Survey, row: MeasureRow): string {
  const suspect = survey.suspects.find(one => one.key === row.key)
  if (suspect === undefined) return ''
  const first = survey.suspects[0]?.key === row.key
  if (survey.bySquare && !first) return ''
  const sure = survey.suspects.length === 1 || survey.bySquare
  const [, read = ''] = readSaid(suspect, survey.measures, say).split(' was read ')
  return sure ? `read ${read}` : `may be ${read}`
}

/** The words beside a line of the plan: `B–D was read 340 mm long; measure it again.` */
export function suspectWords(survey: Survey): string {
  return suspectSaid(survey, say)
}

/** How well the lengths agree, as they turned out. */
export function agreement(survey: Survey): string {
  const lengths = survey.measures.filter(({ kind, used }) => kind !== 'angle' && used)
  if (survey.spread === null || survey.suspects.length > 0 || lengths.length === 0) return ''
  const mean = lengths.reduce((sum, { value }) => sum + value, 0) / lengths.length
  const expected = { key: '', kind: 'side', from: 0, to: 1, value: mean, standing: 'measured' } as const
  const one = deviationOf(expected, {
    tape: rules.figure('tapeWithin'),
    tapePerMetre: rules.figure('tapePerMetre'),
    angle: rules.figure('angleWithin'),
    closesWithin: rules.figure('closesWithin'),
  })
  const most =
    survey.redundancy === 1 ? 'one measure more than needed' : `${survey.redundancy} measures more than needed`
  return `By ${most} a length was read to about ${say(survey.spread * one)}; the house expects ${say(one)}.`
}

/** A wall that was drawn and measured: both, and what lies between. */
export function drawnBeside(survey: Survey, room: RoomRow): readonly string[] {
  return room.walls.flatMap((wall, at) => {
    const own = survey.measures.filter(({ kind, from }) => kind === 'side' && from === at)
    const drawn = own.findLast(({ how }) => how === 'drawn')
    const taped = own.findLast(({ how, used }) => how === 'measured' && used)
    if (drawn === undefined || taped === undefined || drawn.value === taped.value) return []
    const over = taped.value - drawn.value
    return [
      `${wall.name}: drawn ${say(drawn.value)}, measured ${say(taped.value)}, ${say(Math.abs(over))} ${over > 0 ? 'longer' : 'shorter'}`,
    ]
  })
}
