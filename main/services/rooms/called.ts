/** What people call rooms and walls in labels and lists. */
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { value } from '../sql.ts'

/** Of a partition also which of its two faces. Joined: wall, face. */
export const wallCalled = `wall.name || iif(face.name = '', '', ', ' || face.name)`

export function roomName(db: ReadHandle, id: string, field = 'room'): string {
  const name = value<string>(db, 'SELECT name FROM room WHERE id = :id', { id })
  if (name === undefined) throw notFound('room', field)
  return name
}
