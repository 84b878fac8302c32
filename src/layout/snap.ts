/**
 * Snapping while a hand drags works on a wall. It is computed from where the drag began and how far the hand has gone,
 * never from the last frame, so that nothing drifts. It moves by at most the threshold, one step along and one up, and
 * then tells every line that is exact where the works now stand.
 */
import type { Rect } from '../geometry/rect.ts'
import { moved, right, top } from '../geometry/rect.ts'
import { climb, floorAt, type Profile } from '../hang/wall.ts'

export interface SnapWork extends Rect {
  readonly id: string
}

export interface SnapQuestion {
  /** What is dragged, where it stood when the drag began. */
  readonly dragged: readonly Rect[]
  /** How far the hand has gone since; along a ramp the works climb with the floor besides, each where its middle is. */
  readonly dx: number
  readonly dy: number
  readonly others: readonly SnapWork[]
  readonly wallLength: number
  /** The height that centres hang to; null where there is none. Along a ramp above the floor everywhere. */
  readonly centreLine: number | null
  /** The floor that heights follow along a ramp: what is level there is as high above the floor. Level where left out. */
  readonly ramp?: Profile
  /** mm on the wall; from pixels by the view's scale. 0 never moves anything. */
  readonly threshold: number
}

export type SnapKind =
  | 'wall middle'
  | 'equal margins'
  | 'equal gaps'
  | 'same gap'
  | 'lefts'
  | 'rights'
  | 'centres along'
  | 'centre line'
  | 'centres'
  | 'tops'
  | 'bottoms'

/**
 * A line that is exact now. `along` is a vertical line at x, `up` a level line at y, along a ramp at y where the dragged
 * works' middle is; equal gaps carry their stretches.
 */
export interface SnapLine {
  readonly axis: 'along' | 'up'
  readonly kind: SnapKind
  readonly at: number
  readonly ids: readonly string[]
  readonly gap: number | null
  readonly stretches: readonly { readonly from: number; readonly to: number }[]
}

export interface SnapAnswer {
  /** How far the works go, as the hand's own way is said: what they climb along a ramp is not in it. */
  readonly dx: number
  readonly dy: number
  readonly snappedX: boolean
  readonly snappedY: boolean
  readonly lines: readonly SnapLine[]
}

/** A candidate: the shift that makes a line exact, and the line once it is. */
interface Candidate {
  readonly shift: number
  readonly line: SnapLine
}

const EXACT = 1e-6

export function snap(question: SnapQuestion): SnapAnswer {
  const { dx, dy, threshold } = question
  const first = carried(question, dx, dy)
  if (first === null) return { dx, dy, snappedX: false, snappedY: false, lines: [] }
  const rises = nearest(candidatesUp(first, question), threshold) ?? 0
  const along = candidatesAlong(moved(first, 0, rises), question)
  const shiftX = nearest(along, threshold)
  // Along a ramp the line is another height where the step along has led.
  const up = candidatesUp(carried(question, dx + (shiftX ?? 0), dy) ?? first, question)
  const shiftY = nearest(up, threshold)
  return {
    dx: dx + (shiftX ?? 0),
    dy: dy + (shiftY ?? 0),
    snappedX: shiftX !== null,
    snappedY: shiftY !== null,
    lines: [...exact(along, shiftX ?? 0), ...exact(up, shiftY ?? 0)],
  }
}

/** A work once a hand has carried it so far: along a ramp it climbs with the floor under its middle besides. mm. */
export function carriedBy(rect: Rect, dx: number, dy: number, ramp: Profile): Rect {
  const middle = rect.x + rect.width / 2
  return moved(rect, dx, dy + climb(ramp, middle, middle + dx))
}

function carried({ dragged, ramp = [] }: SnapQuestion, dx: number, dy: number): Rect | null {
  return bounds(dragged.map(rect => carriedBy(rect, dx, dy, ramp)))
}

/** The rectangle round all of them; null for none. */
export function bounds(rects: readonly Rect[]): Rect | null {
  const first = rects[0]
  if (first === undefined) return null
  let [l, b, r, t] = [first.x, first.y, right(first), top(first)]
  for (const rect of rects) {
    l = Math.min(l, rect.x)
    b = Math.min(b, rect.y)
    r = Math.max(r, right(rect))
    t = Math.max(t, top(rect))
  }
  return { x: l, y: b, width: r - l, height: t - b }
}

function nearest(candidates: readonly Candidate[], threshold: number): number | null {
  let best: number | null = null
  for (const { shift } of candidates) {
    if (Math.abs(shift) <= threshold && (best === null || Math.abs(shift) < Math.abs(best) - EXACT)) best = shift
  }
  return best
}

function exact(candidates: readonly Candidate[], shift: number): readonly SnapLine[] {
  return candidates.filter(candidate => Math.abs(candidate.shift - shift) <= EXACT).map(candidate => candidate.line)
}

