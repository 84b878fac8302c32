/**
 * Sizes and masses out of a list's cells: a statement in one cell, or sides in columns of their own with the unit in
 * the heading. What the statement's grammar asks becomes a question of the row, with its answers kept as data.
 */
import { readDimensions } from '../measure/dimensions.ts'
import { parseLength } from '../measure/length.ts'
import { parseMass } from '../measure/mass.ts'
import type { Option, Question, ReadOptions, Statement } from '../measure/statement.ts'
import type { LengthUnit, MassUnit } from '../measure/units.ts'
import type { ListPart, SideField } from './fields.ts'
import type { AnswerOption, ListedMass, ListedSize, QuestionKind, RowQuestion } from './reading.ts'

export interface SizeContext {
  /** What names the question: `size` or `size framed`. */
  readonly field: string
  readonly column: string
  readonly part: ListPart | null
  readonly options: ReadOptions
}

export interface SizesRead {
  readonly sizes: readonly ListedSize[]
  readonly masses: readonly ListedMass[]
  readonly questions: readonly RowQuestion[]
}

export const noSizes: SizesRead = { sizes: [], masses: [], questions: [] }

/** Reads a statement such as `24 × 36 in (61 × 91.4 cm), framed 31 × 43 in`. */
export function readSizeCell(text: string, context: SizeContext): SizesRead {
  return fromStatement(text, readDimensions(text, context.options), context)
}

export interface Side {
  readonly side: SideField
  readonly text: string
  readonly unit: LengthUnit | undefined
}

const letters: Readonly<Record<SideField, string>> = { height: 'H', width: 'W', depth: 'D', diameter: 'Ø' }

/** Reads sides that stand in columns of their own. */
export function readSides(sides: readonly Side[], context: SizeContext): SizesRead {
  const raw = writtenSides(sides)
  const values: { [S in SideField]?: number } = {}
  let unit: LengthUnit | undefined
  for (const { side, text, unit: headed } of sides) {
    const read = parseLength(text, headed ?? context.options.defaultUnit)
    // A size of nothing is a field left at zero by a spreadsheet.
    if (read.ok && read.mm === 0) continue
    if (!read.ok || read.mm < 0) return fromStatement(raw, readDimensions(raw, context.options), context)
    values[side] = read.mm
    unit ??= read.unit
  }
  if (Object.keys(values).length === 0) return noSizes
  const size: ListedSize = {
    part: context.part ?? 'overall',
    label: '',
    height: values.height ?? null,
    width: values.width ?? null,
    depth: values.depth ?? null,
    diameter: values.diameter ?? null,
    count: 1,
    unit: unit ?? 'mm',
    approximate: false,
    raw,
    remarks: [],
  }
  return { sizes: [size], masses: [], questions: [] }
}

/** The sides as one statement, each with its letter and the unit its heading gives. */
export function writtenSides(sides: readonly Side[]): string {
  return sides
    .map(({ side, text, unit }) => {
      const bare = unit !== undefined && /^[\d\s.,/½¼¾⅛⅜⅝⅞-]+$/.test(text)
      return `${letters[side]} ${text}${bare ? ` ${unit}` : ''}`
    })
    .join(' × ')
}

/** Statement to sizes, masses and questions of the row. */
export function fromStatement(text: string, statement: Statement, context: SizeContext): SizesRead {
  const sizes: ListedSize[] = []
  for (const read of statement.parts) {
    const size: ListedSize = {
      part: partOf(read.part, context.part),
      label: read.label,
      height: read.height ?? null,
      width: read.width ?? null,
      depth: read.depth ?? null,
      diameter: read.diameter ?? null,
      count: read.count,
      unit: read.unit ?? '',
      approximate: read.approximate,
      raw: text,
      remarks: [...read.warnings.map(warning => warning.text), ...read.notes],
    }
    if (size.height !== null || size.width !== null || size.depth !== null || size.diameter !== null) sizes.push(size)
  }
  const { mass } = statement
  return {
    sizes,
    masses: mass === undefined ? [] : [{ kg: mass.kg, approximate: mass.approximate, raw: mass.raw }],
    questions: statement.questions.map(question => rowQuestion(text, question, statement, context)),
  }
}

/** A statement names no part where the list's heading, or common practice, does: the work overall. */
export function partOf(part: string, headed: ListPart | null): string {
  return part === 'unnamed' ? (headed ?? 'overall') : part
}

const kinds: Partial<Record<Question['code'], QuestionKind>> = {
  unit: 'unit',
  'unit-and-order': 'order',
  order: 'order',
  date: 'date',
  mismatch: 'digits',
  number: 'digits',
  fraction: 'digits',
  mass: 'mass',
}

function rowQuestion(text: string, question: Question, statement: Statement, context: SizeContext): RowQuestion {
  const about = question.index === undefined ? undefined : statement.parts[question.index]
  const part = about === undefined ? undefined : partOf(about.part, context.part)
  return {
    field: context.field,
    column: context.column,
    kind: kinds[question.code] ?? 'size',
    raw: text,
    question: question.text,
    options: question.options.map((option, i) => answerOption(option, i, part)),
  }
}

function answerOption(option: Option, index: number, part: string | undefined): AnswerOption {
  const named = option.part ?? part
  return {
    answer: String(index + 1),
    label: option.label,
    ...(option.values === undefined ? {} : { values: { ...option.values } }),
    ...(option.unit === undefined ? {} : { unit: option.unit }),
    ...(named === undefined ? {} : { part: named }),
    ...(option.count === undefined ? {} : { count: option.count }),
    ...(option.text === undefined ? {} : { text: option.text }),
  }
}

const about = /^(?:ca\.?|circa|c\.|approx(?:\.|imately)?|about|env(?:\.|iron)?|etwa|~|≈)\s*/i

export interface MassRead {
  readonly mass?: ListedMass
  readonly question?: RowQuestion
}

/** Reads a weight cell: a mass, or a question. */
export function readMassCell(text: string, unit: MassUnit | undefined, column: string): MassRead {
  const bare = text.replace(about, '').trim()
  const read = parseMass(bare, unit)
  if (read.ok) {
    if (read.kg === 0) return {}
    return { mass: { kg: read.kg, approximate: bare !== text.trim(), raw: text } }
  }
  const options: AnswerOption[] =
    read.problem === 'no-unit'
      ? [
          { answer: '1', label: `${bare} kg`, text: `${bare} kg` },
          { answer: '2', label: `${bare} lb`, text: `${bare} lb` },
        ]
      : []
  return {
    question: { field: 'mass', column, kind: 'mass', raw: text, question: `Weight: ${read.message}`, options },
  }
}
