/** What the records of works leave to settle, for whoever asks: in the unit asked for, else that of the desk. */
import type { Person } from '../../../src/contract/areas/desk.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { sayIn } from '../../../src/hang/marks.ts'
import { defaultSteps } from '../../../src/hang/printing.ts'
import { letterOf } from '../../../src/model/parts-of-set.ts'
import { setFindings } from '../../../src/model/set-findings.ts'
import { type PictureShape, type Reader, workFindings } from '../../../src/model/work-findings.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import { partIdsOf } from '../sets/figures.ts'
import { setOfWork } from '../sets/read.ts'
import { rows } from '../sql.ts'
import { asFact, sizesOfWorks } from './figures.ts'

/** How whoever asks reads lengths. */
export function readerOf(person: Person | null, unit: Reader['unit'] | undefined): Reader {
  return {
    unit: unit ?? person?.lengthUnit ?? 'mm',
    steps: { mm: defaultSteps.mm, fraction: person?.fraction ?? defaultSteps.fraction },
  }
}

/** Of one work after the other, as they are named. */
export function findingsOfWorks(db: ReadHandle, works: readonly string[], reader: Reader): Finding[] {
  const sizes = sizesOfWorks(db, works)
  const pictures = picturesOf(db, works)
  const sets = setsAmong(db, works)
  const differsBy = ruleNumber(db, 'differsBy')
  return works.flatMap(work => {
    const set = sets.has(work) ? setOfWork(db, work) : null
    return set === null
      ? workFindings(work, (sizes.get(work) ?? []).map(asFact), differsBy, reader, pictures.get(work))
      : setFindings(work, set, set.parts, sayIn(reader.unit, reader.steps))
  })
}

/** The shape of the picture that each work is shown by, where it is known. */
function picturesOf(db: ReadHandle, works: readonly string[]): ReadonlyMap<string, PictureShape> {
  const stored = rows<PictureShape & { readonly work: string }>(
    db,
    `SELECT work.id AS work, picture.width_px AS width, picture.height_px AS height
     FROM json_each(:works) AS wanted CROSS JOIN work ON work.id = wanted.value
     JOIN picture ON picture.work = work.id AND picture.hash = work.picture
     WHERE width_px > 0 AND height_px > 0 ORDER BY picture.position DESC`,
    { works: JSON.stringify(works) },
  )
  // The same picture may stand there twice: the first counts, which comes last here.
  return new Map(stored.map(({ work, ...shape }) => [work, shape]))
}

/** By one statement which works are sets: few of a show's hundreds are. */
function setsAmong(db: ReadHandle, works: readonly string[]): ReadonlySet<string> {
  const found = rows<{ id: string }>(
    db,
    `SELECT work.id FROM json_each(:works) AS wanted CROSS JOIN work ON work.id = wanted.value WHERE work.set_form <> ''`,
    { works: JSON.stringify(works) },
  )
  return new Set(found.map(({ id }) => id))
}

/** Of a set, what its parts leave to settle too, each named by its letter. */
export function findingsWithParts(db: ReadHandle, works: readonly string[], reader: Reader): Finding[] {
  const letters = new Map<string, string>()
  const sets = setsAmong(db, works)
  const all = works.flatMap(work => {
    const parts = sets.has(work) ? partIdsOf(db, work) : []
    for (const [index, part] of parts.entries()) letters.set(part, letterOf(index))
    return [work, ...parts]
  })
  return findingsOfWorks(db, all, reader).flatMap(found => {
    const letter = letters.get(found.subject.id)
    if (letter === undefined) return [found]
    // That a part has no size its set says already.
    return found.code === 'no-size' ? [] : [{ ...found, text: `Part ${letter}: ${found.text}` }]
  })
}
