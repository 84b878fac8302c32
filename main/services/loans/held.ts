/** Whether terms of loans hold: each against the work as a show has it planned and as it is known today. */
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { sayIn } from '../../../src/hang/marks.ts'
import type { LoanFinding } from '../../../src/loan/grouped.ts'
import { termCode } from '../../../src/loan/terms/findings.ts'
import { quoted, termHeld } from '../../../src/loan/terms/held.ts'
import type { LentWork, TermTold } from '../../../src/loan/terms/planned.ts'
import { ofAir, ofPeople } from '../../../src/loan/terms/term.ts'
import type { Reader } from '../../../src/model/work-findings.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { doseOf } from '../light/received.ts'
import type { Reading } from '../service.ts'
import { partIdsOf } from '../sets/figures.ts'
import { rows, value } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'
import { firstNumber } from '../works/figures.ts'
import { readerOf } from '../works/findings.ts'
import { LentAir } from './lent-air.ts'
import { peopleOf } from './lent-people.ts'
import { type DoseOf, type KnownWork, lentWork, type Spot } from './lent-work.ts'
import { type StoredTerm, termColumns, withWord } from './term-rows.ts'
import { type TermOfWork, termsOfWorks } from './terms-of-works.ts'
import { togetherOf } from './together.ts'

/** Where a work stands in a show; a part of a set stands where its set does. */
class Spots {
  private readonly faces = new Map<string, Elevation>()
  private readonly db: ReadHandle
  private readonly exhibition: string | null
  constructor(db: ReadHandle, exhibition: string | null) {
    this.db = db
    this.exhibition = exhibition
  }

  of(work: string): Spot | null {
    const { db, exhibition } = this
    if (exhibition === null) return null
    const face = value<string>(
      db,
      `SELECT placement.face FROM entry JOIN placement ON placement.entry = entry.id
       WHERE entry.exhibition = :exhibition AND entry.work = coalesce((SELECT parent FROM work WHERE id = :work), :work)`,
      { exhibition, work },
    )
    if (face === undefined) return null
    const elevation = this.faces.get(face) ?? elevationOf(db, exhibition, face)
    this.faces.set(face, elevation)
    const whole = value<string | null>(db, 'SELECT parent FROM work WHERE id = :work', { work }) ?? work
    const placed = elevation.works.find(each => each.work === whole)
    return placed === undefined ? null : { elevation, placed }
  }
}

const noDose: DoseOf = () => null

/** The work with the air it had in a loan and with the people of it, where the term is about that. */
class Lent {
  private readonly known = new Map<string, LentWork['climate']>()
  private readonly people = new Map<string, LentWork['people']>()
  private readonly air: LentAir
  private readonly db: ReadHandle
  private readonly exhibition: string | null
  constructor(db: ReadHandle, works: readonly string[], exhibition: string | null) {
    this.db = db
    this.air = new LentAir(db, works)
    this.exhibition = exhibition
  }

  of(
    lent: KnownWork,
    work: string,
    spot: Spot | null,
    { kind, loan }: Pick<TermOfWork, 'kind' | 'loan'>,
  ): Omit<LentWork, 'together'> {
    const key = JSON.stringify([work, loan])
    if (ofPeople(kind)) {
      const people = this.people.get(key) ?? peopleOf(this.db, work, loan)
      this.people.set(key, people)
      return { ...lent, climate: null, people }
    }
    if (!ofAir(kind)) return { ...lent, climate: null, people: null }
    if (!this.known.has(key)) {
      this.known.set(key, this.air.of(work, loan, this.exhibition, spot?.elevation.wall.face ?? null))
    }
    return { ...lent, climate: this.known.get(key) ?? null, people: null }
  }
}

/** Terms of the works of a wall that are broken, or that a person is asked; a year's light and sums of money are told on the work's and the loan's pages alone. */
export function termFindings(db: ReadHandle, elevation: Elevation, reader: Reader): LoanFinding[] {
  const spots = new Map<string, PlacedWork>()
  for (const placed of elevation.works) {
    spots.set(placed.work, placed)
    if (placed.set !== null) for (const part of partIdsOf(db, placed.work)) spots.set(part, placed)
  }
  return findingsOfTerms(db, elevation.exhibition, [...spots.keys()], reader, work => {
    const placed = spots.get(work)
    return placed === undefined ? null : { elevation, placed }
  })
}

/** The same of works that stand on no wall. */
export function unplacedTermFindings(
  db: ReadHandle,
  exhibition: string,
  works: readonly string[],
  reader: Reader,
): LoanFinding[] {
  return findingsOfTerms(db, exhibition, works, reader, () => null)
}

