/** The rows of records of damage, read into what `src/record/damage` computes with. */
import type { DamageWordTold } from '../../../../src/contract/areas/damage.ts'
import type { DamageWord, WordKind } from '../../../../src/record/damage/damage.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { notFound } from '../../change.ts'
import { row, rows } from '../../sql.ts'
import { firstNumber } from '../../works/figures.ts'

export interface DamageOf {
  readonly id: string
  readonly reference: string
  readonly work: string
  readonly workTitle: string
  readonly workNumber: string
  readonly lender: string
  readonly lent: number
  readonly foundAt: string
  readonly reportedAt: string
  readonly reporter: string
  readonly how: string
  readonly circumstances: string
  readonly report: string | null
  readonly recordedAt: string
  readonly recordedBy: string
}

/** Joined: damage, work, party. A lender's work is one of an owner that is not the house. */
export const damageColumns = `damage.id, damage.reference, damage.work, work.title AS workTitle,
  coalesce(${firstNumber}, '') AS workNumber, coalesce(party.kind <> 'house', 0) AS lent,
  iif(coalesce(party.kind <> 'house', 0), party.name, '') AS lender, damage.found_at AS foundAt,
  damage.reported_at AS reportedAt, damage.reporter, damage.how, damage.circumstances, damage.report,
  damage.recorded_at AS recordedAt, damage.recorded_by AS recordedBy`
export const damageOfWorks = 'damage JOIN work ON work.id = damage.work LEFT JOIN party ON party.id = work.lender'

/** Of a row of `damage`: whether nobody has closed it, or somebody has opened it again since. */
export const isOpen = `coalesce((SELECT word.kind FROM damage_word AS word WHERE word.damage = damage.id
  AND word.kind IN ('closed', 'reopened') ORDER BY word.rowid DESC LIMIT 1), 'reopened') = 'reopened'`

export function damageOf(db: ReadHandle, id: string, field = 'id'): DamageOf {
  const found = row<DamageOf>(db, `SELECT ${damageColumns} FROM ${damageOfWorks} WHERE damage.id = :id`, { id })
  if (found === undefined) throw notFound('record of damage', field)
  return found
}

export interface WordRow extends DamageWord, Omit<DamageWordTold, 'struck' | keyof DamageWord> {
  readonly kind: WordKind
}

/** In the order in which they were recorded. */
export function wordsOf(db: ReadHandle, damage: string): WordRow[] {
  return rows<WordRow>(
    db,
    `SELECT id, kind, at, whom, how, said, report, strikes, recorded_at AS recordedAt, recorded_by AS recordedBy
     FROM damage_word WHERE damage = :damage ORDER BY rowid`,
    { damage },
  )
}

export interface OpenDamage {
  readonly id: string
  readonly reference: string
  readonly work: string
  readonly foundAt: string
  /** The work itself, the set that it is a part of, or a part of it: whichever is moved, it is moved. */
  readonly carried: string
}

/** Every open record by each work that carries its damage, the oldest first. */
export function openDamage(db: ReadHandle): OpenDamage[] {
  return rows<OpenDamage>(
    db,
    `WITH open AS (SELECT id, reference, work, found_at AS foundAt FROM damage WHERE ${isOpen})
     SELECT open.*, open.work AS carried FROM open
     UNION ALL SELECT open.*, work.parent FROM open JOIN work ON work.id = open.work WHERE work.parent IS NOT NULL
     UNION ALL SELECT open.*, part.id FROM open JOIN work AS part ON part.parent = open.work
     ORDER BY foundAt, id`,
  )
}
