/**
 * What speaks against a mark, or for it: the wall's ends, what must stay clear, services, backing and studs, the floor,
 * the load. An unknown rating or mass is a finding, never a pass. Cautions are said where they matter.
 */
import type { Point, Rect } from '../geometry/rect.ts'
import { distanceToPoint } from '../geometry/rect.ts'
import type { Loads } from './loads.ts'
import type { Mark } from './marks-shape.ts'
import type { Fixing, HangRules, PlainFinding, WorkFacts } from './method.ts'
import { nicheOf, openingsFor } from './niche.ts'
import { isStandIn } from './stand-in.ts'
import { calledMark } from './steps.ts'
import type { KeepClear, WallFacts } from './wall.ts'
import { ceilingAt, floorAt, studsBetween, toNearestJoint } from './wall.ts'

/** Cables run straight up and down from these: never drill above or below them. Common practice. */
export const SERVED: readonly string[] = ['switch', 'outlet']
/** Last digits of a computation: a mark just at a margin is clear of it. mm. */
export const SLACK = 1e-6

/** Findings that say a hole can't be where its mark is, or not with that fixing. A move along the wall may cure them. */
export const markConflicts: ReadonlySet<string> = new Set([
  'mark-off-wall',
  'mark-over-ceiling',
  'mark-on-skirting',
  'mark-near-end',
  'mark-near-joint',
  'mark-in-opening',
  'mark-off-niche',
  'mark-on-keep-clear',
  'mark-in-margin',
  'mark-in-line-with-services',
  'mark-off-backing',
])

interface MarkQuestion {
  readonly marks: readonly Mark[]
  readonly wall: WallFacts
  readonly work: Pick<WorkFacts, 'width' | 'height'>
  readonly fixings: readonly Fixing[]
  readonly floorAtCentre: number
  readonly datum: number
  readonly centre: Point
  readonly rules: HangRules
  readonly say: (mm: number) => string
}

export function markFindings(question: MarkQuestion): readonly PlainFinding[] {
  const found: PlainFinding[] = []
  question.marks.forEach((mark, index) => {
    // What hooks over a rail or stands on the floor makes no hole in the wall.
    if (mark.on !== 'wall') return
    const name = `The ${calledMark(mark)}`
    found.push(...onTheWall(mark, name, question), ...keepsClear(mark, name, question))
    found.push(...behind(mark, name, question.fixings[index], question))
  })
  found.push(...nicheFinding(question), ...floorFinding(question))
  return found
}

function rectOf({ work: { width, height }, centre }: MarkQuestion): Rect {
  return { x: centre.x - width / 2, y: centre.y - height / 2, width, height }
}

/** Studs and backing are those of the wall; what the back of a niche is built of nobody has said. */
function nicheFinding(question: MarkQuestion): readonly PlainFinding[] {
  const niche = nicheOf(rectOf(question), question.wall)
  if (niche === null || question.marks.every(mark => mark.on !== 'wall')) return []
  return [
    {
      severity: 'settle',
      code: 'marks-in-niche',
      text: `The marks are at the back of the ${nameOf(niche)}: studs and backing are known of the wall, not of that. Look what is behind it before you drill.`,
      figures: { opening: niche.id },
    },
  ]
}