function findingsOfTerms(
  db: ReadHandle,
  exhibition: string,
  works: readonly string[],
  { unit, steps }: Reader,
  spotOf: (work: string) => Spot | null,
): LoanFinding[] {
  const say = sayIn(unit, steps)
  const terms = Map.groupBy(termsOfWorks(db, works), ({ work }) => work)
  const lentIn = new Lent(db, works, exhibition)
  return [...terms].flatMap(([work, all]) => {
    const spot = spotOf(work)
    const known = lentWork(db, work, spot, noDose)
    return all.flatMap((term): LoanFinding[] => {
      const lent = { ...lentIn.of(known, work, spot, term), together: null }
      const told = termHeld(term, lent, say)
      if (told.state !== 'broken' && told.state !== 'asked') return []
      const figures = { term: term.id, ...told.figures }
      const ofSeveral = (who: string) => quoted(term, who, term.loanNumber, told, say)
      // What a room's air was, no change of the plan mends; what a person is asked may be so.
      const severity = told.state === 'asked' || ofAir(term.kind) ? 'settle' : 'stop'
      const code = termCode(term.kind, told.state)
      const { called } = lent
      const finding = { severity, code, subject: { kind: 'work', id: work }, text: ofSeveral(called), figures } as const
      return [{ finding, loan: term.loan, called, ofSeveral }]
    })
  })
}

const toldOf = ({ state, text }: TermTold) => ({ state, text })

function checkShow(db: ReadHandle, exhibition: string | null): void {
  if (exhibition === null) return
  if (value(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined)
    throw notFound('exhibition', 'exhibition')
}

export function termsOfLoan({ db, now, person }: Reading, input: Received<'loan.terms'>): Output<'loan.terms'> {
  const { loan, exhibition, unit } = input
  if (value(db, 'SELECT id FROM loan WHERE id = :loan', { loan }) === undefined) throw notFound('loan', 'loan')
  checkShow(db, exhibition)
  const reader = readerOf(person, unit)
  const say = sayIn(reader.unit, reader.steps)
  const spots = new Spots(db, exhibition)
  const items = rows<{ id: string; work: string; title: string; number: string }>(
    db,
    `SELECT loan_work.id, loan_work.work, work.title,
      coalesce(${firstNumber}, '') AS number
     FROM loan_work JOIN work ON work.id = loan_work.work WHERE loan_work.loan = :loan
     ORDER BY loan_work.position, loan_work.id`,
    { loan },
  )
  const lentIn = new Lent(
    db,
    items.map(({ work }) => work),
    exhibition,
  )
  const lent = new Map(
    items.map(({ work }) => {
      const spot = spots.of(work)
      return [work, { spot, known: lentWork(db, work, spot, each => doseOf(db, each, now())) }] as const
    }),
  )
  const terms = rows<StoredTerm>(db, `SELECT ${termColumns} FROM loan_term WHERE loan = :loan ORDER BY position, id`, {
    loan,
  }).map(withWord)
  return {
    terms: terms.map(term => {
      const together = togetherOf({ db, now }, loan, term)
      return {
        ...term,
        works: items.flatMap(({ id, ...item }) => {
          const own = lent.get(item.work)
          if (own === undefined || (term.item !== null && term.item !== id)) return []
          const work = lentIn.of(own.known, item.work, own.spot, { kind: term.kind, loan })
          return [{ ...item, ...toldOf(termHeld(term, { ...work, together }, say)) }]
        }),
      }
    }),
  }
}

export function termsOfWork(
  { db, now, person }: Reading,
  input: Received<'loan.termsOfWork'>,
): Output<'loan.termsOfWork'> {
  const { work, exhibition, unit } = input
  if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
  checkShow(db, exhibition)
  const reader = readerOf(person, unit)
  const say = sayIn(reader.unit, reader.steps)
  const terms = termsOfWorks(db, [work])
  if (terms.length === 0) return { terms: [] }
  const spot = new Spots(db, exhibition).of(work)
  const known = lentWork(db, work, spot, each => doseOf(db, each, now()))
  const lentIn = new Lent(db, [work], exhibition)
  return {
    terms: terms.map(({ work: _, ...term }) => {
      const together = togetherOf({ db, now }, term.loan, term)
      return { ...term, ...toldOf(termHeld(term, { ...lentIn.of(known, work, spot, term), together }, say)) }
    }),
  }
}
