/**
 * A room as typed, a wall a line: its length, and where it is not 90°, the angle of the corner at its right end after @.
 * One line with × in it is a rectangle. What cannot be read says in which line and why.
 */
import { parseLength } from '../measure/length.ts'
import type { LengthUnit } from '../measure/units.ts'
import { readCorner } from './corner.ts'

export interface TypedWall {
  readonly length: number
  readonly lengthText: string
  readonly angle: number
}

export type TypedRoom =
  | { readonly walls: readonly TypedWall[]; readonly problem: null }
  | { readonly walls: null; readonly problem: string }

/** Reads the lines, each length in `unit` where it names none. Nothing typed is a room without walls. */
export function readRoom(text: string, unit: LengthUnit): TypedRoom {
  const lines = text.split('\n').map((row, index) => ({ row: row.trim(), at: index + 1 }))
  const given = lines.filter(({ row }) => row !== '')
  const [only] = given
  const sides = given.length === 1 && only !== undefined ? only.row.split(/\s*[×x]\s*/i) : []
  const rows = sides.length === 2 ? [...sides, ...sides].map(row => ({ row, at: only?.at ?? 1 })) : given
  const walls: TypedWall[] = []
  for (const { row, at } of rows) {
    const [length = '', corner] = row.split('@')
    const read = parseLength(length, unit)
    if (!read.ok) return problem(`Line ${at}, “${read.piece === '' ? row : read.piece}”: ${read.message}`)
    if (read.mm <= 0) return problem(`Line ${at}: a wall is longer than nothing.`)
    const angle = corner === undefined ? { ok: true as const, degrees: 90 } : readCorner(corner)
    if (!angle.ok) return problem(`Line ${at}: ${angle.message}`)
    walls.push({ length: read.mm, lengthText: length.trim(), angle: angle.degrees })
  }
  return { walls, problem: null }
}

function problem(sentence: string): TypedRoom {
  return { walls: null, problem: sentence }
}