function onTheWall(mark: Mark, name: string, { wall, rules, say }: MarkQuestion): readonly PlainFinding[] {
  const { x, y } = mark.hole
  const floor = floorAt(wall.floor, x)
  const ceiling = ceilingAt(wall, x)
  const { side } = mark
  if (y > ceiling + SLACK && x >= 0 && x <= wall.length && ceiling < wall.height) {
    return [
      {
        severity: 'stop',
        code: 'mark-over-ceiling',
        text: `${name} is ${say(y - ceiling)} above the ceiling, which is ${say(ceiling - floor)} above the floor there.`,
        figures: { side, x, y, ceiling, over: y - ceiling },
      },
    ]
  }
  if (x < 0 || x > wall.length || y < floor || y > ceiling + SLACK) {
    return [
      {
        severity: 'stop',
        code: 'mark-off-wall',
        text: `${name} is not on the wall.`,
        figures: { side, x, y, length: wall.length, height: wall.height },
      },
    ]
  }
  const found: PlainFinding[] = []
  const skirting = wall.skirting ?? 0
  if (y < floor + skirting - SLACK) {
    found.push({
      severity: 'stop',
      code: 'mark-on-skirting',
      text: `${name} is ${say(y - floor)} above the floor; the skirting reaches ${say(skirting)}.`,
      figures: { side, height: y - floor, skirting },
    })
  }
  const toEnd = Math.min(x, wall.length - x)
  if (toEnd < rules.markFromEnd - SLACK) {
    found.push({
      severity: 'settle',
      code: 'mark-near-end',
      text: `${name} is ${say(toEnd)} from the end of the wall; the house rule is ${say(rules.markFromEnd)}.`,
      figures: { side, toEnd, least: rules.markFromEnd },
    })
  }
  const toJoint = toNearestJoint(wall, x)
  if (toJoint !== null && Math.abs(toJoint) < rules.markFromEnd - SLACK) {
    found.push({
      severity: 'settle',
      code: 'mark-near-joint',
      text: `${name} is ${say(Math.abs(toJoint))} from the joint between two boards at ${say(x + toJoint)}; the house rule is ${say(rules.markFromEnd)}.`,
      figures: { side, toJoint, joint: x + toJoint, least: rules.markFromEnd },
    })
  }
  return found
}

function keepsClear(mark: Mark, name: string, question: MarkQuestion): readonly PlainFinding[] {
  const { wall, rules, say } = question
  const rect = rectOf(question)
  const found: PlainFinding[] = []
  const niche = nicheOf(rect, wall)
  if (niche !== null && distanceToPoint(niche, mark.hole) > 0) {
    found.push({
      severity: 'stop',
      code: 'mark-off-niche',
      text: `${name} falls beyond the ${nameOf(niche)}, at whose back the work hangs.`,
      figures: { side: mark.side, opening: niche.id },
    })
  }
  for (const opening of openingsFor(rect, wall)) {
    if (distanceToPoint(opening, mark.hole) > 0) continue
    found.push({
      severity: 'stop',
      code: 'mark-in-opening',
      text: `${name} falls into the ${nameOf(opening)}.`,
      figures: { side: mark.side, opening: opening.id },
    })
  }
  for (const item of wall.keepClears) {
    const distance = distanceToPoint(item, mark.hole)
    if (distance === 0) {
      found.push({
        severity: 'stop',
        code: 'mark-on-keep-clear',
        text: `${name} falls on the ${nameOf(item)}.`,
        figures: { side: mark.side, keepClear: item.id, distance },
      })
    } else if (distance < item.margin - SLACK) {
      found.push({
        severity: 'settle',
        code: 'mark-in-margin',
        text: `${name} is ${say(item.margin - distance)} inside the margin of the ${nameOf(item)}.`,
        figures: { side: mark.side, keepClear: item.id, distance, margin: item.margin },
      })
    } else if (inLineWith(item, mark.hole, rules.besideService)) {
      found.push({
        severity: 'settle',
        code: 'mark-in-line-with-services',
        text: `${name} is straight ${mark.hole.y > item.y ? 'above' : 'below'} the ${nameOf(item)}: a cable may run there. Don't drill before it is found.`,
        figures: { side: mark.side, keepClear: item.id, x: mark.hole.x },
      })
    }
  }
  return found
}

function inLineWith(item: KeepClear, hole: Point, beside: number): boolean {
  return SERVED.includes(item.kind) && hole.x >= item.x - beside && hole.x <= item.x + item.width + beside
}

function nameOf(thing: Rect & { readonly kind: string; readonly label: string }): string {
  return thing.label === '' ? thing.kind : thing.label
}

