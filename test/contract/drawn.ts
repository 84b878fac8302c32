/** Small inputs that several steps draw: rectangles, people, places, and the values of a row. */
import type { Chance, Row } from './chance.ts'

/** The row's id with more, or null where there is no row. */
export function withId<T extends object>(id: string | null, more: T): (T & { id: string }) | null {
  return id === null ? null : { id, ...more }
}

export const text = (row: Row, column: string): string => String(row[column] ?? '')
export const figure = (row: Row, column: string): number => Number(row[column] ?? 0)

export const kinds = ['', 'painting', 'drawing', 'print', 'photograph', 'textile', 'object', 'other'] as const
export const numberKinds = ['permanent', 'lender', 'loan', 'entry', 'exhibition'] as const
export const parts = ['framed', 'overall', 'mount', 'sheet', 'image', 'sight'] as const
export const wallTypes = ['drywall', 'plaster', 'brick', 'other'] as const

export function rectangle({ length }: Chance) {
  return { x: length(0, 3000), y: length(0, 1500), width: length(50, 1200), height: length(50, 2200) }
}

export function people({ words, pick }: Chance) {
  return {
    name: words(),
    role: pick(['', 'technician', 'registrar']),
    lengthUnit: pick(['mm', 'cm', 'in'] as const),
    paper: pick(['A4', 'A3', 'Letter', 'Tabloid'] as const),
    fraction: pick([8, 16, 32] as const),
  }
}

/** What a work on a wall was found at. */
export function spotOf(row: Row) {
  return {
    face: text(row, 'face'),
    x: figure(row, 'x'),
    rule: text(row, 'rule') as 'face', // one of the rules; the schema decides
    y: row.y === null ? null : figure(row, 'y'),
  }
}

/** The two ends of something long in a room. */
export function endsOf(length: Chance['length']): [[number, number], [number, number]] {
  return [
    [length(0, 6000), length(0, 4000)],
    [length(0, 6000), length(0, 4000)],
  ]
}
