/**
 * The checks that run by themselves on a whole wall: overlaps, gaps and margins under the house rule, what is off the
 * wall or does not fit, openings, what must stay clear, ceiling and skirting. Each finding names its subject, its
 * figures and, where one shift cures it, that shift.
 */
import type { Finding } from '../contract/shared.ts'
import type { Rect } from '../geometry/rect.ts'
import { clearances, clearDistance, overlap, right, top } from '../geometry/rect.ts'
import { sayIn } from '../hang/marks.ts'
import type { LengthUnit } from '../hang/marks-shape.ts'
import { nicheOf, openingsFor } from '../hang/niche.ts'
import type { KeepClear, Opening, WallFacts } from '../hang/wall.ts'
import { highestFloor, lowestCeiling } from '../hang/wall.ts'
import { nicheFindings } from './in-niche.ts'
import { insideMargin, smallestGroupShift, smallestShift } from './shifts.ts'
import { type StackAsked, stacksOn } from './stacks-on.ts'
import { besideDeep, overDeep } from './standing-out.ts'

export interface HungRect extends Rect {
  /** How far it stands out of the wall; null or left out where nobody measured it. */
  readonly depth?: number | null
  /** Id of the placement. */
  readonly id: string
  /** What people call it on the drawing, its running number. */
  readonly name: string
}

export interface WallCheckRules {
  readonly minimumGap: number
  readonly minimumMargin: number
  /** Free height over the top edge to lift a work on. */
  readonly liftOn: number
  /** What sections ask of works that stand above one another. */
  readonly stacks?: readonly StackAsked[]
}

interface Check {
  readonly wall: WallFacts
  readonly works: readonly HungRect[]
  readonly rules: WallCheckRules
  readonly say: (mm: number) => string
  /** Whether findings of these are wanted; with two works, of either. */
  readonly asked: (id: string, other?: string) => boolean
  /** The smallest shift of all works together that clears the wall's things; worked out once, when first asked. */
  readonly shiftAll: () => number | null
}

const SLACK = 1e-6

/**
 * Every finding of the hang on one wall. mm. With `only`, the findings of those works alone, as the whole wall gives
 * them, and none of the wall itself: so much must be told at every move of a hand.
 */
export function wallFindings(
  wall: WallFacts,
  works: readonly HungRect[],
  rules: WallCheckRules,
  unit: LengthUnit = 'mm',
  only?: ReadonlySet<string>,
): readonly Finding[] {
  let all: { readonly shift: number | null } | null = null
  const shiftAll = () => {
    all ??= { shift: works.length > 1 ? smallestGroupShift(works, wall) : null }
    return all.shift
  }
  const asked = (id: string, other?: string) =>
    only === undefined || only.has(id) || (other !== undefined && only.has(other))
  const check: Check = { wall, works, rules, say: sayIn(unit), asked, shiftAll }
  return [
    ...works
      .filter(work => asked(work.id))
      .flatMap(work => [
        ...sizes(work, check),
        ...offWall(work, check),
        ...ceilingAndSkirting(work, check),
        ...endMargins(work, check),
        ...openingsFor(work, wall).flatMap(opening => inOpening(work, opening, check)),
        ...inNiche(work, check),
        ...wall.keepClears.flatMap(item => nearKeepClear(work, item, check)),
        ...wall.keepClears.flatMap(item => besideDeep(work, item, nameOf(item), check.say)),
      ]),
    ...neighbours(check),
    ...(only === undefined ? crowded(check) : []),
  ]
}

function about(
  work: HungRect,
  severity: Finding['severity'],
  code: string,
  text: string,
  figures: Finding['figures'],
): Finding {
  return { severity, code, subject: { kind: 'placement', id: work.id }, text, figures }
}

function sizes(work: HungRect, { wall, say }: Check): readonly Finding[] {
  const found: Finding[] = []
  if (work.width > wall.length + SLACK) {
    const over = work.width - wall.length
    found.push(about(work, 'stop', 'too-wide', `${work.name} is ${say(over)} wider than the wall is long.`, { over }))
  }
  if (work.height > wall.height + SLACK) {
    const over = work.height - wall.height
    found.push(about(work, 'stop', 'too-high', `${work.name} is ${say(over)} higher than the wall.`, { over }))
  }
  return found
}

function floorUnder(work: Rect, wall: WallFacts): number {
  return highestFloor(wall, work.x, right(work))
}

function ceilingOver(work: Rect, wall: WallFacts): number {
  return lowestCeiling(wall, work.x, right(work))
}