function behind(
  mark: Mark,
  name: string,
  fixing: Fixing | undefined,
  { wall, say }: MarkQuestion,
): readonly PlainFinding[] {
  const figures = { side: mark.side, toStud: mark.toStud, backed: mark.backed, height: mark.hole.y }
  if (mark.onStud === true) {
    return [{ severity: 'fits', code: 'mark-on-stud', text: `${name} is on a stud.`, figures }]
  }
  if (mark.backed === true) {
    return [{ severity: 'fits', code: 'mark-backed', text: `${name} has backing behind it.`, figures }]
  }
  // Nobody wrote down what is behind, or the fixing is rated for the bare wall: nothing to say.
  if ((mark.backed === null && mark.toStud === null) || typeof fixing?.ratedKg === 'number') return []
  const studs = studsBetween(wall, 0, wall.length)
  const before = studs.filter(stud => stud < mark.hole.x).at(-1) ?? null
  const after = studs.find(stud => stud > mark.hole.x) ?? null
  const between =
    before === null || after === null ? '' : ` It is between the studs at ${say(before)} and ${say(after)}.`
  const shift =
    mark.toStud === null
      ? ''
      : `${between} The nearest stud is ${say(Math.abs(mark.toStud))} to the ${mark.toStud > 0 ? 'right' : 'left'}.`
  return [
    {
      severity: 'settle',
      code: 'mark-off-backing',
      text: `${name} has neither stud nor backing behind it, and its fixing has no rating for the bare wall.${shift}`,
      figures: { ...figures, studBefore: before, studAfter: after },
    },
  ]
}

/** Measuring from the floor under the work, as if it were level, hangs it wrong by as much as the floor is off there. */
function floorFinding({ wall, floorAtCentre, datum, rules, say, marks }: MarkQuestion): readonly PlainFinding[] {
  // What stands on the floor follows it.
  if (marks.length > 0 && marks.every(mark => mark.on === 'floor')) return []
  if (wall.ramp === true || wall.floor.length === 0 || Math.abs(floorAtCentre) <= rules.dropTolerance) return []
  const way = floorAtCentre < 0 ? 'low' : 'high'
  return [
    {
      severity: 'settle',
      code: 'floor-slopes',
      text: `The floor is out of level: measured from the floor here the work would hang ${say(Math.round(Math.abs(floorAtCentre)))} ${way}. Measure from the line.`,
      figures: { floor: floorAtCentre, datum, fromLine: marks[0]?.fromLine ?? null },
    },
  ]
}

