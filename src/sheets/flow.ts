/**
 * Blocks of lines that run down columns and over pages. The rule it keeps: a block stays together unless no column is
 * tall enough for it; then it breaks between its lines, and nothing is lost.
 */
import { ink } from './ink.ts'
import { wrap } from './lines.ts'
import type { Face, TextMeasure } from './shapes.ts'
import type { Sketch } from './sketch.ts'

/** A piece of a block, mm high; it draws itself with its upper left corner at x, y. */
export interface Line {
  readonly height: number
  readonly draw: (sketch: Sketch, x: number, y: number) => void
}

export type Block = readonly Line[]

export interface Column {
  readonly x: number
  readonly top: number
  readonly bottom: number
}

interface Placed {
  readonly line: Line
  readonly x: number
  readonly y: number
}

export interface WordsStyle {
  readonly face?: Face
  readonly size?: number
  readonly colour?: string
  /** Room to the left, mm. */
  readonly indent?: number
}

/** Between two blocks in a column, mm. */
const blockGap = 2.4

/** Words broken to the width of a column; `name` names their boxes. */
export function wordLines(
  name: string,
  text: string,
  width: number,
  measure: TextMeasure,
  { face = 'plain', size = 3.1, colour = ink.ink, indent = 0 }: WordsStyle = {},
): Block {
  return wrap(text, face, size, width - indent, measure).map((words, at) => ({
    height: size * 1.32,
    draw: (sketch, x, y) => {
      sketch.text(`${name} ${at}`, x + indent, y + size * 0.98, size, face, words, { colour })
    },
  }))
}

const heightOf = (block: Block) => block.reduce((sum, { height }) => sum + height, 0)

/**
 * Each block put into the columns of one page after the other.
 * @param columnsOf the columns of a page by its number from 0, at least one
 * @returns for each page what stands on it; one page at least
 */
export function flow(blocks: readonly Block[], columnsOf: (page: number) => readonly Column[]): readonly Placed[][] {
  const pages: Placed[][] = [[]]
  let columns = columnsOf(0)
  let at = 0
  let y = columns[0]?.top ?? 0
  function next(): void {
    at += 1
    if (at >= columns.length) {
      pages.push([])
      columns = columnsOf(pages.length - 1)
      at = 0
    }
    y = columns[at]?.top ?? 0
  }
  const here = () => columns[at] ?? { x: 0, top: 0, bottom: 0 }
  for (const block of blocks) {
    const height = heightOf(block)
    const whole = height <= here().bottom - here().top
    if (whole && y + height > here().bottom && y > here().top) next()
    for (const line of block) {
      if (y + line.height > here().bottom && y > here().top) next()
      pages.at(-1)?.push({ line, x: here().x, y })
      y += line.height
    }
    y += blockGap
  }
  return pages
}
