/** A closed exhibition is read-only but for records: every write that touches one asks here first. */
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { row } from '../sql.ts'

/** The title of an exhibition that may be changed. Refuses `not-found` and `exhibition-closed`. */
export function openExhibition(db: ReadHandle, id: string, field = 'exhibition'): string {
  const found = row<{ title: string; state: string }>(db, 'SELECT title, state FROM exhibition WHERE id = :id', { id })
  if (found === undefined) throw notFound('exhibition', field)
  if (found.state === 'closed') {
    throw new Refusal('exhibition-closed', `${found.title} is closed. Set it to closing before you change it.`, {
      field,
    })
  }
  return found.title
}
