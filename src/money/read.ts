/**
 * Money as people write it: CHF 1'200'000.–, € 45.000,50, 1.2 million USD. The rule it keeps: an amount without a
 * currency, or one that can be read in two ways, is a problem with a sentence, never a guess.
 */
import { exponentOf } from './currency.ts'
import { readFigure } from './read-figure.ts'
import { readCurrency } from './symbols.ts'
import { writeAmount } from './write.ts'

export type MoneyProblemCode =
  | 'empty'
  | 'no-currency'
  | 'unknown-currency'
  | 'two-currencies'
  | 'two-ways'
  | 'not-a-number'
  | 'too-many-decimals'
  | 'out-of-range'

export interface MoneyProblem {
  readonly ok: false
  readonly problem: MoneyProblemCode
  /** The piece that failed, as it was written. */
  readonly piece: string
  readonly message: string
}

export type MoneyResult = { readonly ok: true; readonly minor: number; readonly currency: string } | MoneyProblem

const powers: Readonly<Record<string, number>> = { million: 6, millions: 6, mio: 6, mln: 6, thousand: 3, tsd: 3, k: 3 }

/**
 * Reads one amount, never negative. An amount that three digits follow a single mark in (1,200) is in thousands where
 * the currency has fewer than three decimals, else asked about.
 * @param wanted currency of the field: of a bare figure, and of a sign such as $ that it shares
 */
export function parseAmount(text: string, wanted?: string): MoneyResult {
  const all = text.trim()
  if (all === '') return fail('empty', '', 'Type an amount with its currency, such as CHF 45 000.')
  const parts = /^(?<before>[^\d]*?)(?<figure>\d(?:.*\d)?(?:[.,]\s?(?:[-–—]{1,2}|=))?)(?<after>[^\d]*)$/su.exec(
    all,
  )?.groups
  if (parts === undefined) return fail('not-a-number', all, `“${all}” has no figure. Write it like CHF 45 000.`)
  const { before = '', figure = '', after = '' } = parts
  if (/^[-−–(]/u.test(before.trim()) || /[-−–(]$/u.test(before.trim()))
    return fail('out-of-range', all, `“${all}” is negative. A value is never below nought.`)
  const [power, behind] = powerOf(after)
  if (power === undefined) return fail('two-ways', after.trim(), '“m” may be a thousand or a million. Write “million”.')
  const currency = currencyOf(before, behind, wanted)
  if (typeof currency !== 'string') return currency
  const exponent = exponentOf(currency)
  const read = readFigure(figure, exponent, power)
  if ('minor' in read) return { ok: true, minor: read.minor, currency }
  if (read.wrong === 'two-ways')
    return fail(
      'two-ways',
      figure,
      `“${figure}” may have thousands or decimals. Write the whole figure without a mark.`,
    )
  if (read.wrong === 'decimals')
    return fail('too-many-decimals', figure, `“${figure}”: ${currency} has ${decimalsWords(exponent)}.`)
  if (read.wrong === 'great')
    return fail('out-of-range', figure, `“${figure}” is more than the program counts exactly.`)
  return fail(
    'not-a-number',
    figure,
    `“${figure}” is no amount that can be read in one way. Write it like ${writeAmount({ minor: 45_000 * 10 ** exponent, currency })}.`,
  )
}

/** The power of ten of a word behind the figure, and what is left; none of `m`, which some read as a thousand. */
function powerOf(after: string): readonly [number | undefined, string] {
  const word = /^\s*(?<word>[a-z]+)\.?(?=\s|$)/iu.exec(after)
  const said = word?.groups?.word?.toLowerCase() ?? ''
  const left = after.slice(word?.[0].length ?? 0)
  if (said === 'm' || said === 'mn') return [undefined, after]
  return Object.hasOwn(powers, said) ? [powers[said], left] : [0, after]
}

function currencyOf(before: string, after: string, wanted: string | undefined): string | MoneyProblem {
  const written = [before, after].map(each => each.trim()).filter(each => each !== '')
  const found = written.map(piece => ({ piece, read: readCurrency(piece, wanted) }))
  for (const { piece, read } of found) {
    if ('among' in read)
      return fail(
        'two-ways',
        piece,
        `“${piece}” is the sign of ${read.among.slice(0, 3).join(', ')} and others. Write the code.`,
      )
    if ('unknown' in read)
      return fail(
        'unknown-currency',
        piece,
        `“${piece}” is no currency that is known here. Write its code, such as CHF.`,
      )
  }
  const named = found.flatMap(({ read }) => ('currency' in read ? [read.currency] : []))
  const [first = wanted, second = first] = named
  if (first === undefined) return fail('no-currency', '', 'Say the currency too, such as CHF or EUR.')
  return first === second
    ? first
    : fail('two-currencies', written.join(' '), `${first} and ${second}: an amount has one currency.`)
}

function decimalsWords(exponent: number): string {
  return exponent === 0 ? 'no decimals' : `${exponent} decimals at most`
}

function fail(problem: MoneyProblemCode, piece: string, message: string): MoneyProblem {
  return { ok: false, problem, piece, message }
}
