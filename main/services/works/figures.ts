/**
 * The figures of a work that others need (what hangs, how heavy, how, its picture, its numbers for searching) are
 * copied into its row by the same edit that changes what they follow from. This is the one place that copies them.
 */

import { numberSortKey } from '../../../src/checklist/numbers.ts'
import { type HangingSize, hangingSize, inForce, type SizeFact } from '../../../src/model/in-force.ts'
import { wholeMass, wholeSize } from '../../../src/model/whole-of-set.ts'
import type { ReadHandle, WriteHandle } from '../../database/handles.ts'
import { partFiguresOf, setFactsOf } from '../sets/figures.ts'
import { row, rows, update } from '../sql.ts'

/** What is kept with every figure of a work. */
interface Stored {
  readonly id: string
  readonly raw: string
  readonly kind: 'listed' | 'measured'
  readonly source: string
  readonly by: string
  readonly at: string
  readonly approximate: number
  readonly chosen: number
}

export interface StoredSize extends Stored {
  readonly part: string
  readonly label: string
  readonly height: number | null
  readonly width: number | null
  readonly depth: number | null
  readonly diameter: number | null
  readonly count: number
  readonly unit: string
}

export interface StoredMass extends Stored {
  readonly kg: number
}

export function sizesOf(db: ReadHandle, work: string): StoredSize[] {
  return sizesOfWorks(db, [work]).get(work) ?? []
}

/** The sizes of many works by one statement: sorting a few rows for each of 300 takes eight times as long. */
export function sizesOfWorks(db: ReadHandle, works: readonly string[]): ReadonlyMap<string, StoredSize[]> {
  const stored = rows<StoredSize & { readonly work: string }>(
    db,
    `SELECT work_size.* FROM json_each(:works) AS wanted CROSS JOIN work_size ON work_size.work = wanted.value
     ORDER BY work_size.at, work_size.id`,
    { works: JSON.stringify(works) },
  )
  return Map.groupBy(stored, ({ work }) => work)
}

export function massesOf(db: ReadHandle, work: string): StoredMass[] {
  return rows(db, 'SELECT * FROM work_mass WHERE work = :work ORDER BY at, id', { work })
}

/** 0 and 1 as the model's rules want them. */
export function asFact<F extends { readonly chosen: number }>(
  stored: F,
): Omit<F, 'chosen'> & { readonly chosen: boolean } {
  return { ...stored, chosen: stored.chosen === 1 }
}

export function hangingSizeOf(db: ReadHandle, work: string): HangingSize<SizeFact> | undefined {
  return hangingSize(sizesOf(db, work).map(asFact))
}

/** Of a set, its parts decide; of any other work, its own sizes. A part's set follows it. */
export function refreshSize(db: WriteHandle, work: string): void {
  const set = setFactsOf(db, work)
  const hanging = set === undefined ? hangingSizeOf(db, work) : undefined
  const whole = set === undefined ? null : wholeSize(set, partFiguresOf(db, work))
  update(db, 'work', work, {
    hang_height: whole?.height ?? hanging?.height ?? null,
    hang_width: whole?.width ?? hanging?.width ?? null,
    hang_depth: whole?.depth ?? hanging?.depth ?? null,
    hang_diameter: hanging?.diameter ?? null,
    hang_part: whole === null ? (hanging?.part ?? '') : 'overall',
    hang_source: whole?.kind ?? hanging?.fact.kind ?? '',
    hang_at: whole?.at ?? hanging?.fact.at ?? '',
  })
  const above = parentOf(db, work)
  if (above !== null) refreshSize(db, above)
}

/** The mass of a set is the sum of its parts, and not known while one of them is not weighed. */
export function refreshMass(db: WriteHandle, work: string): void {
  if (setFactsOf(db, work) === undefined) {
    const mass = inForce(massesOf(db, work).map(asFact))
    update(db, 'work', work, { mass: mass?.kg ?? null, mass_source: mass?.kind ?? '' })
  } else {
    const { mass, kind } = wholeMass(partFiguresOf(db, work))
    update(db, 'work', work, { mass, mass_source: kind })
  }
  const above = parentOf(db, work)
  if (above !== null) refreshMass(db, above)
}

function parentOf(db: ReadHandle, work: string): string | null {
  return row<{ parent: string | null }>(db, 'SELECT parent FROM work WHERE id = :work', { work })?.parent ?? null
}

export function refreshBack(db: WriteHandle, work: string): void {
  const back = row<{ method: string }>(
    db,
    'SELECT method FROM work_back WHERE work = :work ORDER BY at DESC, id DESC LIMIT 1',
    { work },
  )
  update(db, 'work', work, { method: back?.method ?? '' })
}

export function refreshPicture(db: WriteHandle, work: string): void {
  const first = row<{ hash: string }>(db, 'SELECT hash FROM picture WHERE work = :work ORDER BY position, id LIMIT 1', {
    work,
  })
  update(db, 'work', work, { picture: first?.hash ?? null })
}

/** Numbers in the order in which they identify: permanent, lender's, loan, entry, exhibition, former. */
export const numberOrder = `CASE kind WHEN 'permanent' THEN 0 WHEN 'lender' THEN 1 WHEN 'loan' THEN 2 WHEN 'entry' THEN 3 WHEN 'exhibition' THEN 4 ELSE 5 END`

/** The number a work is known by, beside a row of `work` in a query. */
export const firstNumber = `(SELECT text FROM work_number WHERE work_number.work = work.id ORDER BY ${numberOrder}, id LIMIT 1)`

export function refreshNumbers(db: WriteHandle, work: string): void {
  const numbers = rows<{ text: string; norm: string }>(
    db,
    `SELECT text, norm FROM work_number WHERE work = :work ORDER BY ${numberOrder}, id`,
    { work },
  )
  update(db, 'work', work, {
    // Normal forms too, so that a search for 1995.5.2A finds 1995.5.2 a.
    numbers: [...new Set(numbers.flatMap(number => [number.text, number.norm]))].join(' '),
    sort_number: numbers[0] === undefined ? '' : numberSortKey(numbers[0].text),
  })
}
