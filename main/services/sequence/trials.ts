/**
 * What would make a hang better, each tried on the whole question asked anew with one thing changed, and judged where
 * works would stand then: what is told is what is found after it is done. None of it is done.
 */
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { moveWays, withPartitionMoved } from '../../../src/plan/moved-partition.ts'
import { dropsOn, fitsOn } from '../../../src/sequence/on-wall.ts'
import { at, centresIn, type Hang, type TermWeights } from '../../../src/sequence/problem.ts'
import { type Centres, judge } from '../../../src/sequence/terms.ts'
import type { ShowUnit } from '../../../src/sequence/units-of-show.ts'
import { type Asked, type Known, problemOf } from './question.ts'
import { centresToday, hangOf, hungToday, short } from './told.ts'

type Faces = Received<'sequence.explain'>['faces']
type Helps = Pick<NonNullable<Output<'sequence.explain'>['wall']>, 'drop' | 'longer' | 'cleared' | 'partition'>

/** By how much a partition is moved, and a wall is longer, to see what that would give, mm. */
const tryBy = 400

export interface Otherwise {
  readonly known: Known
  readonly weights: TermWeights
  /** Stacks and grids of the hang. */
  readonly units: readonly ShowUnit[]
  /** The hang that is given; today's where left out. */
  readonly faces: Faces
}

export interface Stands {
  readonly hang: Hang
  readonly centres: Centres | undefined
}

/** Today's works stand where they do; a hang that is given is one in equal gaps. */
export function standsIn(asked: Asked, faces: Faces): Stands {
  if (faces !== undefined) return { hang: hangOf(asked, faces), centres: undefined }
  const hang = hungToday(asked)
  return { hang, centres: centresToday(asked, hang) }
}

function qualityOf({ problem }: Asked, { hang, centres }: Stands): number {
  return judge(problem, hang, undefined, centres).quality
}

export function helpsOn(otherwise: Otherwise, asked: Asked, stands: Stands, wall: Elevation): Helps {
  const quality = qualityOf(asked, stands)
  return {
    drop: dropOf(otherwise, asked, stands, wall),
    longer: longerOf(otherwise, asked, stands, wall),
    cleared: clearedOf(otherwise, quality, wall),
    partition: partitionOf(otherwise, asked, quality, wall),
  }
}

/** The same show with its walls changed. */
function withWalls({ known, weights, units }: Otherwise, walls: readonly Elevation[]): Asked {
  return problemOf({ ...known, question: { ...known.question, walls } }, weights, units)
}

/** A stack is not left out whole: single works alone are asked about. The best is asked about without it. */
function dropOf(
  { known, weights, units, faces }: Otherwise,
  asked: Asked,
  { hang, centres }: Stands,
  { wall: { face } }: Elevation,
): Helps['drop'] {
  const { problem, entries, members } = asked
  const best = dropsOn(problem, hang, face, centres).find(({ work }) => at(members, work).length === 1)
  if (best === undefined) return null
  const entry = at(entries, best.work)
  const without = (one: { readonly entry: string }) => one.entry !== entry
  // Rules name works by their place in the question: it keeps its own, and without a size nothing is planned with it.
  const question = {
    ...known.question,
    works: known.question.works.map(one => (without(one) ? one : { ...one, width: null, height: null })),
    walls: known.question.walls.map(one => ({ ...one, works: one.works.filter(without) })),
  }
  const then = problemOf({ ...known, question }, weights, units)
  const left = faces?.map(one => ({ ...one, works: one.works.filter(without) }))
  const gain = short(100 * (qualityOf(then, standsIn(then, left)) - qualityOf(asked, { hang, centres })))
  return gain <= 0 ? null : { entry, gain }
}

