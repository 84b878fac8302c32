/**
 * Text in lines of a given width. The rule it keeps: a number never breaks: not at its thin space, not between the
 * whole inches and their fraction, not before its unit.
 */
import type { Face, TextMeasure } from './shapes.ts'

const JOINED = '\u00a0'

/** Ties what belongs together: `70 11/16`, `9.5 kg`, `14 mm`, `− 140`. */
export function tied(text: string): string {
  return text
    .replace(/\s*[\r\n\t]+\s*/g, ' ')
    .replace(/= (?=\S)/g, `=${JOINED}`)
    .replace(/(\d) (\d+\/\d+)/g, `$1${JOINED}$2`)
    .replace(/(\d) (mm|cm|m|in|ft|kg|lb|lx|lb\.)(?![\p{L}\p{N}])/gu, `$1${JOINED}$2`)
}

/** The text in lines at most `width` wide, broken at ordinary spaces; a longer word is broken between its letters. */
export function wrap(text: string, face: Face, size: number, width: number, measure: TextMeasure): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of tied(text).split(' ')) {
    if (word === '') continue
    const longer = line === '' ? word : `${line} ${word}`
    if (measure.width(face, size, longer) <= width) {
      line = longer
      continue
    }
    if (line !== '') lines.push(line)
    line = ''
    for (const piece of pieces(word, face, size, width, measure)) {
      if (line !== '') lines.push(line)
      line = piece
    }
  }
  if (line !== '') lines.push(line)
  return lines
}

function pieces(word: string, face: Face, size: number, width: number, measure: TextMeasure): readonly string[] {
  if (measure.width(face, size, word) <= width) return [word]
  const found: string[] = []
  let piece = ''
  // Joined parts come apart first, then letters.
  for (const part of word.includes(JOINED) ? word.split(JOINED) : [...word]) {
    const longer = word.includes(JOINED) && piece !== '' ? piece + JOINED + part : piece + part
    if (piece !== '' && measure.width(face, size, longer) > width) {
      found.push(piece)
      piece = part
    } else piece = longer
  }
  return piece === '' ? found : [...found, piece]
}

/** The first lines; where more was left, the last one ends in an ellipsis. */
export function firstLines(
  text: string,
  count: number,
  face: Face,
  size: number,
  width: number,
  measure: TextMeasure,
): readonly string[] {
  const all = wrap(text, face, size, width, measure)
  if (all.length <= count) return all
  let last = all[count - 1] ?? ''
  while (last !== '' && measure.width(face, size, `${last}…`) > width) last = [...last].slice(0, -1).join('')
  return [...all.slice(0, count - 1), `${last.trimEnd()}…`]
}

/** The size, at most `size`, at which a text stands within `width`. */
export function sizeWithin(text: string, face: Face, size: number, width: number, measure: TextMeasure): number {
  const run = measure.width(face, size, text)
  return run <= width ? size : (size * width) / run
}
