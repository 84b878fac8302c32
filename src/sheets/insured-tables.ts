/**
 * What works are worth together, as tables: the sums of a day against limits, every work with what its sum is made of,
 * and the period day by day. The rule it keeps: a figure stands with its currency, its rate and who says it.
 */
import type { Output } from '../contract/contract.ts'
import { bearerWords } from '../insurance/bearer.ts'
import { type Amount, exponentOf } from '../money/currency.ts'
import { writeAmount } from '../money/write.ts'
import {
  type Cell,
  EMPTY,
  numberCell,
  type SheetColumn,
  type TableSheet,
  textCell,
  withoutEmptyColumns,
} from './columns.ts'
import { number, text } from './crew-columns.ts'

type Told = Output<'insured.day'>

export interface InsuredQuestion {
  readonly title: string
  /** The day of the sums in words. */
  readonly day: string
  readonly lines: readonly string[]
  readonly told: Told
  readonly days: Output<'insured.days'>
}

/** Whole units of a currency with its decimals: a cell holds it to 15 figures. */
const cellOf = ({ minor, currency }: Amount): Cell => numberCell(minor / 10 ** exponentOf(currency))

/** As the workbook's standard writes it: ECMA-376 part 1, 18.8.31. */
const formatOf = (decimals: number) => (decimals === 0 ? '#,##0' : `#,##0.${'0'.repeat(decimals)}`)

function money(key: string, heading: string, currency: string): SheetColumn {
  return number(key, `${heading}, ${currency}`, 15, formatOf(exponentOf(currency)))
}

const kinds = {
  ...{ all: 'Together', bearer: 'Borne by', loan: 'Loan', lender: 'Lender', room: 'Room or place' },
  ...{ crate: 'Crate', vehicle: 'Vehicle', journey: 'Journey' },
} as const
const verdicts = { within: 'within', over: 'over', unsure: 'not sure' } as const
const apartCell = (apart: readonly Amount[]) => textCell(apart.map(writeAmount).join(', '))

function groups(told: Told): TableSheet['rows'] {
  const { currency } = told
  return told.lines.flatMap(line => {
    const limits = line.against.length === 0 ? [null] : line.against
    return limits.map(one => [
      textCell(kinds[line.kind]),
      textCell(line.words),
      numberCell(line.works),
      numberCell(line.without),
      cellOf({ minor: line.minor, currency }),
      apartCell(line.apart),
      one === null || one.minor === null ? EMPTY : cellOf({ minor: one.minor, currency }),
      textCell(one === null ? '' : verdicts[one.verdict]),
      one === null || one.over === 0 ? EMPTY : cellOf({ minor: one.over, currency }),
      textCell(one === null ? '' : [writeAmount(one.amount), one.source].filter(each => each !== '').join(', ')),
      cellOf({ minor: line.greatest.minor, currency }),
      textCell(line.greatest.day),
    ])
  })
}

function works({ works: all, currency, rates }: Told): TableSheet['rows'] {
  return all.map(work => {
    const own = work.value?.currency
    const used = rates.find(({ from, to }) => (from === own && to === currency) || (to === own && from === currency))
    return [
      textCell(work.number),
      work.title === '' ? EMPTY : { kind: 'title' as const, text: work.title },
      textCell(work.lender),
      textCell(work.words === '' ? 'not known yet' : work.words),
      textCell(work.basis === 'plan' ? 'planned' : 'recorded'),
      // A figure alone: its currency differs from row to row and stands beside it.
      work.value === null ? EMPTY : cellOf(work.value),
      textCell(work.value?.currency ?? 'without a value'),
      textCell(used === undefined ? '' : `1 ${used.from} = ${used.rate} ${used.to} from ${used.day}`),
      work.minor === null ? EMPTY : cellOf({ minor: work.minor, currency }),
      textCell(
        [work.since === null ? '' : `valued from ${work.since}`, work.why].filter(each => each !== '').join(', '),
      ),
      textCell(bearerWords[work.bearer]),
      textCell(work.over ? 'brings it over' : ''),
    ]
  })
}

/** Sums of the day, its works, and the period. */
export function insuredTables({ title, day, lines, told, days }: InsuredQuestion): readonly TableSheet[] {
  const { currency } = told
  const rates = told.rates.map(each => {
    const source = each.source === '' ? '' : `, ${each.source}`
    return `1 ${each.from} is ${each.rate} ${each.to} from ${each.day}${source}.`
  })
  const working =
    'A day’s sum is the greatest that is together at any moment of it. Sums are exact and rounded once, half to even. What a policy covers, its own words decide.'
  return [
    {
      name: 'Sums',
      title: `${title}: together on ${day}`,
      lines: [...lines, ...rates, working],
      grouped: true,
      columns: [
        text('kind', 'Sum of', 14),
        text('words', 'Which', 24),
        number('works', 'Works'),
        number('without', 'Not valued', 10),
        money('sum', 'Sum', currency),
        text('apart', 'Apart, no rate', 18),
        money('limit', 'Limit', currency),
        text('verdict', 'Against it', 12),
        money('over', 'Over by', currency),
        text('source', 'Limit as agreed', 24),
        money('greatest', 'Greatest', currency),
        text('on', 'On', 15),
      ],
      rows: groups(told),
    },
    {
      name: 'Works',
      title: `${title}: works together on ${day}`,
      lines: [...lines, ...rates],
      columns: [
        text('number', 'Number', 15),
        text('title', 'Title', 24),
        text('lender', 'Lender', 18),
        text('where', 'Where', 22),
        text('basis', 'As', 12),
        // As many decimals as the currency with most of them, so that none is lost.
        number(
          'value',
          'Value',
          14,
          formatOf(Math.max(0, ...told.works.map(({ value }) => (value === null ? 0 : exponentOf(value.currency))))),
        ),
        text('currency', 'Currency', 13),
        text('rate', 'Rate', 22),
        money('converted', 'In the sum', currency),
        text('why', 'Says who', 28),
        text('borne', 'Borne by', 20),
        text('brings', 'Limit', 12),
      ],
      rows: works(told),
    },
    {
      name: 'Days',
      title: `${title}: together, day by day`,
      lines: [...lines, `Until ${days.today} as recorded, then as planned.`],
      columns: [
        text('day', 'Day', 14),
        number('works', 'Works'),
        number('without', 'Not valued', 10),
        money('sum', 'Sum', currency),
        text('apart', 'Apart, no rate', 22),
        money('limit', 'Limit', currency),
        text('over', 'Against it', 10),
      ],
      rows: days.days.map(each => [
        textCell(each.day),
        numberCell(each.works),
        numberCell(each.without),
        cellOf({ minor: each.minor, currency }),
        apartCell(each.apart),
        each.limit === null ? EMPTY : cellOf({ minor: each.limit, currency }),
        textCell(each.over ? 'over' : ''),
      ]),
    },
  ].map(withoutEmptyColumns)
}
