/**
 * What a room's own plan leaves to settle for a show: things out of the room, in one another, in the way of a door or
 * before what a hand must reach; partitions that cross; openings that their wall has no room for. It is planning, no
 * proof: widths of escape routes and what may stand in them are set by local codes.
 */
import type { WallRow } from '../contract/areas/rooms.ts'
import type { Finding } from '../contract/shared.ts'
import type { Point } from '../drawing/room-plan.ts'
import { bandOf, footprintOf, outsideOf, overlapBy, type Thing } from './footprint.ts'
import { type SeenFace, stripBefore, sweptBefore } from './kept-free.ts'
import { within } from './outline-shape.ts'
import type { Ends } from './partition.ts'

export interface StandingThing extends Thing {
  readonly id: string
  readonly kind: string
  readonly name: string
  readonly bottom: number
  /** Null: up to the ceiling. */
  readonly height: number | null
}

export interface StandingPartition {
  readonly id: string
  readonly name: string
  readonly ends: Ends
  readonly thickness: number
  readonly height: number
}

export interface RoomStands {
  readonly name: string
  /** Walls of the outline; openings tell how their leaves turn in this room. */
  readonly walls: readonly WallRow[]
  /** False while the walls do not come round: nothing is outside then. */
  readonly closed: boolean
  readonly partitions: readonly StandingPartition[]
  /** Both faces of each partition, each as it is seen. */
  readonly faces: readonly WallRow[]
  readonly things: readonly StandingThing[]
}

export interface StandRules {
  /** What a room's own measures may be off, mm: nearer than this nothing is told. */
  readonly within: number
  /** Floor kept free before doors, passages and what must stay reachable, mm. */
  readonly clearBefore: number
}

/** Something that takes up floor, between two heights. */
interface Obstacle {
  readonly id: string
  readonly subject: 'standing' | 'wall'
  readonly called: string
  readonly shape: readonly Point[]
  readonly low: number
  readonly high: number
  /** One walks on it. */
  readonly walked: boolean
  readonly verb: 'stands' | 'is'
}

const WALKED: readonly string[] = ['stair', 'ramp', 'platform']
/** They may stand half in a wall: a pilaster, a stair that goes on behind it. */
const IN_WALLS: readonly string[] = ['column', 'stair']
/** Shapes that share less than this, mm, stand beside one another. */
const TOUCH = 1

interface Asking {
  readonly room: RoomStands
  readonly rules: StandRules
  readonly say: (mm: number) => string
  readonly obstacles: readonly Obstacle[]
}

export function standFindings(room: RoomStands, rules: StandRules, say: (mm: number) => string): Finding[] {
  const obstacles = [
    ...room.things.map(
      (thing): Obstacle => ({
        id: thing.id,
        subject: 'standing',
        called: `the ${thing.name === '' ? thing.kind : thing.name}`,
        shape: footprintOf(thing),
        low: thing.bottom,
        high: thing.height === null ? Infinity : thing.bottom + thing.height,
        walked: WALKED.includes(thing.kind),
        verb: 'stands',
      }),
    ),
    ...room.partitions.map(
      (partition): Obstacle => ({
        id: partition.id,
        subject: 'wall',
        called: partition.name,
        shape: bandOf(partition.ends, partition.thickness),
        low: 0,
        high: partition.height,
        walked: false,
        verb: 'is',
      }),
    ),
  ]
  const asking: Asking = { room, rules, say, obstacles }
  return [
    ...outside(asking),
    ...inOneAnother(asking),
    ...partitionsCross(asking),
    ...room.walls.flatMap(wall => beforeFace(asking, wall, null)),
    ...room.faces.flatMap(face => beforeFace(asking, face, face.id)),
    ...room.partitions.flatMap(({ id }) => {
      const face = room.faces.find(one => one.id === id && one.side === 'a')
      return face === undefined ? [] : openingFindings(room.name, face, say)
    }),
  ]
}

