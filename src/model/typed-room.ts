/** A room as typed, a wall a line: a length, and where it is not 90°, the angle at its right end after a comma or @. */
import { parseLength } from '../../src/measure/length.ts'
import type { LengthUnit } from '../../src/measure/units.ts'

export interface TypedWall {
  readonly length: number
  readonly lengthText: string
  readonly angle: number
}

export type TypedRoom =
  | { readonly walls: readonly TypedWall[]; readonly problem: null }
  | { readonly walls: null; readonly problem: string }

const line = /^(.*?)(?:\s*@\s*(\d+(?:[.,]\d+)?)\s*°?)?$/

/** Reads the lines; two lengths on one line with × between them are a rectangle. */
export function readRoom(text: string, unit: LengthUnit): TypedRoom {
  const lines = text.split('\n').map(each => each.trim())
  const given = lines.filter(each => each !== '')
  const sides = given.length === 1 ? (given[0] ?? '').split(/\s*[×x]\s*/i) : []
  const rows = sides.length === 2 ? [...sides, ...sides] : given
  const walls: TypedWall[] = []
  for (const [index, row] of rows.entries()) {
    const [, length = '', angle] = line.exec(row) ?? []
    const read = parseLength(length, unit)
    if (!read.ok) return { walls: null, problem: `Line ${index + 1}, “${read.piece}”: ${read.message}` }
    if (read.mm <= 0) return { walls: null, problem: `Line ${index + 1}: a wall is longer than nothing.` }
    const degrees = angle === undefined ? 90 : Number(angle.replace(',', '.'))
    if (!(degrees > 1 && degrees < 359)) {
      return { walls: null, problem: `Line ${index + 1}: an angle lies between 1° and 359°.` }
    }
    walls.push({ length: read.mm, lengthText: length.trim(), angle: degrees })
  }
  return { walls, problem: null }
}
