/**
 * A row along one stretch of wall: given widths, an order and a rule for the gaps, where each work's left edge comes.
 * Works that are held split the stretch and keep their place. Gaps and widths add up to the stretch exactly; what does
 * not fit says by how much, and which single change would make it fit.
 */
import { Refusal } from '../contract/refusal.ts'
import type { RowAnswer, RowCure, RowQuestion, RowRule } from './layout-shape.ts'

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
  readonly leftEnd: boolean
  readonly rightEnd: boolean
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
  const least = question.leastGap ?? 0
  const placed: { id: string; left: number; right: number; centre: number }[] = []
  const gaps: number[] = []
  let shortBy = 0
  for (const stretch of stretches(question)) {
    const inner = gapsOf(stretch, rule)
    shortBy = Math.max(shortBy, shortOf(stretch, rule, inner, least))
    let x = stretch.from
    stretch.works.forEach((work, index) => {
      x += inner[index] ?? 0
      gaps.push(inner[index] ?? 0)
      placed.push({ id: work.id, left: x, right: x + work.width, centre: x + work.width / 2 })
      x += work.width
    })
    gaps.push(stretch.to - x)
    if (!stretch.rightEnd) {
      const held = works.find(work => work.heldAt === stretch.to && !placed.some(done => done.id === work.id))
      if (held !== undefined) {
        placed.push({
          id: held.id,
          left: stretch.to,
          right: stretch.to + held.width,
          centre: stretch.to + held.width / 2,
        })
      }
    }
  }
  const fits = shortBy <= 1e-6
  return {
    fits,
    shortBy: fits ? 0 : shortBy,
    works: fits ? placed : [],
    gaps: fits ? gaps : [],
    filled: works.reduce((sum, work) => sum + work.width, 0) / (to - from),
    cures: fits ? [] : curesFor(question, shortBy),
  }
}

function stretches({ from, to, works }: RowQuestion): readonly Stretch[] {
  const found: Stretch[] = []
  let start = from
  let free: Item[] = []
  let leftEnd = true
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
    found.push({ from: start, to: heldAt, works: free, leftEnd, rightEnd: false })
    start = heldAt + work.width
    free = []
    leftEnd = false
  })
  found.push({ from: start, to, works: free, leftEnd, rightEnd: true })
  return found
}

/** The gaps of one stretch: before each work, and one after the last. Their sum and the widths are the stretch. */
function gapsOf(stretch: Stretch, rule: RowRule): readonly number[] {
  const { works } = stretch
  const n = works.length
  const free = stretch.to - stretch.from - works.reduce((sum, work) => sum + work.width, 0)
  if (n === 0) return [free]
  switch (rule.rule) {
    case 'equal':
      return fill(n, free / (n + 1), free / (n + 1))
    case 'ends': {
      // One work alone has equal ends whatever their multiple.
      if (n === 1 && stretch.leftEnd && stretch.rightEnd) return [free / 2, free / 2]
      const left = stretch.leftEnd ? rule.times : 1
      const right = stretch.rightEnd ? rule.times : 1
      const gap = free / (n - 1 + left + right)
      return fill(n, gap * left, gap)
    }
    case 'margins':
      return withMargins(stretch, rule, free)
    case 'gap':
    case 'by-size': {
      const inner = works.slice(1).map((work, i) => innerGap(rule, works[i]?.width ?? 0, work.width))
      return anchored(stretch, rule, free, inner)
    }
  }
}

function withMargins(
  stretch: Stretch,
  rule: Extract<RowRule, { readonly rule: 'margins' }>,
  free: number,
): readonly number[] {
  const n = stretch.works.length
  const left = stretch.leftEnd ? rule.left : null
  const right = stretch.rightEnd ? rule.right : null
  const count = n + 1 - (left === null ? 0 : 1) - (right === null ? 0 : 1)
  const rest = free - (left ?? 0) - (right ?? 0)
  // One work between two margins has no gap to find: it is centred between them.
  if (count === 0) return [(left ?? 0) + rest / 2, (right ?? 0) + rest / 2]
  const gap = rest / count
  return fill(n, left ?? gap, gap)
}

/** Fixed inner gaps: next to a held work on one side, else centred in the stretch or about the axis. */
function anchored(
  stretch: Stretch,
  rule: Extract<RowRule, { readonly rule: 'gap' | 'by-size' }>,
  free: number,
  inner: readonly number[],
): readonly number[] {
  const spare = free - inner.reduce((sum, gap) => sum + gap, 0)
  const { leftEnd, rightEnd, works } = stretch
  const first = works[0]?.width ?? 0
  const last = works.at(-1)?.width ?? 0
  if (leftEnd && !rightEnd) return [spare - beside(rule, last), ...inner, beside(rule, last)]
  if (!leftEnd && rightEnd) return [beside(rule, first), ...inner, spare - beside(rule, first)]
  if (leftEnd && rightEnd && rule.axis !== null && rule.axis !== undefined) {
    const length = stretch.to - stretch.from - spare
    const before = rule.axis - length / 2 - stretch.from
    return [before, ...inner, spare - before]
  }
  return [spare / 2, ...inner, spare / 2]
}

