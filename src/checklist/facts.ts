/**
 * Facts out of single cells: plain text within its length, words and figures that the program knows. What a cell says
 * and the program can't take is a question with the raw text; nothing is guessed.
 */
import type { Cell } from './cell.ts'
import type { FactField, Field } from './fields.ts'
import { fields } from './fields.ts'
import { tidy } from './plain-text.ts'
import type { AnswerOption, RowQuestion } from './reading.ts'
import { glazingOf, kindOf, saysNothing, sensitivityOf } from './words.ts'

export interface FactRead {
  readonly value?: string | number
  readonly question?: RowQuestion
  readonly remark?: string
}

/** Longest texts that the program's own fields take. */
const longest: Partial<Record<FactField, number>> = {
  note: 20_000,
  inscriptions: 20_000,
  subject: 20_000,
  description: 20_000,
  distinguishing: 20_000,
  handling: 20_000,
  loanTerms: 20_000,
  notBeside: 20_000,
}
const usualLongest = 500

export function readFact(field: FactField, cell: Cell, column: string): FactRead {
  const text = tidy(typeof cell === 'string' ? cell : cell.text)
  if (text === '') return {}
  if (typeof cell !== 'string' && cell.kind === 'fault') return { question: faultQuestion(field, column, text) }
  switch (field) {
    case 'lightLimit':
      return figure(field, column, text, /\b(?:lux|lx)\b/gi, 'How many lux may this work receive?')
    case 'uvLimit':
      return figure(
        field,
        column,
        text,
        /(?:µ|μ|u)w\/?\s?(?:lm|lumen)/gi,
        'How much UV, in µW per lumen, may this work receive?',
      )
    case 'glazing':
      return word(
        field,
        column,
        text,
        glazingOf(text),
        ['none', 'glass', 'acrylic', 'laminated'],
        'What is it glazed with?',
      )
    case 'sensitivity':
      return word(
        field,
        column,
        text,
        sensitivityOf(text),
        ['high', 'medium', 'low', 'none'],
        'How sensitive to light is this work?',
      )
    case 'kind': {
      // Lists call kinds of work a hundred names; one that is not known is kept as written and asks nobody.
      const known = kindOf(text)
      return known === undefined ? {} : { value: known }
    }
    case 'date':
      return dateFact(cell, column, text)
    default:
      return plainFact(field, text)
  }
}

function plainFact(field: FactField, text: string): FactRead {
  const limit = longest[field] ?? usualLongest
  if (text.length <= limit) return { value: text }
  return {
    value: text.slice(0, limit),
    remark: `${fields[field]} is longer than ${limit} characters; the rest stays in the list’s own text.`,
  }
}

function dateFact(cell: Cell, column: string, text: string): FactRead {
  if (typeof cell === 'string' || cell.kind !== 'date' || /\d{4}/.test(text)) return plainFact('date', text)
  return {
    question: {
      field: 'date',
      column,
      kind: 'date',
      raw: text,
      question: `The spreadsheet made a day of the year of this: ${text} (${cell.day}). What does the list mean?`,
      options: [
        { answer: '1', label: text, value: text },
        { answer: '2', label: cell.day.slice(0, 4), value: cell.day.slice(0, 4) },
      ],
    },
  }
}

export function faultQuestion(field: Field, column: string, text: string): RowQuestion {
  const question = text.startsWith('=')
    ? `The cell holds a formula whose result was not kept: ${text.slice(0, 80)}. What is the value?`
    : `The cell shows ${text} instead of a value. What is the value?`
  return { field, column, kind: 'word', raw: text, question, options: [] }
}

function figure(field: FactField, column: string, text: string, unit: RegExp, question: string): FactRead {
  if (saysNothing(text)) return {}
  const bare = text
    .replace(unit, '')
    .replace(/^(?:max(?:imum|imal)?\.?|up to|bis(?: zu)?|jusqu['’]à|<=?|≤)\s*/i, '')
    .trim()
  if (/^\d{1,6}(?:[.,]\d+)?$/.test(bare)) {
    const value = Number(bare.replace(',', '.'))
    if (value >= 0 && value <= 1e6) return { value }
  }
  const figures = [...new Set(text.match(/\d{1,6}(?:[.,]\d+)?/g) ?? [])].slice(0, 4)
  const options = figures.map(
    (one, i): AnswerOption => ({ answer: String(i + 1), label: one, value: Number(one.replace(',', '.')) }),
  )
  return {
    question: { field, column, kind: 'light', raw: text, question: `“${text.slice(0, 60)}”: ${question}`, options },
  }
}

function word(
  field: FactField,
  column: string,
  text: string,
  known: string | undefined,
  values: readonly string[],
  question: string,
): FactRead {
  if (known !== undefined) return { value: known }
  if (saysNothing(text)) return {}
  const options = values.map((value, i): AnswerOption => ({ answer: String(i + 1), label: value, value }))
  return {
    question: { field, column, kind: 'word', raw: text, question: `“${text.slice(0, 60)}”: ${question}`, options },
  }
}
