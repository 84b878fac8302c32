/** What was measured and drawn of a room, as it is stored, and the survey that follows. */
import { outlineOfRoom, type RoomOutline, type SurveyedWall, type SurveyRow } from '../../../src/plan/room-survey.ts'
import type { SurveyRules } from '../../../src/plan/survey.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import { rows } from '../sql.ts'

export interface StoredSurvey extends SurveyRow {
  readonly text: string
  readonly at: string
  readonly by: string
  readonly note: string
}

/** In the order they were typed. */
export function surveyRowsOf(db: ReadHandle, room: string): StoredSurvey[] {
  return rows<Omit<StoredSurvey, 'used'> & { readonly used: number }>(
    db,
    `SELECT id, kind, wall, from_corner AS "from", to_corner AS "to", value, text, how, used, at, by, note
     FROM survey WHERE room = :room ORDER BY at, id`,
    { room },
  ).map(stored => ({ ...stored, used: stored.used === 1 }))
}

export function surveyRulesOf(db: ReadHandle): SurveyRules {
  return {
    tape: ruleNumber(db, 'tapeWithin'),
    tapePerMetre: ruleNumber(db, 'tapePerMetre'),
    angle: ruleNumber(db, 'angleWithin'),
    closesWithin: ruleNumber(db, 'closesWithin'),
  }
}

export interface StoredSide extends SurveyedWall {
  readonly lengthText: string
  readonly measuredAt: string
  readonly measuredBy: string
}

/** The walls of a room's outline with the corners they run between. */
export function sidesOf(db: ReadHandle, room: string): StoredSide[] {
  return rows<StoredSide>(
    db,
    `SELECT wall.id, wall.name, wall.length, ends.angle, wall.from_corner AS "from", wall.to_corner AS "to",
      wall.length_text AS lengthText, wall.measured_at AS measuredAt, wall.measured_by AS measuredBy
     FROM wall JOIN corner AS ends ON ends.id = wall.to_corner
     WHERE wall.room = :room AND wall.exhibition IS NULL ORDER BY wall.position, wall.id`,
    { room },
  )
}

/** The outline of a room as its measures make it. */
export function outlineIn(db: ReadHandle, room: string, rules: SurveyRules): RoomOutline {
  return outlineOfRoom(sidesOf(db, room), surveyRowsOf(db, room), rules)
}