/** The wall longer at its right end, with the works of the stretch that grows spread over it in equal gaps. */
function longerOf(otherwise: Otherwise, asked: Asked, stands: Stands, { wall }: Elevation): Helps['longer'] {
  const { known, faces } = otherwise
  const walls = known.question.walls.map(one =>
    one.wall.face === wall.face ? { ...one, wall: { ...one.wall, length: wall.length + tryBy } } : one,
  )
  const then = withWalls(otherwise, walls)
  const grown = then.problem.bays.findIndex(({ face, to }) => face === wall.face && to > wall.length + 1)
  if (grown < 0) return null
  const { hang, centres } = standsIn(then, faces)
  const spread = centres?.with(grown, [...centresIn(then.problem, grown, at(hang, grown))])
  const hung = new Set(hang.flat())
  const out = then.problem.works.flatMap((work, index) => (work.stays === null && !hung.has(index) ? [index] : []))
  const fits = out.filter(
    work => !fitsOn(asked.problem, stands.hang, wall.face, work) && fitsOn(then.problem, hang, wall.face, work),
  )
  return {
    by: tryBy,
    gain: short(100 * (qualityOf(then, { hang, centres: spread }) - qualityOf(asked, stands))),
    fits: fits.flatMap(work => at(then.members, work).map(({ entry }) => entry)),
  }
}

/** What is kept clear on a wall, each taken away by itself: the one without which a stretch grows by most. */
function clearedOf(otherwise: Otherwise, quality: number, { wall }: Elevation): Helps['cleared'] {
  const { known, faces } = otherwise
  const free = (asked: Asked) =>
    asked.problem.bays.flatMap(({ face, from, to }) => (face === wall.face ? [{ from, to, length: to - from }] : []))
  const now = free(withWalls(otherwise, known.question.walls))
  const tried = wall.keepClears.flatMap(thing => {
    const walls = known.question.walls.map(one =>
      one.wall.face === wall.face
        ? { ...one, wall: { ...one.wall, keepClears: one.wall.keepClears.filter(other => other !== thing) } }
        : one,
    )
    const then = withWalls(otherwise, walls)
    const { x, width, label, kind } = thing
    const grown = free(then).find(({ from, to }) => from <= x && x + width <= to)
    if (grown === undefined) return []
    const was = Math.max(
      0,
      ...now.filter(({ from, to }) => from >= grown.from - 1 && to <= grown.to + 1).map(one => one.length),
    )
    if (grown.length - was < 1) return []
    const gain = 100 * (qualityOf(then, standsIn(then, faces)) - quality)
    const named = label === '' ? kind : label
    return [{ label: named, from: grown.from, to: grown.to, gives: grown.length, was, gain: short(gain) }]
  })
  return tried.sort((a, b) => b.gives - b.was - (a.gives - a.was))[0] ?? null
}

/** Partitions of the room moved either way along and across: the one by which the whole hang gains most. */
function partitionOf(
  { known, weights, units, faces }: Otherwise,
  { problem }: Asked,
  quality: number,
  { room: { id } }: Elevation,
): Helps['partition'] {
  const room = known.rooms.find(one => one.id === id)
  if (room === undefined) return null
  const own = facesIn(room)
  const axesOf = ({ bays }: Asked['problem']) =>
    bays.reduce((sum, bay) => sum + (own.has(bay.face) ? bay.axes.length : 0), 0)
  const tried = room.partitions.flatMap(({ id: partition, name }) =>
    moveWays.flatMap(way => {
      const moved = withPartitionMoved(room, partition, way, tryBy)
      if (moved === null) return []
      const rooms = known.rooms.map(one => (one.id === id ? moved : one))
      const then = problemOf({ ...known, rooms }, weights, units)
      const gain = short(100 * (qualityOf(then, standsIn(then, faces)) - quality))
      return [{ name, by: tryBy, way, gain, axes: { now: axesOf(problem), moved: axesOf(then.problem) } }]
    }),
  )
  const best = tried.sort((a, b) => b.gain - a.gain)[0]
  return best === undefined || best.gain <= 0 ? null : best
}

function facesIn(room: PlanRoomRow): ReadonlySet<string> {
  return new Set([
    ...room.walls.flatMap(wall => wall.face ?? []),
    ...room.partitions.flatMap(({ sides }) => sides.map(({ face }) => face)),
  ])
}
