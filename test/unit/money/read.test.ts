import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { currencies } from '../../../src/money/currency.ts'
import { parseAmount } from '../../../src/money/read.ts'
import { writeAmount } from '../../../src/money/write.ts'

describe('an amount as typed', () => {
  test.each([
    ['CHF 1’200’000.–', 'CHF', 120_000_000],
    ["CHF 1'200'000.-", 'CHF', 120_000_000],
    ["1'200'000 SFr.", 'CHF', 120_000_000],
    ['€ 45.000,50', 'EUR', 4_500_050],
    ['EUR 45,000.50', 'EUR', 4_500_050],
    ['45 000,5 €', 'EUR', 4_500_050],
    ['45\u2009000 eur', 'EUR', 4_500_000],
    ['EUR 45.000', 'EUR', 4_500_000],
    ['US$1,200', 'USD', 120_000],
    ['USD 1,200,000', 'USD', 120_000_000],
    ['INR 12,00,000', 'INR', 120_000_000],
    ['1.2 million USD', 'USD', 120_000_000],
    ['CHF 1,25 Mio.', 'CHF', 125_000_000],
    ['45k EUR', 'EUR', 4_500_000],
    ['JPY 1,200', 'JPY', 1200],
    ['1,200円', 'JPY', 1200],
    ['KWD 1,200.500', 'KWD', 1_200_500],
    ['0 EUR', 'EUR', 0],
    ['£ 0.05 GBP', 'GBP', 5],
  ])('%j is %s, %d of its smallest unit', (text, currency, minor) =>
    expect(parseAmount(text, currency === 'GBP' ? 'GBP' : undefined)).toEqual({ ok: true, minor, currency }),
  )

  test.each([
    ['', 'empty'],
    ['a lot', 'not-a-number'],
    ['45 000', 'no-currency'],
    ['45 000 thalers', 'unknown-currency'],
    ['€ 45 000 USD', 'two-currencies'],
    ['$ 45 000', 'two-ways'],
    ['kr 45 000', 'two-ways'],
    ['KWD 1,200', 'two-ways'],
    ['EUR 1,200 million', 'two-ways'],
    ['EUR 5 m', 'two-ways'],
    ['EUR -5', 'out-of-range'],
    ['−5 EUR', 'out-of-range'],
    ['EUR 0,125', 'too-many-decimals'],
    ['JPY 45.50', 'too-many-decimals'],
    ['EUR 12,34,56', 'not-a-number'],
    ['EUR 1.2.3', 'not-a-number'],
    ['EUR 5 to 6', 'not-a-number'],
    ['EUR 999999999999999', 'out-of-range'],
  ])('%j is a problem: %s', (text, problem) => {
    const read = parseAmount(text)
    expect(read).toMatchObject({ ok: false, problem })
    expect(!read.ok && read.message.length).toBeGreaterThan(20)
  })

  test('the field’s currency is that of a bare figure and settles a shared sign, never a code', () => {
    expect(parseAmount('45 000', 'CHF')).toEqual({ ok: true, minor: 4_500_000, currency: 'CHF' })
    expect(parseAmount('$45,000', 'CAD')).toEqual({ ok: true, minor: 4_500_000, currency: 'CAD' })
    expect(parseAmount('EUR 45 000', 'CHF')).toEqual({ ok: true, minor: 4_500_000, currency: 'EUR' })
    expect(parseAmount('$45,000', 'CHF')).toMatchObject({ problem: 'two-ways' })
  })

  const amount = fc.record({ minor: fc.integer({ min: 0, max: 1e14 }), currency: fc.constantFrom(...currencies) })
  test('what is written reads back as the same amount', () => {
    fc.assert(
      fc.property(amount, each => {
        expect(parseAmount(writeAmount(each))).toEqual({ ok: true, ...each })
      }),
    )
  })

  test('no text makes it throw, and an amount is a whole number that is not negative', () => {
    const money = fc.stringMatching(/^[$€A-Z]{0,3} ?[0-9'., ]{0,14}[–-]?( [a-zA-Z$€]{0,4})?$/u)
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), money), text => {
        const read = parseAmount(text, 'EUR')
        if (read.ok) expect(Number.isSafeInteger(read.minor) && read.minor >= 0).toBe(true)
      }),
    )
  })
})