function offWall(work: HungRect, { wall, say }: Check): readonly Finding[] {
  const ceiling = ceilingOver(work, wall)
  const over = [
    { side: 'left end', by: -work.x },
    { side: 'right end', by: right(work) - wall.length },
    { side: ceiling < wall.height - SLACK ? 'ceiling' : 'top', by: top(work) - ceiling },
    { side: 'floor', by: floorUnder(work, wall) - work.y },
  ] as const
  return over
    .filter(({ by }) => by > SLACK)
    .map(({ side, by }) => {
      const text =
        side === 'ceiling'
          ? `${work.name} reaches ${say(by)} into the ceiling, which is at ${say(ceiling)} there.`
          : `${work.name} stands ${say(by)} beyond the wall’s ${side}.`
      return about(work, 'stop', 'off-wall', text, side === 'ceiling' ? { side, by, ceiling } : { side, by })
    })
}

function ceilingAndSkirting(work: HungRect, { wall, rules, say }: Check): readonly Finding[] {
  const found: Finding[] = []
  const over = ceilingOver(work, wall) - top(work)
  if (over >= -SLACK && over < rules.liftOn - SLACK) {
    found.push(
      about(
        work,
        'settle',
        'no-room-to-lift-on',
        `${work.name} has ${say(over)} above it; lifting it on takes ${say(rules.liftOn)}.`,
        { free: over, liftOn: rules.liftOn },
      ),
    )
  }
  const skirting = wall.skirting
  const under = work.y - floorUnder(work, wall)
  if (skirting !== null && under >= -SLACK && under < skirting - SLACK) {
    found.push(
      about(work, 'settle', 'on-skirting', `${work.name} comes ${say(skirting - under)} down over the skirting.`, {
        bottom: under,
        skirting,
      }),
    )
  }
  return found
}

function endMargins(work: HungRect, { wall, rules, say }: Check): readonly Finding[] {
  const ends = [
    { side: 'left', margin: work.x },
    { side: 'right', margin: wall.length - right(work) },
  ] as const
  return ends
    .filter(({ margin }) => margin >= -SLACK && margin < rules.minimumMargin - SLACK)
    .map(({ side, margin }) =>
      about(
        work,
        'settle',
        'near-end',
        `${work.name} is ${say(margin)} from the ${side} end of the wall; the house rule is ${say(rules.minimumMargin)}.`,
        { side, margin, least: rules.minimumMargin },
      ),
    )
}

function inOpening(work: HungRect, opening: Opening, { works, wall, say }: Check): readonly Finding[] {
  if (!overlap(work, opening)) return []
  const { dx, dy } = clearances(work, opening)
  const by = Math.min(-dx, -dy)
  const cure = smallestShift(work, wall, others(works, work))
  return [
    about(
      work,
      'stop',
      'in-opening',
      `${work.name} stands ${say(by)} in the ${nameOf(opening)}${opening.depth == null ? '' : `, which is ${say(opening.depth)} deep`}.${cure === null ? '' : ` ${cureText(cure, say)}.`}`,
      {
        ...{ opening: opening.id, by, shiftX: cure?.dx ?? null, shiftY: cure?.dy ?? null },
        ...(opening.depth == null ? {} : { depth: opening.depth }),
      },
    ),
  ]
}

function inNiche(work: HungRect, { wall, rules, say }: Check): readonly Finding[] {
  const niche = nicheOf(work, wall)
  return niche === null ? [] : nicheFindings(work, niche, nameOf(niche), rules, say)
}

function nearKeepClear(work: HungRect, item: KeepClear, check: Check): readonly Finding[] {
  const { works, wall, say, shiftAll } = check
  const inside = insideMargin(work, item)
  if (inside <= SLACK) return []
  const distance = clearDistance(work, item)
  const covers = overlap(work, item)
  const one = smallestShift(work, wall, others(works, work))
  const all = shiftAll()
  const rightmost = Math.max(...works.map(right))
  const leftmost = Math.min(...works.map(each => each.x))
  const ways = [
    ...(all === null ? [] : [`move all ${inWords(works.length)} ${say(Math.abs(all))} ${all > 0 ? 'right' : 'left'}`]),
    ...(one === null ? [] : [lower(cureText(one, say))]),
    ...(covers || item.reachable === true ? [] : [`take a margin of ${say(distance)} with a reason`]),
  ]
  const free = item.reachable === true ? ', which must stay reachable' : ''
  const what = covers
    ? `${work.name} covers the ${nameOf(item)}${overDeep(work, item, say)}${free}`
    : `${work.name} stands ${say(inside)} inside the ${possessive(nameOf(item))} margin${free}`
  return [
    about(
      work,
      covers ? 'stop' : 'settle',
      covers ? 'covers-keep-clear' : 'in-keep-clear',
      ways.length === 0 ? `${what}.` : `${what}: ${ways.join(', or ')}.`,
      {
        keepClear: item.id,
        kind: item.kind,
        margin: item.margin,
        distance,
        inside,
        shiftX: one?.dx ?? null,
        shiftY: one?.dy ?? null,
        shiftAll: all,
        leftMarginThen: all === null ? null : leftmost + all,
        rightMarginThen: all === null ? null : wall.length - rightmost - all,
        marginThen: distance,
        ...(covers && item.depth != null ? { depth: item.depth, workDepth: work.depth ?? null } : {}),
      },
    ),
  ]
}

