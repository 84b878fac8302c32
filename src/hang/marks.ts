/**
 * From what was measured on the back and where the work shall hang to two pencil marks: bearing point and hole, from the
 * floor under each and from the level line, printed in both units, with the working, a second route from below, the
 * loads and everything that speaks against a mark.
 */
import { Refusal } from '../contract/refusal.ts'
import type { Finding } from '../contract/shared.ts'
import type { Point } from '../geometry/rect.ts'
import { formatLength } from '../measure/format.ts'
import { useFromFront } from './back.ts'
import { lengthFindings } from './fixing-checks.ts'
import { loadsOf, tilt } from './loads.ts'
import { cautionsFor, loadFindings, markFindings } from './mark-checks.ts'
import type { LengthUnit, Mark, MarksAnswer, MarksQuestion } from './marks-shape.ts'
import type { Bearing, Fixing, HangMethod, HangRules, MethodAnswer, PlainFinding, WorkFacts } from './method.ts'
import { methodOf } from './methods.ts'
import { INCH, POUND } from './physics.ts'
import type { Printed, Steps } from './printing.ts'
import { defaultSteps, plus, print, printFrom } from './printing.ts'
import { ratingOn } from './rating.ts'
import { defaultHangRules, hangRulesFrom } from './rules.ts'
import { standIn } from './stand-in.ts'
import { mainMarks, stepsOf } from './steps.ts'
import type { WallFacts } from './wall.ts'
import { floorAt, HALF_STUD, isBacked, toNearestStud } from './wall.ts'
import { writeStep } from './working.ts'

/** Two routes to one height must agree to this; both are exact, so more is a fault in the figures given. */
const ROUTES_AGREE = 0.1
/** In place of a fixing where nothing is fixed: it stands. */
const STANDS: Fixing = { name: 'nothing, it stands', kind: 'bracket', holeOffset: 0, ratedKg: null }

/**
 * Marks of one work. Refuses: `method-unknown`, `back-invalid`, `datum-unknown`, `fixings-do-not-match`, and what the
 * method refuses (each names its field).
 */
