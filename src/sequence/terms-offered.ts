/** What a term of a loan means in a show: a rule that is offered, never given by itself, or what to ask a person. */
import { plainWords } from '../checklist/plain-text.ts'
import type { PlanRoomRow } from '../contract/areas/plan.ts'
import { facesOf } from '../plan/stands-drawn.ts'
import { facesIn, facingAmong } from './facing.ts'
import { mostWorks, type RuleKind } from './hang-rule.ts'
import type { AwayFrom, LoanTerm } from './loan-terms.ts'

export interface TermWork {
  readonly work: string
  readonly running: string
  readonly title: string
  readonly maker: string
  readonly limit: number | null
}

export interface TermShow {
  readonly works: readonly TermWork[]
  readonly rooms: readonly PlanRoomRow[]
}

type Place = { readonly kind: 'wall' | 'room'; readonly id: string }

export interface RuleOffered {
  readonly kind: RuleKind
  /** By the work. */
  readonly works: readonly string[]
  readonly places: readonly Place[]
}

export interface TermOffered {
  /** Each may be taken by itself. */
  readonly offers: readonly RuleOffered[]
  /** Lux that may be taken as the work's limit. */
  readonly limit: number | null
  /** What a person is asked; empty where the offer is plain. */
  readonly asks: string
  /** Why nothing is to be done; empty else. */
  readonly kept: string
}

const none: TermOffered = { offers: [], limit: null, asks: '', kept: '' }
const ask = (asks: string): TermOffered => ({ ...none, asks })

/** No more works are offered for one name: it is no name then. */
const mostNamed = 8

export function termOffered({ read, quoted }: LoanTerm, own: TermWork, show: TermShow): TermOffered {
  switch (read.asks) {
    case 'nothing':
      return { ...none, kept: 'It is no matter of the hang.' }
    case 'unclear':
      return ask(read.why)
    case 'light':
      if (own.limit !== null && own.limit <= read.lux)
        return { ...none, kept: `Its limit is ${own.limit} lux already.` }
      if (own.limit === null) return { ...none, limit: read.lux }
      return { ...none, limit: read.lux, asks: `Its limit is ${own.limit} lux, and this says ${read.lux}.` }
    case 'apart':
    case 'with':
      return neighbours(read.how, read.named, own, show)
    case 'away':
      return awayFrom(read.from, own, show)
    case 'place': {
      const places = placesNamed(read.named, show)
      if (places.length === 0)
        return ask(`No room or wall of this show is called “${read.named}”. Which does “${quoted}” mean?`)
      return { ...none, offers: [{ kind: read.how, works: [own.work], places }] }
    }
  }
}

function neighbours(kind: RuleKind, named: string, own: TermWork, show: TermShow): TermOffered {
  const others = worksNamed(named, show.works).filter(({ work }) => work !== own.work)
  const offers = others.map(({ work }) => ({ kind, works: [own.work, work], places: [] }))
  if (others.length === 1) return { ...none, offers }
  if (others.length === 0 || others.length > mostNamed) return ask(`Which works of this show are “${named}”?`)
  return { ...none, offers, asks: `“${named}” may be ${others.length} works of this show.` }
}

/** Works that are called so: by number, by title, else by maker. Part of a title is not enough. */
export function worksNamed(named: string, works: readonly TermWork[]): readonly TermWork[] {
  const words = bare(named)
  if (words === '') return []
  const numbers =
    /^(?:(?:cat|exh|work|works|painting|picture) )?(?:nos?|nr|number|cat)? ?(\d+[a-z]?(?:(?: and)? \d+[a-z]?)*)$/.exec(
      words,
    )?.[1]
  if (numbers !== undefined) {
    const wanted = numbers.split(/ (?:and )?/)
    const found = works.filter(({ running }) => wanted.includes(plainWords(running)))
    return found.length === wanted.length ? found : []
  }
  const titled = works.filter(({ title }) => bare(title) !== '' && bare(title) === words)
  if (titled.length > 0) return titled
  const maker =
    /^(?:(?:work|works|thing|things|one|anything|paintings?|prints?|drawings?|photographs?) )?(?:by |of )?(.+)$/.exec(
      words,
    )?.[1]
  return works.filter(work => plainWords(work.maker) !== '' && plainWords(work.maker) === maker)
}

