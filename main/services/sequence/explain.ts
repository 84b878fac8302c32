/** Why a hang is as it is, and what would change it: of one work or one wall, asked anew each time. */
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { moveWays, withPartitionMoved } from '../../../src/plan/moved-partition.ts'
import { allowedOn } from '../../../src/sequence/allowed.ts'
import { type OtherPlace, otherPlaces } from '../../../src/sequence/next-best.ts'
import { dropsOn, longerBy, lostOn, onBay } from '../../../src/sequence/on-wall.ts'
import { at, type Hang, type Problem, type TermWeights } from '../../../src/sequence/problem.ts'
import { barOn } from '../../../src/sequence/served-on.ts'
import { type Centres, judge } from '../../../src/sequence/terms.ts'
import { unitBarOn } from '../../../src/sequence/unit-on.ts'
import type { ShowUnit } from '../../../src/sequence/units-of-show.ts'
import { notFound } from '../change.ts'
import type { Job } from '../service.ts'
import { type Asked, type Known, knownOf, problemOf } from './question.ts'
import { centresToday, countingOf, hangOf, hungToday, short, shortened } from './told.ts'
import { hungUnits } from './units.ts'

type Answer = Output<'sequence.explain'>
type Faces = Received<'sequence.explain'>['faces']

/** By how much a partition is moved, and a wall is longer, to see what that would give, mm. */
const tryBy = 400

export async function explain(job: Job, input: Received<'sequence.explain'>): Promise<Answer> {
  const weights = countingOf(input.weights)
  const known = knownOf(job, input.exhibition)
  const units = hungUnits(known, input.faces)
  const asked = problemOf(known, weights, units)
  const hang = hangIn(asked, input.faces)
  const centres = centresIn(asked, hang, input.faces)
  const { of } = input
  return {
    quality: short(judge(asked.problem, hang, undefined, centres).quality),
    works: hang.flat().flatMap(unit => at(asked.members, unit)).length,
    work: 'entry' in of ? workOf({ known, units }, asked, { hang, centres }, of.entry) : null,
    wall:
      'face' in of ? wallOf({ known, weights, units, faces: input.faces }, asked, { hang, centres }, of.face) : null,
  }
}

function hangIn(asked: Asked, faces: Faces): Hang {
  return faces === undefined ? hungToday(asked) : hangOf(asked, faces)
}

/** Today's works stand where they do; a hang that is given is one in equal gaps. */
function centresIn(asked: Asked, hang: Hang, faces: Faces): Centres | undefined {
  return faces === undefined ? centresToday(asked, hang) : undefined
}

interface Stands {
  readonly hang: Hang
  readonly centres: Centres | undefined
}

type HungIn = Pick<Otherwise, 'known' | 'units'>

function workOf({ known, units }: HungIn, asked: Asked, { hang, centres }: Stands, entry: string): Answer['work'] {
  const { problem, entries, members, stretches } = asked
  const index = members.findIndex(own => own.some(member => member.entry === entry))
  if (index < 0) throw notFound('work with a size in this show', 'of.entry')
  const work = at(problem.works, index)
  const bay = hang.findIndex(row => row.includes(index))
  const named = (which: number) => at(entries, which)
  const here = bay < 0 ? null : onBay(problem, hang, bay, undefined, centres)
  const row = bay < 0 ? [] : at(hang, bay)
  const own = row.indexOf(index)
  const { leftOf, rightOf } = bay < 0 ? { leftOf: null, rightOf: null } : at(problem.bays, bay)
  const beside = bay < 0 ? [] : [row[own - 1] ?? leftOf, row[own + 1] ?? rightOf]
  const unit = units.find(one => one.entries.includes(entry)) ?? null
  const bars = stretches.map((stretch, which) => {
    const bar =
      barOn(stretch, work, known.question.margin) ??
      (unit === null ? null : unitBarOn(stretch, unit, unit.hang, known.question.margin))
    return bar ?? (allowedOn(problem, which, [index]) ? null : 'rule')
  })
  const count = (bar: (typeof bars)[number]) => bars.filter(one => one === bar).length
  const places = work.stays === null ? otherPlaces(problem, hang, index, undefined, centres) : null
  const most = Math.max(...work.served.map(share => share ?? -1))
  return {
    entry,
    face: bay < 0 ? null : at(problem.bays, bay).face,
    stays: work.stays !== null,
    unit: unit === null ? null : { kind: unit.kind, with: unit.entries.filter(other => other !== entry) },
    served: { here: bay < 0 ? null : shortOr(work.served[bay]), most: most < 0 ? null : short(most) },
    axes: here === null ? [] : here.axes.flatMap(axis => (axis.work === index ? [axis.x] : [])),
    light: {
      limit: work.limit,
      planned: bay < 0 ? null : at(stretches, bay).elevation.plan.plannedLux,
      beside: beside.flatMap(one => (one === null ? [] : [{ entry: named(one), limit: at(problem.works, one).limit }])),
    },
    stretches: stretches.length,
    barred: {
      tooWide: count('too wide'),
      tooMuchLight: count('too much light'),
      tooHigh: count('too high'),
      tooLow: count('too low'),
      byRule: count('rule'),
    },
    rules: rulesOn(known, entry),
    next: told(asked, places?.next ?? null),
    elsewhere: told(asked, places?.elsewhere ?? null),
    looked: places?.looked ?? 0,
  }
}