export function marksFor(question: MarksQuestion): MarksAnswer {
  const { work, centre, wall } = question
  const own = question.rules ?? {}
  const rules = hangRulesFrom(key => own[key] ?? defaultHangRules[key])
  const steps = question.steps ?? defaultSteps
  const unit = question.unit ?? 'mm'
  const say = sayIn(unit, steps)
  const method = methodOf(question.back.method)
  const standing = method.fixings.length === 0
  const given = question.fixings.map(one => hereRated(one, wall))
  const first = standing ? STANDS : given[0]
  if (first === undefined) {
    throw new Refusal('fixings-do-not-match', 'Name the fixing that the work hangs on.', { field: 'fixings' })
  }
  const datum = wall.datum ?? question.datum ?? null
  if (datum === null) {
    throw new Refusal('datum-unknown', 'Give the height of the level line: on the wall, or as the house rule.', {
      field: 'datum',
    })
  }
  if (work.mass !== null && work.mass !== undefined && !(work.mass > 0)) {
    throw new Refusal('mass-not-positive', 'A work weighs more than 0. Weigh it again, or leave its mass out.', {
      field: 'work.mass',
      details: { mass: work.mass },
    })
  }
  const { data, seenFrom } = question.back
  const hooksApart = question.hooksApart ?? null
  const keeper = question.keeper ? hereRated(question.keeper, wall) : null
  const sayKg = sayKgIn(unit)
  const placed = true
  const answer = useFromFront(data, seenFrom, work.width, back =>
    method.answer(back, { work, centre, wall, hooksApart, fixing: first, keeper, rules, placed, say, sayKg }),
  )
  const fixings = matchFixings(standing ? [STANDS] : given, keeperOf(method, keeper, given), answer.bearings)
  const carrying = fixings.filter((_, index) => answer.bearings[index]?.does === 'carries')
  const onFloor = answer.bearings.every(bearing => bearing.on === 'floor')
  const datumPrinted = print(datum, steps)
  const along = printAlong(question.origin ?? 0, steps)
  const marks = place(answer.bearings, fixings, question, datum, datumPrinted, steps, along)
  const { mass, massAt } = answer.carried ?? {
    mass: work.mass ?? null,
    massAt: work.massFromLeft ?? work.width / 2,
  }
  const loads = loadsOf({
    mass: onFloor ? null : mass,
    at: answer.carriers,
    massAt,
    sharing: answer.sharing,
    ratedKg: ratingsOf(answer, carrying),
    houseFactor: rules.houseFactor,
  })
  const edges = {
    left: centre.x - work.width / 2,
    right: centre.x + work.width / 2,
    top: centre.y + work.height / 2,
    bottom: centre.y - work.height / 2,
  }
  const subject = question.subject ?? { kind: 'work', id: '' }
  const floorAtCentre = floorAt(wall.floor, centre.x)
  const plain: readonly PlainFinding[] = [
    ...answer.findings,
    ...(standing || method.fixings.includes(first.kind) ? [] : [unusual(method.name, first)]),
    ...markFindings({ marks, wall, work, fixings, floorAtCentre, datum, centre, rules, say }),
    ...lengthFindings(marks, fixings, wall, rules, say),
    ...(onFloor ? [] : loadFindings(loads, carrying, wall, sayKg)),
  ]
  return {
    method: method.key,
    methodName: method.name,
    edges,
    datum,
    floorAtCentre,
    marks,
    printed: printedOf(work, edges, marks, datumPrinted, floorAtCentre, steps, wall.ramp === true, along),
    working: stepsOf(question, answer, marks, edges, datum).map(writeStep),
    secondRoute: marks.map(mark => secondRoute(mark, work, edges)),
    spacing: spacingOf(answer, rules),
    level: levelOf(
      marks.filter(mark => mark.does === 'carries' && mark.on === 'wall'),
      work,
      unit,
    ),
    wire: answer.wire,
    cleat:
      answer.cleat === null
        ? null
        : {
            ...answer.cleat,
            screws: answer.cleat.screws.map(screw => ({ ...screw, printed: along(screw.x) })),
          },
    figures: answer.figures ?? [],
    hangers: answer.hangers ?? [],
    locks: (answer.locks ?? []).flatMap(lock =>
      marks.filter(mark => mark.name === lock.name).map(mark => ({ ...lock, at: mark.bearing })),
    ),
    loads,
    findings: plain.map((found): Finding => ({ ...found, subject, figures: { ...found.figures } })),
    cautions: [...answer.cautions, ...cautionsFor(work, wall, fixings, marks, rules)],
    needs: answer.needs,
    adjust: method.adjust,
    comesDown: method.comesDown,
    accuracy: method.accuracy,
  }
}

/** Places along the wall, rounded once from where the tape lies: the wall's end, or the left edge of a set. */
function printAlong(origin: number, steps: Steps): (x: number) => Printed {
  const begin = print(origin, steps)
  return x => plus(begin, print(x - origin, steps))
}

/** A fixing with the rating that counts on this wall; `wallType` still says what its rating was for. */
function hereRated(fixing: Fixing, wall: WallFacts): Fixing {
  // A hook over a rail never meets the wall.
  if (fixing.kind === 'rail-hook') return fixing
  return { ...fixing, ...ratingOn(fixing, wall.wallType) }
}

/** A length in the reader's unit with its name, for sentences. */
export function sayIn(unit: LengthUnit, steps: Steps = defaultSteps): (mm: number) => string {
  return mm => formatLength(mm, { unit, fraction: steps.fraction })
}

/** A mass in the reader's unit: pounds beside inches, else kilograms. */
export function sayKgIn(unit: LengthUnit): (kg: number) => string {
  return kg => (unit === 'in' ? `${(kg / POUND).toFixed(1)} lb` : `${kg.toFixed(1)} kg`)
}

