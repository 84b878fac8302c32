/** Receipts: which count, in which order they can have been, what is outstanding, and the next number. */
import { describe, expect, test } from 'vitest'
import { normalNumber } from '../../../src/checklist/numbers.ts'
import { nextNumber } from '../../../src/loan/receipts/next-number.ts'
import { daysBetween, kindToCome, type LoanPeriod, standings } from '../../../src/loan/receipts/outstanding.ts'
import { inForce, outOfOrder, type Receipt, type ReceiptKind } from '../../../src/loan/receipts/receipt.ts'
import { randomFrom } from '../database/random-edits.ts'

const receipt = (id: string, kind: ReceiptKind, day: string, more: Partial<Receipt> = {}): Receipt => ({
  id,
  kind,
  day,
  corrects: null,
  struck: false,
  works: ['w'],
  ...more,
})
const loan: LoanPeriod = { way: 'in', first: '2031-03-01', last: '2031-06-30', closed: '' }
const one = (receipts: readonly Receipt[], today: string, of: LoanPeriod = loan) =>
  standings(of, ['w'], receipts, today).get('w')

describe('which count', () => {
  test('one that was set right stands in the place of the first of its chain', () => {
    const came = receipt('a', 'received', '2031-03-04')
    const went = receipt('b', 'sent', '2031-03-02')
    const right = receipt('c', 'received', '2031-03-03', { corrects: 'a' })
    const again = receipt('d', 'received', '2031-03-02', { corrects: 'c' })
    expect(inForce([came, went, right, again]).map(({ id }) => id)).toEqual(['d', 'b'])
  })

  test('one that was struck and what struck it do not', () => {
    const strikes = receipt('b', 'received', '2031-03-04', { corrects: 'a', struck: true })
    expect(inForce([receipt('a', 'received', '2031-03-04'), strikes])).toEqual([])
  })
})

describe('in which order', () => {
  const days = ['2031-03-02', '2031-03-03', '2031-03-04'] as const
  const asked = (way: 'in' | 'out', kinds: readonly ReceiptKind[]) =>
    outOfOrder(
      way,
      kinds.map((kind, at) => receipt(`r${at}`, kind, days[at] ?? '')),
    )?.receipt.id ?? null

  test.each([
    ['in', ['received', 'sent', 'acknowledged'], null],
    ['in', ['received', 'acknowledged', 'received'], null],
    ['in', ['received', 'sent', 'received'], null],
    ['in', ['sent'], 'r0'],
    ['in', ['received', 'received'], 'r1'],
    ['in', ['received', 'acknowledged', 'sent'], 'r2'],
    ['out', ['sent', 'acknowledged', 'received'], null],
    ['out', ['sent', 'received', 'sent'], null],
    ['out', ['received'], 'r0'],
    ['out', ['sent', 'received', 'acknowledged'], 'r2'],
  ] as const)('%s: %s', (way, kinds, wrong) => {
    expect(asked(way, kinds)).toBe(wrong)
  })

  test('each work by itself', () => {
    const first = receipt('a', 'received', '2031-03-02', { works: ['v'] })
    const both = receipt('b', 'sent', '2031-03-03', { works: ['v', 'w'] })
    expect(outOfOrder('in', [first, both])).toMatchObject({ work: 'w', receipt: { id: 'b' }, before: null })
  })
})

describe('what is outstanding', () => {
  test('of works lent to us: to come, here, under way, settled', () => {
    const came = receipt('a', 'received', '2031-03-04')
    const went = receipt('b', 'sent', '2031-06-28')
    const back = receipt('c', 'acknowledged', '2031-07-03')
    expect(one([], '2031-02-20')).toMatchObject({ state: 'to come', since: '2031-03-01', days: 0, late: 0 })
    expect(one([], '2031-03-03')).toMatchObject({ state: 'to come', days: 2, late: 0 })
    expect(one([came], '2031-07-02')).toEqual({
      state: 'here',
      since: '2031-03-04',
      days: 120,
      late: 2,
      receipt: 'a',
      next: ['sent', 'acknowledged'],
    })
    expect(one([came, went], '2031-07-02')).toMatchObject({ state: 'under way', since: '2031-06-28', days: 4, late: 2 })
    expect(one([came, went, back], '2031-07-09')).toMatchObject({ state: 'settled', days: 0, late: 0 })
  })

  test('of works lent by us: to go, under way, there, settled', () => {
    const out = { ...loan, way: 'out' as const }
    const went = receipt('a', 'sent', '2031-03-04')
    const there = receipt('b', 'acknowledged', '2031-03-06')
    const back = receipt('c', 'received', '2031-07-03')
    expect(one([], '2031-03-02', out)?.state).toBe('to go')
    expect(one([went], '2031-03-05', out)).toMatchObject({ state: 'under way', days: 1, late: 0 })
    expect(one([went, there], '2031-07-02', out)).toMatchObject({ state: 'there', days: 118, late: 2 })
    expect(one([went, there, back], '2031-07-09', out)?.state).toBe('settled')
  })

  test('a closed loan asks for no work that never came, but for one that came and is not back', () => {
    const closed = { ...loan, closed: '2031-07-01' }
    expect(one([], '2031-07-09', closed)?.state).toBe('settled')
    expect(one([receipt('a', 'received', '2031-03-04')], '2031-07-09', closed)).toMatchObject({
      state: 'here',
      late: 9,
    })
  })

  test('without a period nothing is late, and nobody knows since when', () => {
    const bare = { ...loan, first: '', last: '' }
    expect(one([], '2031-07-09', bare)).toMatchObject({ state: 'to come', since: '', days: 0, late: 0 })
  })
})