/** A title is the same with and without its article. */
function bare(text: string): string {
  return plainWords(text).replace(/^(?:(?:the|a|an|any|all|other|his|her|their) )+/, '')
}

function placesNamed(named: string, { rooms }: TermShow): Place[] {
  const words = plainWords(named)
  const room = rooms.filter(one => plainWords(one.name) === words)
  if (room.length > 0) return room.map(({ id }) => ({ kind: 'room', id }))
  const walls = rooms.flatMap(one =>
    [...one.walls, ...one.partitions.flatMap(partition => facesOf(partition))].map(({ face, name }) => ({
      face,
      names: [`${one.name} ${name}`, name, `${name} wall`, `${name} wall of ${one.name}`],
    })),
  )
  const found = walls.filter(({ names }) => names.some(name => plainWords(name) === words))
  return found.length === 1 ? found.map(({ face }) => ({ kind: 'wall', id: face })) : []
}

/** Where a rule asks more than the words. */
const wholeWall: Partial<Readonly<Record<AwayFrom, string>>> = {
  daylight: 'Stricter than the words: it bars whole rooms with windows.',
  window: 'Stricter than the words: it bars the whole wall.',
  heat: 'Stricter than the words: it bars the whole wall.',
  air: 'Stricter than the words: it bars the whole wall.',
  'outside wall': 'As the plan has it: walls with no other room behind them.',
}

const heat = /\b(?:radiator|heater|heating|convector|fireplace|stove)\b/i
const air = /\b(?:vent|ventilation|grille|grill|duct|air|inlet|outlet)\b/i

function awayFrom(from: AwayFrom, own: TermWork, { rooms }: TermShow): TermOffered {
  const places = placesOf(from, rooms)
  if (places === null) return ask('Which walls are outside walls? The plan does not know what is behind any.')
  if (places.length > 0 && places.length <= mostWorks)
    return { ...none, offers: [{ kind: 'not on', works: [own.work], places }], asks: wholeWall[from] ?? '' }
  const without: Readonly<Record<AwayFrom, string>> = {
    daylight: 'The plan has no window in any room.',
    window: 'The plan has no window on any wall.',
    'facing a window': 'The plan has no wall that faces windows.',
    heat: 'No radiator or heater is drawn on any wall. Is there one?',
    air: 'No vent or grille is drawn on any wall. Is there one?',
    'outside wall': 'The plan has another room behind every wall.',
  }
  return from === 'heat' || from === 'air' ? ask(without[from]) : { ...none, kept: without[from] }
}

/** Rooms or walls that have it; null where the plan can't know. */
function placesOf(from: AwayFrom, rooms: readonly PlanRoomRow[]): Place[] | null {
  const walls = rooms.flatMap(room => room.walls)
  const asPlaces = (faces: readonly string[]) => faces.map((id): Place => ({ kind: 'wall', id }))
  const fitted = (kind: RegExp, is: string) =>
    walls
      .filter(wall => wall.fixtures.some(thing => thing.kind === is || kind.test(thing.label)))
      .map(({ face }) => face)
  switch (from) {
    case 'daylight':
      return rooms.filter(room => room.walls.some(hasWindow)).map(({ id }) => ({ kind: 'room', id }))
    case 'window':
      return asPlaces(walls.filter(hasWindow).map(({ face }) => face))
    case 'facing a window':
      return asPlaces(rooms.flatMap(facingWindows))
    case 'heat':
      return asPlaces(fitted(heat, 'radiator'))
    case 'air':
      return asPlaces(fitted(air, 'grille'))
    case 'outside wall':
      return walls.some(({ backs }) => backs !== null)
        ? asPlaces(walls.filter(({ backs }) => backs === null).map(({ face }) => face))
        : null
  }
}

const hasWindow = ({ openings }: PlanRoomRow['walls'][number]) => openings.some(({ kind }) => kind === 'window')

function facingWindows(room: PlanRoomRow): string[] {
  const faces = facesIn(room)
  const facing = facingAmong(faces)
  const windows = room.walls.flatMap(({ face, openings }) =>
    openings.filter(({ kind }) => kind === 'window').map(({ x, width }) => ({ face, from: x, to: x + width })),
  )
  return faces
    .filter(({ face, ends: [a, b] }) => {
      const whole = { face, from: 0, to: Math.hypot(b[0] - a[0], b[1] - a[1]) }
      return windows.some(window => facing(whole, window))
    })
    .map(({ face }) => face)
}
