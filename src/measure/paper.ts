/**
 * Sizes that are written as the name of a paper: A4, DIN A3 quer, Letter. The rule it keeps: a name is read only where
 * it can be nothing else, and what it was read as is said, with the way the paper stands where nobody wrote that.
 * Sources: ISO 216:2007, A and B series, millimetres; ANSI/ASME Y14.1 A and B for Letter and Tabloid, inches; Legal by
 * common practice, no source.
 */
import type { Item } from './grammar.ts'
import { type Cut, endOf, wordAt } from './measures.ts'
import type { Token } from './tokens.ts'
import type { LengthUnit } from './units.ts'

/** Short side first. */
type Sides = readonly [number, number]

const A: readonly Sides[] = [
  [841, 1189],
  [594, 841],
  [420, 594],
  [297, 420],
  [210, 297],
  [148, 210],
  [105, 148],
  [74, 105],
  [52, 74],
  [37, 52],
  [26, 37],
]
const B: readonly Sides[] = [
  [1000, 1414],
  [707, 1000],
  [500, 707],
  [353, 500],
  [250, 353],
  [176, 250],
  [125, 176],
  [88, 125],
  [62, 88],
  [44, 62],
  [31, 44],
]
/** Half inches, so that they stay whole. */
const AMERICAN: Readonly<Record<string, Sides>> = { letter: [17, 22], legal: [17, 28], tabloid: [22, 34] }

const LYING = /^(?:landscape|horizontal|quer|querformat|paysage)$/
const UPRIGHT = /^(?:portrait|upright|vertical|hochformat)$/

interface Named {
  readonly name: string
  readonly sides: Sides
  readonly unit: LengthUnit
  readonly den: number
  readonly next: number
}

/** A size by the name of its paper, as two measures, height before width. */
export function readPaper(tokens: readonly Token[], index: number): Cut<Item> | undefined {
  const token = tokens[index]
  const named = namedAt(tokens, index)
  if (token === undefined || named === undefined) return undefined
  const way = wordAt(tokens, named.next) ?? ''
  const said = LYING.test(way) || UPRIGHT.test(way)
  const next = said ? named.next + 1 : named.next
  const [short, long] = named.sides
  const [height, width] = LYING.test(way) ? [short, long] : [long, short]
  const place = { at: token.at, end: endOf(tokens, next) }
  const dim = (num: number) => ({
    value: { num, den: named.den },
    unit: named.unit,
    compound: false,
    vulgar: false,
    ...place,
  })
  const value = { kind: 'size', dims: [dim(height), dim(width)], broken: false, about: false, ...place } as const
  return { value: { ...value, paper: { name: named.name, said } }, next }
}

function namedAt(tokens: readonly Token[], index: number): Named | undefined {
  const word = wordAt(tokens, index) ?? ''
  const metric = (series: 'A' | 'B', at: number, next: number): Named | undefined => {
    const sides = (series === 'A' ? A : B)[at]
    return sides && { name: `${series}${at}`, sides, unit: 'mm', den: 1, next }
  }
  if (/^a\d+$/.test(word)) return metric('A', Number(word.slice(1)), index + 1)
  if (word === 'din' || word === 'iso') {
    const series = wordAt(tokens, index + 1) ?? ''
    if (/^a\d+$/.test(series)) return metric('A', Number(series.slice(1)), index + 2)
    const number = tokens[index + 2]
    if ((series === 'a' || series === 'b') && number?.kind === 'number' && number.number.den === 1) {
      return metric(series === 'a' ? 'A' : 'B', number.number.num, index + 3)
    }
    return undefined
  }
  // A letter can be the work itself, so the word is a size only where no figure stands beside it.
  const sides = Object.hasOwn(AMERICAN, word) ? AMERICAN[word] : undefined
  if (sides === undefined || tokens.some(token => token.kind === 'number')) return undefined
  return { name: `${word.slice(0, 1).toUpperCase()}${word.slice(1)}`, sides, unit: 'in', den: 2, next: index + 1 }
}

/** What is said about a size that was read from a name. */
export function paperWords(paper: { readonly name: string; readonly said: boolean }): {
  readonly note: string
  readonly warning: string | null
} {
  const standard = /^[AB]\d/.test(paper.name) ? `${paper.name} by ISO 216` : `${paper.name}, the American paper`
  return {
    note: `read as ${standard}`,
    warning: paper.said ? null : `${paper.name} was read as standing upright. Write “landscape” if it lies.`,
  }
}
