/** A wall's own figures as they are stored, read for cutting and joining and written back. */
import type { DatumBy } from '../../../src/hang/datum.ts'
import { levelLine } from '../../../src/hang/datum.ts'
import type { Profile } from '../../../src/hang/wall.ts'
import type { PartFacts } from '../../../src/plan/wall-parts.ts'
import { ruleNumber } from '../rules.ts'
import type { Writing } from '../service.ts'
import { row, rows, update, type Value } from '../sql.ts'
import { facePlanOf } from '../walls/face-plan.ts'

export type StoredWall = Record<string, Value> & { readonly id: string; readonly room: string }

export function storedWall({ db }: Writing, id: string): StoredWall | undefined {
  return row<StoredWall>(db, 'SELECT * FROM wall WHERE id = :id', { id })
}

const figure = (value: Value | undefined) => (typeof value === 'number' ? value : null)
const list = <T>(value: Value | undefined): readonly T[] =>
  typeof value === 'string' && value !== '' ? JSON.parse(value) : []
const text = (of: readonly unknown[]) => (of.length === 0 ? null : JSON.stringify(of))

export function factsOf(wall: StoredWall): PartFacts {
  return {
    length: figure(wall.length) ?? 0,
    height: figure(wall.height) ?? 0,
    wallType: String(wall.wall_type),
    thickness: figure(wall.thickness),
    skirting: figure(wall.skirting),
    backingFrom: figure(wall.backing_from),
    backingTo: figure(wall.backing_to),
    studFirst: figure(wall.stud_first),
    studSpacing: figure(wall.stud_spacing),
    railKgPerMetre: figure(wall.rail_rated),
    studs: list<number>(wall.studs),
    joints: list<number>(wall.joints),
    floor: list<Profile[number]>(wall.floor),
    ceiling: list<Profile[number]>(wall.ceiling),
    rail: list<Profile[number]>(wall.rail),
  }
}

/** The columns of a wall that follow from its facts. */
export function columnsOf(facts: PartFacts): Readonly<Record<string, Value>> {
  return {
    length: facts.length,
    height: facts.height,
    backing_from: facts.backingFrom,
    backing_to: facts.backingTo,
    stud_first: facts.studFirst,
    stud_spacing: facts.studSpacing,
    studs: text(facts.studs),
    joints: text(facts.joints),
    floor: text(facts.floor),
    ceiling: text(facts.ceiling),
    rail: text(facts.rail),
  }
}

/** The face that works hang on; a wall of an outline has one. */
export function faceOf({ db }: Writing, wall: string): string {
  return row<{ id: string }>(db, "SELECT id FROM face WHERE wall = :wall AND side = 'a'", { wall })?.id ?? ''
}

const uneven = (floor: Profile) => floor.some(([, y]) => y !== 0)

/**
 * Before a wall with a floor that is not level changes its length: its lines are told from its left end, where they
 * stay; from the high point or the middle they would follow a floor that is another one now. Along a ramp they do anyway.
 */
export function linesFromLeftEnd(writing: Writing, wall: StoredWall): void {
  const { db } = writing
  const facts = factsOf(wall)
  const by = String(wall.datum_by) as DatumBy // the contract lets nothing else in
  if (!uneven(facts.floor) || by === 'ramp') return
  const house = ruleNumber(db, 'centreLine')
  const above = (set: number | null) => levelLine(facts, by, set ?? house).y
  const face = faceOf(writing, wall.id)
  const shows = rows<{ exhibition: string }>(
    db,
    `SELECT exhibition FROM face_plan WHERE face = :face UNION SELECT exhibition FROM placement WHERE face = :face`,
    { face },
  )
  for (const { exhibition } of shows) {
    const id = facePlanOf(writing, exhibition, face)
    const set = row<{ set: number | null }>(db, 'SELECT centre_line AS "set" FROM face_plan WHERE id = :id', {
      id,
    })?.set
    update(db, 'face_plan', id, { centre_line: above(set ?? null) })
  }
  update(db, 'wall', wall.id, { datum: above(figure(wall.datum)), datum_by: '' })
}

/** Line, rule and eye of a face for a show: what a work without a height of its own hangs by. */
export function hungBy(writing: Writing, face: string, exhibition: string) {
  const stored = row<{ centre_line: number | null; rule: string; eye_fraction: number }>(
    writing.db,
    'SELECT centre_line, rule, eye_fraction FROM face_plan WHERE face = :face AND exhibition = :exhibition',
    { face, exhibition },
  )
  return stored ?? null
}
