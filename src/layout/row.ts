/**
 * A row along one stretch of wall: given widths, an order and a rule for the gaps, where each work's left edge comes.
 * Works that are held split the stretch and keep their place. Gaps and widths add up to the stretch exactly; what does
 * not fit says by how much, and which single change would make it fit.
 */
import { Refusal } from '../contract/refusal.ts'
import type { RowAnswer, RowQuestion, RowRule } from './layout-shape.ts'
import { rowCures } from './row-cures.ts'

interface Item {
  readonly id: string
  readonly width: number
  readonly heldAt?: number | null | undefined
}

/** A stretch between two things that stay: an end of the wall, or a held work. */
interface Stretch {
  readonly from: number
  readonly to: number
  readonly works: readonly Item[]
  /** The held work it begins or ends at; null at an end of the whole stretch. */
  readonly before: Item | null
  readonly after: Item | null
}

/**
 * Places a row. mm. Refuses `span-empty`, `held-out-of-order` (held works that overlap or stand in another order than
 * the list) and `rule-out-of-range`, naming the field.
 */
export function layRow(question: RowQuestion): RowAnswer {
  const { from, to, works, rule } = question
  if (!(to > from)) throw new Refusal('span-empty', 'The stretch must end after it begins.', { field: 'to' })
  if (rule.rule === 'by-size' && rule.least > rule.most) {
    throw new Refusal('rule-out-of-range', 'The least gap must not be more than the most.', { field: 'rule.most' })
  }
  const placed: { id: string; left: number; right: number; centre: number }[] = []
  const gaps: number[] = []
  const missing = shortBy(question)
  for (const stretch of stretches(question)) {
    const inner = gapsOf(stretch, rule)
    let x = stretch.from
    stretch.works.forEach((work, index) => {
      x += inner[index] ?? 0
      gaps.push(inner[index] ?? 0)
      placed.push({ id: work.id, left: x, right: x + work.width, centre: x + work.width / 2 })
      x += work.width
    })
    gaps.push(stretch.to - x)
    const held = stretch.after
    if (held !== null) {
      const { id, width } = held
      placed.push({ id, left: stretch.to, right: stretch.to + width, centre: stretch.to + width / 2 })
    }
  }
  const fits = missing <= 1e-6
  return {
    fits,
    shortBy: fits ? 0 : missing,
    works: fits ? placed : [],
    gaps: fits ? gaps : [],
    filled: works.reduce((sum, work) => sum + work.width, 0) / (to - from),
    cures: fits ? [] : rowCures(question, missing),
  }
}

function stretches({ from, to, works }: RowQuestion): readonly Stretch[] {
  const found: Stretch[] = []
  let start = from
  let free: Item[] = []
  let before: Item | null = null
  works.forEach((work, index) => {
    const heldAt = work.heldAt ?? null
    if (heldAt === null) {
      free.push(work)
      return
    }
    if (heldAt < start - 1e-6 || heldAt + work.width > to + 1e-6) {
      throw new Refusal(
        'held-out-of-order',
        'A held work overlaps another, stands before it in the list, or is off the stretch.',
        {
          field: `works.${index}.heldAt`,
          details: { id: work.id, heldAt, after: start, to },
        },
      )
    }
    found.push({ from: start, to: heldAt, works: free, before, after: work })
    start = heldAt + work.width
    free = []
    before = work
  })
  found.push({ from: start, to, works: free, before, after: null })
  return found
}

/**
 * The gaps of one stretch: before each work, and one after the last. Their sum and the widths are the stretch. Derived
 * from `free = L − ΣW`: equal `free / (n + 1)`; margins `(free − mL − mR) / (n − 1)`; ends k times the gap
 * `free / (n − 1 + 2k)` (equal gaps are common practice, the others follow from the sum).
 */
function gapsOf(stretch: Stretch, rule: RowRule): readonly number[] {
  const { works, before, after } = stretch
  const n = works.length
  const free = stretch.to - stretch.from - works.reduce((sum, work) => sum + work.width, 0)
  if (n === 0) return [free]
  switch (rule.rule) {
    case 'equal':
      return fill(n, free / (n + 1), free / (n + 1))
    case 'ends': {
      // One work alone has equal ends whatever their multiple.
      if (n === 1 && before === null && after === null) return [free / 2, free / 2]
      const left = before === null ? rule.times : 1
      const right = after === null ? rule.times : 1
      const gap = free / (n - 1 + left + right)
      return fill(n, gap * left, gap)
    }
    case 'margins':
      return withMargins(stretch, rule, free)
    case 'gap':
    case 'by-size': {
      const inner = works.slice(1).map((work, i) => between(rule, works[i] ?? work, work))
      return anchored(stretch, rule, free, inner)
    }
  }
}

