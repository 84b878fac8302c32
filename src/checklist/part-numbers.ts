/**
 * Numbers of the parts of a set: the number of the whole with a letter behind it, `1995.5.2a` to `1995.5.2c` (from
 * memory; practice writes it with and without a blank, and both are one number here).
 */
import { letterOf } from '../model/parts-of-set.ts'
import { normalNumber } from './numbers.ts'

/** The letters behind the number of the whole, small; null where the number is not one of its parts. */
export function partLetter(whole: string, number: string): string | null {
  const norm = normalNumber(whole)
  const of = normalNumber(number)
  if (norm === '' || !of.startsWith(norm)) return null
  return /^[ .-]?([A-Z]{1,2})$/.exec(of.slice(norm.length))?.[1]?.toLowerCase() ?? null
}

/** Which part a letter stands for, from 0: `a` 0, `z` 25, `aa` 26. */
function placeOf(letter: string): number {
  return [...letter].reduce((sum, one) => sum * 26 + one.charCodeAt(0) - 96, 0) - 1
}

/**
 * The number of the next part: the first letter that none of `taken` has, written as they are written. A whole that
 * ends with a letter gets a blank before it, so that the two letters stay apart.
 */
export function nextPartNumber(whole: string, taken: readonly string[]): string {
  const given = taken.filter(number => partLetter(whole, number) !== null)
  const used = new Set(given.map(number => partLetter(whole, number)))
  let at = 0
  while (used.has(letterOf(at))) at++
  const [sibling] = given
  const between =
    sibling === undefined
      ? /\p{L}\s*$/u.test(whole)
        ? ' '
        : ''
      : (/\d([ .-]*)\p{L}{1,2}\s*$/u.exec(sibling)?.[1] ?? ' ')
  const letter = letterOf(at)
  const capital = sibling !== undefined && /\p{Lu}\s*$/u.test(sibling)
  return `${whole.trim()}${between}${capital ? letter.toUpperCase() : letter}`
}

/** The parts as a range behind their whole, `1995.5.2 a–c, e`; the whole alone where it has none. */
export function partsSaid(whole: string, numbers: readonly string[]): string {
  const places = [...new Set(numbers.flatMap(number => partLetter(whole, number) ?? []))]
    .map(placeOf)
    .sort((a, b) => a - b)
  const runs: [number, number][] = []
  for (const place of places) {
    const last = runs.at(-1)
    if (last !== undefined && place === last[1] + 1) last[1] = place
    else runs.push([place, place])
  }
  const said = runs.map(([from, to]) =>
    from === to ? letterOf(from) : `${letterOf(from)}${to === from + 1 ? ', ' : '–'}${letterOf(to)}`,
  )
  return said.length === 0 ? whole : `${whole} ${said.join(', ')}`
}

/** The number that all of these are parts of, for a set that has none of its own; null where they are of several. */
export function wholeOfParts(numbers: readonly string[]): string | null {
  const wholes = numbers.map(number => /^(.*\d)[ .-]*\p{L}{1,2}$/u.exec(number.trim())?.[1] ?? null)
  const [first] = wholes
  if (first === undefined || first === null) return null
  return wholes.every(one => one !== null && normalNumber(one) === normalNumber(first)) ? first : null
}
