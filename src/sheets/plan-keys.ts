/**
 * Names that found no place on a plan's sheet: each has its number in its place and is told in a list below the drawing.
 * Nothing is left off without a word: where the list itself has no room, its end says how many more there are.
 */
import { ink } from './ink.ts'
import { wrap } from './lines.ts'
import type { TextMeasure } from './shapes.ts'
import type { Sketch } from './sketch.ts'

export interface Key {
  /** Null where not even a number has a place. */
  readonly number: number | null
  readonly text: string
}

/** Set apart from lengths, which are bare figures. */
export const numberSaid = (number: number) => `(${number})`

const size = 2.1
/** From line to line, mm of paper. */
export const keyLineHigh = 2.8

/** @param most how many lines there may be, one at least */
export function keyLines(keys: readonly Key[], width: number, most: number, measure: TextMeasure): readonly string[] {
  const said = [
    ...keys.flatMap(({ number, text }) => (number === null ? [] : [`${numberSaid(number)}\u00a0${text}`])),
    ...keys.flatMap(({ number, text }) => (number === null ? [text] : [])),
  ]
  const bare = keys.filter(({ number }) => number !== null).length
  const lines = (count: number) => {
    const told = said.slice(0, count).map((text, at) => (at === bare ? `without a number: ${text}` : text))
    const more = said.length - count
    const rest = more === 0 ? [] : [`and ${more} more, which larger paper or a larger scale has room for`]
    return wrap([...told, ...rest].join(' · '), 'plain', size, width, measure)
  }
  for (let count = said.length; count > 0; count--) {
    const found = lines(count)
    if (found.length <= Math.max(1, most)) return found
  }
  return said.length === 0 ? [] : lines(0).slice(0, 1)
}

/** @param top where the list begins */
export function drawKeys(sketch: Sketch, lines: readonly string[], left: number, top: number): void {
  for (const [at, line] of lines.entries())
    sketch.text(`keys ${at}`, left, top + size + keyLineHigh * at, size, 'plain', line, { colour: ink.ink2 })
}
