/** The tables of whole files that say what was recorded: places, condition, every change. */
import type { Report } from '../contract/areas/condition-shape.ts'
import type { Output } from '../contract/contract.ts'
import { fieldsSaid, rowSaid } from '../dictionary/change-said.ts'
import { thirdSaid } from '../record/condition/say.ts'
import { boxOf } from '../record/condition/shape.ts'
import { type Cell, EMPTY, numberCell, type TableSheet, textCell } from './columns.ts'
import { number, text } from './crew-columns.ts'
import { type FileStyle, lengths, table } from './file-table.ts'
import { lengthColumns } from './lengths-columns.ts'

type Movement = Output<'movement.history'>['movements'][number]

const movementColumns = [
  text('at', 'When', 16),
  text('from', 'From', 20),
  text('to', 'To', 24),
  text('how', 'How', 12),
  text('people', 'Carried by', 16),
  text('reason', 'Why', 16),
  text('condition', 'Condition on arrival', 18),
  text('recorded', 'Recorded', 20),
  text('state', 'Set right', 20),
]

const joined = (...words: readonly string[]) => words.filter(each => each !== '').join(', ')

function movementCells(of: Movement, { moment }: FileStyle): readonly Cell[] {
  const state =
    of.correctedBy !== null
      ? 'set right by a later record'
      : of.struck
        ? 'strikes an earlier record'
        : of.corrects !== null
          ? 'sets an earlier record right'
          : of.finding
  return [
    textCell(moment(of.at)),
    textCell(joined(of.fromWords, of.withSet === '' ? '' : `with ${of.withSet}`)),
    textCell(joined(of.words, of.spot, of.within === '' ? '' : `in ${of.within}`)),
    textCell(of.method),
    textCell(of.people),
    textCell(of.reason),
    textCell(joined(of.condition, of.ownCondition)),
    textCell(`${of.recordedBy}, ${moment(of.recordedAt)}`),
    textCell(state),
  ]
}

export function movementsTable(movements: readonly Movement[], style: FileStyle): TableSheet {
  return table(
    'Where it was',
    movementColumns,
    movements.map(of => movementCells(of, style)),
    { none: 'No movement of it is on record.' },
  )
}

/** The same of several works, one after the other. */
export function movementsOfWorksTable(
  works: readonly {
    readonly work: { readonly number: string; readonly title: string }
    readonly movements: readonly Movement[]
  }[],
  style: FileStyle,
): TableSheet {
  return table(
    'Where they were',
    [text('work', 'Work', 18), ...movementColumns],
    works.flatMap(({ work, movements }) =>
      movements.map(of => [textCell(calledIn(work.number, work.title)), ...movementCells(of, style)]),
    ),
    { none: 'No movement of them is on record.', grouped: true },
  )
}

const calledIn = (number: string, title: string) => [number, title].filter(each => each !== '').join(' ')

/** Reports with their findings; one that found nothing has a row of its own. `of` several works, each names its own. */
export function conditionTable(
  reports: readonly Report[],
  style: FileStyle,
  of: 'work' | 'works' = 'work',
): TableSheet {
  return table(
    'Condition',
    [
      text('report', 'Report', 26),
      text('signed', 'Signed by', 20),
      number('number', 'No.', 5),
      text('what', 'What was found', 18),
      text('where', 'Where', 12),
      ...lengthColumns('left', 'From the left', style.table),
      ...lengthColumns('top', 'From the top', style.table),
      ...lengthColumns('measure', 'Greatest measure', style.table),
      text('age', 'Age', 8),
      text('severity', 'How serious', 9),
      text('stable', 'Stable', 9),
      text('note', 'Note', 24),
    ],
    reports.flatMap(report => {
      const head = [
        textCell(
          `${of === 'work' ? '' : `${calledIn(report.workNumber, report.workTitle)}: `}${report.kind}, ${style.moment(report.examinedAt)}, ${report.examiner}${stateOf(report)}`,
        ),
        textCell(report.signedBy.map(({ name, role }) => `${name} (${role})`).join(', ')),
      ]
      const bare = lengths([null, null, null], style)
      if (report.findings.length === 0)
        return [[...head, EMPTY, textCell('nothing found'), EMPTY, ...bare, EMPTY, EMPTY, EMPTY, textCell(report.note)]]
      return report.findings.map(found => {
        const { left, top } = boxOf(found)
        return [
          ...head,
          numberCell(found.number),
          textCell(found.word),
          textCell(thirdSaid(found)),
          ...lengths([left, top, found.form === 'outline' ? found.along : found.reach], style),
          textCell(found.age),
          textCell(found.severity),
          textCell(found.stable),
          textCell(found.note),
        ]
      })
    }),
    { none: 'No report of condition is on record.', grouped: true },
  )
}

function stateOf({ completeAt, corrects, correctedBy, why }: Report): string {
  if (completeAt === null) return '; a draft'
  if (correctedBy !== null) return '; set right by a later one'
  return corrects === null ? '' : `; sets an earlier one right: ${why}`
}

/** Every change of every field, the last first. */
export function historyTable({ changes, total }: Output<'edit.history'>, style: FileStyle): TableSheet {
  return table(
    'What was done to it',
    [
      text('at', 'When', 16),
      text('by', 'Who', 14),
      text('edit', 'Edit', 26),
      text('why', 'Why', 16),
      text('what', 'Of', 16),
      text('field', 'Field', 12),
      text('from', 'Before', 16),
      text('to', 'After', 34),
    ],
    changes.flatMap(change => {
      const head = [
        textCell(style.moment(change.at)),
        textCell(change.person === '' ? 'nobody named' : change.person),
        textCell(change.label),
        textCell(change.reasons.map(({ why, by }) => `${why} (${by})`).join('; ')),
        textCell(rowSaid(change)),
      ]
      const fields = fieldsSaid(change, style)
      if (change.kind === 'changed')
        return fields.map(({ word, from, to }) => [...head, textCell(word), textCell(from), textCell(to)])
      // What came or went at once is told at once.
      const added = change.kind === 'added'
      const whole = textCell(fields.map(({ word, from, to }) => `${word} ${added ? to : from}`).join(' · '))
      return [[...head, EMPTY, ...(added ? [EMPTY, whole] : [whole, EMPTY])]]
    }),
    {
      grouped: true,
      none: 'Nothing since it came into the catalogue.',
      ...(total > changes.length
        ? { lines: [`The last ${changes.length} of ${total} changes; the catalogue has them all.`] }
        : {}),
    },
  )
}
