/**
 * Recognises sizes that a spreadsheet has turned into dates: 1/2 became 2-Jan or 45293. The rule it keeps: such a cell
 * is never read as a size; the fractions it may have been are offered.
 */
import type { Option } from './statement.ts'
import type { Token } from './tokens.ts'

export interface SpreadsheetDate {
  readonly piece: string
  readonly options: readonly Option[]
}

const MONTHS: readonly string[] = [
  'jan january janv janvier januar jänner',
  'feb february fév févr février fevrier februar',
  'mar march mars mär märz mrz',
  'apr april avr avril',
  'may mai',
  'jun june juin juni',
  'jul july juil juillet juli',
  'aug august août aout',
  'sep sept september septembre',
  'oct october octobre okt oktober',
  'nov november novembre',
  'dec december déc décembre decembre dez dezember',
]
const MONTH_OF: ReadonlyMap<string, number> = new Map(
  MONTHS.flatMap((words, index) => words.split(' ').map(word => [word, index + 1] as const)),
)

/** First and last day number that is taken for a date: 1 January 1990 and 31 December 2059. */
const FIRST_SERIAL = 32_874
const LAST_SERIAL = 58_439

/** The date a whole statement seems to be, or undefined. */
export function readDate(text: string, tokens: readonly Token[]): SpreadsheetDate | undefined {
  const piece = text.trim()
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ][\d:.]{1,16}Z?)?$/.exec(piece)
  if (iso) return date(piece, Number(iso[3]), Number(iso[2]))
  const numeric = /^(\d{1,2})([/.-])(\d{1,2})\2(\d{4}|\d{2})$/.exec(piece)
  if (numeric) return date(piece, Number(numeric[1]), Number(numeric[3]))
  const numbers = tokens.flatMap(token => (token.kind === 'number' ? [token.number] : []))
  const serial = numbers.find(
    number => number.den === 1 && !number.grouped && number.num >= FIRST_SERIAL && number.num <= LAST_SERIAL,
  )
  if (serial && tokens.every(token => token.kind === 'number' || token.kind === 'times')) {
    const { day, month } = dayOfSerial(serial.num)
    return date(text.slice(serial.at, serial.end), day, month)
  }
  return namedMonth(text, tokens)
}

/** `2-Jan`, `Jan-02`, `1. Feb`, `2 janv. 2024`, alone or as one side of a size. */
function namedMonth(text: string, tokens: readonly Token[]): SpreadsheetDate | undefined {
  for (const [index, token] of tokens.entries()) {
    const month = token.kind === 'word' ? MONTH_OF.get(token.word) : undefined
    if (month === undefined) continue
    const before = nearNumber(tokens, index, -1)
    const after = nearNumber(tokens, index, 1)
    const near = before ?? after
    if (near?.kind !== 'number' || near.number.den !== 1 || near.number.num > 99) continue
    return date(text.slice(Math.min(near.at, token.at), Math.max(near.end, token.end)), near.number.num, month)
  }
  return undefined
}

function nearNumber(tokens: readonly Token[], index: number, step: 1 | -1): Token | undefined {
  const next = tokens[index + step]
  return next?.kind === 'dash' ? tokens[index + 2 * step] : next
}

function date(piece: string, day: number, month: number): SpreadsheetDate {
  const pairs = [
    [month, day],
    [day, month],
  ] as const
  const fractions = pairs.filter(([top, bottom]) => top < bottom && [2, 3, 4, 8, 16, 32].includes(bottom))
  const options = fractions.map(([top, bottom]) => ({
    label: `It was ${top}/${bottom} in`,
    text: `${top}/${bottom} in`,
  }))
  return {
    piece,
    options: options.filter((option, index) => options.findIndex(other => other.text === option.text) === index),
  }
}

/** Day and month of a spreadsheet's day number, counted from 30 December 1899 (true from March 1900 on). */
function dayOfSerial(serial: number): { readonly day: number; readonly month: number } {
  const moment = new Date(Date.UTC(1899, 11, 30) + serial * 86_400_000)
  return { day: moment.getUTCDate(), month: moment.getUTCMonth() + 1 }
}
