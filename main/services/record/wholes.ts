/** What belongs together when it is moved: the parts of a set, and works whose numbers are parts of one number. */
import { normalNumber } from '../../../src/checklist/numbers.ts'
import { partLetter, partsSaid, wholeOfParts } from '../../../src/checklist/part-numbers.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import type { Reading } from '../service.ts'
import { partIdsOf } from '../sets/figures.ts'
import { row, rows, value } from '../sql.ts'
import { workName } from '../works/facts.ts'
import { firstNumber } from '../works/figures.ts'
import { namer } from './places.ts'
import { standingOf } from './standing.ts'

export interface Whole {
  /** The work that is a set; null where numbers alone say that they belong together. */
  readonly set: string | null
  /** The title of the set, else the number with its letters: `1995.5.2 a, b`. */
  readonly name: string
  readonly parts: readonly string[]
}

export function setOf(db: ReadHandle, work: string): string | null {
  return value<string | null>(db, 'SELECT parent FROM work WHERE id = :work', { work }) ?? null
}

/** Of these works: every set that is or has one of them, and all works of every number that one of them is a part of. */
export function wholesOf(db: ReadHandle, works: readonly string[]): Whole[] {
  const found = new Map<string, Whole>()
  for (const work of works) {
    const set = setOf(db, work) ?? work
    if (found.has(set)) continue
    const parts = partIdsOf(db, set)
    if (parts.length > 0) found.set(set, { set, name: workName(db, set), parts })
    else for (const [key, whole] of byNumber(db, work)) found.set(key, whole)
  }
  return [...found.values()]
}

/** By its normal form: each number of the work that others of no set are parts of too. */
function byNumber(db: ReadHandle, work: string): Map<string, Whole> {
  const own = rows<{ text: string }>(db, 'SELECT text FROM work_number WHERE work = :work ORDER BY id', { work })
  const found = new Map<string, Whole>()
  for (const { text } of own) {
    const whole = wholeOfParts([text])
    if (whole === null || found.has(normalNumber(whole))) continue
    const norm = normalNumber(whole)
    const of = rows<{ work: string; text: string }>(
      db,
      `SELECT number.work, number.text FROM work_number AS number JOIN work ON work.id = number.work
       WHERE number.norm >= :norm AND number.norm < :norm || char(1114111) AND work.parent IS NULL ORDER BY number.norm`,
      { norm },
    ).filter(each => partLetter(whole, each.text) !== null)
    const parts = [...new Set(of.map(each => each.work))]
    if (parts.length < 2) continue
    const name = partsSaid(
      whole,
      of.map(each => each.text),
    )
    found.set(norm, { set: null, name, parts })
  }
  return found
}

export function wholes(reading: Reading, { works, at }: Received<'movement.wholes'>): Output<'movement.wholes'> {
  const { db } = reading
  for (const [index, work] of works.entries()) {
    if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined)
      throw notFound('work', `works.${index}`)
  }
  const moment = new Date(at ?? reading.now()).toISOString()
  const name = namer(db)
  return {
    wholes: wholesOf(db, works).map(({ set, name: called, parts }) => ({
      set,
      name: called,
      parts: parts.map(work => {
        const stood = standingOf(db, 'work', work, moment)
        const facts = row<{ number: string; title: string }>(
          db,
          `SELECT coalesce(${firstNumber}, '') AS number, title FROM work WHERE id = :work`,
          { work },
        )
        return { work, number: '', title: '', ...facts, words: stood === undefined ? '' : (name(stood.place) ?? '') }
      }),
    })),
  }
}
