/**
 * Labels on a wall: where each stands by its work, and what is in its way: works, other labels, openings, what must
 * stay clear, plates and holes, the wall's ends, the band that can be read. The rule it keeps: a finding names by how
 * much, and which other side would do.
 */
import type { Finding } from '../contract/shared.ts'
import type { Rect } from '../geometry/rect.ts'
import { clearances, clearDistance, distanceToPoint, overlap, right, top } from '../geometry/rect.ts'
import { sayIn } from '../hang/marks.ts'
import { openingsFor } from '../hang/niche.ts'
import { floorAt, highestFloor, lowestCeiling } from '../hang/wall.ts'
import { houseRules } from '../model/house-rules.ts'
import { labelSize } from './label-size.ts'
import type { LabelledWork, LabelPlace, LabelRules, LabelSide, LabelsAnswer, LabelsQuestion } from './labels-shape.ts'
import { insideMargin } from './shifts.ts'

const SLACK = 1e-6

export const defaultLabelRules: LabelRules = {
  line: houseRules.labelLine.value,
  level: houseRules.labelLevel.value,
  lowest: houseRules.labelLowest.value,
  highest: houseRules.labelHighest.value,
  gap: houseRules.labelGap.value,
  clear: houseRules.labelClear.value,
  type: houseRules.labelType.value,
  perLine: houseRules.labelPerLine.value,
}

/**
 * The label's rectangle. Beside: right `x = xl + W + gap`, left `x = xl − gap − width`, its centre at `line`, or, where
 * the rule says so and the work reaches lower than `line`, its bottom level with the work's. Below: flush with the left
 * edge, `gap` under the bottom. mm.
 */
export function labelRect(
  work: Rect,
  side: LabelSide,
  label: { readonly width: number; readonly height: number; readonly gap: number },
  line: number,
  level: LabelRules['level'],
): Rect {
  const { width, height, gap } = label
  if (side === 'below') return { x: work.x, y: work.y - gap - height, width, height }
  const x = side === 'right' ? right(work) + gap : work.x - gap - width
  const y = level === 'bottom' && work.y < line ? work.y : line - height / 2
  return { x, y, width, height }
}

interface Laid {
  readonly work: LabelledWork
  /** What it stands beside: its work, or the whole stack of that. */
  readonly beside: Rect
  readonly gap: number
  readonly rect: Rect
  readonly lines: readonly string[]
}

interface Ground {
  readonly question: LabelsQuestion
  readonly rules: LabelRules
  readonly say: (mm: number) => string
  readonly labels: readonly Laid[]
}

/** Every label of a wall with what is to settle about it. mm. */
export function layLabels(question: LabelsQuestion): LabelsAnswer {
  const rules = { ...defaultLabelRules, ...known(question.rules ?? {}) }
  const line = question.line ?? rules.line
  const standing = question.works.flatMap(work => (work.side === null ? [] : [{ work, side: work.side }]))
  const lay = (work: LabelledWork, side: LabelSide): Laid => {
    const sizeOf = (one: LabelledWork) => labelSize(one.text, rules, { width: one.labelWidth, height: one.labelHeight })
    const { width, height, lines } = sizeOf(work)
    const gap = work.gap ?? rules.gap
    // Along a ramp the labels climb as the line does.
    const there = question.wall.ramp === true ? line + floorAt(question.wall.floor, work.x + work.width / 2) : line
    const { stack } = work
    if (stack == null || side === 'below')
      return { work, beside: work, gap, lines, rect: labelRect(work, side, { width, height, gap }, there, rules.level) }
    const mates = standing.flatMap(one => (one.work.stack?.id === stack.id && one.side === side ? [one.work] : []))
    const column = (mates.includes(work) ? mates : [...mates, work]).sort((a, b) => top(b) - top(a) || a.x - b.x)
    const beside = { ...work, x: stack.left, width: stack.right - stack.left }
    const floor = floorAt(question.wall.floor, work.x + work.width / 2)
    const rects = columnsOfLabels(column.map(sizeOf), rules, { line: there, floor })
    const own = rects[column.indexOf(work)] ?? { from: 0, y: there - height / 2 }
    const x = side === 'right' ? stack.right + gap + own.from : stack.left - gap - own.from - width
    return { work, beside, gap, lines, rect: { x, y: own.y, width, height } }
  }
  const laidAll = standing.map(({ work, side }) => ({ laid: lay(work, side), side }))
  const ground: Ground = {
    question,
    rules,
    say: sayIn(question.unit ?? 'mm'),
    labels: laidAll.map(({ laid }) => laid),
  }
  const labels: LabelPlace[] = []
  const findings: Finding[] = []
  for (const { laid, side } of laidAll) {
    const found = inItsWay(laid, side, ground)
    const better =
      found.length === 0
        ? null
        : (otherSides(side).find(other => inItsWay(lay(laid.work, other), other, ground).length === 0) ?? null)
    labels.push({ id: laid.work.id, side, ...laid.rect, lines: laid.lines, better })
    for (const one of found)
      findings.push({ ...one, text: `${one.text} ${wayOut(better)}`, figures: { ...one.figures, better } })
  }
  return { labels, findings }
}

