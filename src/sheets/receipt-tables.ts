/** The tables of receipts in the whole files: of a loan with what is outstanding of it, and of one work. */
import type { ReceiptTold } from '../contract/areas/receipts.ts'
import type { Output } from '../contract/contract.ts'
import { stateSaid } from '../loan/receipts/outstanding.ts'
import { kindSaid, type LoanWay } from '../loan/receipts/receipt.ts'
import { type Cell, EMPTY, numberCell, type TableSheet, textCell } from './columns.ts'
import { number, text } from './crew-columns.ts'
import { type FileStyle, table } from './file-table.ts'
import type { FiledLoan } from './loan-tables.ts'

const columns = [
  text('receipt', 'Receipt', 14),
  text('kind', 'What for', 20),
  text('day', 'Day', 14),
  text('place', 'Place', 16),
  text('handed', 'Handed over by', 18),
  text('taken', 'Received by', 18),
]
const more = [text('note', 'Note', 22), text('recorded', 'Recorded', 20), text('state', 'Set right', 24)]

function stateOf({ correctedBy, struck, corrects, why }: ReceiptTold, numbers: ReadonlyMap<string, string>): string {
  if (correctedBy !== null) return `set right by ${numbers.get(correctedBy) ?? 'a later receipt'}`
  if (corrects === null) return ''
  const other = numbers.get(corrects) ?? 'an earlier receipt'
  return struck ? `says that ${other} never was: ${why}` : `sets ${other} right: ${why}`
}

function cellsOf(
  receipt: ReceiptTold,
  way: LoanWay,
  works: readonly Cell[],
  numbers: ReadonlyMap<string, string>,
  { day, moment }: FileStyle,
): readonly Cell[] {
  return [
    textCell(receipt.number),
    textCell(kindSaid[way][receipt.kind]),
    textCell(day(receipt.day)),
    textCell(receipt.place),
    textCell(receipt.handedBy),
    textCell(receipt.receivedBy),
    ...works,
    textCell(receipt.note),
    textCell(`${receipt.recordedBy}, ${moment(receipt.recordedAt)}`),
    textCell(stateOf(receipt, numbers)),
  ]
}

const numbersOf = (receipts: readonly ReceiptTold[]) => new Map(receipts.map(({ id, number }) => [id, number]))
const titled = (title: string): Cell => (title === '' ? textCell('untitled') : { kind: 'title', text: title })

/** Every receipt of the loan, a row a work. */
export function receiptsTable({ receipts }: Output<'receipt.list'>, { way }: FiledLoan, style: FileStyle): TableSheet {
  const numbers = numbersOf(receipts)
  return table(
    'Receipts',
    [
      ...columns,
      text('number', 'Number', 12),
      text('title', 'Title', 22),
      text('condition', 'Condition', 22),
      text('crate', 'In', 12),
      ...more,
    ],
    receipts.flatMap(receipt =>
      receipt.works.map(work => {
        const named = [textCell(work.number), titled(work.title), textCell(work.condition), textCell(work.crate)]
        return cellsOf(receipt, way, named, numbers, style)
      }),
    ),
    { none: 'No receipt of it is on record.', grouped: true },
  )
}

/** What is outstanding of the loan on the day on which the file is made. */
export function outstandingTable(
  { works, today }: Output<'receipt.list'>,
  { items }: FiledLoan,
  { day }: FileStyle,
): TableSheet {
  const named = new Map(items.map(item => [item.work, item]))
  const open = works.filter(({ state }) => state !== 'settled')
  return table(
    'Outstanding',
    [
      text('number', 'Number', 14),
      text('title', 'Title', 26),
      text('state', 'Stands', 24),
      text('since', 'Since', 14),
      number('days', 'Days', 8),
      number('late', 'Days late', 10),
    ],
    open.map(({ work, state, since, days, late }) => [
      textCell(named.get(work)?.number ?? ''),
      titled(named.get(work)?.title ?? ''),
      textCell(stateSaid[state]),
      textCell(since === '' ? '' : day(since)),
      since === '' ? EMPTY : numberCell(days),
      late === 0 ? EMPTY : numberCell(late),
    ]),
    {
      lines: open.length === 0 ? [] : [`On ${day(today)}; late against the last day of the loan.`],
      none: works.length === 0 ? '' : 'Nothing is outstanding.',
    },
  )
}

/** Every receipt that names the work. */
export function receiptsOfWorkTable(
  { receipts }: Output<'receipt.ofWork'>,
  work: string,
  style: FileStyle,
): TableSheet {
  const numbers = numbersOf(receipts)
  return table(
    'Receipts of its loans',
    [...columns, text('loan', 'Agreement', 14), text('condition', 'Condition', 22), text('crate', 'In', 12), ...more],
    receipts.map(receipt => {
      const named = receipt.works.find(each => each.work === work)
      const cells = [receipt.loanNumber, named?.condition ?? '', named?.crate ?? ''].map(textCell)
      return cellsOf(receipt, receipt.way, cells, numbers, style)
    }),
  )
}
