/** The rules of a show, given and from what works carry, as they are held against its walls. */
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import { facesOf } from '../../../src/plan/stands-drawn.ts'
import { axesOfFace } from '../../../src/sequence/axes-of-face.ts'
import { facesIn, facingAmong } from '../../../src/sequence/facing.ts'
import { type Extent, type HangRule, type PlaceKind, ruleNeeds } from '../../../src/sequence/hang-rule.ts'
import { looksIn } from '../../../src/sequence/looks-in-room.ts'
import type { Hung, Spot } from '../../../src/sequence/rule-holds.ts'
import { namedWorks, ruleSentence } from '../../../src/sequence/rule-sentence.ts'
import { spotsOf } from '../../../src/sequence/ruled-show.ts'
import { stretchesIn } from '../../../src/sequence/stretches.ts'
import type { ReadHandle } from '../../database/handles.ts'
import type { AskedWork, Question } from './question.ts'
import { type Exception, exceptionsOf, type RulePlace, type StoredRule, storedRules } from './rules-stored.ts'

export interface GivenPlace {
  readonly kind: PlaceKind
  readonly id: string
  readonly name: string
}

/** With its place in a sentence. */
interface WordedPlace extends GivenPlace {
  readonly words: string
}

export interface Ruling {
  readonly stored: StoredRule | null
  /** Works by their place in the question; those of the show alone. */
  readonly rule: HangRule
  /** Works that the rule names and the show lacks, by the work. */
  readonly gone: readonly string[]
  readonly places: readonly GivenPlace[]
  readonly says: string
  /** Why it rests; empty while it holds. */
  readonly rests: string
  /** Lux, of a light limit. */
  readonly limit: number | null
}

/** The walls and works that rules are about, read once. */
export interface Grounds {
  readonly question: Question
  readonly rooms: readonly PlanRoomRow[]
}

export interface RulesRead {
  readonly rulings: readonly Ruling[]
  readonly exceptions: readonly Exception[]
}

/** All rules of the show: those given, in their order, then one for each light limit that some wall exceeds. */
export function rulingsOf(db: ReadHandle, exhibition: string, grounds: Grounds): RulesRead {
  const { question, rooms } = grounds
  const places = new Map(question.works.map(({ work }, index) => [work, index] as const))
  const exceptions = exceptionsOf(db, exhibition).filter(({ entry, figures }) => {
    const limit = question.works.find(work => work.entry === entry)?.limit ?? null
    return limit !== null && figures === figuresOf(limit)
  })
  const stored = storedRules(db, exhibition).map((each): Ruling => {
    const works = each.works.flatMap(work => places.get(work) ?? [])
    const gone = each.works.filter(work => !places.has(work))
    const where = each.places.flatMap(place => placeOf(rooms, place))
    const axes = each.kind === 'axis' ? axesOf(grounds, each.places) : []
    const rule: HangRule = {
      ...{ id: each.id, kind: each.kind, works, within: each.within, axes },
      faces: facesOfPlaces(rooms, each.places),
    }
    const first = question.works[works[0] ?? -1]
    const section = question.sections.find(({ id }) => id === first?.section)?.title
    const named = [...works.flatMap(index => question.works[index] ?? []), ...goneWorks(db, gone)]
    const says = ruleSentence({
      ...{ kind: each.kind, works: named, within: each.within, limit: null },
      ...{ places: where.map(place => place.words), section: section ?? 'its section' },
    })
    const lacks = works.length < ruleNeeds[each.kind].least
    const rests = lacks
      ? `It rests: ${goneWords(db, gone)}.`
      : needsPlace(each) && where.length === 0
        ? 'It rests: its place is not in the building any more.'
        : each.within === 'section' && section === undefined
          ? 'It rests: the work is in no section.'
          : ''
    return {
      stored: each,
      rule,
      gone,
      places: where.map(({ kind, id, name }) => ({ kind, id, name })),
      says,
      rests,
      limit: null,
    }
  })
  return { rulings: [...stored, ...lightRulings(question, exceptions)], exceptions }
}

/** What an exception from a light limit is settled for. */
export function figuresOf(limit: number): string {
  return JSON.stringify({ limit })
}

function needsPlace({ kind, within }: StoredRule): boolean {
  const { place } = ruleNeeds[kind]
  return place === 'walls' || place === 'axis' || kind === 'stays' || within === 'room'
}

function lightRulings({ works, walls }: Question, exceptions: readonly Exception[]): Ruling[] {
  const settled = new Set(exceptions.map(({ entry }) => entry))
  const limits = [...new Set(works.flatMap(work => work.limit ?? []))].sort((a, b) => a - b)
  return limits.flatMap((limit): Ruling[] => {
    const dark = walls.filter(({ plan }) => plan.plannedLux === null || plan.plannedLux <= limit)
    const own = works.flatMap((work, index) => (work.limit === limit && !settled.has(work.entry) ? [index] : []))
    if (dark.length === walls.length || own.length === 0) return []
    const faces = dark.map(({ wall }) => wall.face)
    const named = own.flatMap(index => works[index] ?? [])
    const says = ruleSentence({ kind: 'light', works: named, places: [], within: null, section: '', limit })
    const rule: HangRule = { id: `light:${limit}`, kind: 'light', works: own, faces, within: null, axes: [] }
    return [{ stored: null, rule, gone: [], places: [], says, rests: '', limit }]
  })
}

