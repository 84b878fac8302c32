/**
 * A late change put to the walls of a show: from elevations, holes and what changes to one list of ways out. A swap
 * between two walls is two questions whose answers are joined; lowering several walls is asked of each and offered as
 * one. Works are known by their entry here, because a placement may leave its wall.
 */

import type { LateChange, LateOffer } from '../contract/areas/marks.ts'
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { HeightRule } from '../hang/height.ts'
import { sayIn } from '../hang/marks.ts'
import { defaultSteps } from '../hang/printing.ts'
import { floorAt } from '../hang/wall.ts'
import { byPrice, handful } from '../late/handful.ts'
import { lateOffers } from '../late/late.ts'
import type { Change, LateQuestion, LateWork, NeededHole, Offer, Prices } from '../late/late-shape.ts'
import { lowerings, saysLowered } from '../late/ways.ts'
import { calledOn } from './face-findings.ts'
import { neededFrom, SAME_HOLE, wantedHoles } from './holes-of-face.ts'
import { asItIs, type Changed, changedBy, replaced, whyNoFrame, worksIfDifferent } from './late-changed.ts'
import { newStops } from './late-stops.ts'
import type { MarksStyle } from './marks-of-face.ts'

export interface LateOfShow {
  readonly offers: readonly LateOffer[]
  readonly problem: string
}

const plain: MarksStyle = { unit: 'mm', steps: defaultSteps }
/** Of each wall of a swap between two: more would only be worse. */
const PER_WALL = 4

/** What the house weighs, and how the reader writes lengths. */
export interface LateStyle extends MarksStyle {
  readonly prices: Prices
}

/** Ways out, cheapest first; none before the first that moves a hung work does so. Walls that the change is not about are ignored. */
export function lateOfShow(walls: readonly Elevation[], change: LateChange, style: LateStyle): LateOfShow {
  switch (change.kind) {
    case 'lower':
      return lowered(walls, change.by, style)
    case 'swap':
      return swapped(walls, change.one, change.other, style)
    case 'drop':
    case 'different': {
      const wall = wallOf(walls, change.entry)
      if (wall === undefined) return nothing('This work is not on a wall.')
      if (change.kind === 'different') {
        const problem = whyNoFrame(wall, change)
        if (problem !== '') return nothing(problem)
      }
      return asked(wall, changeOn(wall, change), style, changedBy(wall, change))
    }
  }
}

function nothing(problem: string): LateOfShow {
  return { offers: [], problem }
}

function wallOf(walls: readonly Elevation[], entry: string): Elevation | undefined {
  return walls.find(wall => wall.works.some(work => work.entry === entry))
}

function changeOn(wall: Elevation, change: Extract<LateChange, { kind: 'drop' | 'different' }>): Change {
  if (change.kind === 'drop') return { kind: 'drop', id: change.entry }
  const work = worksIfDifferent(wall, change).find(each => each.entry === change.entry)
  const { width, height } = work?.size ?? change
  return { kind: 'different', id: change.entry, width, height, holes: holesIfDifferent(wall, work) }
}

/** Where the work would have its holes with the other frame, from its centre: its marks asked with the new facts. */
function holesIfDifferent(elevation: Elevation, work: PlacedWork | undefined): NeededHole[] {
  if (work === undefined) return []
  const wanted = wantedHoles({ ...elevation, works: [work] }, plain)
  return neededFrom(wanted, { x: work.x, y: work.centreY })
}

function asked(wall: Elevation, change: Change, style: LateStyle, changed = asItIs(wall)): LateOfShow {
  const { offers, problem } = lateOffers(questionOf(wall, change, style, changed))
  return { offers: offers.map(offer => told([{ wall, offer, change }])), problem }
}