function found(
  { room }: Asking,
  about: Pick<Obstacle, 'subject' | 'id'>,
  severity: Finding['severity'],
  code: string,
  text: string,
  figures: Finding['figures'],
): Finding {
  return { severity, code, subject: { kind: about.subject, id: about.id }, text: `${room.name}: ${text}`, figures }
}

function outside(asking: Asking): Finding[] {
  const { room, rules, say } = asking
  const outline = room.walls.map(wall => wall.from)
  if (!room.closed || outline.length < 3) return []
  const things = room.things.flatMap((thing, at) => {
    const obstacle = asking.obstacles[at]
    if (obstacle === undefined) return []
    if (IN_WALLS.includes(thing.kind) && within(outline, [thing.x, thing.y])) return []
    const out = outsideOf(obstacle.shape, outline)
    if (out === null || out.by <= rules.within) return []
    const wall = room.walls[out.side]?.name ?? 'a wall'
    const text = `${obstacle.called} stands ${say(out.by)} beyond ${wall}.`
    return [found(asking, obstacle, 'stop', 'outside-room', text, { by: out.by, wall: room.walls[out.side]?.id ?? '' })]
  })
  const partitions = room.partitions.flatMap(({ id, name, ends }) => {
    const out = outsideOf(ends, outline)
    if (out === null || out.by <= rules.within) return []
    const wall = room.walls[out.side]?.name ?? 'a wall'
    const text = `${name} crosses ${wall} and ends ${say(out.by)} beyond it.`
    const wholly = ends.every(end => !within(outline, end))
    return [
      found(
        asking,
        { subject: 'wall', id },
        'stop',
        wholly ? 'partition-outside' : 'partition-crosses-wall',
        wholly ? `${name} is not in the room; it is ${say(out.by)} beyond ${wall}.` : text,
        { by: out.by, wall: room.walls[out.side]?.id ?? '' },
      ),
    ]
  })
  return [...things, ...partitions]
}

const meet = (a: Obstacle, low: number, high: number) => a.low < high - TOUCH && low < a.high - TOUCH

/** Each pair once, told of the later; two partitions are told by themselves. */
function inOneAnother(asking: Asking): Finding[] {
  const { obstacles, say } = asking
  return obstacles.flatMap((a, at) =>
    obstacles.slice(at + 1).flatMap(b => {
      if ((a.subject === 'wall' && b.subject === 'wall') || !meet(a, b.low, b.high)) return []
      const by = overlapBy(a.shape, b.shape)
      if (by <= TOUCH) return []
      const [thing, other] = b.subject === 'wall' ? [a, b] : [b, a]
      const code = other.subject === 'wall' ? 'stands-in-partition' : 'stand-in-one-another'
      const text = `${thing.called} stands ${say(by)} in ${other.called}.`
      return [found(asking, thing, 'stop', code, text, { by, with: other.id })]
    }),
  )
}

/** Partitions that are joined end to end or end to face by their middle lines overlap by half a thickness; that is a joint. */
function partitionsCross(asking: Asking): Finding[] {
  const { room, say } = asking
  return room.partitions.flatMap((a, at) =>
    room.partitions.slice(at + 1).flatMap(b => {
      const by = overlapBy(bandOf(a.ends, a.thickness), bandOf(b.ends, b.thickness))
      if (by <= Math.max(a.thickness, b.thickness) / 2 + TOUCH) return []
      const text = `${b.name} goes ${say(by)} through ${a.name}.`
      return [found(asking, { subject: 'wall', id: b.id }, 'stop', 'partitions-cross', text, { by, with: a.id })]
    }),
  )
}