/** Gap to a held neighbour whose width the stretch does not know: its own work's half, or the fixed gap. */
function beside(rule: Extract<RowRule, { readonly rule: 'gap' | 'by-size' }>, width: number): number {
  return rule.rule === 'gap' ? rule.gap : Math.min(rule.most, Math.max(rule.least, rule.factor * width))
}

function innerGap(rule: Extract<RowRule, { readonly rule: 'gap' | 'by-size' }>, a: number, b: number): number {
  if (rule.rule === 'gap') return rule.gap
  return Math.min(rule.most, Math.max(rule.least, (rule.factor * (a + b)) / 2))
}

/** First gap, then the same gap between works; the last is what is left over, so the caller computes it. */
function fill(n: number, first: number, gap: number): readonly number[] {
  return [first, ...Array.from({ length: n - 1 }, () => gap), gap]
}

/** How much longer a stretch would have to be for its smallest gap to be the least one. */
function shortOf(stretch: Stretch, rule: RowRule, gaps: readonly number[], least: number): number {
  const n = stretch.works.length
  const length = stretch.to - stretch.from
  if (n === 0) return Math.max(0, -length)
  const widths = stretch.works.reduce((sum, work) => sum + work.width, 0)
  switch (rule.rule) {
    case 'equal':
      return Math.max(0, widths + (n + 1) * least - length)
    case 'ends': {
      const ends = (stretch.leftEnd ? rule.times : 1) + (stretch.rightEnd ? rule.times : 1)
      return Math.max(0, widths + (n - 1 + ends) * least - length)
    }
    case 'margins': {
      const margins = (stretch.leftEnd ? rule.left : least) + (stretch.rightEnd ? rule.right : least)
      return Math.max(0, widths + margins + (n - 1) * least - length)
    }
    default: {
      // The inner gaps are given: the ends must not go below nothing, and a held neighbour keeps its gap.
      const last = length - widths - gaps.slice(0, n).reduce((sum, gap) => sum + gap, 0)
      const axis = stretch.leftEnd && stretch.rightEnd && rule.axis !== null && rule.axis !== undefined
      const worst = Math.min(gaps[0] ?? 0, last)
      const centred = stretch.leftEnd === stretch.rightEnd && !axis
      return Math.max(0, centred || axis ? -2 * worst : -worst)
    }
  }
}

/** Single changes, each of which alone would make the row fit; cheapest for the hang first. */
function curesFor(question: RowQuestion, shortBy: number): readonly RowCure[] {
  const { from, to, works, rule } = question
  const cures: RowCure[] = []
  const widths = works.reduce((sum, work) => sum + work.width, 0)
  const n = works.length
  const anyHeld = works.some(work => (work.heldAt ?? null) !== null)
  if (!anyHeld && rule.rule === 'gap' && n > 1) {
    const gap = (to - from - widths) / (n - 1)
    if (gap >= 0 && gap < rule.gap) cures.push({ kind: 'gap', mm: gap })
  }
  const least = question.leastGap ?? 0
  if (!anyHeld && least > 0 && rule.rule !== 'gap' && rule.rule !== 'by-size') {
    const ends = rule.rule === 'ends' ? n - 1 + 2 * rule.times : n + 1
    const gap =
      rule.rule === 'margins'
        ? (to - from - widths - rule.left - rule.right) / Math.max(1, n - 1)
        : (to - from - widths) / ends
    if (gap >= 0 && gap < least) cures.push({ kind: 'least-gap', mm: gap })
  }
  if (!anyHeld && rule.rule === 'margins') {
    const margin = (to - from - widths - (n - 1) * least) / 2
    if (margin >= 0) cures.push({ kind: 'margins', mm: margin })
  }
  const leavable = works.filter(work => (work.heldAt ?? null) === null).sort((a, b) => a.width - b.width)
  const out = leavable.find(work => fitsWithout(question, work.id))
  if (out !== undefined) cures.push({ kind: 'leave-out', id: out.id, mm: out.width })
  const freed = works.filter(work => (work.heldAt ?? null) !== null).find(work => fitsFreeing(question, work.id))
  if (freed !== undefined) cures.push({ kind: 'let-go', id: freed.id, mm: 0 })
  if (!anyHeld) cures.push({ kind: 'longer', mm: shortBy })
  return cures
}

function fitsWithout(question: RowQuestion, id: string): boolean {
  return isShort({ ...question, works: question.works.filter(work => work.id !== id) }) <= 1e-6
}

function fitsFreeing(question: RowQuestion, id: string): boolean {
  const works = question.works.map(work => (work.id === id ? { ...work, heldAt: null } : work))
  return isShort({ ...question, works }) <= 1e-6
}

function isShort(question: RowQuestion): number {
  return stretches(question).reduce(
    (most, stretch) =>
      Math.max(most, shortOf(stretch, question.rule, gapsOf(stretch, question.rule), question.leastGap ?? 0)),
    0,
  )
}
