/** Where everything was at a moment, with what has two places or none. */
import type { WhereLine } from '../../../src/contract/areas/movements.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { aroundWords, placesAround } from '../../../src/record/nested.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import type { Reading } from '../service.ts'
import { sheetTime } from '../sheets/wishes.ts'
import { row, rows, value } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { collator, namer } from './places.ts'
import { isTold, nowhereSaid, type Part, setApart, setsStanding, togetherOf } from './sets-stand.ts'
import { inForce, type Stood, standingCrates, standingWorks } from './standing.ts'
import { type HungUnrecorded, hungUnrecorded } from './unrecorded.ts'

interface Thing {
  readonly kind: 'work' | 'crate'
  readonly id: string
  readonly title: string
  readonly maker: string
  readonly running: string
  /** All of its numbers, as written and to compare: any of them finds it. */
  readonly numbers: string
  readonly sort: string
}

const pageOf = 200

function thingsOf(db: ReadHandle, exhibition: string | undefined): Thing[] {
  if (exhibition !== undefined) {
    return rows<Thing>(
      db,
      `SELECT 'work' AS kind, work.id, work.title, work.maker, entry.running,
        work.numbers, '' AS sort
       FROM entry JOIN work ON work.id = entry.work LEFT JOIN section ON section.id = entry.section
       WHERE entry.exhibition = :exhibition ORDER BY section.position IS NULL, section.position, entry.position, entry.id`,
      { exhibition },
    )
  }
  const works = rows<Thing>(
    db,
    `SELECT 'work' AS kind, id, title, maker, '' AS running, numbers,
       sort_title AS sort FROM work
     ORDER BY sort_number, n`,
  )
  const crates = rows<Thing>(
    db,
    `SELECT 'crate' AS kind, id, name AS title, '' AS maker, '' AS running, '' AS numbers,
       name AS sort FROM location
     WHERE kind IN ('crate', 'vehicle') ORDER BY name, id`,
  )
  return [...works, ...crates]
}

interface Line {
  readonly thing: Thing
  readonly stood: Stood | undefined
  readonly around: readonly string[]
  readonly words: string
}

