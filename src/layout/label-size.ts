/**
 * How large a label is, from its text, and what a label says before a person has edited it. The rule it keeps: labels
 * of one house are equally wide, so that only their height follows from the text; a label is cut to whole millimetres.
 */
import type { LabelRules } from './labels-shape.ts'

/** Line to line, as a multiple of the type size; from memory. */
const LEADING = 1.35
/** Mean width of a character of a text face, as a multiple of the type size; from memory. */
const CHARACTER = 0.5
/** Free border of a card round its text, as a multiple of the type size; from memory. */
const BORDER = 1.25

export interface LabelSize {
  readonly width: number
  readonly height: number
  readonly lines: readonly string[]
}

/**
 * The label of a text. mm. Width: `perLine × 0.5 type + 2 border`, height: `lines × 1.35 type + 2 border`, each rounded
 * up to a whole millimetre. A width of its own gives the characters that a line holds; a height of its own stands.
 */
export function labelSize(
  text: string,
  rules: Pick<LabelRules, 'type' | 'perLine'>,
  own: { readonly width?: number | null | undefined; readonly height?: number | null | undefined } = {},
): LabelSize {
  const { type } = rules
  const border = 2 * BORDER * type
  const width = own.width ?? cut(rules.perLine * CHARACTER * type + border)
  const perLine =
    own.width == null ? rules.perLine : Math.max(1, Math.floor((width - border) / (CHARACTER * type) + 1e-9))
  const lines = linesOf(text, perLine)
  const height = own.height ?? cut(Math.max(1, lines.length) * LEADING * type + border)
  return { width, height, lines }
}

function cut(mm: number): number {
  return Math.ceil(mm - 1e-9)
}

/** The text in lines of at most `perLine` characters; its own line breaks stay, a longer word is broken. */
export function linesOf(text: string, perLine: number): readonly string[] {
  const lines: string[] = []
  for (const paragraph of text.replace(/\s+$/, '').split(/\r?\n/)) {
    let line: string[] = []
    for (const word of paragraph.split(/[ \t]+/).filter(each => each !== '')) {
      let letters = [...word]
      const longer = line.length === 0 ? letters : [...line, ' ', ...letters]
      if (longer.length <= perLine) {
        line = longer
        continue
      }
      if (line.length > 0) lines.push(line.join(''))
      while (letters.length > perLine) {
        lines.push(letters.slice(0, perLine).join(''))
        letters = letters.slice(perLine)
      }
      line = letters
    }
    lines.push(line.join(''))
  }
  return lines.length === 1 && lines[0] === '' ? [] : lines
}

/** What a label says of a work, a line each: maker, title and date, medium, credit. What is not known is left out. */
export function suggestLabel(work: {
  readonly maker: string
  readonly title: string
  readonly dateText: string
  readonly medium: string
  readonly credit: string
}): string {
  const title = [work.title, work.dateText].filter(text => text !== '').join(', ')
  return [work.maker, title, work.medium, work.credit].filter(text => text.trim() !== '').join('\n')
}
