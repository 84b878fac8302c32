/**
 * Currencies by their ISO 4217 code, and into how many decimals each is parted. The rule it keeps: money is a whole
 * number of the smallest unit that the standard gives its currency. ISO 4217, list one (codes of funds, metals and
 * tests left out; ANG and BGN, given up in 2025 and 2026, kept for older agreements).
 */

/** Money as a whole number of minor units: `{ minor: 120_000_050, currency: 'CHF' }` is CHF 1 200 000.50. */
export interface Amount {
  readonly minor: number
  readonly currency: string
}

const byExponent: Readonly<Record<number, string>> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF',
  2: `AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP
    CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD
    KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK
    NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS
    TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD XCG YER ZAR ZMW ZWG`,
  3: 'BHD IQD JOD KWD LYD OMR TND',
}

const exponents: ReadonlyMap<string, number> = new Map(
  Object.entries(byExponent).flatMap(([exponent, codes]) =>
    codes.split(/\s+/u).map(code => [code, Number(exponent)] as const),
  ),
)

/** Every code, in the order of the alphabet. */
export const currencies: readonly string[] = [...exponents.keys()].sort()

export function isCurrency(code: string): boolean {
  return exponents.has(code)
}

/** Decimals of a currency: 2 for CHF, 0 for JPY, 3 for KWD. Throws a RangeError for what is no currency. */
export function exponentOf(currency: string): number {
  const exponent = exponents.get(currency)
  if (exponent === undefined) throw new RangeError(`${currency} is no currency of ISO 4217`)
  return exponent
}