/**
 * Labels of one stack in columns beside it, read downwards, the first nearest: each about the line, moved into the band
 * that can be read where it fits there. `from`: distance from the nearest column's edge. mm.
 */
function columnsOfLabels(
  labels: readonly { readonly width: number; readonly height: number }[],
  { clear, gap, lowest, highest }: LabelRules,
  { line, floor }: { readonly line: number; readonly floor: number },
): readonly { readonly from: number; readonly y: number }[] {
  const columns: { readonly width: number; readonly height: number }[][] = []
  const tall = (column: readonly { readonly height: number }[]) =>
    column.reduce((sum, { height }) => sum + height, 0) + clear * Math.max(0, column.length - 1)
  for (const label of labels) {
    const column = columns.at(-1)
    if (column !== undefined && tall([...column, label]) <= highest - lowest + SLACK) column.push(label)
    else columns.push([label])
  }
  let from = 0
  return columns.flatMap(column => {
    const height = tall(column)
    const about = line - height / 2
    // One label stands on the line like that of any other work.
    const bottom = column.length === 1 ? about : Math.max(lowest + floor, Math.min(highest + floor - height, about))
    let y = bottom + height
    const begins = from
    from += Math.max(...column.map(({ width }) => width)) + gap
    return column.map(label => {
      y -= label.height
      const spot = { from: begins, y }
      y -= clear
      return spot
    })
  })
}

/** A rule that is left out is the house's. */
function known(rules: NonNullable<LabelsQuestion['rules']>): Partial<LabelRules> {
  // Only keys without a value are dropped.
  return Object.fromEntries(Object.entries(rules).filter(([, value]) => value !== undefined)) as Partial<LabelRules>
}

/** The other way round first: the height stays then. */
function otherSides(side: LabelSide): readonly LabelSide[] {
  if (side === 'below') return ['right', 'left']
  return [side === 'right' ? 'left' : 'right', 'below']
}

function wayOut(better: LabelSide | null): string {
  if (better === null) return 'No other side is free: move a work, or make the label smaller.'
  return better === 'below' ? 'Below the work it would stand free.' : `On the ${better} it would stand free.`
}

function inItsWay(laid: Laid, side: LabelSide, ground: Ground): readonly Finding[] {
  return [
    ...offWall(laid, ground),
    ...beforeWorks(laid, side, ground),
    ...beforeLabels(laid, ground),
    ...onTheWall(laid, ground),
    ...overHoles(laid, ground),
    ...outOfBand(laid, ground),
  ]
}

function about(
  { work }: Laid,
  severity: Finding['severity'],
  code: string,
  text: string,
  figures: Finding['figures'],
): Finding {
  return { severity, code: `label-${code}`, subject: { kind: 'placement', id: work.id }, text, figures }
}

/** As findings begin: `The label of 12`. */
function whose({ work }: Laid): string {
  return `The label of ${work.name}`
}

function offWall(laid: Laid, { question: { wall }, say }: Ground): readonly Finding[] {
  const { rect } = laid
  const floor = highestFloor(wall, rect.x, right(rect))
  const over = [
    { end: 'left end', by: -rect.x },
    { end: 'right end', by: right(rect) - wall.length },
    { end: 'top', by: top(rect) - lowestCeiling(wall, rect.x, right(rect)) },
    { end: 'floor', by: floor - rect.y },
  ]
  return over
    .filter(({ by }) => by > SLACK)
    .map(({ end, by }) =>
      about(laid, 'stop', 'off-wall', `${whose(laid)} stands ${say(by)} beyond the wall’s ${end}.`, { end, by }),
    )
}

/** The gap that it stands in is told where that is what is wanting, for it is what a person can change. */
function beforeWorks(laid: Laid, side: LabelSide, { question, rules, say }: Ground): readonly Finding[] {
  const { rect, work, beside: own, gap } = laid
  const found: Finding[] = []
  for (const other of question.works) {
    const distance = clearDistance(rect, other)
    if (other.id === work.id || distance >= rules.clear - SLACK) continue
    const { dx, dy } = clearances(own, other)
    const beyond = side === 'right' ? other.x >= right(own) - SLACK : side === 'left' && right(other) <= own.x + SLACK
    const beside = beyond && clearances(rect, other).dy < 0
    if (beside || (side === 'below' && other.y < work.y && clearances(rect, other).dx < 0)) {
      const reach = side === 'right' ? right(rect) - right(own) : own.x - rect.x
      const wants = beside ? reach + rules.clear : gap + rect.height + rules.clear
      const has = Math.max(0, beside ? dx : dy)
      const shortBy = wants - has
      const where = beside
        ? `The gap ${side} of ${work.name}, to ${other.name},`
        : `The gap below ${work.name}, to ${other.name},`
      const text = `${where} is too narrow for its label by ${say(shortBy)}.`
      found.push(
        about(laid, overlap(rect, other) ? 'stop' : 'settle', 'gap-narrow', text, {
          with: other.id,
          gap: has,
          wants,
          shortBy,
        }),
      )
    } else if (overlap(rect, other)) {
      found.push(about(laid, 'stop', 'on-work', `${whose(laid)} stands on ${other.name}.`, { with: other.id }))
    } else {
      const text = `${whose(laid)} is ${say(distance)} from ${other.name}; the house rule is ${say(rules.clear)}.`
      found.push(about(laid, 'settle', 'near-work', text, { with: other.id, distance, least: rules.clear }))
    }
  }
  return found
}