function questionOf(
  elevation: Elevation,
  change: Change,
  style: LateStyle,
  changed: Changed = asItIs(elevation),
): LateQuestion {
  const { wall, rules, made } = elevation
  const drilled = made.filter(mark => mark.state === 'drilled' && mark.filled === null)
  const holed = new Set(drilled.map(mark => mark.placement))
  const wanted = Map.groupBy(wantedHoles(elevation, plain), hole => hole.placement)
  return {
    wall: {
      length: wall.length,
      height: wall.height,
      floor: wall.floor,
      skirting: wall.skirting,
      ceiling: wall.ceiling,
      openings: wall.openings,
      keepClears: wall.keepClears,
    },
    works: elevation.works.flatMap(work =>
      lateWork(elevation, work, holed.has(work.placement), wanted.get(work.placement) ?? []),
    ),
    drilled: drilled.map(({ id, x, y }) => ({ id, x, y })),
    change,
    leastGap: rules.minimumGap,
    leastMargin: rules.minimumMargin,
    prices: style.prices,
    sameHole: SAME_HOLE,
    say: sayIn(style.unit, style.steps),
    stops: newStops(elevation, changed, style),
  }
}

function lateWork(
  elevation: Elevation,
  work: PlacedWork,
  holed: boolean,
  wanted: Parameters<typeof neededFrom>[0],
): LateWork[] {
  if (work.size === null) return []
  return [
    {
      id: work.entry,
      name: calledOn(work),
      width: work.size.width,
      height: work.size.height,
      x: work.x,
      stands: standsBy(elevation, work),
      standing: work.state !== 'planned' ? 'hung' : holed ? 'drilled' : 'free',
      held: work.held,
      holes: neededFrom(wanted, { x: work.x, y: work.centreY }),
      labelled: work.labelSide !== '',
    },
  ]
}

function standsBy({ plan }: Elevation, work: PlacedWork): HeightRule {
  const rule = work.rule === 'face' ? plan.rule : work.rule
  return { rule, y: work.y ?? plan.centreLine + floorAt(plan.ramp, work.x), eyeFraction: plan.eyeFraction }
}

// ---- several walls

function swapped(walls: readonly Elevation[], one: string, other: string, style: LateStyle): LateOfShow {
  const [a, b] = [wallOf(walls, one), wallOf(walls, other)]
  if (a === undefined || b === undefined) return nothing('Both works must be on a wall.')
  if (one === other) return nothing('Choose two works.')
  if (a === b) return asked(a, { kind: 'swap', one, other }, style)
  const [workA, workB] = [guestOf(a, one, style), guestOf(b, other, style)]
  if (workA === undefined || workB === undefined) return nothing('The size of one of them is not known yet.')
  const changeA: Change = { kind: 'replace', id: one, by: workB }
  const changeB: Change = { kind: 'replace', id: other, by: workA }
  const onA = lateOffers(questionOf(a, changeA, style, replaced(a, one, b, other)))
  const onB = lateOffers(questionOf(b, changeB, style, replaced(b, other, a, one)))
  const offers = onA.offers.slice(0, PER_WALL).flatMap(first =>
    onB.offers.slice(0, PER_WALL).map(second =>
      told([
        { wall: a, offer: first, change: changeA },
        { wall: b, offer: second, change: changeB },
      ]),
    ),
  )
  const problems = [
    [a, onA.problem],
    [b, onB.problem],
  ] as const
  return {
    offers: handful(offers),
    problem: problems.flatMap(([wall, text]) => (text === '' ? [] : [`${wall.wall.name}: ${text}`])).join(' '),
  }
}

/** A work as it comes to another wall: its size and holes, free there until it is drilled there. */
function guestOf(wall: Elevation, entry: string, style: LateStyle): LateWork | undefined {
  const work = questionOf(wall, { kind: 'drop', id: '' }, style).works.find(each => each.id === entry)
  return work === undefined ? undefined : { ...work, standing: work.standing === 'hung' ? 'hung' : 'free' }
}

