/** Straight strokes of a PDF as pdf.js reads them, in points of the page, y up from its foot. */
import { readFileSync } from 'node:fs'
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface Stroke {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

export interface ReadPage {
  /** Points. */
  readonly width: number
  readonly height: number
  readonly strokes: readonly Stroke[]
  readonly text: string
}

type Matrix = readonly [number, number, number, number, number, number]

/** `second` first, then `first`, as PDF writes it (ISO 32000-1, 8.3.4). */
function times(first: Matrix, second: Matrix): Matrix {
  const [a, b, c, d, e, f] = first
  const [g, h, i, j, k, l] = second
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f]
}

function mapped([a, b, c, d, e, f]: Matrix, x: number, y: number) {
  return { x: a * x + c * y + e, y: b * x + d * y + f }
}

export async function readPdf(file: string): Promise<readonly ReadPage[]> {
  const fonts = new URL('../../node_modules/pdfjs-dist/standard_fonts/', import.meta.url).pathname
  const task = getDocument({ data: new Uint8Array(readFileSync(file)), standardFontDataUrl: fonts, verbosity: 0 })
  const pdf = await task.promise
  const pages: ReadPage[] = []
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number)
    const { fnArray, argsArray } = await page.getOperatorList()
    let matrix: Matrix = [1, 0, 0, 1, 0, 0]
    const kept: Matrix[] = []
    const strokes: Stroke[] = []
    fnArray.forEach((op, index) => {
      if (op === OPS.save) kept.push(matrix)
      else if (op === OPS.restore) matrix = kept.pop() ?? matrix
      else if (op === OPS.transform)
        matrix = times(matrix, argsArray[index] as Matrix) // its six numbers
      else if (op === OPS.constructPath) {
        // The operator that paints, the path as [kind, x, y, …] with 0 to move and 1 to draw, its box.
        const [, [path]] = argsArray[index] as [number, [ArrayLike<number> | null], unknown]
        if (path !== null && path.length === 6 && path[0] === 0 && path[3] === 1) {
          const from = mapped(matrix, path[1] ?? 0, path[2] ?? 0)
          const to = mapped(matrix, path[4] ?? 0, path[5] ?? 0)
          strokes.push({ x1: from.x, y1: from.y, x2: to.x, y2: to.y })
        }
      }
    })
    const { items } = await page.getTextContent()
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view
    pages.push({
      width: right - left,
      height: top - bottom,
      strokes,
      text: items.map(item => ('str' in item ? item.str : '')).join(' '),
    })
  }
  await task.destroy()
  return pages
}

/** Middles of crosses whose arms reach `arm` points each way. */
export function crossesOf({ strokes }: ReadPage, arm: number): readonly { readonly x: number; readonly y: number }[] {
  const near = (a: number, b: number) => Math.abs(a - b) < 0.01
  const level = strokes.filter(each => near(each.y1, each.y2) && near(Math.abs(each.x2 - each.x1), 2 * arm))
  const upright = strokes.filter(each => near(each.x1, each.x2) && near(Math.abs(each.y2 - each.y1), 2 * arm))
  return level.flatMap(flat => {
    const x = (flat.x1 + flat.x2) / 2
    const y = flat.y1
    return upright.some(each => near(each.x1, x) && near((each.y1 + each.y2) / 2, y)) ? [{ x, y }] : []
  })
}
