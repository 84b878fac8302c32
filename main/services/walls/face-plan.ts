/** What a show plans for a face: one row for each, made when something is first said of it. */
import { ruleNumber, ruleText } from '../rules.ts'
import type { Writing } from '../service.ts'
import { insert, value } from '../sql.ts'

export function facePlanOf(writing: Writing, exhibition: string, face: string): string {
  const { db } = writing
  const key = { exhibition, face }
  const known = value<string>(db, 'SELECT id FROM face_plan WHERE exhibition = :exhibition AND face = :face', key)
  if (known !== undefined) return known
  const id = writing.newId()
  insert(db, 'face_plan', {
    id,
    exhibition,
    face,
    centre_line: null,
    rule: ruleText(db, 'heightRule'),
    eye_fraction: ruleNumber(db, 'eyeFraction'),
    planned_lux: null,
    visitor_order: null,
    viewing_distance: null,
    viewers: '[]',
    colour: '',
    note: '',
  })
  return id
}
