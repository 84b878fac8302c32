/**
 * What people write for a currency beside its code. The rule it keeps: a sign that several currencies share names none,
 * unless the field says which of them is meant.
 */
import { isCurrency } from './currency.ts'

/** By the sign in capitals, without points and blanks; the usual ones, from memory. */
const signs: Readonly<Record<string, readonly string[]>> = {
  '€': ['EUR'],
  EURO: ['EUR'],
  EUROS: ['EUR'],
  '£': ['GBP', 'EGP', 'FKP', 'GIP', 'LBP', 'SHP', 'SSP', 'SDG', 'SYP'],
  '£STG': ['GBP'],
  STG: ['GBP'],
  $: ['USD', 'AUD', 'CAD', 'HKD', 'MXN', 'NZD', 'SGD', 'TWD', 'ARS', 'CLP', 'COP'],
  US$: ['USD'],
  $US: ['USD'],
  CA$: ['CAD'],
  C$: ['CAD', 'NIO'],
  A$: ['AUD'],
  AU$: ['AUD'],
  HK$: ['HKD'],
  NZ$: ['NZD'],
  S$: ['SGD'],
  SG$: ['SGD'],
  NT$: ['TWD'],
  R$: ['BRL'],
  '¥': ['JPY', 'CNY'],
  元: ['CNY'],
  円: ['JPY'],
  RMB: ['CNY'],
  '₩': ['KRW'],
  '₹': ['INR'],
  '₽': ['RUB'],
  '₺': ['TRY'],
  '₪': ['ILS'],
  '₴': ['UAH'],
  ZŁ: ['PLN'],
  KČ: ['CZK'],
  FT: ['HUF'],
  SFR: ['CHF'],
  FR: ['CHF', 'XAF', 'XOF', 'XPF'],
  KR: ['SEK', 'NOK', 'DKK', 'ISK'],
}

export type ReadCurrency =
  | { readonly currency: string }
  | { readonly among: readonly string[] }
  | { readonly unknown: true }

/** Reads a code or a sign. `wanted` is the currency of the field: it settles a sign that it shares. */
export function readCurrency(text: string, wanted?: string): ReadCurrency {
  const bare = text.replace(/[.\s]/gu, '').toUpperCase()
  if (isCurrency(bare)) return { currency: bare }
  const among = Object.hasOwn(signs, bare) ? signs[bare] : undefined
  if (among === undefined) return { unknown: true }
  const [only] = among
  if (only !== undefined && among.length === 1) return { currency: only }
  return wanted !== undefined && among.includes(wanted) ? { currency: wanted } : { among }
}
