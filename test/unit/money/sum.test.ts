import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exactOf, halfEven, times, turned } from '../../../src/money/exact.ts'
import { factorOf, type Rate, rateOn, readRate } from '../../../src/money/exchange.ts'
import { perCurrency, together } from '../../../src/money/sum.ts'
import { writeAmount } from '../../../src/money/write.ts'

const rate = (from: string, to: string, figure: string, day: string): Rate => ({
  id: `${from}${to}${day}`,
  from,
  to,
  rate: figure,
  day,
})
const chf = (minor: number) => ({ minor, currency: 'CHF' })
const eur = (minor: number) => ({ minor, currency: 'EUR' })

describe('a rate of exchange', () => {
  const rates = [
    rate('EUR', 'CHF', '0.95', '2031-01-01'),
    rate('EUR', 'CHF', '0.9412', '2031-03-01'),
    rate('CHF', 'EUR', '1.0625', '2031-03-01'),
    rate('CHF', 'USD', '1.1', '2031-05-01'),
  ]
  test('counts from its day until the next, either way round, the one without turning first', () => {
    expect(rateOn(rates, 'EUR', 'CHF', '2030-12-31')).toBeUndefined()
    expect(rateOn(rates, 'EUR', 'CHF', '2031-01-01')?.rate).toBe('0.95')
    expect(rateOn(rates, 'EUR', 'CHF', '2031-02-28')?.rate).toBe('0.95')
    expect(rateOn(rates, 'EUR', 'CHF', '2031-03-01')?.rate).toBe('0.9412')
    expect(rateOn(rates, 'CHF', 'EUR', '2031-03-01')?.rate).toBe('1.0625')
    expect(rateOn(rates, 'USD', 'CHF', '2031-06-01')?.rate).toBe('1.1')
    expect(rateOn(rates, 'USD', 'EUR', '2031-06-01')).toBeUndefined()
  })

  test('is taken exactly, between currencies of other decimals too', () => {
    expect(factorOf(rate('JPY', 'EUR', '0.006', ''), 'JPY')).toEqual({ num: 3n, den: 5n })
    expect(factorOf(rate('JPY', 'EUR', '0.006', ''), 'EUR')).toEqual({ num: 5n, den: 3n })
    expect(factorOf(rate('KWD', 'EUR', '3', ''), 'KWD')).toEqual({ num: 3n, den: 10n })
  })

  test.each(['', '0', '0.000', '-1', 'about 1', '1.2.3', '1e3', '1,2,3', '0.1234567890123'])('%j is none', text =>
    expect(readRate(text)).toBeUndefined(),
  )
  test('is read with a point or a comma', () =>
    expect([readRate(' 0,9412 '), readRate('1.10')]).toEqual(['0.9412', '1.10']))
})

describe('money together', () => {
  test('a half goes to the even one, once, at the end', () => {
    const half = (num: bigint) => halfEven({ num, den: 2n })
    expect([half(1n), half(3n), half(5n), half(-1n), half(-3n)].map(each => each + 0)).toEqual([0, 2, 2, 0, -2])
    const rates = [rate('EUR', 'CHF', '0.5', '2031-01-01')]
    // One by one they would be 0 and 0; together they are 1.
    expect(together([eur(1), eur(1)], 'CHF', rates, '2031-01-01').sum).toEqual(chf(1))
  })

  test('what no rate leads from stands apart, never as nought or one to one', () => {
    const all = [chf(100), eur(200), { minor: 300, currency: 'JPY' }]
    const rates = [rate('EUR', 'CHF', '0.5', '2031-01-01')]
    expect(together(all, 'CHF', rates, '2031-01-02')).toEqual({
      sum: chf(200),
      apart: [{ minor: 300, currency: 'JPY' }],
      rates,
    })
    expect(together(all, 'CHF', rates, '2030-01-02').apart.map(writeAmount)).toEqual(['EUR\u00a02', 'JPY\u00a0300'])
  })

  const amounts = fc.array(
    fc.record({ minor: fc.integer({ min: 0, max: 1e9 }), currency: fc.constantFrom('CHF', 'EUR', 'JPY', 'KWD') }),
    { maxLength: 30 },
  )
  const figure = fc.integer({ min: 1, max: 99_999_999 }).map(n => (n / 10_000).toFixed(4))

  test('the order does not matter, and per currency the parts are the whole', () => {
    fc.assert(
      fc.property(amounts, figure, fc.nat(30), (all, each, cut) => {
        const rates = [rate('EUR', 'CHF', each, '2031-01-01'), rate('CHF', 'JPY', each, '2031-01-01')]
        expect(together(all.toReversed(), 'CHF', rates, '2031-01-01')).toEqual(
          together(all, 'CHF', rates, '2031-01-01'),
        )
        expect(perCurrency([...perCurrency(all.slice(0, cut)), ...perCurrency(all.slice(cut))])).toEqual(
          perCurrency(all),
        )
      }),
    )
  })

  test('one sum equals what whole-number arithmetic in another arrangement gives', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e14 }), figure, (minor, each) => {
        const rates = [rate('EUR', 'CHF', each, '2031-01-01')]
        const scaled = BigInt(minor) * BigInt(each.replace('.', ''))
        const floor = scaled / 10_000n
        const left = scaled % 10_000n
        const up = left > 5000n || (left === 5000n && floor % 2n === 1n)
        if (floor < BigInt(Number.MAX_SAFE_INTEGER))
          expect(together([eur(minor)], 'CHF', rates, '2031-02-01').sum.minor).toBe(Number(up ? floor + 1n : floor))
      }),
    )
  })

  test('there and back by one rate loses nothing', () => {
    fc.assert(
      fc.property(figure, each => {
        const exact = exactOf(each)
        if (exact !== undefined) expect(times(exact, turned(exact))).toEqual({ num: 1n, den: 1n })
      }),
    )
  })
})
