/** A record of damage on paper and as a workbook, as it goes to the owner and the insurer. */
import type { Report } from '../contract/areas/condition-shape.ts'
import type { DamageTold } from '../contract/areas/damage.ts'
import { clockSaid } from '../record/damage/say.ts'
import { textCell } from './columns.ts'
import { text } from './crew-columns.ts'
import { damageWordsTable } from './damage-table.ts'
import { type FileStyle, table } from './file-table.ts'
import { conditionTable } from './record-tables.ts'
import { coverLine, filed, type WholeFile } from './whole-file.ts'

export interface DamageQuestion {
  readonly damage: DamageTold
  /** Its condition reports, whole. */
  readonly reports: readonly Report[]
  readonly style: FileStyle
  /** When it was made, by whom. */
  readonly made: string
}

/** The first photograph stands on its first sheet; the others are printed with the condition report. */
export function damageFile({ damage, reports, style, made }: DamageQuestion): WholeFile {
  const photos = damage.reports.flatMap(report => report.photos)
  const { closedAt, lender, workNumber, workTitle } = damage
  return {
    called: damage.reference,
    picture: photos[0]?.hash ?? null,
    made,
    cover: [
      { text: workTitle === '' ? 'untitled' : workTitle, face: 'title', size: 7 },
      coverLine(workNumber),
      coverLine(lender === '' ? 'of the house' : `lent by ${lender}`),
      coverLine(`found ${style.moment(damage.foundAt)}`),
      coverLine(closedAt === null ? 'open: it stays in the house' : `closed on ${style.moment(closedAt)}`),
    ],
    tables: filed([
      factsTable(damage, style),
      damageWordsTable(damage, style),
      conditionTable(reports, style),
      photosTable(damage, style),
    ]),
  }
}

function factsTable(damage: DamageTold, { moment }: FileStyle) {
  const { clock, circumstances, foundAt, how, lacks, movedFirst, recordedAt, recordedBy, reportedAt, reporter } = damage
  const moved = `It was moved on ${moment(movedFirst ?? foundAt)}, and no photograph is known to be older.`
  const facts = [
    ['Found', moment(foundAt)],
    ['Reported', `${moment(reportedAt)}, by ${reporter}`],
    ['How it came about', how],
    ['Circumstances', circumstances],
    ['Its owner', clock === null ? '' : clockSaid(clock, clock.within)],
    ['Before it was photographed', movedFirst === null ? '' : moved],
    ['Recorded', `${moment(recordedAt)}, by ${recordedBy}`],
    ['Missing before it can be closed', lacks.map(lack => lack.text).join(' ')],
  ]
  return table(
    'What was found',
    [text('fact', 'Fact', 22), text('said', 'As it stands', 64)],
    facts.flatMap(([word = '', said = '']) => (said === '' ? [] : [[textCell(word), textCell(said)]])),
  )
}

function photosTable({ reports }: DamageTold, { moment }: FileStyle) {
  return table(
    'Photographs',
    [text('name', 'File', 22), text('shows', 'Shows', 34), text('taken', 'Taken', 18), text('by', 'By', 16)],
    reports
      .flatMap(report => report.photos)
      .map(({ name, shows, takenAt, takenBy }) => [
        textCell(name),
        textCell(shows),
        textCell(takenAt === null ? 'nobody says when' : moment(takenAt)),
        textCell(takenBy),
      ]),
    { none: 'No photograph belongs to it.' },
  )
}