/** Turned over by hand as on a paper calendar: the second route, with no arithmetic of days in it. */
function dayAfter(date: string): string {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number)
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  const length = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0
  const two = (figure: number) => String(figure).padStart(2, '0')
  if (day < length) return `${year}-${two(month)}-${two(day + 1)}`
  return month < 12 ? `${year}-${two(month + 1)}-01` : `${year + 1}-01-01`
}

describe('days', () => {
  test('are as many as leaves of a calendar, over leap years and the turn of a century', () => {
    for (const begin of ['2027-12-20', '2099-12-01', '1999-12-01']) {
      let date = begin
      for (let count = 0; count < 900; count += 1) {
        expect(daysBetween(begin, date)).toBe(count)
        date = dayAfter(date)
      }
    }
  })

  test('told of any day are those counted day by day through all receipts', () => {
    const random = randomFrom(31)
    const turns: readonly ReceiptKind[] = ['received', 'sent', 'acknowledged']
    for (let round = 0; round < 60; round += 1) {
      const kinds = turns.slice(0, Math.floor(random() * 4))
      const length = 20 + Math.floor(random() * 60)
      const marks = kinds.map(() => Math.floor(random() * length)).sort((a, b) => a - b)
      const [begins, ends] = [Math.floor(random() * 30), 30 + Math.floor(random() * 30)]
      const dates = ['2031-12-10']
      while (dates.length < 100) dates.push(dayAfter(dates.at(-1) ?? ''))
      const on = (at: number) => dates[at] ?? ''
      const period: LoanPeriod = { way: 'in', first: on(begins), last: on(ends), closed: '' }
      const receipts = marks.map((mark, at) => receipt(`r${at}`, kinds[at] ?? 'received', on(mark)))
      let [days, late, state] = [0, 0, 'to come']
      for (let at = 0; at < 100; at += 1) {
        if (state === 'to come' ? at > begins : true) days += 1
        if (at > ends) late += 1
        for (const [nth, mark] of marks.entries()) {
          if (mark !== at) continue
          state = ['here', 'under way', 'settled'][nth] ?? ''
          days = 0
        }
        const known = receipts.filter(({ day }) => day <= on(at))
        const told = one(known, on(at), period)
        expect(told?.state).toBe(state)
        if (state !== 'settled') expect([told?.days, told?.late]).toEqual([days, late])
      }
    }
  })
})

describe('the next number', () => {
  const next = (last: string, taken: readonly string[] = [last], today = '2031-03-14') =>
    nextNumber(last, new Set(taken.map(normalNumber)), today)

  test.each([
    ['', 'R 2031-1'],
    ['R 2031-9', 'R 2031-10'],
    ['R 2030-114', 'R 2031-1'],
    ['R 2030-0114', 'R 2031-0001'],
    ['Dock 0099', 'Dock 0100'],
    ['Dock 9/b', 'Dock 10/b'],
    ['Dock', 'Dock-1'],
    // A year alone is a count.
    ['2030', '2031'],
  ])('after %s comes %s', (last, wanted) => {
    expect(next(last)).toBe(wanted)
  })

  test('is never one that was given, however that was written', () => {
    expect(next('R 2031-1', ['R 2031-1', 'r2031 - 02', 'R 2031-003'])).toBe('R 2031-4')
  })

  test('goes on for ever without one twice', () => {
    const taken = new Set<string>()
    let last = ''
    for (let count = 0; count < 300; count += 1) {
      last = nextNumber(last, taken, count < 150 ? '2031-12-31' : '2032-01-01')
      expect(taken.has(normalNumber(last))).toBe(false)
      taken.add(normalNumber(last))
    }
    expect(last).toBe('R 2032-150')
  })
})

describe('what the next receipt is for', () => {
  const after = (...kinds: readonly ReceiptKind[][]) => {
    const works = kinds.map((_, at) => `w${at}`)
    const written = kinds.flatMap((each, at) =>
      each.map((kind, nth) => receipt(`r${at}-${nth}`, kind, `2031-03-0${nth + 2}`, { works: [`w${at}`] })),
    )
    return kindToCome([...standings(loan, works, written, '2031-04-01').values()])
  }
  test.each<[ReceiptKind, string, readonly ReceiptKind[][]]>([
    ['received', 'a loan of which nothing came yet', [[], []]],
    ['sent', 'works that are here', [['received'], ['received']]],
    [
      'acknowledged',
      'works that went',
      [
        ['received', 'sent'],
        ['received', 'sent'],
      ],
    ],
    ['received', 'a loan that is over: only another stay can follow', [['received', 'sent', 'acknowledged']]],
    ['sent', 'most works, while one is still to come', [['received'], ['received'], []]],
    [
      'acknowledged',
      'what is outstanding, beside works that are back',
      [
        ['received', 'sent'],
        ['received', 'sent', 'acknowledged'],
        ['received', 'sent', 'acknowledged'],
      ],
    ],
    ['received', 'no work', []],
  ])('is %s for %s', (kind, _, kinds) => {
    expect(after(...kinds)).toBe(kind)
  })
})
