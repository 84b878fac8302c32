/** The people of a loan, and who is on record with one of its works while it was lent. */
import type { LoanPeople } from '../../../src/loan/terms/planned.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { dateAt } from '../days.ts'
import { row, rows } from '../sql.ts'

export function peopleOf(db: ReadHandle, work: string, loan: string): LoanPeople {
  const period = row<{ first: string; last: string }>(db, 'SELECT first, last FROM loan WHERE id = :loan', { loan })
  const lent = ({ day }: { readonly day: string }) =>
    period !== undefined && period.first <= day && (period.last === '' || day <= period.last)
  const contacts = rows<LoanPeople['contacts'][number]>(
    db,
    'SELECT name, role FROM loan_contact WHERE loan = :loan ORDER BY position, id',
    { loan },
  )
  const moves = rows<{ at: string; people: string; kind: string }>(
    db,
    `SELECT movement.at, movement.people, movement.place_kind AS kind
     FROM moved JOIN movement ON movement.id = moved.movement
     WHERE moved.work = :work AND movement.struck = 0
      AND NOT EXISTS (SELECT 1 FROM movement AS later WHERE later.corrects = movement.id)
     ORDER BY movement.at, movement.id`,
    { work },
  ).map(({ at, people, kind }) => ({ day: dateAt(at), people, onWall: kind === 'face' }))
  const signed = rows<{ at: string; name: string; role: string }>(
    db,
    `SELECT signature.at, signature.name, signature.role
     FROM condition_report AS report JOIN condition_signature AS signature ON signature.report = report.id
     WHERE report.work = :work ORDER BY signature.at, signature.id`,
    { work },
  ).map(({ at, name, role }) => ({ day: dateAt(at), name, role }))
  return { contacts, moves: moves.filter(lent), signed: signed.filter(lent) }
}