/** One fixing for each bearing: what carries from those given, what keeps from the keeper. */
function matchFixings(given: readonly Fixing[], keeper: Fixing, bearings: readonly Bearing[]): readonly Fixing[] {
  const carrying = bearings.filter(bearing => bearing.does === 'carries').length
  const first = given[0]
  if (first === undefined || (given.length !== 1 && given.length !== carrying)) {
    throw new Refusal(
      'fixings-do-not-match',
      `Give one fixing for all marks, or ${carrying}, one for each from left to right.`,
      { field: 'fixings', details: { given: given.length, marks: carrying } },
    )
  }
  let next = 0
  return bearings.map(bearing => {
    if (bearing.does === 'keeps') return keeper
    const fixing = given.length === 1 ? first : (given[next] ?? first)
    next += 1
    return fixing
  })
}

/**
 * What keeps the work: as chosen, or the same as carries it where the method asks for nothing else. Where nobody has
 * chosen it something stands in: its place is known then, its hole is not.
 */
function keeperOf(method: HangMethod, chosen: Fixing | null, given: readonly Fixing[]): Fixing {
  const [carries] = given
  if (method.keepers.length === 0 && carries !== undefined) return carries
  if (chosen !== null) return chosen
  const kind = method.keepers[0] ?? 'screw'
  return standIn(kind)
}

/** Ratings of what carries. A cleat's rating is of the pair; each of its screws counts for its part of it. */
function ratingsOf(answer: MethodAnswer, fixings: readonly Fixing[]): readonly (number | null)[] {
  const screws = answer.cleat?.screws.length ?? 0
  if (screws === 0) return fixings.map(fixing => fixing.ratedKg)
  const pair = fixings[0]?.ratedKg ?? null
  return answer.carriers.map(() => (pair === null ? null : pair / screws))
}

function place(
  bearings: readonly Bearing[],
  fixings: readonly Fixing[],
  { work, centre, wall }: { readonly work: WorkFacts; readonly centre: Point; readonly wall: WallFacts },
  datum: number,
  datumPrinted: Printed,
  steps: Steps,
  along: (x: number) => Printed,
): readonly Mark[] {
  const xl = centre.x - work.width / 2
  const top = centre.y + work.height / 2
  const first = bearings[0]
  return bearings.map((bearing, index): Mark => {
    const fixing = fixings[index] ?? fixings[0]
    if (fixing === undefined || first === undefined) throw new Error('a mark without a fixing')
    const at = { x: xl + bearing.fromLeft, y: top - bearing.drop }
    // What hooks over a rail or stands on the floor has no hole of its own.
    const offset = bearing.on === 'wall' ? fixing.holeOffset : 0
    const hole = { x: at.x, y: at.y + offset }
    const floorHere = floorAt(wall.floor, at.x)
    const toStud = toNearestStud(wall, at.x)
    // Along a ramp the line is as high above the floor here as anywhere.
    const lineRises = wall.ramp === true ? floorHere : 0
    const fromLine = printFrom(at.y - lineRises, datumPrinted, steps)
    const fromFloor = aboveFloor(plus(datumPrinted, fromLine), floorHere - lineRises, steps)
    const holeOffset = print(offset, steps)
    // The first mark is rounded once; the others that carry are the first plus the spacing as measured.
    const follows = index > 0 && bearing.does === 'carries'
    const leftMark = along(xl + first.fromLeft)
    return {
      side: bearing.side,
      does: bearing.does,
      name: bearing.name,
      on: bearing.on,
      from: bearing.from,
      fixing: { name: fixing.name, kind: fixing.kind, holeOffset: offset, ratedKg: fixing.ratedKg },
      fromLeft: bearing.fromLeft,
      drop: bearing.drop,
      bearing: at,
      hole,
      floorHere,
      fromLine: at.y - datum - lineRises,
      fromFloor: at.y - floorHere,
      holeFromLine: hole.y - datum - lineRises,
      holeFromFloor: hole.y - floorHere,
      toStud,
      onStud: toStud === null ? null : Math.abs(toStud) <= HALF_STUD + 1e-6,
      backed: isBacked(wall, hole.y),
      printed: {
        x: follows ? plus(leftMark, print(bearing.fromLeft - first.fromLeft, steps)) : along(at.x),
        fromLine,
        fromFloor,
        holeOffset,
        holeFromLine: plus(fromLine, holeOffset),
        holeFromFloor: plus(fromFloor, holeOffset),
      },
    }
  })
}

