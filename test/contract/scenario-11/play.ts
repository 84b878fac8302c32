/** Plays steps one after the other, however each call is made, and says what the record then holds apart from ids and times. */
import Database from 'better-sqlite3'
import { ordinaryTables, quoted, shapeOf } from '../../../main/database/tables.ts'
import type { Name, Output } from '../../../src/contract/contract.ts'
import type * as facts from './facts.ts'
import type { Keys, Step } from './steps.ts'

/** An answer, or the refusal with its code. */
export type Played = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly code: string }
export type Ask = (name: Name, input: unknown, files: readonly string[]) => Promise<Played>

/** Steps that are played another way, by their key; each gives what its call would have answered, where that is kept. */
export type ByHand = Readonly<Record<string, (keys: Keys) => Promise<unknown>>>

export async function play(
  steps: readonly Step[],
  keys: Keys,
  ask: Ask,
  byHand: ByHand = {},
): Promise<Map<string, unknown>> {
  const answers = new Map<string, unknown>()
  for (const { key, name, input, files = [], refused, keep } of steps) {
    const hand = byHand[key]
    if (hand !== undefined) {
      const done = await hand(keys)
      if (done !== undefined) keep?.(done as never, keys) // as the step’s own procedure answers
      continue
    }
    const played = await ask(name, input(keys), files)
    if (played.ok ? refused !== undefined : played.code !== refused) {
      throw new Error(`${key}, ${name}: ${JSON.stringify(played)}`)
    }
    if (!played.ok) continue
    answers.set(key, played.value)
    keep?.(played.value as never, keys) // the answer of the step’s own procedure
  }
  return answers
}

/** A day as it was told, as the facts have it. */
export function answerOf(told: Output<'work.onDay'>): facts.Answer {
  return {
    day: told.day,
    where: told.stood?.words ?? null,
    people: told.stood?.people ?? '',
    report: told.examined?.kind === 'check' ? null : (told.examined?.kind ?? null),
    findings: told.examined?.findings ?? 0,
    damage: told.damage.map(({ reference }) => reference),
    loan: told.loans[0]?.number ?? null,
    receipt: told.loans[0]?.receipt?.kind ?? null,
    luxHours: told.light?.ever ?? 0,
  }
}

/** Tables that say how it was done, not what is so: the journal, what each edit was called, which papers were printed. */
const how = [
  'edit',
  'edit_now',
  'journal',
  'schema_step',
  'setting',
  'picture_tone',
  'person',
  'import_run',
  'sheet_print',
]
/** Columns that hold a moment of the machine, a hash of ids, or what a hand drew. */
const own = /^(recorded_at|created_at|measured_at|hang_at|since|hash|content|strokes|at)$/

/**
 * Every table as it stands, each row as text: keys are told by what they stand for, moments that a person did not write
 * and what a pen drew are left out, and rows are sorted, for their order follows from the keys.
 */
export function stateOf(file: string): Record<string, string[]> {
  const db = new Database(file, { readonly: true })
  try {
    const tables = ordinaryTables(db).filter(name => !how.includes(name) && !name.startsWith('work_fts'))
    const keys = new Set<string>()
    const keyed = ordinaryTables(db).filter(table => shapeOf(db, table).columns.includes('id'))
    for (const table of keyed) {
      for (const id of db
        .prepare(`SELECT id FROM ${quoted(table)}`)
        .pluck()
        .all())
        keys.add(String(id))
    }
    const plain = (value: unknown): unknown =>
      typeof value === 'string' ? value.replaceAll(/[0-9a-z]{12,}/g, word => (keys.has(word) ? '#' : word)) : value
    return Object.fromEntries(
      tables.map(table => {
        const stored = db.prepare(`SELECT * FROM ${quoted(table)}`).all() as Record<string, unknown>[]
        const written = stored.map(row =>
          JSON.stringify(
            Object.entries(row).flatMap(([column, value]) => {
              const written = column === 'at' && saysWhen.has(table) && row.kind !== 'closed'
              const aMoment = own.test(column) && !written
              return aMoment || column === 'n' || column === 'position' ? [] : [[column, plain(value)]]
            }),
          ),
        )
        return [table, written.sort()]
      }),
    )
  } finally {
    db.close()
  }
}

/** Where `at` is what a person wrote; a record of damage is closed at the moment when that is said. */
const saysWhen = new Set(['movement', 'moved', 'light_reading', 'damage_word'])
