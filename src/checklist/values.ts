/**
 * What a list says a work is worth: an amount in a cell, its currency beside it or in the heading. The rule it keeps: an
 * amount without a currency, or one whose mark may part thousands or decimals, is a question, never a guess.
 */
import { type Amount, exponentOf } from '../money/currency.ts'
import { parseAmount } from '../money/read.ts'
import { greatestMinor } from '../money/read-figure.ts'
import { readCurrency } from '../money/symbols.ts'
import { writeAmount } from '../money/write.ts'
import type { Cell } from './cell.ts'
import { faultQuestion } from './facts.ts'
import type { ListLanguage } from './headings.ts'
import { tidy } from './plain-text.ts'
import type { AnswerOption, ListedValue, RowQuestion } from './reading.ts'

export interface ValueContext {
  /** The heading of its column, as the list has it. */
  readonly column: string
  readonly language: ListLanguage | ''
}

export interface ValueRead {
  readonly value?: ListedValue
  readonly question?: RowQuestion
}

/** Said in small letters too; other codes are words as well (all, top, try) and count in capitals alone. */
const usual = /^(?:eur|euros?|usd|chf|gbp)$/iu

/** The currency that a heading such as “Value (EUR)” names; none where it names two, or a sign that several share. */
export function headedCurrency(heading: string): string | undefined {
  const named = heading.split(/[\s()[\]{},;:/.\-–]+/u).flatMap(word => {
    if (word === '' || (/^\p{L}+$/u.test(word) && word !== word.toUpperCase() && !usual.test(word))) return []
    const read = readCurrency(word)
    return 'currency' in read ? [read.currency] : []
  })
  const [only, ...more] = new Set(named)
  return more.length === 0 ? only : undefined
}

/** Whether both are the same money. */
export function sameAmount(one: Amount, other: Amount): boolean {
  return one.minor === other.minor && one.currency === other.currency
}

/** Reads the cell of a value: an amount, a question, or nothing where it is empty or nought. */
export function readValueCell(cell: Cell, { column, language }: ValueContext): ValueRead {
  const text = tidy(typeof cell === 'string' ? cell : cell.text)
  if (typeof cell !== 'string' && (cell.kind === 'fault' || cell.kind === 'date'))
    return { question: { ...faultQuestion('value', column, text), kind: 'value' } }
  const headed = headedCurrency(column)
  const short = text.slice(0, 60)
  const ask = (says: string, options: readonly AnswerOption[] = []): ValueRead => ({
    question: {
      field: 'value',
      column,
      kind: 'value',
      raw: text,
      question: says,
      options,
    },
  })
  if (typeof cell !== 'string' && headed !== undefined) {
    // A spreadsheet left a field at nought.
    if (cell.number === 0) return {}
    const minor = Math.round(cell.number * 10 ** exponentOf(headed))
    const exact = Math.abs(minor / 10 ** exponentOf(headed) - cell.number) < 1e-9 * Math.max(1, Math.abs(cell.number))
    if (exact && minor > 0 && minor <= greatestMinor) return { value: { minor, currency: headed, raw: text } }
  }
  const read = parseAmount(text, headed)
  if (!read.ok) {
    if (read.problem === 'no-currency')
      return ask(`“${short}”: In which currency? Type its code, such as EUR, or the whole value.`)
    return ask(`Value: ${read.message}`, read.problem === 'two-ways' ? bySign(text, read.piece) : [])
  }
  if (read.minor === 0) return {}
  const ways = twoWays(text, read, language)
  if (ways !== undefined) return ask(`“${short}”: Are these thousands or decimals?`, ways)
  return { value: { minor: read.minor, currency: read.currency, raw: text } }
}

/** What somebody answered: an amount, or the code of the currency that the list's own figure lacks. */
export function readValueAnswer(raw: string, answer: string, column: string): ReturnType<typeof parseAmount> {
  const code = /\d/u.test(answer) ? { unknown: true } : readCurrency(answer)
  return 'currency' in code ? parseAmount(raw, code.currency) : parseAmount(answer, headedCurrency(column))
}

/** The currencies that share a sign, each with the figure. */
function bySign(text: string, sign: string): readonly AnswerOption[] {
  const read = readCurrency(sign)
  if (!('among' in read)) return []
  return read.among.slice(0, 4).flatMap((code, at) => {
    const amount = parseAmount(text.replace(sign, code))
    return amount.ok ? [option(at + 1, amount)] : []
  })
}

/** Both readings of a figure such as 1.500, which language and currency do not settle. */
function twoWays(text: string, { minor, currency }: Amount, language: ListLanguage | ''): AnswerOption[] | undefined {
  const figure = /^\D*?(?<front>[1-9]\d{0,2})(?<mark>[.,])(?<after>\d{3})\D*$/u.exec(text)?.groups
  if (figure === undefined || exponentOf(currency) === 0) return undefined
  const thousands = figure.mark === '.' ? language === 'de' : language !== 'de' && language !== 'fr'
  // With decimals it would be less than the smallest coin.
  if (thousands || !figure.after?.endsWith('0')) return undefined
  const decimals = Math.round(minor / 1000)
  return [option(1, { minor, currency }), option(2, { minor: decimals, currency })]
}

function option(at: number, amount: Amount): AnswerOption {
  return { answer: String(at), label: writeAmount(amount), text: writeAmount(amount) }
}
