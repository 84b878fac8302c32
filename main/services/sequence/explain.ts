/** Why a hang is as it is, and what would change it: of one work or one wall, asked anew each time. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { allowedOn } from '../../../src/sequence/allowed.ts'
import { type OtherPlace, otherPlaces } from '../../../src/sequence/next-best.ts'
import { lostOn, onBay } from '../../../src/sequence/on-wall.ts'
import { at } from '../../../src/sequence/problem.ts'
import { barOn } from '../../../src/sequence/served-on.ts'
import { judge } from '../../../src/sequence/terms.ts'
import { unitBarOn } from '../../../src/sequence/unit-on.ts'
import { notFound } from '../change.ts'
import type { Job } from '../service.ts'
import { type Asked, type Known, knownOf, problemOf } from './question.ts'
import { countingOf, short, shortened } from './told.ts'
import { helpsOn, type Otherwise, type Stands, standsIn } from './trials.ts'
import { hungUnits } from './units.ts'

type Answer = Output<'sequence.explain'>

export async function explain(job: Job, input: Received<'sequence.explain'>): Promise<Answer> {
  const weights = countingOf(input.weights)
  const known = knownOf(job, input.exhibition)
  const units = hungUnits(known, input.faces)
  const asked = problemOf(known, weights, units)
  const stands = standsIn(asked, input.faces)
  const { hang, centres } = stands
  const { of } = input
  return {
    quality: short(judge(asked.problem, hang, undefined, centres).quality),
    works: hang.flat().flatMap(unit => at(asked.members, unit)).length,
    work: 'entry' in of ? workOf({ known, units }, asked, stands, of.entry) : null,
    wall: 'face' in of ? wallOf({ known, weights, units, faces: input.faces }, asked, stands, of.face) : null,
  }
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

function wallOf(otherwise: Otherwise, asked: Asked, stands: Stands, face: string): Answer['wall'] {
  const { problem, entries, members } = asked
  const { hang, centres } = stands
  const wall = otherwise.known.question.walls.find(one => one.wall.face === face)
  if (wall === undefined) throw notFound('wall of this show', 'of.face')
  const bays = problem.bays.flatMap((bay, index) => (bay.face === face ? [index] : []))
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
    ...helpsOn(otherwise, asked, stands, wall),
  }
}