/** Works of one stack or grid stand as close as their section asks, if that is closer than the house has it. */
function leastGaps(works: readonly HungRect[], { stacks = [], minimumGap }: WallCheckRules) {
  const on = new Map(
    stacksOn(works, stacks).flatMap((stack, index) => stack.works.map(id => [id, { stack, index }] as const)),
  )
  return (a: HungRect, b: HungRect): number => {
    const [own, other] = [on.get(a.id), on.get(b.id)]
    if (own === undefined || own.index !== other?.index) return minimumGap
    const { gapDown, gapAcross } = own.stack.asked
    return Math.min(minimumGap, clearances(a, b).dx < 0 ? gapDown : gapAcross)
  }
}

function neighbours({ works, rules, say, asked }: Check): readonly Finding[] {
  const order = [...works].sort((a, b) => a.x - b.x)
  const leastOf = leastGaps(works, rules)
  const found: Finding[] = []
  order.forEach((a, index) => {
    for (const b of order.slice(index + 1)) {
      if (b.x - right(a) >= rules.minimumGap) break
      if (!asked(a.id, b.id)) continue
      const distance = clearDistance(a, b)
      if (overlap(a, b)) {
        const { dx, dy } = clearances(a, b)
        const by = Math.min(-dx, -dy)
        found.push(
          about(b, 'stop', 'overlap', `${a.name} and ${b.name} overlap by ${say(by)}.`, {
            with: a.id,
            by,
            along: -dx,
            up: -dy,
          }),
        )
        continue
      }
      const least = leastOf(a, b)
      if (distance >= least - SLACK) continue
      const rule = least < rules.minimumGap ? 'their section asks for' : 'the house rule is'
      found.push(
        about(b, 'settle', 'gap-small', `${a.name} and ${b.name} are ${say(distance)} apart; ${rule} ${say(least)}.`, {
          ...{ with: a.id, gap: distance, least },
        }),
      )
    }
  })
  return found
}

/** Works that one level line crosses can never fit side by side when they are together longer than the wall. */
function crowded({ wall, works, say }: Check): readonly Finding[] {
  let worst: { readonly y: number; readonly sum: number; readonly count: number } | null = null
  for (const { y, height } of works) {
    const level = y + height / 2
    const crossed = works.filter(work => work.y <= level && top(work) >= level)
    const sum = crossed.reduce((total, work) => total + work.width, 0)
    if (worst === null || sum > worst.sum) worst = { y: level, sum, count: crossed.length }
  }
  if (worst === null || worst.count < 2 || worst.sum <= wall.length + SLACK) return []
  const shortBy = worst.sum - wall.length
  return [
    {
      severity: 'stop',
      code: 'does-not-fit',
      subject: { kind: 'wall', id: '' },
      text: `These ${inWords(worst.count)} works are together ${say(shortBy)} longer than the wall, without any gap.`,
      figures: { shortBy, widths: worst.sum, length: wall.length, works: worst.count },
    },
  ]
}

function others(works: readonly HungRect[], work: HungRect): readonly Rect[] {
  return works.filter(other => other.id !== work.id)
}

function nameOf(thing: { readonly kind: string; readonly label: string }): string {
  return thing.label === '' ? thing.kind : thing.label
}

function possessive(name: string): string {
  return `${name}’s`
}

function cureText(shift: { readonly dx: number; readonly dy: number }, say: (mm: number) => string): string {
  if (shift.dx !== 0) return `Move it ${say(Math.abs(shift.dx))} ${shift.dx > 0 ? 'right' : 'left'}`
  return `Move it ${say(Math.abs(shift.dy))} ${shift.dy > 0 ? 'up' : 'down'}`
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']

function inWords(count: number): string {
  return WORDS[count] ?? String(count)
}
