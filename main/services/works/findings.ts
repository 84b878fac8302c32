/** What the records of one work leave to settle, for whoever asks: in the unit asked for, else that of the desk. */
import type { Person } from '../../../src/contract/areas/desk.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { defaultSteps } from '../../../src/hang/printing.ts'
import { type PictureShape, type Reader, workFindings } from '../../../src/model/work-findings.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import { row } from '../sql.ts'
import { asFact, sizesOf } from './figures.ts'

/** How whoever asks reads lengths. */
export function readerOf(person: Person | null, unit: Reader['unit'] | undefined): Reader {
  return {
    unit: unit ?? person?.lengthUnit ?? 'mm',
    steps: { mm: defaultSteps.mm, fraction: person?.fraction ?? defaultSteps.fraction },
  }
}

export function findingsOfWork(db: ReadHandle, work: string, reader: Reader): Finding[] {
  const picture = row<PictureShape>(
    db,
    `SELECT picture.width_px AS width, picture.height_px AS height FROM work
     JOIN picture ON picture.work = work.id AND picture.hash = work.picture
     WHERE work.id = :work AND width_px > 0 AND height_px > 0 ORDER BY picture.position LIMIT 1`,
    { work },
  )
  return workFindings(work, sizesOf(db, work).map(asFact), ruleNumber(db, 'differsBy'), reader, picture)
}
