/** Loans that end before their show closes, or begin after it opens. */
import { describe, expect, test } from 'vitest'
import { dateOf, dayOf } from '../../../src/light/day.ts'
import { type LentPeriod, periodFindings } from '../../../src/loan/period.ts'
import { randomFrom } from '../database/random-edits.ts'

const work = { id: 'w', called: 'Salt pans' }
const show = { opens: '2031-04-01', closes: '2031-07-01' }
const loan = (first: string, last: string, number = 'QC 7'): LentPeriod => ({
  loan: number,
  number,
  partyName: 'Quay Collection',
  first,
  last,
})
const of = (loans: readonly LentPeriod[], during = show) =>
  periodFindings(work, loans, during, day => day).map(({ finding: { code, figures } }) => [
    code,
    figures.days,
    figures.loan,
  ])

describe('a loan against the show', () => {
  test('that covers it to the day, or whose days nobody agreed, is none', () => {
    expect(of([loan('2031-04-01', '2031-07-01')])).toEqual([])
    expect(of([loan('', '')])).toEqual([])
    expect(of([])).toEqual([])
    expect(of([loan('2031-05-01', '2031-06-01')], { opens: '', closes: '' })).toEqual([])
  })

  test('that ends a day before it closes, and begins two after it opens', () => {
    expect(of([loan('2031-04-03', '2031-06-30')])).toEqual([
      ['loan-begins-late', 2, 'QC 7'],
      ['loan-ends-early', 1, 'QC 7'],
    ])
  })

  test('loans one after the other are one stay, and one without an end is no early one', () => {
    const early = loan('2031-03-01', '2031-05-10', 'QC 7')
    expect(of([early, loan('2031-05-11', '2031-06-20', 'QC 8')])).toEqual([['loan-ends-early', 11, 'QC 8']])
    expect(of([early, loan('2031-05-11', '', 'QC 8')])).toEqual([])
    expect(of([loan('2031-05-11', '', 'QC 8'), early])).toEqual([])
  })

  test('names the days, the agreement, and what to do', () => {
    expect(periodFindings(work, [loan('', '2031-06-03')], show, day => day)[0]?.finding.text).toBe(
      'Salt pans is lent until 2031-06-03, by loan QC 7 of Quay Collection; the show closes on 2031-07-01, 28 days later. Ask for a longer loan, or take it down before.',
    )
  })

  test('counts as many days as lie between, each looked at by itself', () => {
    const random = randomFrom(7)
    const begin = dayOf('2032-02-01')
    const any = () => dateOf(begin + Math.floor(random() * 60))
    for (let round = 0; round < 300; round += 1) {
      const loans = Array.from({ length: 1 + Math.floor(random() * 3) }, (_, at) => {
        const [first = '', last = ''] = [any(), any()].sort()
        return loan(first, last, `L${at}`)
      })
      const [opens = '', closes = ''] = [any(), any()].sort()
      let [before, after] = [0, 0]
      for (let day = begin - 1; day < begin + 61; day += 1) {
        const date = dateOf(day)
        if (date >= opens && loans.every(({ first }) => first > date)) before += 1
        if (date <= closes && loans.every(({ last }) => last < date)) after += 1
      }
      const told = new Map(of(loans, { opens, closes }).map(([code, days]) => [code, days]))
      expect([told.get('loan-begins-late') ?? 0, told.get('loan-ends-early') ?? 0]).toEqual([before, after])
    }
  })
})
