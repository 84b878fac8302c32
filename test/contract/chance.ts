/** Chance from a seed, and what is in the catalogue now, for steps that draw their input from it. */
import type Database from 'better-sqlite3'
import { randomFrom } from '../unit/database/random-edits.ts'

export type Row = Readonly<Record<string, string | number | null>>

export interface Chance {
  readonly maybe: (share: number) => boolean
  readonly pick: <T>(from: readonly T[]) => T
  /** A whole number of the range. */
  readonly whole: (from: number, to: number) => number
  /** A length that is not always whole. */
  readonly length: (from: number, to: number) => number
  readonly words: () => string
  /** Any row; null where there is none. */
  readonly row: (table: string, where?: string) => Row | null
  readonly id: (table: string, where?: string) => string | null
  /** Some rows of the table, at least one; null where there is none. */
  readonly ids: (table: string, where?: string) => string[] | null
  /** Mostly the value that is there, so that it goes through; at times another, so that it clashes. */
  readonly change: <T>(was: T, to: T) => { was: T; to: T }
  /** Puts a file where an upload would, and gives its handle. */
  readonly give: (name: string, bytes: string | Uint8Array) => string
}

const texts = [
  'Salt pans',
  'Ebb, “seven”',
  'l’Étang à marée',
  'AND OR NEAR',
  'Größe 24½',
  "d'Avel",
  '日本 ½',
  'null',
  '7',
]

export function chanceFrom(
  seed: number,
  db: Database.Database,
  give: (name: string, bytes: string | Uint8Array) => string,
): Chance {
  const random = randomFrom(seed)
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  function pick<T>(from: readonly T[]): T {
    const found = from[Math.floor(random() * from.length)]
    if (found === undefined) throw new Error('nothing to pick from')
    return found
  }
  function row(table: string, where = '1'): Row | null {
    const count = Number(db.prepare(`SELECT count(*) FROM ${table} WHERE ${where}`).pluck().get())
    if (count === 0) return null
    const found = db
      .prepare(`SELECT * FROM ${table} WHERE ${where} ORDER BY id LIMIT 1 OFFSET ?`)
      .get(whole(0, count - 1))
    return found as Row // a table's columns are text, numbers or nothing
  }
  function id(table: string, where?: string): string | null {
    const found = row(table, where)
    return found === null ? null : String(found.id)
  }
  return {
    maybe: share => random() < share,
    pick,
    whole,
    length: (from, to) => Math.round((from + random() * (to - from)) * 8) / 8,
    words: () => `${pick(texts)} ${whole(1, 99)}`,
    row,
    id,
    ids(table, where) {
      const found = new Set<string>()
      for (let n = whole(1, 3); n > 0; n--) {
        const one = id(table, where)
        if (one !== null) found.add(one)
      }
      return found.size === 0 ? null : [...found]
    },
    change: (was, to) => (random() < 0.9 ? { was, to } : { was: to, to: was }),
    give,
  }
}