function goneWorks(db: ReadHandle, gone: readonly string[]): { running: string; title: string }[] {
  return gone.map(work => ({
    running: '',
    title: (db.prepare('SELECT title FROM work WHERE id = ?').pluck().get(work) as string | undefined) ?? '', // one column
  }))
}

function goneWords(db: ReadHandle, gone: readonly string[]): string {
  if (gone.length === 0) return 'it has too few works'
  return `${namedWorks(goneWorks(db, gone))} ${gone.length === 1 ? 'is' : 'are'} not in this show`
}

/** The walls that a rule's places mean. */
function facesOfPlaces(rooms: readonly PlanRoomRow[], places: readonly RulePlace[]): string[] {
  return [
    ...new Set(
      places.flatMap(({ kind, id }) => {
        if (kind === 'wall') return [id]
        const room = rooms.find(each => each.id === id)
        return room === undefined ? [] : facesIn(room).map(each => each.face)
      }),
    ),
  ]
}

/** The walls of a room and the sides of its partitions, by their names. */
export function namedFaces(room: PlanRoomRow): { readonly face: string; readonly name: string }[] {
  const sides = room.partitions.flatMap(partition => facesOf(partition))
  return [...room.walls, ...sides].map(({ face, name }) => ({ face, name: `${room.name}, ${name}` }))
}

/** A place with its words in a sentence; none where it is not in the building any more. */
export function placeOf(rooms: readonly PlanRoomRow[], { kind, id }: RulePlace): WordedPlace[] {
  for (const room of rooms) {
    if (kind === 'room' && room.id === id) return [{ kind, id, name: room.name, words: `in ${room.name}` }]
    if (kind === 'wall') {
      const wall = namedFaces(room).find(one => one.face === id)
      if (wall !== undefined) return [{ kind, id, name: wall.name, words: `on ${wall.name}` }]
    }
    const axis = looksIn(room, '').looking.find(one => one.of === id)
    if (axis !== undefined)
      return [{ kind, id, name: `${axis.label}, ${room.name}`, words: `on the axis of ${axis.label} in ${room.name}` }]
  }
  return []
}

function axesOf({ question, rooms }: Grounds, places: readonly RulePlace[]): HangRule['axes'] {
  return question.walls.flatMap(({ wall, room, plan: { centreLine } }) => {
    const { ends, looking, bars } = looksIn(
      rooms.find(one => one.id === room.id),
      wall.face,
    )
    const own = looking.filter(one => places.some(({ id }) => id === one.of))
    if (ends === null || own.length === 0) return []
    return axesOfFace(wall, { bottom: centreLine, top: centreLine }, ends, own, bars)
      .filter(({ kind }) => kind === 'doorway' || kind === 'bench')
      .map(({ x }) => ({ face: wall.face, x }))
  })
}

/** Whether two lengths of wall face each other in the room that they share. */
export function facingOf({ rooms }: Grounds): (a: Extent, b: Extent) => boolean {
  const faces = rooms.map(room => {
    const own = facesIn(room)
    return { own: new Set(own.map(each => each.face)), facing: facingAmong(own) }
  })
  return (a, b) => faces.find(({ own }) => own.has(a.face))?.facing(a, b) ?? false
}

/** Lengths of wall between openings, whatever hangs there: works on either side of a thermostat are neighbours. */
export function runsOf({ works, walls }: Question): Extent[] {
  const bare = walls.map(each => ({ ...each, works: [], made: [], wall: { ...each.wall, keepClears: [] } }))
  return stretchesIn(works, bare).map(({ elevation, from, to }) => ({ face: elevation.wall.face, from, to }))
}

/** The show with its works on these walls, as rules are held against it. */
export function hungOn(
  grounds: Grounds,
  walls: readonly {
    readonly face: string
    readonly works: readonly { readonly entry: string; readonly x: number }[]
  }[],
): Hung {
  const { works, sections } = grounds.question
  const places = new Map(works.map(({ entry }, index) => [entry, index] as const))
  const widthOf = (work: AskedWork | undefined) => work?.width ?? 0
  const on = walls.map(({ face, works: hung }) => ({
    face,
    works: hung.flatMap(({ entry, x }) => {
      const work = places.get(entry)
      return work === undefined ? [] : [{ work, x, width: widthOf(works[work]) }]
    }),
  }))
  return {
    spots: spotsOf(on, runsOf(grounds.question)),
    faces: facingOf(grounds),
    sections: works.map(work => sections.findIndex(({ id }) => id === work.section)),
  }
}

export function hungToday(grounds: Grounds): Hung {
  return hungOn(
    grounds,
    grounds.question.walls.map(({ wall, works }) => ({ face: wall.face, works })),
  )
}

/** Where the works of a rule hang, wall by wall. */
export function whereHung({ question, rooms }: Grounds, { works }: HangRule, spots: readonly Spot[]): string {
  const faces = new Map(rooms.flatMap(room => namedFaces(room)).map(each => [each.face, each.name] as const))
  const byFace = Map.groupBy(
    spots.filter(spot => works.includes(spot.work)),
    spot => spot.face,
  )
  return [...byFace]
    .map(
      ([face, own]) =>
        `${namedWorks(own.flatMap(({ work }) => question.works[work] ?? []))} on ${faces.get(face) ?? 'a wall'}`,
    )
    .join('; ')
}