/** Candidates beyond the threshold are never made: of hundreds of works a few are near at any moment. */
function candidatesUp(box: Rect, { others, centreLine, threshold, ramp = [] }: SnapQuestion): readonly Candidate[] {
  const found: Candidate[] = []
  const middleX = box.x + box.width / 2
  const level = (kind: SnapKind, mine: number, at: number, id?: string) => {
    if (Math.abs(at - mine) > threshold + EXACT) return
    const ids = id === undefined ? [] : [id]
    found.push({ shift: at - mine, line: { axis: 'up', kind, at, ids, gap: null, stretches: [] } })
  }
  const middle = box.y + box.height / 2
  if (centreLine !== null) level('centre line', middle, centreLine + floorAt(ramp, middleX))
  for (const other of others) {
    const up = climb(ramp, other.x + other.width / 2, middleX)
    level('centres', middle, other.y + other.height / 2 + up, other.id)
    level('tops', top(box), top(other) + up, other.id)
    level('bottoms', box.y, other.y + up, other.id)
  }
  return found
}

function candidatesAlong(box: Rect, question: SnapQuestion): readonly Candidate[] {
  const { others, wallLength, threshold } = question
  const found: Candidate[] = []
  const middle = box.x + box.width / 2
  const upright = (kind: SnapKind, mine: number, at: number, id?: string) => {
    if (Math.abs(at - mine) > threshold + EXACT) return
    const ids = id === undefined ? [] : [id]
    found.push({ shift: at - mine, line: { axis: 'along', kind, at, ids, gap: null, stretches: [] } })
  }
  upright('wall middle', middle, wallLength / 2)
  for (const other of others) {
    upright('centres along', middle, other.x + other.width / 2, other.id)
    upright('lefts', box.x, other.x, other.id)
    upright('rights', right(box), right(other), other.id)
  }
  found.push(...margins(box, question), ...gaps(box, question))
  return found
}

/** The hang as a whole keeps equal margins at both ends of the wall. */
function margins(box: Rect, { others, wallLength }: SnapQuestion): readonly Candidate[] {
  const hang = bounds(others)
  if (hang === null) return []
  const found: Candidate[] = []
  const make = (left: number, margin: number) => {
    if (margin < 0) return
    found.push({
      shift: left - box.x,
      line: {
        axis: 'along',
        kind: 'equal margins',
        at: left,
        ids: [],
        gap: margin,
        stretches: [
          { from: 0, to: margin },
          { from: wallLength - margin, to: wallLength },
        ],
      },
    })
  }
  const rightMargin = wallLength - right(hang)
  if (rightMargin <= hang.x) make(rightMargin, rightMargin)
  if (hang.x <= rightMargin) make(wallLength - hang.x - box.width, hang.x)
  return found
}

/** Between two neighbours: the same gap on both sides. Beside one: the gap that stands beyond it. */
function gaps(box: Rect, { others, wallLength }: SnapQuestion): readonly Candidate[] {
  const row = others.filter(other => other.y < top(box) && top(other) > box.y).sort((a, b) => a.x - b.x)
  const middle = box.x + box.width / 2
  const before = row.filter(other => other.x + other.width / 2 < middle)
  const after = row.filter(other => other.x + other.width / 2 >= middle)
  const a = before.at(-1)
  const b = after[0]
  const found: Candidate[] = []
  const make = (
    kind: SnapKind,
    left: number,
    gap: number,
    ids: readonly string[],
    stretches: SnapLine['stretches'],
  ) => {
    if (gap < 0) return
    found.push({ shift: left - box.x, line: { axis: 'along', kind, at: left, ids, gap, stretches } })
  }
  const from = a === undefined ? 0 : right(a)
  const to = b === undefined ? wallLength : b.x
  const between = (to - from - box.width) / 2
  if (row.length > 0) {
    make(
      'equal gaps',
      from + between,
      between,
      [a?.id, b?.id].filter(id => id !== undefined),
      [
        { from, to: from + between },
        { from: to - between, to },
      ],
    )
  }
  const a2 = before.at(-2)
  if (a !== undefined && a2 !== undefined) {
    const gap = a.x - right(a2)
    make(
      'same gap',
      right(a) + gap,
      gap,
      [a2.id, a.id],
      [
        { from: right(a2), to: a.x },
        { from: right(a), to: right(a) + gap },
      ],
    )
  }
  const b2 = after[1]
  if (b !== undefined && b2 !== undefined) {
    const gap = b2.x - right(b)
    make(
      'same gap',
      b.x - gap - box.width,
      gap,
      [b.id, b2.id],
      [
        { from: b.x - gap, to: b.x },
        { from: right(b), to: b2.x },
      ],
    )
  }
  return found
}
