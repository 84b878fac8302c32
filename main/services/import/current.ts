/** A work as it stands now, for comparing a row of a list with it. */
import type { FactField } from '../../../src/checklist/fields.ts'
import { factColumns } from '../../../src/checklist/fields.ts'
import type { CurrentMass, CurrentSize, CurrentWork, Value } from '../../../src/checklist/merge.ts'
import { inForce, type SourcedFact } from '../../../src/model/in-force.ts'
import type { Amount } from '../../../src/money/currency.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { row, rows } from '../sql.ts'
import { asFact, massesOf, sizesOf } from '../works/figures.ts'

const factFields = Object.keys(factColumns) as FactField[] // Object.keys forgets the literal names
const factList = factFields.map(field => `${factColumns[field]} AS "${field}"`).join(', ')

interface Wanted {
  /** Left out where the list's own measures are those of last time. */
  readonly measures: boolean
  /** The day until which valuations count; null where the list gives no value. */
  readonly values: string | null
}

export function currentWork(
  db: ReadHandle,
  work: string,
  exhibition: string | null,
  { measures, values }: Wanted,
): CurrentWork | undefined {
  const found = row<Record<FactField, Value> & { readonly lender: string | null }>(
    db,
    `SELECT ${factList}, lender FROM work WHERE id = :work`,
    { work },
  )
  if (found === undefined) return undefined
  const { lender, ...facts } = found
  return {
    facts,
    lender,
    numbers: measures ? rows(db, 'SELECT kind, norm, party FROM work_number WHERE work = :work', { work }) : [],
    sizes: measures ? currentSizes(db, work) : [],
    masses: measures ? currentMasses(db, work) : [],
    values: values === null ? [] : currentValues(db, work, values),
    entry: exhibition === null ? null : (currentEntry(db, exhibition, work) ?? null),
  }
}

/** Its newest valuation until `today`, and what loans that are open agree. */
export function currentValues(db: ReadHandle, work: string, today: string): Amount[] {
  return rows<Amount>(
    db,
    `SELECT minor, currency FROM (SELECT value AS minor, currency FROM work_value
       WHERE work = :work AND day <= :today ORDER BY day DESC, id DESC LIMIT 1)
     UNION ALL SELECT loan_work.value, loan_work.currency FROM loan_work JOIN loan ON loan.id = loan_work.loan
       WHERE loan_work.work = :work AND loan_work.value IS NOT NULL AND loan.closed = ''`,
    { work, today },
  )
}

function currentEntry(db: ReadHandle, exhibition: string, work: string) {
  return row<{ running: string; section: string; status: string }>(
    db,
    `SELECT entry.running, coalesce(section.title, '') AS section, entry.status
     FROM entry LEFT JOIN section ON section.id = entry.section
     WHERE entry.exhibition = :exhibition AND entry.work = :work`,
    { exhibition, work },
  )
}

export function currentSizes(db: ReadHandle, work: string): CurrentSize[] {
  const sizes = sizesOf(db, work).map(asFact)
  return sizes.map(size => {
    const ofPart = sizes.filter(one => one.part === size.part)
    return {
      part: size.part,
      raw: size.raw,
      height: size.height,
      width: size.width,
      depth: size.depth,
      diameter: size.diameter,
      inForce: inForce(ofPart) === size,
      newestListed: newestListed(ofPart) === size,
    }
  })
}

export function currentMasses(db: ReadHandle, work: string): CurrentMass[] {
  const masses = massesOf(db, work).map(asFact)
  return masses.map(mass => ({
    kg: mass.kg,
    inForce: inForce(masses) === mass,
    newestListed: newestListed(masses) === mass,
  }))
}

function newestListed<F extends SourcedFact>(facts: readonly F[]): F | undefined {
  return inForce(facts.filter(fact => fact.kind === 'listed').map(fact => ({ ...fact, chosen: false, fact })))?.fact
}
