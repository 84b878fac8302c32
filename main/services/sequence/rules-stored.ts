/** The rules that a show was given, as they are stored, and what works say of themselves in words. */

import type { PlaceKind, RuleKind, Within } from '../../../src/sequence/hang-rule.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'

export interface RulePlace {
  readonly kind: PlaceKind
  readonly id: string
}

/** The column of each kind of place. */
export const placeColumns: Readonly<Record<PlaceKind, string>> = {
  wall: 'face',
  room: 'room',
  doorway: 'opening',
  bench: 'standing',
}
/** A stored place as its kind and what it is. */
export const placeSelect = `CASE WHEN face IS NOT NULL THEN 'wall' WHEN room IS NOT NULL THEN 'room'
  WHEN opening IS NOT NULL THEN 'doorway' ELSE 'bench' END AS kind, coalesce(face, room, opening, standing) AS id`

export type NoteField = 'notBeside' | 'loanTerms'

export interface StoredRule {
  readonly id: string
  readonly kind: RuleKind
  readonly within: Within | null
  readonly inForce: boolean
  readonly reason: string
  readonly said: { readonly of: string | null; readonly field: NoteField; readonly text: string } | null
  /** By the work, in their order. */
  readonly works: readonly string[]
  readonly places: readonly RulePlace[]
}

interface Row {
  readonly id: string
  readonly kind: RuleKind
  readonly within: Within | ''
  readonly in_force: number
  readonly reason: string
  readonly said_of: string | null
  readonly said_in: NoteField | ''
  readonly said: string
}

export function storedRules(db: ReadHandle, exhibition: string): StoredRule[] {
  const works = Map.groupBy(
    rows<{ rule: string; work: string }>(
      db,
      `SELECT rule, work FROM hang_rule_work WHERE rule IN (SELECT id FROM hang_rule WHERE exhibition = :exhibition)
       ORDER BY position, id`,
      { exhibition },
    ),
    each => each.rule,
  )
  const places = Map.groupBy(
    rows<RulePlace & { rule: string }>(
      db,
      `SELECT rule, ${placeSelect} FROM hang_rule_place
       WHERE rule IN (SELECT id FROM hang_rule WHERE exhibition = :exhibition) ORDER BY position, id`,
      { exhibition },
    ),
    each => each.rule,
  )
  return rows<Row>(
    db,
    `SELECT id, kind, within, in_force, reason, said_of, said_in, said FROM hang_rule
     WHERE exhibition = :exhibition ORDER BY position, id`,
    { exhibition },
  ).map(({ id, kind, within, in_force, reason, said_of, said_in, said }) => ({
    id,
    kind,
    within: within === '' ? null : within,
    inForce: in_force === 1,
    reason,
    said: said_in === '' ? null : { of: said_of, field: said_in, text: said },
    works: (works.get(id) ?? []).map(({ work }) => work),
    places: (places.get(id) ?? []).map(place => ({ kind: place.kind, id: place.id })),
  }))
}

/** Terms that works carry as plain words: nobody but a person can make a rule of them. */
export function notesOf(db: ReadHandle, exhibition: string) {
  return rows<{ work: string; entry: string; running: string; title: string; field: NoteField; text: string }>(
    db,
    `SELECT work.id AS work, entry.id AS entry, entry.running, work.title, note.field, note.text
     FROM entry JOIN work ON work.id = entry.work
     JOIN (SELECT id, 'notBeside' AS field, not_beside AS text FROM work
       UNION ALL SELECT id, 'loanTerms', loan_terms FROM work) AS note ON note.id = work.id
     LEFT JOIN section ON section.id = entry.section
     WHERE entry.exhibition = :exhibition AND trim(note.text) <> ''
     ORDER BY section.position IS NULL, section.position, section.id, entry.position, entry.id, note.field DESC`,
    { exhibition },
  )
}

/** That a work may hang in more light than its limit: settled with a reason; lapses when its limit changes. */
export const lightException = 'light-rule'

export interface Exception {
  readonly id: string
  readonly entry: string
  readonly figures: string
  readonly reason: string
  readonly by: string
}

export function exceptionsOf(db: ReadHandle, exhibition: string): Exception[] {
  return rows<Exception>(
    db,
    `SELECT settlement.id, entry.id AS entry, settlement.figures, settlement.reason, settlement."by" FROM settlement
     JOIN entry ON entry.id = settlement.subject
     WHERE settlement.code = :code AND entry.exhibition = :exhibition ORDER BY settlement.at, settlement.id`,
    { code: lightException, exhibition },
  )
}
