/**
 * The outgoing list of a show: its works in the order in which they come down, each with what opens it, the crate that it
 * came in, what is missing, and boxes to tick; and the crates with what belongs in each.
 */
import type { CrewOrders } from '../contract/areas/crew-shape.ts'
import type { LeavingCrate, LeavingLine } from '../contract/areas/leaving.ts'
import { DONE, EMPTY, numberCell, type TableSheet, textCell, withoutEmptyColumns } from './columns.ts'
import { type TableHead, text } from './crew-columns.ts'

export interface LeavingQuestion {
  readonly lines: readonly LeavingLine[]
  readonly crates: readonly LeavingCrate[]
  /** What comes down first, first. */
  readonly down: CrewOrders['down']
}

const steps = { tickOff: 'off its wall', tickLooked: 'looked at', tickPacked: 'packed' } as const

export function leavingSheets(
  { exhibitionTitle, lines: above }: TableHead,
  question: LeavingQuestion,
): readonly TableSheet[] {
  const { down, lines, crates } = question
  const byWork = new Map(down.map((each, at) => [each.work, { ...each, at }]))
  const order = (line: LeavingLine) => byWork.get(line.id)?.at ?? Number.POSITIVE_INFINITY
  const rows = lines
    .map((line, at) => ({ line, at }))
    .sort((a, b) => order(a.line) - order(b.line) || a.at - b.at)
    .map(({ line }, at) => {
      const off = byWork.get(line.id)
      const ticked = (step: string) => (line.steps.some(each => each.step === step && each.done) ? DONE : EMPTY)
      return [
        numberCell(at + 1),
        textCell(off?.faceName ?? line.where),
        textCell(line.running),
        textCell(line.number),
        line.title === '' ? EMPTY : { kind: 'title' as const, text: line.title },
        textCell(line.lent ? line.lender : 'the house'),
        textCell(line.cameIn),
        textCell([off?.method ?? '', off?.tool ?? ''].filter(each => each !== '').join(', opens with ')),
        textCell(off === undefined || off.people < 2 ? '' : `${off.people}`),
        textCell(line.lacks.map(lack => lack.text).join(' ')),
        ...Object.values(steps).map(ticked),
        EMPTY,
        EMPTY,
        EMPTY,
      ]
    })
  const list: TableSheet = {
    name: 'Outgoing list',
    title: `${exhibitionTitle}: outgoing list`,
    lines: [
      ...above,
      'Each work is looked at before it is wrapped, and goes back in the crate that it came in, with its hardware. What is new or grown stays here.',
      ...(rows.length === 0 ? ['No work is in this show.'] : []),
    ],
    columns: [
      { ...text('order', 'Down', 6), format: '0' },
      text('where', 'From', 20),
      text('running', 'No.', 5),
      text('number', 'Number', 12),
      text('title', 'Title', 20),
      text('lender', 'Back to', 16),
      text('crate', 'Came in', 10),
      text('how', 'How it comes off', 18),
      text('people', 'People', 7),
      text('lacks', 'To settle', 26),
      text('tickOff', 'Off the wall', 6),
      text('tickLooked', 'Looked at, signed', 8),
      text('tickPacked', 'In its crate', 6),
      text('tickHardware', 'Hardware with it', 9),
      text('tickLabel', 'Label for pick-up', 7),
      text('tickBy', 'Initials', 8),
    ],
    rows,
  }
  return [
    withoutEmptyColumns(list),
    ...(crates.length === 0 ? [] : [withoutEmptyColumns(cratesSheet(exhibitionTitle, above, crates))]),
  ]
}

function cratesSheet(exhibitionTitle: string, above: readonly string[], crates: readonly LeavingCrate[]): TableSheet {
  const row = (crate: LeavingCrate, work: LeavingCrate['inIt'][number], state: string, packed: boolean) => [
    textCell([crate.name, crate.where].filter(each => each !== '').join(', at ')),
    textCell(work.number),
    work.title === '' ? EMPTY : { kind: 'title' as const, text: work.title },
    textCell(state),
    packed ? DONE : EMPTY,
  ]
  return {
    name: 'Crates',
    title: `${exhibitionTitle}: crates`,
    lines: [...above],
    grouped: true,
    columns: [
      text('crate', 'Crate', 30),
      text('number', 'Number', 14),
      text('title', 'Title', 30),
      text('state', 'Stands', 22),
      text('tickIn', 'In it', 6),
    ],
    rows: crates.flatMap(crate => {
      const strange = new Set(crate.strange.map(({ id }) => id))
      return [
        ...crate.inIt.map(work => row(crate, work, strange.has(work.id) ? 'came otherwise' : '', true)),
        ...crate.missing.map(work => row(crate, work, 'came in it, not in it yet', false)),
      ]
    }),
  }
}