function beforeLabels(laid: Laid, { labels, rules, say }: Ground): readonly Finding[] {
  return labels
    .filter(other => other.work.id !== laid.work.id && clearDistance(laid.rect, other.rect) < rules.clear - SLACK)
    .map(other => {
      const distance = clearDistance(laid.rect, other.rect)
      const figures = { with: other.work.id, distance, least: rules.clear }
      return overlap(laid.rect, other.rect)
        ? about(laid, 'stop', 'on-label', `${whose(laid)} and that of ${other.work.name} overlap.`, figures)
        : about(
            laid,
            'settle',
            'near-label',
            `${whose(laid)} and that of ${other.work.name} are ${say(distance)} apart; the house rule is ${say(rules.clear)}.`,
            figures,
          )
    })
}

function onTheWall(laid: Laid, { question: { wall }, say }: Ground): readonly Finding[] {
  const { rect } = laid
  const called = (thing: { readonly kind: string; readonly label: string }) =>
    thing.label === '' ? thing.kind : thing.label
  const openings = openingsFor(rect, wall)
    .filter(opening => overlap(rect, opening))
    .map(opening => {
      const figures = { opening: opening.id }
      // One wholly at the back of a niche is not asked about here.
      const said =
        opening.kind === 'niche'
          ? `hangs over the edge of the ${called(opening)}: put it wholly into it, or wholly beside it`
          : `stands in the ${called(opening)}`
      return about(laid, 'stop', 'in-opening', `${whose(laid)} ${said}.`, figures)
    })
  const keepClears = wall.keepClears
    .filter(item => insideMargin(rect, item) > SLACK)
    .map(item => {
      const inside = insideMargin(rect, item)
      const figures = { keepClear: item.id, margin: item.margin, inside }
      return overlap(rect, item)
        ? about(laid, 'stop', 'covers-keep-clear', `${whose(laid)} covers the ${called(item)}.`, figures)
        : about(
            laid,
            'settle',
            'in-keep-clear',
            `${whose(laid)} stands ${say(inside)} inside the ${called(item)}’s margin.`,
            figures,
          )
    })
  return [...openings, ...keepClears]
}

/** A plate or lock beside the frame must be reached with its tool; a hole of any work must not be covered. */
function overHoles(laid: Laid, { question: { works }, rules, say }: Ground): readonly Finding[] {
  return works.flatMap(work =>
    work.holes.flatMap(hole => {
      const distance = distanceToPoint(laid.rect, hole)
      const least = hole.keeps ? rules.clear : 0
      if (distance > 0 ? distance >= least - SLACK : false) return []
      const whoseHole = `the ${hole.name} of ${work.name}`
      const figures = { with: work.id, hole: hole.name, distance, least }
      if (distance === 0) return [about(laid, 'stop', 'over-hole', `${whose(laid)} would cover ${whoseHole}.`, figures)]
      const text = `${whose(laid)} is ${say(distance)} from ${whoseHole}; its tool needs ${say(least)}.`
      return [about(laid, 'settle', 'near-lock', text, figures)]
    }),
  )
}

function outOfBand(laid: Laid, { question: { wall }, rules, say }: Ground): readonly Finding[] {
  const { rect } = laid
  const floor = floorAt(wall.floor, rect.x + rect.width / 2)
  const low = rules.lowest - (rect.y - floor)
  const high = top(rect) - floor - rules.highest
  if (low > SLACK) {
    const text = `${whose(laid)} ends ${say(rect.y - floor)} above the floor; lower than ${say(rules.lowest)} it is not easily read.`
    return [about(laid, 'settle', 'too-low', text, { bottom: rect.y - floor, least: rules.lowest, by: low })]
  }
  if (high > SLACK) {
    const text = `${whose(laid)} reaches ${say(top(rect) - floor)} above the floor; higher than ${say(rules.highest)} it is not easily read.`
    return [about(laid, 'settle', 'too-high', text, { top: top(rect) - floor, most: rules.highest, by: high })]
  }
  return []
}
