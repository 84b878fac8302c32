/** The tables of a loan: the agreement, its people, its works with what was agreed for each, what they are worth. */
import type { Output } from '../contract/contract.ts'
import { wordSaid } from '../loan/terms/asked.ts'
import { termSaid } from '../loan/terms/said.ts'
import { type TermKind, termParts, termWords } from '../loan/terms/term.ts'
import { perCurrency } from '../money/sum.ts'
import { writeAmount } from '../money/write.ts'
import { type TableSheet, textCell } from './columns.ts'
import { text } from './crew-columns.ts'
import { type FileStyle, table } from './file-table.ts'

export type FiledLoan = Output<'loan.get'>

const ways = { in: 'lent to us', out: 'lent by us' } as const
const amountSaid = (value: FiledLoan['items'][number]['value']) => (value === null ? '' : writeAmount(value))

/** A term of money tells what works are worth. */
const shownTerms = <T extends { readonly kind: TermKind }>(terms: readonly T[], withValues: boolean): readonly T[] =>
  withValues ? terms : terms.filter(({ kind }) => termParts[kind] !== 'money')

export function agreementTable(loan: FiledLoan, { day }: FileStyle, withValues: boolean): TableSheet {
  const on = (date: string) => (date === '' ? '' : day(date))
  const rows = [
    ['agreement', loan.number],
    ['party', loan.partyName],
    ['works are', ways[loan.way]],
    ['from', on(loan.first)],
    ['until', on(loan.last)],
    ['agreed on', on(loan.agreed)],
    [loan.way === 'in' ? 'signed for the lender by' : 'signed for the borrower by', loan.authoriser],
    ['closed on', on(loan.closed)],
    ['purpose', loan.purpose],
    ['credit line', loan.creditLine],
    ['how to reach them', withValues ? loan.contact : ''],
    ['note', loan.note],
  ] as const
  return table(
    'The agreement',
    [text('fact', 'Fact', 16), text('said', 'As it stands', 70)],
    rows.flatMap(([word, said]) => (said === '' ? [] : [[textCell(word), textCell(said)]])),
  )
}

export function peopleTable({ contacts }: FiledLoan, withValues: boolean): TableSheet {
  return table(
    'People',
    [text('name', 'Name', 26), text('role', 'What they do', 26), text('reach', 'How to reach them', 40)],
    contacts.map(({ name, role, reach }) => [textCell(name), textCell(role), textCell(withValues ? reach : '')]),
    { none: 'Nobody is named.' },
  )
}

export function worksOfLoanTable({ items }: FiledLoan, withValues: boolean): TableSheet {
  const valued = items.flatMap(({ value }) => value ?? [])
  const without = items.length - valued.length
  const sums = perCurrency(valued).map(writeAmount).join(' and ')
  return table(
    'Works',
    [
      text('item', 'Item', 7),
      text('number', 'Number', 14),
      text('title', 'Title', 26),
      text('maker', 'Maker', 20),
      text('value', 'Value agreed', 16),
      text('insured', 'Insured by', 12),
      text('note', 'Note', 26),
    ],
    items.map(({ item, number, title, maker, value, insuredBy, note }) => [
      textCell(item),
      textCell(number),
      title === '' ? textCell('untitled') : { kind: 'title' as const, text: title },
      textCell(maker),
      textCell(withValues ? amountSaid(value) : ''),
      textCell(withValues ? insuredBy : ''),
      textCell(note),
    ]),
    {
      none: 'No work is in it yet.',
      lines: withValues
        ? [
            ...(sums === '' ? [] : [`Together ${sums}.`]),
            ...(without === 0 ? [] : [`${without} without a value agreed.`]),
          ]
        : [],
    },
  )
}

/** Terms in the words of the agreement, or in ours where those are not written down, and the works that each is about. */
export function termsTable(
  { terms }: Output<'loan.terms'>,
  { items }: FiledLoan,
  { length, day }: FileStyle,
  withValues: boolean,
): TableSheet {
  const called = new Map(items.map(({ id, number, title }) => [id, number === '' ? title : number]))
  return table(
    'Terms',
    [
      text('kind', 'About', 22),
      text('said', 'As agreed', 60),
      text('works', 'Works', 20),
      text('word', 'Said of it', 40),
    ],
    shownTerms(terms, withValues).map(term => [
      textCell(termWords[term.kind]),
      textCell(termSaid(term, length)),
      textCell(term.item === null ? 'all' : (called.get(term.item) ?? '')),
      textCell(wordSaid(term.confirmed, day)),
    ]),
    { none: 'No term is written down.' },
  )
}

export function termsOfWorkTable(
  { terms }: Output<'loan.termsOfWork'>,
  { length, day }: FileStyle,
  withValues: boolean,
): TableSheet {
  return table(
    'Terms of its loans',
    [
      text('loan', 'Agreement', 16),
      text('kind', 'About', 22),
      text('said', 'As agreed', 60),
      text('word', 'Said of it', 40),
    ],
    shownTerms(terms, withValues).map(term => [
      textCell(term.loanNumber),
      textCell(termWords[term.kind]),
      textCell(termSaid(term, length)),
      textCell(wordSaid(term.confirmed, day)),
    ]),
  )
}

export function loansOfWorkTable(
  { loans }: Output<'loan.ofWork'>,
  { day }: FileStyle,
  withValues: boolean,
): TableSheet {
  return table(
    'Loans',
    [
      text('number', 'Agreement', 16),
      text('party', 'With', 24),
      text('way', 'It is', 10),
      text('first', 'From', 14),
      text('last', 'Until', 14),
      text('closed', 'Closed', 14),
      text('item', 'Item', 7),
      text('value', 'Value agreed', 16),
      text('insured', 'Insured by', 12),
    ],
    loans.map(loan => [
      textCell(loan.number),
      textCell(loan.partyName),
      textCell(ways[loan.way]),
      textCell(loan.first === '' ? '' : day(loan.first)),
      textCell(loan.last === '' ? '' : day(loan.last)),
      textCell(loan.closed === '' ? '' : day(loan.closed)),
      textCell(loan.item),
      textCell(withValues ? amountSaid(loan.value) : ''),
      textCell(withValues ? loan.insuredBy : ''),
    ]),
    { none: 'It is in no loan on record.' },
  )
}
