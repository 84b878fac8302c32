/** Damage in whole files: each record with every word on it, one a line. */
import type { DamageTold, DamageWordTold } from '../contract/areas/damage.ts'
import { clockSaid, wordTitles } from '../record/damage/say.ts'
import { type Cell, EMPTY, numberCell, type TableSheet, textCell } from './columns.ts'
import { number, text } from './crew-columns.ts'
import { type FileStyle, table } from './file-table.ts'

const wordColumns = [
  text('at', 'When', 16),
  text('what', 'Entry', 14),
  text('whom', 'Whom, by what means', 20),
  text('said', 'What was said or done', 28),
  text('recorded', 'Recorded', 20),
]
const columns = [
  text('reference', 'Reference', 10),
  text('found', 'Found, reported', 26),
  text('how', 'How and circumstances', 28),
  number('photographs', 'Photographs', 8),
  text('state', 'How it stands', 22),
  ...wordColumns,
]

/** What strikes another is told beside that one. */
const counted = (words: readonly DamageWordTold[]) => words.filter(({ kind }) => kind !== 'struck')

/** Every entry of one record, as they were recorded. */
export function damageWordsTable({ words }: DamageTold, style: FileStyle): TableSheet {
  return table(
    'Who was told, what was done',
    wordColumns,
    counted(words).map(word => wordCells(word, style)),
    { none: 'Nobody was told, and nothing was done.' },
  )
}

/** Records of damage of one work or of several, the first found first; of several, each names its own. */
export function damageTable(
  damages: readonly DamageTold[],
  style: FileStyle,
  of: 'work' | 'works' = 'work',
): TableSheet {
  return table(
    'Damage',
    of === 'work' ? columns : [text('work', 'Work', 18), ...columns],
    damages.flatMap(damage => {
      const called = [damage.workNumber, damage.workTitle].filter(each => each !== '').join(' ')
      const head = [...(of === 'work' ? [] : [textCell(called)]), ...headCells(damage, style)]
      const words = counted(damage.words)
      if (words.length === 0) return [[...head, EMPTY, EMPTY, EMPTY, EMPTY, textCell(recorded(damage, style))]]
      return words.map(word => [...head, ...wordCells(word, style)])
    }),
    { none: 'No damage is on record.', grouped: true },
  )
}

function headCells(damage: DamageTold, { moment }: FileStyle): readonly Cell[] {
  const { reference, foundAt, reportedAt, reporter, how, circumstances, closedAt, clock, reports } = damage
  const owner = clock === null ? '' : clockSaid(clock, clock.within)
  const state = closedAt === null ? 'open: it stays in the house' : `closed on ${moment(closedAt)}`
  return [
    textCell(reference),
    textCell(`found ${moment(foundAt)}; reported ${moment(reportedAt)} by ${reporter}`),
    textCell([how, circumstances].filter(each => each !== '').join('; ')),
    numberCell(reports.reduce((sum, { photos }) => sum + photos.length, 0)),
    textCell([state, owner].filter(each => each !== '').join('; ')),
  ]
}

const recorded = ({ recordedBy, recordedAt }: Pick<DamageWordTold, 'recordedBy' | 'recordedAt'>, style: FileStyle) =>
  `${recordedBy}, ${style.moment(recordedAt)}`

function wordCells(word: DamageWordTold, style: FileStyle): readonly Cell[] {
  const struck = word.struck === null ? '' : `struck by ${word.struck.by}: ${word.struck.why}`
  return [
    textCell(style.moment(word.at)),
    textCell(wordTitles[word.kind]),
    textCell([word.whom, word.how].filter(each => each !== '').join(', ')),
    textCell([word.said, struck].filter(each => each !== '').join('; ')),
    textCell(recorded(word, style)),
  ]
}