function withMargins({ works, before, after }: Stretch, rule: RuleOf<'margins'>, free: number): readonly number[] {
  const n = works.length
  const left = before === null ? rule.left : null
  const right = after === null ? rule.right : null
  const count = n + 1 - (left === null ? 0 : 1) - (right === null ? 0 : 1)
  const rest = free - (left ?? 0) - (right ?? 0)
  // One work between two margins has no gap to find: it is centred between them.
  if (count === 0) return [(left ?? 0) + rest / 2, (right ?? 0) + rest / 2]
  const gap = rest / count
  return fill(n, left ?? gap, gap)
}

/** Fixed inner gaps: next to a held work on one side, else centred in the stretch or about the axis. */
function anchored(
  { from, to, works, before, after }: Stretch,
  rule: GivenGaps,
  free: number,
  inner: readonly number[],
): readonly number[] {
  const spare = free - inner.reduce((sum, gap) => sum + gap, 0)
  const [first, last] = [works[0], works.at(-1)]
  if (before === null && after !== null && last !== undefined) {
    const gap = between(rule, last, after)
    return [spare - gap, ...inner, gap]
  }
  if (before !== null && after === null && first !== undefined) {
    const gap = between(rule, before, first)
    return [gap, ...inner, spare - gap]
  }
  if (before === null && after === null && hasAxis(rule)) {
    const start = rule.axis - (to - from - spare) / 2 - from
    return [start, ...inner, spare - start]
  }
  return [spare / 2, ...inner, spare / 2]
}

type RuleOf<R extends RowRule['rule']> = Extract<RowRule, { readonly rule: R }>
type GivenGaps = RuleOf<'gap' | 'by-size'>

function hasAxis<R extends GivenGaps>(rule: R): rule is R & { readonly axis: number } {
  return rule.axis !== null && rule.axis !== undefined
}

/** `g = factor (w1 + w2) / 2`, clamped (factor 1, half of each neighbour's width, is common practice). */
function between(rule: GivenGaps, a: Item, b: Item): number {
  if (rule.rule === 'gap') return rule.gap
  return Math.min(rule.most, Math.max(rule.least, (rule.factor * (a.width + b.width)) / 2))
}

/** First gap, then the same gap between works; the last is what is left over, so the caller computes it. */
function fill(n: number, first: number, gap: number): readonly number[] {
  return [first, ...Array.from({ length: n - 1 }, () => gap), gap]
}

/** How much longer a stretch would have to be for its smallest gap to be the least one. */
function shortOf(stretch: Stretch, rule: RowRule, gaps: readonly number[], least: number): number {
  const { works, before, after } = stretch
  const n = works.length
  const length = stretch.to - stretch.from
  if (n === 0) return Math.max(0, -length)
  const widths = works.reduce((sum, work) => sum + work.width, 0)
  switch (rule.rule) {
    case 'equal':
      return Math.max(0, widths + (n + 1) * least - length)
    case 'ends': {
      const ends = (before === null ? rule.times : 1) + (after === null ? rule.times : 1)
      return Math.max(0, widths + (n - 1 + ends) * least - length)
    }
    case 'margins': {
      const margins = (before === null ? rule.left : least) + (after === null ? rule.right : least)
      return Math.max(0, widths + margins + (n - 1) * least - length)
    }
    default: {
      // The inner gaps are given. An end of the wall may be reached; between two held works the least gap stays.
      const last = length - widths - gaps.slice(0, n).reduce((sum, gap) => sum + gap, 0)
      // About an axis it may reach over one end only.
      if (before === null && after === null) return Math.max(0, -(gaps[0] ?? 0)) + Math.max(0, -last)
      const end = before !== null && after !== null ? least : 0
      const worst = Math.min(gaps[0] ?? 0, last) - end
      return Math.max(0, before !== null && after !== null ? -2 * worst : -worst)
    }
  }
}

/** How much longer the worst of its stretches would have to be; 0 where the row fits. */
export function shortBy(question: RowQuestion): number {
  const { rule, leastGap = 0 } = question
  return stretches(question).reduce(
    (most, stretch) => Math.max(most, shortOf(stretch, rule, gapsOf(stretch, rule), leastGap)),
    0,
  )
}
