/**
 * Decimals of currencies against another table than ours: the Unicode Common Locale Data Repository (unicode.org/cldr,
 * supplemental/currencyData), which Node carries and `Intl` answers from. It tells the decimals in everyday use; where
 * that is fewer than the standard's, ISO 4217 stands, and the currencies are named here.
 */
import { expect, test } from 'vitest'
import { currencies, exponentOf, isCurrency } from '../../../src/money/currency.ts'
import { writeAmount } from '../../../src/money/write.ts'

const inUse = (currency: string) =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits

/** Minor units stand in ISO 4217 and are not in use any more (CLDR 48: fraction digits 0). */
const withoutCoins = 'AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SOS SYP YER'.split(' ')
/** Given up before 2025, and what is no money: special drawing rights, the sucre, a bond unit. */
const notOurs = 'CUC HRK SLL XDR XSU ZWL'.split(' ')

test('every currency has the decimals that CLDR gives it, but those whose coins are gone', () => {
  const differing = currencies.filter(code => exponentOf(code) !== inUse(code))
  expect(differing).toEqual(withoutCoins)
  for (const code of withoutCoins) expect(inUse(code)).toBe(0)
})

test('every currency that Node knows is known here, and no other', () => {
  const known = Intl.supportedValuesOf('currency')
  expect(known.filter(code => !isCurrency(code))).toEqual(notOurs)
  expect(currencies.filter(code => !known.includes(code))).toEqual([])
})

test('amounts are written with the figures that Intl writes', () => {
  for (const currency of currencies.filter(code => !withoutCoins.includes(code))) {
    const minor = 123_456_789
    const format = new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay: 'code' })
    const parts = format.formatToParts(minor / 10 ** exponentOf(currency))
    const said = parts.map(part => (part.type === 'group' ? '\u2009' : part.value)).join('')
    expect(writeAmount({ minor, currency })).toBe(said)
  }
})