export function where(reading: Reading, input: Received<'movement.where'>): Output<'movement.where'> {
  const { db } = reading
  const { exhibition, order = 'work', offset = 0, limit = pageOf } = input
  if (
    exhibition !== undefined &&
    value(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined
  ) {
    throw notFound('exhibition', 'exhibition')
  }
  const at = new Date(input.at ?? reading.now()).toISOString()
  const crates = standingCrates(db, at)
  const stood = new Map([...standingWorks(db, at, exhibition).map(each => [each.thing, each] as const), ...crates])
  const name = namer(db)
  const sets = setsStanding(db, at, exhibition, stood)
  const around = new Map<string, { readonly places: readonly string[]; readonly words: string }>()
  function wayOf({ place, movement }: Stood) {
    const known = around.get(place)
    if (known !== undefined) return known
    const places = placesAround(place, crates)
    const recorded = () =>
      value<string>(db, 'SELECT place_words FROM movement WHERE id = :movement', { movement }) ?? ''
    const way = { places, words: aroundWords(places, each => name(each) ?? recorded()) }
    around.set(place, way)
    return way
  }
  const all = thingsOf(db, exhibition).map((thing): Line => {
    // A set that never moved as one is where all of its parts are.
    const own = stood.get(thing.id) ?? togetherOf(thing.id, sets.get(thing.id))
    const way = own === undefined ? { places: [], words: '' } : wayOf(own)
    return { thing, stood: own, around: way.places, words: way.words }
  })
  const ticks = exhibition === undefined ? [] : hungUnrecorded(db, exhibition, at)
  const twice = new Map(ticks.filter(({ work, later }) => later || stood.has(work)).map(each => [each.work, each]))
  const wanted = (input.words ?? '')
    .toLocaleLowerCase('en')
    .split(/\s+/u)
    .filter(word => word !== '')
  const { thing } = input
  const meant = thing === undefined ? all : all.filter(line => line.thing.id === thing)
  if (thing !== undefined && meant.length === 0) throw notFound('work or crate', 'thing')
  const found = wanted.length === 0 ? meant : meant.filter(line => isMeant(line, wanted))
  const lines = order === 'work' ? found : found.toSorted(order === 'place' ? byPlace : bySince)
  const shown = lines.slice(offset, offset + limit)
  return {
    at,
    lines: shown.map(line => told(db, line, twice.get(line.thing.id), sets.get(line.thing.id) ?? [], name)),
    total: lines.length,
    without: all.filter(line => line.stood === undefined && line.thing.kind === 'work' && !isTold(line, sets)).length,
    twice: twice.size,
    unrecorded: ticks.filter(({ later }) => !later).length,
    // Beside its parts a set would be counted twice.
    places: counted(exhibition === undefined ? all.filter(line => !isTold(line, sets)) : all),
  }
}

function isMeant({ thing, words }: Line, wanted: readonly string[]): boolean {
  const text = `${thing.running} ${thing.numbers} ${thing.title} ${thing.maker} ${words}`.toLocaleLowerCase('en')
  return wanted.every(word => text.includes(word))
}

/** What has no place stands first: it is what one looks for. */
function byPlace(a: Line, b: Line): number {
  if ((a.stood === undefined) !== (b.stood === undefined)) return a.stood === undefined ? -1 : 1
  const [one, other] = [a, b].map(line => `${line.around.length > 1 ? line.words.split(', at ').at(-1) : line.words}`)
  return collator.compare(one ?? '', other ?? '') || collator.compare(a.words, b.words)
}

function bySince(a: Line, b: Line): number {
  const [one, other] = [a.stood?.at ?? '', b.stood?.at ?? '']
  return one < other ? 1 : one > other ? -1 : 0
}

function counted(all: readonly Line[]): Output<'movement.where'>['places'] {
  const works = new Map<string, { words: string; works: number }>()
  for (const { thing, around, words } of all) {
    const place = around.at(-1)
    if (place === undefined || thing.kind === 'crate') continue
    const known = works.get(place)
    if (known === undefined) works.set(place, { words: words.split(', at ').at(-1) ?? words, works: 1 })
    else known.works++
  }
  return [...works]
    .map(([place, each]) => ({ place, ...each }))
    .sort((a, b) => b.works - a.works || collator.compare(a.words, b.words))
}

interface Details {
  readonly spot: string
  readonly people: string
  readonly fromWords: string
  /** The place of the movement before the one it stands by; null where there was none. */
  readonly before: string | null
}

/** Of a work or a crate, what is said of the movement it stands by. */
const details = (kind: 'work' | 'crate') =>
  `SELECT movement.spot, movement.people, own.from_words AS fromWords,
    (SELECT moved.place FROM moved WHERE moved.${kind} = :id AND (moved.at, moved.movement) < (own.at, own.movement)
     AND ${inForce} ORDER BY moved.at DESC, moved.movement DESC LIMIT 1) AS before
   FROM moved AS own JOIN movement ON movement.id = own.movement WHERE own.movement = :movement AND own.${kind} = :id`

function told(
  db: ReadHandle,
  { thing, stood, around, words }: Line,
  tick: HungUnrecorded | undefined,
  parts: readonly Part[],
  name: (place: string) => string | undefined,
): WhereLine {
  const { sort: _, numbers: __, ...named } = thing
  // Only of what is shown: a query for each of 70,000 works would be felt.
  const number =
    thing.kind === 'work' ? value<string>(db, `SELECT ${firstNumber} FROM work WHERE id = :id`, { id: thing.id }) : ''
  const said =
    stood === undefined ? undefined : row<Details>(db, details(thing.kind), { movement: stood.movement, id: thing.id })
  const findings: WhereLine['findings'] = []
  const say = (code: string, text: string, figures: WhereLine['findings'][number]['figures'] = {}) =>
    findings.push({ severity: 'settle', code, subject: { kind: thing.kind, id: thing.id }, text, figures })
  if (tick !== undefined) {
    const wall = name(tick.face) ?? ''
    const since = sheetTime(tick.at)
    say(
      'two-places',
      tick.later
        ? `Said to hang on ${wall} since ${since}, yet the record moved it since. Take it off the wall, or correct the record.`
        : `Said to hang on ${wall} since ${since}, while the record has it at ${words}. Take the hanging into the record.`,
      { face: tick.face, at: tick.at },
    )
  }
  const apartSaid = setApart(db, parts, stood === undefined ? null : { place: stood.place, words }, name)
  if (apartSaid !== null) say('parts-apart', apartSaid)
  else if (stood === undefined && thing.kind === 'work') say('no-place', nowhereSaid(db, thing.id))
  const before = said?.before ?? null
  if (before !== null && before !== stood?.from)
    say('broken-way', brokenWords(said?.fromWords ?? '', name(before) ?? 'another place'))
  return {
    ...named,
    number: number ?? '',
    movement: stood === undefined || stood.movement === '' ? null : stood.movement,
    place: stood?.place ?? null,
    words,
    spot: said?.spot ?? '',
    since: stood?.at ?? null,
    people: said?.people ?? '',
    stands: around.at(-1) ?? null,
    parts: parts.length,
    findings,
  }
}

export function brokenWords(left: string, stood: string): string {
  return `Taken ${left === '' ? 'from nowhere' : `from ${left}`}, while the record had it at ${stood}: between the two something was entered late, or not at all.`
}
