/**
 * What an answer to a question of a list means: one of the question's options, or words of a person's own read by the
 * same rules as the list. An answer that leaves the matter open is not taken, and says why.
 */
import { lengthUnitOf } from '../measure/units.ts'
import { writeAmount } from '../money/write.ts'
import { readFact } from './facts.ts'
import { type FactField, factColumns, type ListPart, type NumberField, numberFields, parts } from './fields.ts'
import type { ListLanguage } from './headings.ts'
import { normalNumber } from './numbers.ts'
import type { AnswerOption, ListedMass, ListedNumber, ListedSize, ListedValue, RowQuestion } from './reading.ts'
import { readMassCell, readSizeCell } from './sizes.ts'
import { readValueAnswer } from './values.ts'

export interface Answered {
  /** What was understood, in words. */
  readonly said: string
  readonly sizes: readonly ListedSize[]
  readonly masses: readonly ListedMass[]
  readonly fact?: { readonly field: FactField; readonly value: string | number }
  readonly number?: ListedNumber
  readonly value?: ListedValue
  /** The work that the row belongs to; null for one of its own. */
  readonly work?: string | null
}

export type AnswerResult =
  | { readonly ok: true; readonly answered: Answered }
  | { readonly ok: false; readonly problem: string }

/** Closes a question without a value: there is none to be had. */
export const noAnswer = 'none'

/** In a preview, instead of an answer: the question stays open and is put to the lender. */
export const askLender = 'ask the lender'

export function answerQuestion(question: RowQuestion, answer: string, language: ListLanguage | ''): AnswerResult {
  const text = answer.trim()
  const option = question.options.find(one => one.answer === text) ?? question.options.find(one => one.label === text)
  const [name = ''] = question.field.split(' ')
  if (question.kind === 'same work') {
    return option?.work === undefined
      ? refused('Say which work it is, or that it is another one.')
      : taken({ said: option.label, sizes: [], masses: [], work: option.work })
  }
  if (option === undefined && text === noAnswer) return taken({ said: 'left without a value', sizes: [], masses: [] })
  if (name === 'size') return answerSize(question, option, text, language)
  if (name === 'mass') {
    const read = readMassCell(option?.text ?? text, undefined, question.column)
    if (read.mass === undefined) return refused(read.question?.question ?? 'That is no weight.')
    return taken({ said: option?.text ?? text, sizes: [], masses: [{ ...read.mass, raw: question.raw }] })
  }
  if (name === 'value') {
    const read = readValueAnswer(question.raw, option?.text ?? text, question.column)
    if (!read.ok) return refused(read.message)
    const { minor, currency } = read
    return taken({ said: writeAmount(read), sizes: [], masses: [], value: { minor, currency, raw: question.raw } })
  }
  if (Object.hasOwn(numberFields, name)) {
    const norm = normalNumber(text)
    if (norm === '') return refused('That holds no letter and no figure, so it is no number.')
    // hasOwn has just said that it is one.
    return taken({ said: text, sizes: [], masses: [], number: { field: name as NumberField, text, norm } })
  }
  if (Object.hasOwn(factColumns, name)) {
    const field = name as FactField // hasOwn has just said that it is one
    if (option?.value !== undefined)
      return taken({ said: option.label, sizes: [], masses: [], fact: { field, value: option.value } })
    const read = readFact(field, text, question.column)
    if (read.value === undefined) return refused(read.question?.question ?? 'That is not understood.')
    return taken({ said: String(read.value), sizes: [], masses: [], fact: { field, value: read.value } })
  }
  return refused('This question takes no answer here.')
}

function taken(answered: Answered): AnswerResult {
  return { ok: true, answered }
}

function refused(problem: string): AnswerResult {
  return { ok: false, problem }
}

function answerSize(
  question: RowQuestion,
  option: AnswerOption | undefined,
  text: string,
  language: ListLanguage | '',
): AnswerResult {
  const part = partOfField(question.field)
  const unit = option?.unit ?? (option === undefined ? lengthUnitOf(text.toLowerCase()) : undefined)
  const known = unit === undefined ? undefined : lengthUnitOf(unit)
  const statement = option === undefined && known === undefined ? text : (option?.text ?? question.raw)
  const read = readSizeCell(statement, {
    field: question.field,
    column: question.column,
    part,
    options: { ...(known === undefined ? {} : { defaultUnit: known }), ...(language === '' ? {} : { language }) },
  })
  const sizes = option?.values === undefined ? read.sizes : overlaid(read.sizes, option)
  const chosen = option?.values === undefined && option !== undefined ? renamed(sizes, option) : sizes
  const open = read.questions.filter(one => one.question !== question.question)
  if (chosen.length === 0)
    return refused(open[0]?.question ?? read.questions[0]?.question ?? 'No size was understood in that.')
  return taken({
    said: option?.label ?? text,
    sizes: chosen.map(size => ({ ...size, raw: question.raw })),
    masses: read.masses,
  })
}

function partOfField(field: string): ListPart | null {
  const word = field.split(' ')[1]
  return parts.find(part => part === word) ?? null
}

/** A size whose sides are asked about one by one: what this answer leaves out is as it was said before. */
export function withSidesOf(
  size: ListedSize,
  before: Pick<ListedSize, 'height' | 'width' | 'depth' | 'diameter'> | undefined,
): ListedSize {
  return {
    ...size,
    height: size.height ?? before?.height ?? null,
    width: size.width ?? before?.width ?? null,
    depth: size.depth ?? before?.depth ?? null,
    diameter: size.diameter ?? before?.diameter ?? null,
  }
}

const blank = { height: null, width: null, depth: null, diameter: null } as const

/** The sides that an option gives, put into the size it is about. */
function overlaid(sizes: readonly ListedSize[], option: AnswerOption): readonly ListedSize[] {
  const part = option.part ?? sizes[0]?.part ?? 'overall'
  const base: ListedSize = sizes.find(size => size.part === part) ?? {
    ...blank,
    part,
    label: '',
    count: 1,
    unit: option.unit ?? 'mm',
    approximate: false,
    raw: '',
    remarks: [],
  }
  const { height, width, depth, diameter } = option.values ?? {}
  const size: ListedSize = {
    ...base,
    height: height ?? base.height,
    width: width ?? base.width,
    depth: depth ?? base.depth,
    diameter: diameter ?? base.diameter,
    count: option.count ?? base.count,
  }
  return [size, ...sizes.filter(one => one.part !== part)]
}

function renamed(sizes: readonly ListedSize[], option: AnswerOption): readonly ListedSize[] {
  const [only, more] = sizes
  if (only === undefined || more !== undefined) return sizes
  return [{ ...only, part: option.part ?? only.part, count: option.count ?? only.count }]
}
