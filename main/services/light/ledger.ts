/** The light of a work across its shows, from the hours lit, what was read or planned, and where the record had it. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { type Spent, spentOf } from '../../../src/light/budget.ts'
import { type Day, dateOf } from '../../../src/light/day.ts'
import { type LitDay, litDays, type ShowLit, type StoodFrom, spansOf } from '../../../src/light/dose.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dayAt } from '../days.ts'
import { namer } from '../record/places.ts'
import { inForce } from '../record/standing.ts'
import { rulesOf } from '../rules.ts'
import type { Reading } from '../service.ts'
import { row, rows, value } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { hoursOf } from './hours.ts'
import { readingsOf } from './readings.ts'

type Sensitivity = Output<'light.ledger'>['budget']['sensitivity']

/** Shows by key, read once however many works ask for them. */
class Shows {
  private readonly known = new Map<string, Omit<ShowLit, 'face'>>()
  private readonly db: ReadHandle
  constructor(db: ReadHandle) {
    this.db = db
  }

  of(exhibition: string, title: string): Omit<ShowLit, 'face'> {
    const known = this.known.get(exhibition)
    if (known !== undefined) return known
    const levels = rows<{ face: string; lux: number }>(
      this.db,
      'SELECT face, planned_lux AS lux FROM face_plan WHERE exhibition = :exhibition AND planned_lux IS NOT NULL',
      { exhibition },
    )
    const planned = new Map(levels.map(each => [each.face, each.lux]))
    const found = { exhibition, title, hours: hoursOf(this.db, exhibition), planned }
    this.known.set(exhibition, found)
    return found
  }
}

function daysOf(db: ReadHandle, shows: Shows, work: string, today: Day): LitDay[] {
  // A part of a set is in shows through its set.
  const whole = value<string | null>(db, 'SELECT parent FROM work WHERE id = :work', { work }) ?? work
  const entries = rows<{ exhibition: string; title: string; face: string | null }>(
    db,
    `SELECT entry.exhibition, exhibition.title, placement.face FROM entry JOIN exhibition ON exhibition.id = entry.exhibition
     LEFT JOIN placement ON placement.entry = entry.id WHERE entry.work = :whole
     ORDER BY exhibition.opens, exhibition.position, exhibition.id`,
    { whole },
  )
  const stood = rows<{ at: string; place: string; kind: string }>(
    db,
    `SELECT moved.at, moved.place, movement.place_kind AS kind FROM moved JOIN movement ON movement.id = moved.movement
     WHERE moved.work = :work AND ${inForce} ORDER BY moved.at, moved.movement`,
    { work },
  ).map(({ at, place, kind }): StoodFrom => {
    return { from: dayAt(at), place, kind: kind === 'face' || kind === 'room' ? kind : 'elsewhere' }
  })
  const read = readingsOf(db, work)
    .filter(each => each.struck === null)
    .map(each => ({ from: dayAt(each.at), lux: each.lux }))
  const lit = entries.map(each => ({ ...shows.of(each.exhibition, each.title), face: each.face }))
  return litDays(
    lit.filter(each => each.hours.length > 0),
    stood,
    read,
    today,
  )
}

function toldOf({ ends, endsIfLonger, ...spent }: Spent, luxHours: number | null, sensitivity: Sensitivity) {
  const date = (day: Day | null) => (day === null ? null : dateOf(day))
  return { ...spent, ends: date(ends), endsIfLonger: date(endsIfLonger), budget: { luxHours, sensitivity } }
}

function budgetsOf(db: ReadHandle): (sensitivity: Sensitivity) => number | null {
  const rule = rulesOf(db)
  return sensitivity => {
    if (sensitivity === 'high') return Number(rule('lightBudgetHigh'))
    if (sensitivity === 'medium') return Number(rule('lightBudgetMedium'))
    return sensitivity === 'low' ? Number(rule('lightBudgetLow')) : null
  }
}

/** What a work's fullest 365 days have, with what is planned; null where no hours lit are known of it. */
export function doseOf(db: ReadHandle, work: string, now: string): { most: number; unknownHours: number } | null {
  const today = dayAt(now)
  const days = daysOf(db, new Shows(db), work, today)
  if (days.length === 0) return null
  const { most, unknownHours } = spentOf(days, null, today)
  return { most, unknownHours }
}

/** What a work had received by the end of a day, of all time and of the year until then; null where no hours lit are known. */
export function receivedUntil(
  db: ReadHandle,
  work: string,
  day: Day,
  now: string,
): { ever: number; year: number; unknownHours: number } | null {
  const days = daysOf(db, new Shows(db), work, dayAt(now))
  if (days.length === 0) return null
  const { ever, used, unknownHours } = spentOf(days, null, day)
  return { ever, year: used, unknownHours }
}

export function ledger({ db, now }: Reading, { work }: Received<'light.ledger'>): Output<'light.ledger'> {
  const found = row<{ sensitivity: Sensitivity }>(db, 'SELECT sensitivity FROM work WHERE id = :work', { work })
  if (found === undefined) throw notFound('work', 'work')
  const today = dayAt(now())
  const days = daysOf(db, new Shows(db), work, today)
  const budget = budgetsOf(db)(found.sensitivity)
  const name = namer(db)
  return {
    ...toldOf(spentOf(days, budget, today), budget, found.sensitivity),
    today: dateOf(today),
    spans: spansOf(days).map(({ first, last, place, ...span }) => ({
      ...span,
      first: dateOf(first),
      last: dateOf(last),
      words: name(place) ?? 'a wall that is gone',
    })),
    readings: readingsOf(db, work),
  }
}

const pageOf = 200

export function list({ db, now }: Reading, input: Received<'light.list'>): Output<'light.list'> {
  const { exhibition, offset = 0, limit = pageOf } = input
  if (value(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined) {
    throw notFound('exhibition', 'exhibition')
  }
  const today = dayAt(now())
  const shows = new Shows(db)
  const budgetOf = budgetsOf(db)
  const wanted = (input.words ?? '').toLocaleLowerCase('en').split(/\s+/u)
  const works = rows<{
    id: string
    number: string
    title: string
    running: string
    sensitivity: Sensitivity
    words: string
  }>(
    db,
    `SELECT work.id, coalesce(${firstNumber}, '') AS number, work.title, entry.running, work.sensitivity,
      entry.running || ' ' || work.numbers || ' ' || work.title || ' ' || work.maker || ' ' || work.sensitivity || ' ' ||
      coalesce((SELECT name FROM party WHERE party.id = work.lender), '') AS words
     FROM entry JOIN work ON work.id = entry.work LEFT JOIN section ON section.id = entry.section
     WHERE entry.exhibition = :exhibition ORDER BY section.position IS NULL, section.position, entry.position, entry.id`,
    { exhibition },
  )
  const lines = works
    .filter(({ words }) => wanted.every(word => words.toLocaleLowerCase('en').includes(word)))
    .map(({ sensitivity, words: _, ...work }) => {
      const budget = budgetOf(sensitivity)
      return { ...work, ...toldOf(spentOf(daysOf(db, shows, work.id, today), budget, today), budget, sensitivity) }
    })
    .sort((a, b) => shareOf(b) - shareOf(a))
  return { lines: lines.slice(offset, offset + limit), total: lines.length }
}

/** Without a budget there is no share: those stand last. */
function shareOf({ most, budget }: Output<'light.list'>['lines'][number]): number {
  return budget.luxHours === null ? -1 : most / budget.luxHours
}
