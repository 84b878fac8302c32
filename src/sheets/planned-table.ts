/**
 * What is planned to be moved, as handlers take it in their hands: a box to tick, where from and where to, how it passes,
 * how and by whom, what is to settle first, and a place for initials. Overdue ones come first.
 */
import type { PlannedLine } from '../contract/areas/planned.ts'
import { daySaid } from '../light/day.ts'
import { isNowhere } from '../record/not-arrived.ts'
import { EMPTY, numberCell, type TableSheet, textCell, withoutEmptyColumns } from './columns.ts'
import { text } from './crew-columns.ts'

export interface PlannedQuestion {
  /** The days in words. */
  readonly days: string
  /** The day of the sheet, where it is one: then its hours alone are told. */
  readonly day: string | null
  readonly lines: readonly string[]
  /** Open ones in the order in which they are to be done. */
  readonly planned: readonly PlannedLine[]
}

export function plannedSheet({ days, day: one, lines, planned }: PlannedQuestion): TableSheet {
  const whenOf = ({ day, hour, overdue }: PlannedLine) =>
    [overdue ? 'overdue:' : '', day === one ? '' : daySaid(day), hour].filter(each => each !== '').join(' ')
  return withoutEmptyColumns({
    name: 'Planned',
    title: `Movements planned, ${days}`,
    lines: [...lines, ...(planned.length === 0 ? ['Nothing is planned.'] : [])],
    columns: [
      text('tick', 'Done', 6),
      text('when', 'When', 13),
      text('number', 'Number', 14),
      text('title', 'What', 20),
      text('from', 'From', 16),
      text('to', 'To', 18),
      text('way', 'How it passes, by the plan', 30),
      text('method', 'How', 9),
      { ...text('hands', 'Hands', 6), format: '0' },
      text('people', 'Carried by', 13),
      text('reason', 'Why', 11),
      text('note', 'Note', 14),
      text('settle', 'To settle first', 20),
      text('tickBy', 'Initials', 8),
    ],
    rows: planned.map(line => {
      // Its day says that it is overdue, its way how it passes.
      const settle = line.findings.filter(({ code }) => code !== 'overdue' && !code.includes('pass'))
      const nowhere = settle.some(finding => isNowhere(line, finding))
      return [
        EMPTY,
        textCell(whenOf(line)),
        textCell(line.kind === 'crate' ? 'crate' : line.number),
        line.title === '' ? EMPTY : { kind: 'title' as const, text: line.title },
        textCell(nowhere ? 'in no place' : line.fromWords),
        textCell([line.words, line.spot].filter(each => each !== '').join(', ')),
        textCell(line.way),
        textCell(line.method),
        line.hands === null ? EMPTY : numberCell(line.hands),
        textCell(line.people),
        textCell(line.reason),
        textCell(line.note),
        textCell(
          settle.map(finding => (isNowhere(line, finding) ? 'Record its arrival first.' : finding.text)).join(' '),
        ),
        EMPTY,
      ]
    }),
  })
}
