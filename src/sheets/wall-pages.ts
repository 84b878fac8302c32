/**
 * How the works of a wall are shared out to pages. The rule it keeps: everything on one page where it can be read;
 * else each page has the stretch of the elevation that its rows are about.
 */

import { headHeight, type TableStyle } from './wall-columns.ts'
import { labelsFit } from './wall-dimensions.ts'
import { footHeight, headerHeight, margin } from './wall-frame.ts'
import { type Note, notesHeight } from './wall-notes.ts'
import type { WallSheetRow } from './wall-rows.ts'
import { rowHeight } from './wall-table.ts'

export interface Part {
  readonly rows: readonly WallSheetRow[]
  readonly notes: readonly Note[]
  readonly drawing: number
  readonly whole: boolean
}

/** The tallest drawing with which everything is on one page; else pages as full as they may be. */
export function paginate(
  rows: readonly WallSheetRow[],
  notes: readonly Note[],
  paper: { width: number; height: number },
  style: TableStyle,
): readonly Part[] {
  const { k, measure } = style
  const width = paper.width - 2 * margin
  const room = paper.height - 2 * margin + 4 - (headerHeight + footHeight + headHeight) * k
  const heights = rows.map(row => rowHeight(row, width, style))
  const sum = heights.reduce((total, height) => total + height, 0)
  const share = room / (paper.height - 2 * margin)
  const [tall, low] = [(paper.height * 0.5 * share) / 0.8, (paper.height * 0.21 * share) / 0.8]
  const left = room - sum - notesHeight(notes, width, style)
  if (left >= low && labelsFit(rows, width, k, measure))
    return [{ rows, notes, drawing: Math.min(left, tall), whole: true }]
  // How works come down is read on another day: it goes onto a page of its own before the wall is parted.
  const down = notes.filter(note => note.severity === 'down')
  const now = notes.filter(note => note.severity !== 'down')
  const leftNow = room - sum - notesHeight(now, width, style)
  if (down.length > 0 && leftNow >= low && labelsFit(rows, width, k, measure)) {
    const page: Part = { rows, notes: now, drawing: Math.min(leftNow, tall), whole: true }
    return [page, ...notePages(down, paper, style)]
  }
  const parts: Part[] = []
  const drawing = 58 * k
  let begin = 0
  while (begin < rows.length) {
    let end = begin
    let used = 0
    while (
      end < rows.length &&
      (end === begin ||
        (used + (heights[end] ?? 0) <= room - drawing && labelsFit(rows.slice(begin, end + 1), width, k, measure)))
    ) {
      used += heights[end] ?? 0
      end += 1
    }
    const spare = room - drawing - used
    parts.push({
      rows: rows.slice(begin, end),
      notes: [],
      drawing: drawing + Math.min(Math.max(spare, 0), drawing * 0.25),
      whole: begin === 0 && end === rows.length,
    })
    begin = end
  }
  return withNotes(notes, parts, heights, paper, style)
}

/** Notes go under the last rows where there is room, else onto pages of their own. */
function withNotes(
  notes: readonly Note[],
  parts: readonly Part[],
  heights: readonly number[],
  paper: { readonly width: number; readonly height: number },
  style: TableStyle,
): readonly Part[] {
  if (notes.length === 0) return parts
  const { k } = style
  const width = paper.width - 2 * margin
  const whole = paper.height - 2 * margin + 4 - (headerHeight + footHeight) * k
  const last = parts.at(-1)
  if (last !== undefined) {
    const used = heights.slice(heights.length - last.rows.length).reduce((sum, height) => sum + height, 0)
    const room = whole - headHeight * k - used - last.drawing
    if (notesHeight(notes, width, style) <= room) return [...parts.slice(0, -1), { ...last, notes }]
  }
  return [...parts, ...notePages(notes, paper, style)]
}

function notePages(
  notes: readonly Note[],
  paper: { readonly width: number; readonly height: number },
  style: TableStyle,
): readonly Part[] {
  const { k } = style
  const width = paper.width - 2 * margin
  const whole = paper.height - 2 * margin + 4 - (headerHeight + footHeight) * k
  const pages: Part[] = []
  let rest = [...notes]
  while (rest.length > 0) {
    let count = rest.length
    while (count > 1 && notesHeight(rest.slice(0, count), width, style) > whole - 4 * k) count -= 1
    pages.push({ rows: [], notes: rest.slice(0, count), drawing: 0, whole: false })
    rest = rest.slice(count)
  }
  return pages
}
