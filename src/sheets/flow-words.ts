/** Blocks that several papers share: a heading over what it heads, facts each with its word, a line to sign on. */
import { type Block, type Line, wordLines } from './flow.ts'
import { ink } from './ink.ts'
import type { TextMeasure } from './shapes.ts'

/** A heading with a line under it. */
export function heading(name: string, text: string, width: number, measure: TextMeasure): Block {
  const rule: Line = {
    height: 1.4,
    draw: (sketch, x, y) => sketch.line(x, y + 0.5, x + width, y + 0.5, 0.3),
  }
  return [...wordLines(name, text, width, measure, { face: 'strong', size: 3.6 }), rule]
}

/** A heading stays with the first of what it heads. */
export function headed(head: Block, [first, ...more]: readonly Block[]): readonly Block[] {
  return [[...head, ...(first ?? [])], ...more]
}

/** Where what is said of a fact begins, beside its word, mm. */
const label = 19

/** Facts under one another, each word beside what is said; one of which nothing is said is left out. */
export function factLines(
  facts: readonly (readonly [word: string, says: string])[],
  width: number,
  measure: TextMeasure,
): Block {
  return facts.flatMap(([word, says]): Block => {
    const [first, ...more] = wordLines(`fact ${word}`, says, width, measure, { indent: label })
    if (first === undefined) return []
    const named: Line = {
      height: first.height,
      draw: (sketch, x, y) => {
        sketch.text(`label ${word}`, x, y + 3.04, 3.1, 'plain', word, { colour: ink.ink3 })
        first.draw(sketch, x, y)
      },
    }
    return [named, ...more]
  })
}

/** Room for a hand, a line, and under it who signs there. */
export function lineToSign(
  name: string,
  says: readonly string[],
  width: number,
  measure: TextMeasure,
  { room = 12, line = 50 }: { readonly room?: number; readonly line?: number } = {},
): Block {
  return [
    { height: room, draw: () => undefined },
    { height: 0.8, draw: (sketch, x, y) => sketch.line(x, y, x + line, y, 0.15, ink.ink) },
    ...says.flatMap((words, at) => wordLines(`${name} ${at}`, words, width, measure, { colour: ink.ink2, size: 2.9 })),
  ]
}
