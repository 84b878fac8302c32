/** Findings of the planning checks. They are computed each time; only a person's settlement of one is stored. */
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { grouped } from '../../../src/loan/grouped.ts'
import { withoutSaid } from '../../../src/loan/terms/findings.ts'
import { faceFindings, settledBy } from '../../../src/model/face-findings.ts'
import type { Reader } from '../../../src/model/work-findings.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { termFindings, unplacedTermFindings } from '../loans/held.ts'
import { loanPeriodFindings } from '../loans/periods.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove, row, rows } from '../sql.ts'
import { findingsWithParts, readerOf } from '../works/findings.ts'
import { elevationOf } from './elevation.ts'

/** What is to settle on one face: the wall's own checks and those of the works that stand there. */
export function findingsOfFace(db: ReadHandle, exhibition: string, face: string, reader: Reader): Finding[] {
  return findingsOn(db, elevationOf(db, exhibition, face), reader)
}

/** The same of a wall that was read already: one list for the screen, the sheet and the key plan. */
export function findingsOn(db: ReadHandle, elevation: Elevation, reader: Reader): Finding[] {
  const { wall, loans, records } = foundOn(db, elevation, reader)
  return [...wall, ...grouped(loans), ...records]
}

/** What is not settled; what loans say is still told work by work. */
function foundOn(db: ReadHandle, elevation: Elevation, reader: Reader) {
  const isSettled = settledBy(elevation.settled)
  const open = (findings: readonly Finding[]) => findings.filter(finding => !isSettled(finding))
  const works = elevation.works.map(({ work }) => work)
  const terms = termFindings(db, elevation, reader)
  const said = terms.map(({ finding }) => finding)
  const periods = loanPeriodFindings(db, elevation.exhibition, works)
  return {
    wall: open(withoutSaid(faceFindings(elevation, reader), elevation.works, said)),
    loans: [...terms, ...periods].filter(({ finding }) => !isSettled(finding)),
    records: open(findingsWithParts(db, works, reader)),
  }
}

/** For the key plan: how many findings want a person. */
export function countsOfFace(db: ReadHandle, exhibition: string, face: string): { settle: number; stop: number } {
  let settle = 0
  let stop = 0
  for (const { severity } of findingsOfFace(db, exhibition, face, readerOf(null, 'mm'))) {
    if (severity === 'settle') settle++
    else if (severity === 'stop') stop++
  }
  return { settle, stop }
}

export function list({ db, person }: Reading, input: Received<'finding.list'>): Output<'finding.list'> {
  const { exhibition, face, unit } = input
  const reader = readerOf(person, unit)
  if (face !== undefined) return { findings: findingsOfFace(db, exhibition, face, reader) }
  const faces = rows<{ face: string }>(
    db,
    'SELECT DISTINCT face FROM placement WHERE exhibition = :exhibition ORDER BY face',
    { exhibition },
  )
  const unplaced = rows<{ work: string }>(
    db,
    `SELECT entry.work FROM entry WHERE entry.exhibition = :exhibition
     AND entry.id NOT IN (SELECT entry FROM placement) ORDER BY entry.position, entry.id`,
    { exhibition },
  ).map(({ work }) => work)
  const on = faces.map(each => foundOn(db, elevationOf(db, exhibition, each.face), reader))
  const isSettled = settledBy(rows(db, 'SELECT code, subject, figures FROM settlement'))
  const elsewhere = [
    ...unplacedTermFindings(db, exhibition, unplaced, reader),
    ...loanPeriodFindings(db, exhibition, unplaced),
  ].filter(({ finding }) => !isSettled(finding))
  return {
    findings: [
      ...on.flatMap(({ wall, records }) => [...wall, ...records]),
      ...grouped([...on.flatMap(({ loans }) => loans), ...elsewhere]),
      ...findingsWithParts(db, unplaced, reader).filter(finding => !isSettled(finding)),
    ],
  }
}

export function settle(writing: Writing, input: Received<'finding.settle'>): Output<'finding.settle'> {
  try {
    JSON.parse(input.figures)
  } catch {
    throw new Refusal('bad-input', 'The figures of a finding are JSON text.', { field: 'figures' })
  }
  const { subject, also = [], ...said } = input
  const subjects = [...new Set([subject, ...also])]
  writing.label(`Settle a finding${subjects.length > 1 ? ` of ${subjects.length} works` : ''}: ${input.reason}`)
  const given = { ...said, by: writing.person?.name ?? '', at: writing.now() }
  const [id = ''] = subjects.map(each => {
    const made = writing.newId()
    insert(writing.db, 'settlement', { id: made, subject: each, ...given })
    return made
  })
  return { id }
}

export function unsettle(
  writing: Writing,
  { id, also = [] }: Received<'finding.unsettle'>,
): Output<'finding.unsettle'> {
  for (const [nth, each] of [...new Set([id, ...also])].entries()) {
    const found = row<{ reason: string }>(writing.db, 'SELECT reason FROM settlement WHERE id = :each', { each })
    if (found === undefined) throw notFound('settlement', nth === 0 ? 'id' : `also.${nth - 1}`)
    writing.label(`Take back the settlement: ${found.reason}`)
    remove(writing.db, 'settlement', each)
  }
  return { done: true }
}
