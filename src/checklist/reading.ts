/** What one row of a list says, once it is read: values, raw text, and questions where a person must decide. */
import type { Amount } from '../money/currency.ts'
import type { FactField, NumberField } from './fields.ts'

export type QuestionKind =
  | 'size'
  | 'unit'
  | 'order'
  | 'date'
  | 'digits'
  | 'mass'
  | 'value'
  | 'light'
  | 'word'
  | 'same work'
  | 'number'

/** A size as a list gives it, millimetres. */
export interface ListedSize {
  readonly part: string
  readonly label: string
  readonly height: number | null
  readonly width: number | null
  readonly depth: number | null
  readonly diameter: number | null
  readonly count: number
  readonly unit: string
  readonly approximate: boolean
  readonly raw: string
  readonly remarks: readonly string[]
}

export interface ListedMass {
  readonly kg: number
  readonly approximate: boolean
  readonly raw: string
}

/** What a list says a work is worth. */
export interface ListedValue extends Amount {
  readonly raw: string
}

/** What choosing an option puts in: sides of a part, a unit to read by, another text to read, or a plain value. */
export interface Effect {
  readonly values?: { readonly [side: string]: number }
  readonly unit?: string
  readonly part?: string
  readonly count?: number
  readonly text?: string
  /** The stored value of a field that is a word or a figure. */
  readonly value?: string | number
  /** A work that the row belongs to after all; null for a work of its own. */
  readonly work?: string | null
}

export interface AnswerOption extends Effect {
  /** What names this option in an answer. */
  readonly answer: string
  readonly label: string
}

export interface RowQuestion {
  /** Names what is asked about within the row: `size`, `size framed`, `mass`, `glazing`, `same work`. */
  readonly field: string
  readonly column: string
  readonly kind: QuestionKind
  /** The text of the list, whole. */
  readonly raw: string
  readonly question: string
  readonly options: readonly AnswerOption[]
  /** A person chose to put it to the lender. */
  readonly asked?: boolean
}

export interface ListedNumber {
  readonly field: NumberField
  readonly text: string
  readonly norm: string
}

export interface RowReading {
  readonly row: number
  /** Every filled cell as written, by what it is. */
  readonly raw: Readonly<Record<string, string>>
  readonly numbers: readonly ListedNumber[]
  readonly running: string
  readonly lender: string
  readonly section: string
  readonly status: string
  readonly facts: { readonly [F in FactField]?: string | number }
  readonly sizes: readonly ListedSize[]
  readonly masses: readonly ListedMass[]
  readonly value: ListedValue | null
  readonly questions: readonly RowQuestion[]
  readonly remarks: readonly string[]
}

/** What a row turned out to be. */
export type RowOutcome =
  | { readonly kind: 'work'; readonly reading: RowReading }
  /** A line that heads the works below it. */
  | { readonly kind: 'section'; readonly row: number; readonly title: string }
  | { readonly kind: 'refused'; readonly row: number; readonly column: string; readonly reason: string }
  /** Blank, or the headings once more. */
  | { readonly kind: 'skip'; readonly row: number }