function beforeFace(asking: Asking, wall: WallRow, own: string | null): Finding[] {
  const { room, rules, say } = asking
  const partition = room.partitions.find(({ id }) => id === own)
  const face: SeenFace = { ...wall, before: (partition?.thickness ?? 0) / 2 }
  const others = asking.obstacles.filter(({ id }) => id !== own)
  const openings = wall.openings.filter(({ kind }) => kind === 'door' || kind === 'passage')
  const ofOpenings = openings.flatMap(opening => {
    const name = opening.label === '' ? `the ${opening.kind} of ${wall.name}` : `${opening.label}, ${wall.name}`
    const swept = sweptBefore(face, opening)
    const strip = stripBefore(face, opening, rules.clearBefore)
    return others.flatMap(obstacle => {
      if (!meet(obstacle, opening.y, opening.y + opening.height)) return []
      const by = Math.max(0, ...swept.map(shape => overlapBy(shape, obstacle.shape)))
      if (by > TOUCH) {
        const text = `${obstacle.called} ${obstacle.verb} ${say(by)} in the swing of ${name}.`
        return [found(asking, obstacle, 'stop', 'in-swing', text, { opening: opening.id, by })]
      }
      const before = obstacle.walked ? 0 : overlapBy(strip, obstacle.shape)
      if (before <= rules.within) return []
      const text = `${obstacle.called} ${obstacle.verb} ${say(before)} in the ${say(rules.clearBefore)} kept free before ${name}.`
      const figures = { opening: opening.id, by: before, clear: rules.clearBefore }
      return [found(asking, obstacle, 'settle', 'before-opening', text, figures)]
    })
  })
  const ofFixtures = wall.keepClears.flatMap(fixture => {
    const name = `the ${fixture.label === '' ? fixture.kind : fixture.label} of ${wall.name}`
    return others.flatMap(obstacle => {
      const depth = fixture.depth ?? 0
      const box = stripBefore(face, fixture, Math.max(depth, TOUCH))
      const into = meet(obstacle, fixture.y, fixture.y + fixture.height) ? overlapBy(box, obstacle.shape) : 0
      if (depth > TOUCH && into > TOUCH) {
        const text = `${obstacle.called} ${obstacle.verb} ${say(into)} in ${name}, which is ${say(depth)} deep.`
        return [found(asking, obstacle, 'stop', 'in-fixture', text, { fixture: fixture.id, by: into, depth })]
      }
      if (!fixture.reachable || obstacle.walked) return []
      const by = overlapBy(stripBefore(face, fixture, depth + rules.clearBefore), obstacle.shape)
      if (by <= TOUCH) return []
      const text = `${obstacle.called} ${obstacle.verb} before ${name}, which must stay reachable.`
      return [found(asking, obstacle, 'stop', 'before-reachable', text, { fixture: fixture.id, by })]
    })
  })
  return [...ofOpenings, ...ofFixtures]
}

/** Openings that their wall has no room for. */
export function openingFindings(room: string, wall: WallRow, say: (mm: number) => string): Finding[] {
  const told = (severity: Finding['severity'], code: string, text: string, figures: Finding['figures']): Finding => ({
    severity,
    code,
    subject: { kind: 'wall', id: wall.id },
    text: `${room} ${wall.name}: ${text}`,
    figures,
  })
  return wall.openings.flatMap(({ id, kind, x, y, width, height }, at) => {
    const found: Finding[] = []
    const over = Math.max(-x, x + width - wall.length)
    if (width > wall.length + TOUCH) {
      const by = width - wall.length
      found.push(
        told('stop', 'opening-wider', `a ${kind} is ${say(by)} wider than the wall is long.`, { opening: id, by }),
      )
    } else if (over > 0.5) {
      found.push(
        told('settle', 'opening-off-wall', `a ${kind} reaches ${say(over)} beyond the end of the wall.`, { over }),
      )
    }
    const above = y + height - wall.height
    if (above > TOUCH) {
      found.push(
        told('settle', 'opening-too-high', `a ${kind} reaches ${say(above)} above the wall.`, {
          opening: id,
          by: above,
        }),
      )
    }
    for (const other of wall.openings.slice(at + 1)) {
      const by = Math.min(
        x + width - other.x,
        other.x + other.width - x,
        y + height - other.y,
        other.y + other.height - y,
      )
      if (by <= TOUCH) continue
      found.push(
        told('settle', 'openings-overlap', `a ${kind} and a ${other.kind} overlap by ${say(by)}.`, {
          opening: id,
          with: other.id,
          by,
        }),
      )
    }
    return found
  })
}