function told({ problem, entries }: Asked, place: OtherPlace | null) {
  if (place === null) return null
  const { bay, x, swapped, price, lost } = place
  return {
    face: at(problem.bays, bay).face,
    x: short(x),
    swapped: swapped === null ? null : at(entries, swapped),
    price: short(price),
    lost: shortened(lost),
  }
}

function shortOr(value: number | null | undefined): number | null {
  return value === null || value === undefined ? null : short(value)
}

/** Rules that hold for it, each by its sentence. */
function rulesOn({ question, read }: Known, entry: string): NonNullable<Answer['work']>['rules'] {
  const own = question.works.findIndex(work => work.entry === entry)
  return read.rulings
    .filter(({ rule, rests, stored }) => rests === '' && stored?.inForce !== false && rule.works.includes(own))
    .map(({ rule: { id }, says }) => ({ id, says }))
}

interface Otherwise {
  readonly known: Known
  readonly weights: TermWeights
  /** Stacks and grids of the hang. */
  readonly units: readonly ShowUnit[]
  readonly faces: Faces
}

function wallOf(otherwise: Otherwise, asked: Asked, { hang, centres }: Stands, face: string): Answer['wall'] {
  const { known } = otherwise
  const { problem, entries, members } = asked
  const wall = known.question.walls.find(one => one.wall.face === face)
  if (wall === undefined) throw notFound('wall of this show', 'of.face')
  const bays = problem.bays.flatMap((bay, index) => (bay.face === face ? [index] : []))
  const hung = new Set(hang.flat())
  const out = problem.works.flatMap((work, index) => (work.stays === null && !hung.has(index) ? [index] : []))
  // A stack is not left out whole: single works alone are asked about.
  const drop = dropsOn(problem, hang, face, centres).find(({ work }) => at(members, work).length === 1)
  const longer = longerBy(problem, hang, out, face, tryBy)
  return {
    face,
    lost: shortened(lostOn(problem, hang, face, undefined, centres)),
    stretches: bays.map(index => {
      const { works, width, share, left, off, served, axes } = onBay(problem, hang, index, undefined, centres)
      const { from, to } = at(problem.bays, index)
      return {
        ...{ from, to, width, works: works.flatMap(unit => at(members, unit)).length },
        share: short(share),
        left: short(left),
        off: short(off),
        served: shortOr(served),
        axes: axes.map(({ x, work }) => ({ x: short(x), entry: work === null ? null : at(entries, work) })),
      }
    }),
    drop: drop === undefined || drop.gain <= 0 ? null : { entry: at(entries, drop.work), gain: short(drop.gain) },
    longer:
      longer === null
        ? null
        : {
            by: tryBy,
            gain: short(longer.gain),
            fits: longer.fits.flatMap(work => at(members, work).map(({ entry }) => entry)),
          },
    cleared: clearedOf(otherwise, judge(problem, hang, undefined, centres).quality, wall),
    partition: partitionOf(otherwise, asked, hang, wall),
  }
}

/** What is kept clear on a wall, each taken away by itself: the one without which a stretch grows by most. */
function clearedOf({ known, weights, units, faces }: Otherwise, quality: number, { wall }: Elevation) {
  const free = (asked: Asked) =>
    asked.problem.bays.flatMap(({ face, from, to }) => (face === wall.face ? [{ from, to, length: to - from }] : []))
  const now = free(problemOf(known, weights, units))
  const tried = wall.keepClears.flatMap(thing => {
    const walls = known.question.walls.map(one =>
      one.wall.face === wall.face
        ? { ...one, wall: { ...one.wall, keepClears: one.wall.keepClears.filter(other => other !== thing) } }
        : one,
    )
    const then = problemOf({ ...known, question: { ...known.question, walls } }, weights, units)
    const { x, width, label, kind } = thing
    const grown = free(then).find(({ from, to }) => from <= x && x + width <= to)
    if (grown === undefined) return []
    const was = Math.max(
      0,
      ...now.filter(({ from, to }) => from >= grown.from - 1 && to <= grown.to + 1).map(one => one.length),
    )
    if (grown.length - was < 1) return []
    const hang = hangIn(then, faces)
    const gain = 100 * (judge(then.problem, hang, undefined, centresIn(then, hang, faces)).quality - quality)
    const named = label === '' ? kind : label
    return [{ label: named, from: grown.from, to: grown.to, gives: grown.length, was, gain: short(gain) }]
  })
  return tried.sort((a, b) => b.gives - b.was - (a.gives - a.was))[0] ?? null
}

/** Partitions of the room moved either way along and across: the one by which the whole hang gains most. */
function partitionOf(
  { known, weights, units }: Otherwise,
  { problem }: Asked,
  hang: Hang,
  { room: { id } }: Elevation,
) {
  const room = known.rooms.find(one => one.id === id)
  if (room === undefined) return null
  const { quality } = judge(problem, hang)
  const faces = facesIn(room)
  const axesOf = (one: Problem) => one.bays.reduce((sum, bay) => sum + (faces.has(bay.face) ? bay.axes.length : 0), 0)
  const tried = room.partitions.flatMap(({ id: partition, name }) =>
    moveWays.flatMap(way => {
      const moved = withPartitionMoved(room, partition, way, tryBy)
      if (moved === null) return []
      const rooms = known.rooms.map(one => (one.id === id ? moved : one))
      const then = problemOf({ ...known, rooms }, weights, units)
      const gain = short(100 * (judge(then.problem, hang).quality - quality))
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
