/**
 * What a dimension statement says once it is read, as plain data. The rule it keeps: a value that is here was written
 * or follows from what was written, with a warning where something was inferred; all else is a question for a person.
 */
import type { LengthUnit } from './units.ts'

export type Part =
  | 'framed'
  | 'overall'
  | 'mount'
  | 'support'
  | 'sheet'
  | 'plate'
  | 'image'
  | 'sight'
  | 'base'
  | 'part'
  | 'unnamed'

export type Language = 'en' | 'fr' | 'de'
export type Field = 'height' | 'width' | 'depth' | 'diameter'

/** Sizes in millimetres. What was not said, or is still a question, is left out. */
export type Sizes = { readonly [F in Field]?: number }

export interface Remark {
  readonly code: string
  readonly text: string
}

export interface ReadPart extends Sizes {
  readonly part: Part
  /** The word that named the part, as it was written; empty if none did. */
  readonly label: string
  readonly count: number
  /** The unit the values came from; null while that is a question. */
  readonly unit: LengthUnit | null
  readonly unitStated: boolean
  readonly approximate: boolean
  /** The piece of the statement these sizes were read from. */
  readonly raw: string
  readonly warnings: readonly Remark[]
  readonly notes: readonly string[]
}

/** An answer to a question, and what it would put into the part, or the text to read instead. */
export interface Option {
  readonly label: string
  readonly values?: Sizes
  readonly unit?: LengthUnit
  readonly part?: Part
  readonly count?: number
  readonly kg?: number
  readonly text?: string
}

export type QuestionCode =
  | 'empty'
  | 'too-long'
  | 'not-understood'
  | 'no-size'
  | 'date'
  | 'unit'
  | 'unit-and-order'
  | 'order'
  | 'mismatch'
  | 'number'
  | 'fraction'
  | 'range'
  | 'out-of-range'
  | 'one-measure'
  | 'too-many'
  | 'letters'
  | 'length'
  | 'depth-or-diameter'
  | 'which-part'
  | 'twice'
  | 'count'
  | 'mass'

export interface Question {
  readonly code: QuestionCode
  /** A sentence for people. */
  readonly text: string
  /** The piece of the statement it is about, as it was written. */
  readonly piece: string
  /** Place in `parts` of the part it is about, where it is about one. */
  readonly index?: number
  readonly options: readonly Option[]
}

export interface ReadMassPart {
  readonly kg: number
  readonly raw: string
  readonly approximate: boolean
}

export interface Hanging {
  /** Place in `parts`. */
  readonly index: number
  readonly part: Part
  /** Said where the part is a doubtful one to hang by. */
  readonly caution?: string
}

export interface Statement {
  readonly parts: readonly ReadPart[]
  readonly mass?: ReadMassPart
  readonly questions: readonly Question[]
  /** About the statement as a whole, such as words that were not read. */
  readonly warnings: readonly Remark[]
  readonly hanging: Hanging | null
}

export interface ReadOptions {
  /** Unit of sizes that say none; they are then marked as inferred. Without it they are a question. */
  readonly defaultUnit?: LengthUnit
  /** Language of the list, which decides between letters that mean two things. */
  readonly language?: Language
  /** Width over height of the work's image. */
  readonly imageAspect?: number
  /** Unit of the same lender's other sizes: offered first in a question, never taken for granted. */
  readonly neighboursUnit?: LengthUnit
}