/** A printed height above x = 0 as a height above the floor here, rounded once more by the floor's own figure. */
function aboveFloor(height: Printed, floorHere: number, steps: Steps): Printed {
  if (floorHere === 0) return height
  return {
    mm: print(height.mm - floorHere, steps).mm,
    inches: print(height.inches * INCH - floorHere, steps).inches,
  }
}

function printedOf(
  work: WorkFacts,
  edges: MarksAnswer['edges'],
  marks: readonly Mark[],
  datum: Printed,
  floorAtCentre: number,
  steps: Steps,
  ramp: boolean,
  along: (x: number) => Printed,
): MarksAnswer['printed'] {
  const leftEdge = along(edges.left)
  const width = print(work.width, steps)
  const height = print(work.height, steps)
  const top = plus(datum, printFrom(edges.top, datum, steps))
  const carrying = mainMarks(marks)
  const first = carrying[0]
  const last = carrying.at(-1)
  const lineAtCentre = ramp ? datum : aboveFloor(datum, floorAtCentre, steps)
  const fromLine = first?.printed.fromLine ?? { mm: 0, inches: 0 }
  const onRamp = first === undefined ? datum : plus(datum, printFrom(first.bearing.y - floorAtCentre, datum, steps))
  return {
    datum,
    leftEdge,
    width,
    rightEdge: plus(leftEdge, width),
    height,
    top,
    bottom: { mm: top.mm - height.mm, inches: top.inches - height.inches },
    lineAtCentre,
    bearingAtCentre: ramp ? onRamp : aboveFloor(plus(datum, fromLine), floorAtCentre, steps),
    between:
      first === undefined || last === undefined || carrying.length < 2
        ? null
        : print(last.fromLeft - first.fromLeft, steps),
  }
}

function secondRoute(mark: Mark, work: WorkFacts, edges: MarksAnswer['edges']): MarksAnswer['secondRoute'][number] {
  const fromTop = edges.top - mark.drop
  const fromBottom = edges.bottom + (work.height - mark.drop)
  const difference = fromTop - fromBottom
  return { side: mark.side, fromTop, fromBottom, difference, agrees: Math.abs(difference) <= ROUTES_AGREE }
}

function spacingOf(answer: MethodAnswer, rules: HangRules): MarksAnswer['spacing'] {
  const { spacing: measured, spacingFromInsets: fromInsets } = answer
  if (measured === null || fromInsets === null) return null
  const difference = measured - fromInsets
  return { measured, fromInsets, difference, agrees: Math.abs(difference) <= rules.measureTolerance + 1e-9 }
}

/** What the rounding of the printed holes alone does to the level of the work. */
function levelOf(marks: readonly Mark[], work: WorkFacts, unit: LengthUnit): MarksAnswer['level'] {
  const left = marks[0]
  const right = marks.at(-1)
  if (left === undefined || right === undefined || marks.length < 2) return null
  const printedAt = (mark: Mark) =>
    unit === 'in' ? mark.printed.holeFromLine.inches * INCH : mark.printed.holeFromLine.mm
  const error = printedAt(right) - printedAt(left) - (right.hole.y - left.hole.y)
  const apart = right.bearing.x - left.bearing.x
  const tilted = tilt(error, apart, work.width)
  return { apart, error, degrees: tilted.degrees, corners: tilted.corners }
}

function unusual(method: string, fixing: Fixing): PlainFinding {
  return {
    severity: 'settle',
    code: 'fixing-unusual',
    text: `${fixing.name} is a ${fixing.kind}, not what ${method.toLowerCase()} usually hangs on.`,
    figures: { fixing: fixing.name, kind: fixing.kind },
  }
}