function lowered(all: readonly Elevation[], by: number, style: LateStyle): LateOfShow {
  const walls = all.filter(wall => wall.works.some(work => work.size !== null))
  if (walls.length === 0) return nothing('Nothing of known size hangs there, so there is nothing to move.')
  if (by === 0) return nothing('Type by how much: a length other than nothing.')
  const change: Change = { kind: 'lower', by }
  const questions = walls.map(wall => ({ wall, question: questionOf(wall, change, style) }))
  const answers = questions.map(({ wall, question }) => ({ wall, ...lateOffers(question) }))
  const works = questions.flatMap(({ question }) => question.works)
  const seen = new Set<string>()
  const offers = lowerings.flatMap(which => {
    const parts = answers.flatMap(({ wall, offers: found }) => {
      const offer = found.find(each => each.key.endsWith(`-${which}`))
      return offer === undefined ? [] : [{ wall, offer, change }]
    })
    const same = parts.flatMap(({ offer }) => offer.moves.map(({ id }) => id)).join(' ')
    // A way that one of the walls has no room for is no way for all of them.
    if (parts.length < walls.length || same === '' || seen.has(same)) return []
    seen.add(same)
    return [
      {
        ...told(parts),
        key: parts[0]?.offer.key ?? '',
        says: [saysLowered(which, works, by, sayIn(style.unit, style.steps))],
      },
    ]
  })
  const stuck = answers
    .filter(answer => answer.problem !== '')
    .map(({ wall, problem }) => `${wall.wall.name}: ${problem}`)
  const ranked = [...offers].sort(byPrice)
  const settled = ranked.some(offer => offer.cost.hungMoved === 0)
  const why =
    stuck.length > 0
      ? stuck.join(' ')
      : 'Everything there hangs or is held: nothing can move unless what hangs is moved.'
  return { offers: ranked, problem: settled ? '' : why }
}

interface Part {
  readonly wall: Elevation
  readonly offer: Offer
  readonly change: Change
}

/** One offer over one wall or several, in the contract's words. */
function told(parts: readonly Part[]): LateOffer {
  const sum = (key: keyof Offer['cost']) => parts.reduce((total, { offer }) => total + offer.cost[key], 0)
  const works = new Map(parts.flatMap(({ wall }) => wall.works.map(work => [work.entry, work] as const)))
  const nameOf = (entry: string) => {
    const work = works.get(entry)
    return work === undefined ? '' : calledOn(work)
  }
  const arriving = (part: Part) => (part.change.kind === 'replace' ? part.change.by.id : null)
  const arrivals = new Set(parts.map(arriving))
  return {
    key: parts.map(({ offer }) => offer.key).join(' + '),
    says: [...new Set(parts.map(({ offer }) => offer.says))],
    cost: {
      hungMoved: sum('hungMoved'),
      moved: sum('moved'),
      newHoles: sum('newHoles'),
      deadHoles: sum('deadHoles'),
      labels: sum('labels'),
      gapSpread: Math.max(...parts.map(({ offer }) => offer.cost.gapSpread)),
      ends: sum('ends'),
      offLine: sum('offLine'),
    },
    price: parts.reduce((total, { offer }) => total + offer.price, 0),
    moves: parts.flatMap(part => {
      const { wall, offer } = part
      const moved = new Set(offer.moves.map(move => move.id))
      // Whatever comes from another wall moves, also where it takes exactly the other's place.
      const came = arriving(part)
      return offer.places
        .filter(({ id }) => moved.has(id) || id === came)
        .map(({ id, x, y }) => ({
          entry: id,
          placement: works.get(id)?.placement ?? '',
          face: wall.wall.face,
          name: nameOf(id),
          x,
          y,
          ...sizeAfter(part.change, id, works.get(id)),
          wasX: works.get(id)?.x ?? x,
          wasY: works.get(id)?.centreY ?? y,
        }))
    }),
    off: parts.flatMap(({ offer }) =>
      offer.off
        .filter(id => !arrivals.has(id))
        .map(id => ({ entry: id, placement: works.get(id)?.placement ?? '', name: nameOf(id) })),
    ),
    newHoles: parts.flatMap(({ wall, offer }) =>
      offer.newHoles.map(hole => ({
        face: wall.wall.face,
        name: nameOf(hole.work),
        slot: hole.slot,
        x: hole.x,
        y: hole.y,
      })),
    ),
    deadHoles: parts.flatMap(({ wall, offer }) =>
      offer.deadHoles.flatMap(id => {
        const mark = wall.made.find(each => each.id === id)
        return mark === undefined ? [] : [{ face: wall.wall.face, mark: id, x: mark.x, y: mark.y }]
      }),
    ),
  }
}

/** As large as it is once the change is made, mm. */
function sizeAfter(change: Change, id: string, work: PlacedWork | undefined): { width: number; height: number } {
  if (change.kind === 'different' && change.id === id) return { width: change.width, height: change.height }
  return { width: work?.size?.width ?? 0, height: work?.size?.height ?? 0 }
}
