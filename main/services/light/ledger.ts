/** The light of one work across its shows, and of all works of a show or of the catalogue as a list. */
import type { LightSort } from '../../../src/contract/areas/light.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { spentOf } from '../../../src/light/budget.ts'
import { type Day, dateOf } from '../../../src/light/day.ts'
import { spansOf } from '../../../src/light/dose.ts'
import { shareOf, violetKnown } from '../../../src/light/said.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dayAt } from '../days.ts'
import { collator, namer } from '../record/places.ts'
import type { Reading } from '../service.ts'
import { rows, value } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { readingsOf } from './readings.ts'
import { litDaysOf, Shows } from './received.ts'
import { Allowed } from './spent.ts'

/** What a work had received by the end of a day, of all time and of the year until then; null where no hours lit are known. */
export function receivedUntil(
  db: ReadHandle,
  work: string,
  day: Day,
  now: string,
): { ever: number; year: number; unknownHours: number } | null {
  const days = litDaysOf(db, new Shows(db), work, dayAt(now))
  if (days.length === 0) return null
  const { ever, used, unknownHours } = spentOf(days, null, day)
  return { ever, year: used, unknownHours }
}

export function ledger({ db, now }: Reading, { work }: Received<'light.ledger'>): Output<'light.ledger'> {
  if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
  const today = dayAt(now())
  const days = litDaysOf(db, new Shows(db), work, today)
  const name = namer(db)
  return {
    ...new Allowed(db, [work]).told(work, days, today),
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

type Line = Output<'light.list'>['lines'][number]

interface Listed {
  readonly id: string
  readonly number: string
  readonly title: string
  readonly running: string
  readonly words: string
}

const said = `work.numbers || ' ' || work.title || ' ' || work.maker || ' ' || work.sensitivity || ' ' ||
  coalesce((SELECT name FROM party WHERE party.id = work.lender), '')`

const ofShow = `SELECT work.id, coalesce(${firstNumber}, '') AS number, work.title, entry.running,
    entry.running || ' ' || ${said} AS words
  FROM entry JOIN work ON work.id = entry.work LEFT JOIN section ON section.id = entry.section
  WHERE entry.exhibition = :exhibition ORDER BY section.position IS NULL, section.position, entry.position, entry.id`

/** Whatever is or was in a show, or was read. */
const ofAll = `SELECT work.id, coalesce(${firstNumber}, '') AS number, work.title, '' AS running, ${said} AS words
  FROM work WHERE work.id IN (SELECT work FROM entry UNION SELECT work FROM light_reading) ORDER BY work.id`

function worksOf(db: ReadHandle, exhibition: string | undefined): Listed[] {
  if (exhibition !== undefined) return rows<Listed>(db, ofShow, { exhibition })
  return rows<Listed>(db, ofAll, {}).sort((a, b) => collator.compare(a.number, b.number))
}

const pageOf = 200

export function list({ db, now }: Reading, input: Received<'light.list'>): Output<'light.list'> {
  const { exhibition, sort = 'share', turned = false, offset = 0, limit = pageOf } = input
  if (
    exhibition !== undefined &&
    value(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined
  ) {
    throw notFound('exhibition', 'exhibition')
  }
  const today = dayAt(now())
  const shows = new Shows(db)
  const wanted = (input.words ?? '').toLocaleLowerCase('en').split(/\s+/u)
  const works = worksOf(db, exhibition).filter(({ words }) =>
    wanted.every(word => words.toLocaleLowerCase('en').includes(word)),
  )
  const allowed = new Allowed(
    db,
    works.map(({ id }) => id),
  )
  const lines = works.map(({ words: _, ...work }): Line => {
    const days = litDaysOf(db, shows, work.id, today)
    return { ...work, shows: [...new Set(days.map(each => each.title))], ...allowed.told(work.id, days, today) }
  })
  return { lines: sorted(lines, sort, turned).slice(offset, offset + limit), total: lines.length }
}

const sensitivities = ['high', 'medium', 'low', 'none']

/** What a line is sorted by: figures as they grow, or words; null where it is not known. */
const keys: Readonly<Record<Exclude<LightSort, 'order'>, (line: Line) => number | string | null>> = {
  title: ({ title }) => (title === '' ? null : title),
  sensitivity: ({ sensitivity }) => (sensitivity === '' ? null : sensitivities.indexOf(sensitivity)),
  share: ({ most, budgets: [holding] }) => (holding === undefined ? null : -shareOf(most, holding)),
  most: ({ most }) => -most,
  ever: ({ ever }) => -ever,
  ends: ({ budgets: [holding] }) => holding?.ends ?? holding?.endsIfLonger ?? null,
  uv: ({ violet, violets }) => (violetKnown(violets) ? -violet.most : null),
}

function sorted(lines: readonly Line[], by: LightSort, turned: boolean): Line[] {
  const way = turned ? -1 : 1
  if (by === 'order') return turned ? lines.toReversed() : [...lines]
  const keyOf = keys[by]
  return lines
    .map(line => ({ line, key: keyOf(line) }))
    .sort(({ key: a }, { key: b }) => {
      if (a === null || b === null) return Number(a === null) - Number(b === null)
      return way * (typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b)))
    })
    .map(({ line }) => line)
}