export function loadFindings(
  loads: Loads | null,
  fixings: readonly Fixing[],
  wall: WallFacts,
  kg: (mass: number) => string,
): readonly PlainFinding[] {
  if (loads === null) {
    return [
      {
        severity: 'settle',
        code: 'mass-unknown',
        text: 'Nobody has weighed this work: weigh it before choosing what it hangs on.',
        figures: {},
      },
    ]
  }
  const found: PlainFinding[] = []
  const worst = loads.shares.reduce((a, b) => (b.neededKg > a.neededKg ? b : a))
  // Its rating was said for another wall: it counts as unknown here.
  const elsewhere = (fixing: Fixing) =>
    fixing.kind !== 'rail-hook' && (fixing.wallType ?? '') !== '' && fixing.wallType !== wall.wallType
  const unknown = fixings.find(fixing => fixing.ratedKg === null && !elsewhere(fixing))
  const figures = {
    shareKg: worst.shareKg,
    shareN: worst.shareN,
    neededKg: worst.neededKg,
    ratedKg: worst.ratedKg,
    factor: loads.houseFactor,
  }
  if (unknown !== undefined) {
    found.push({
      severity: 'settle',
      code: 'rating-unknown',
      text: isStandIn(unknown)
        ? `No ${unknown.kind.replace('-', ' ')} is chosen yet: each must be rated for at least ${kg(worst.neededKg)}.`
        : `Nobody has said what ${unknown.name} is rated for: look at its packet. It must be at least ${kg(worst.neededKg)}.`,
      figures,
    })
  }
  const failing = loads.shares.find(share => share.holds === false)
  if (failing !== undefined && failing.ratedKg !== null) {
    found.push({
      severity: 'stop',
      code: 'load-exceeds',
      text: `A fixing carries ${kg(failing.shareKg)}; with the house factor ${loads.houseFactor} it must be rated ${kg(failing.neededKg)} and is rated ${kg(failing.ratedKg)}.`,
      figures: {
        ...figures,
        shareKg: failing.shareKg,
        shareN: failing.shareN,
        neededKg: failing.neededKg,
        ratedKg: failing.ratedKg,
      },
    })
  }
  const lifted = loads.shares.find(share => share.shareKg < -1e-9)
  if (lifted !== undefined) {
    found.push({
      severity: 'stop',
      code: 'mass-outside-fixings',
      text: 'The weight lies beside the fixings, not between them: one of them would be lifted off.',
      figures: { shareKg: lifted.shareKg, shareN: lifted.shareN },
    })
  }
  const gone = loads.oneGone
  if (gone !== null && gone.holds === false && gone.leftKg !== null) {
    found.push({
      severity: 'stop',
      code: 'one-gone-exceeds',
      text: `If one fixing fails, ${kg(gone.leftKg)} is left for ${kg(gone.wholeKg)}.`,
      figures: { wholeKg: gone.wholeKg, leftKg: gone.leftKg },
    })
  }
  if (loads.holds === true && worst.ratedKg !== null) {
    const rest =
      gone === null || gone.leftKg === null
        ? ''
        : ` If one fails, the rest holds ${kg(gone.wholeKg)} of ${kg(gone.leftKg)}.`
    found.push({
      severity: 'fits',
      code: 'load-holds',
      text: `Each fixing carries ${kg(worst.shareKg)} of ${kg(worst.ratedKg)}, with the house factor ${loads.houseFactor}.${rest}`,
      figures: { ...figures, wholeKg: loads.massKg, leftKg: gone?.leftKg ?? null },
    })
  }
  const other = fixings.find(elsewhere)
  if (other !== undefined) {
    found.push({
      severity: 'settle',
      code: 'rating-other-wall',
      text: `${other.name} is rated for ${other.wallType ?? ''}; this wall is ${wall.wallType}. That rating does not count here: it must be at least ${kg(worst.neededKg)} on this wall.`,
      figures: { ratedFor: other.wallType ?? '', wall: wall.wallType, neededKg: worst.neededKg },
    })
  }
  return found
}

/** The usual cautions, each where it matters. */
export function cautionsFor(
  work: WorkFacts,
  wall: WallFacts,
  fixings: readonly Fixing[],
  marks: readonly Mark[],
  rules: HangRules,
): readonly string[] {
  const drilled = marks.some(mark => mark.on === 'wall')
  const mass = work.mass ?? null
  const { onePersonKg, onePersonSize, liftingPlanKg } = rules
  const why = [
    ...((mass ?? 0) > onePersonKg ? [`heavier than ${onePersonKg} kg`] : []),
    ...(Math.max(work.height, work.width) > onePersonSize ? [`larger than ${onePersonSize / 1000} m`] : []),
  ]
  return [
    ...(drilled
      ? [
          'Rated loads are the maker’s for a stated wall, and only as good as the installation; a fixing holds no more than the wall behind it.',
          'Look for pipes and cables before drilling; stop if a nail or screw resists oddly.',
        ]
      : []),
    ...(why.length > 0 ? [`Two people or more, and equipment: it is ${why.join(' and ')}.`] : []),
    ...((mass ?? 0) > liftingPlanKg ? [`Above ${liftingPlanKg} kg a competent person makes the lifting plan.`] : []),
    ...(drilled && wall.wallType === 'plaster'
      ? ['Old plaster and paint may hold asbestos or lead: no drilling without the building’s survey.']
      : []),
    ...(drilled &&
    ['brick', 'concrete', 'block'].includes(wall.wallType) &&
    fixings.some(fixing => fixing.kind !== 'nail')
      ? ['Masonry: a qualified person chooses and sets the anchors.']
      : []),
    'Local codes and licensed practice decide; this is a help to planning, not a certificate.',
  ]
}
