/**
 * Sections through wall, fixing and frame, to scale: what a technician would sketch beside the sum. x grows out of the
 * wall from its face, y up from the bearing point. The rule they keep: what was measured stands at its measure, what was
 * not at a usual size, and no dimension shows a figure that nobody gave.
 */
import type { Point } from '../geometry/rect.ts'
import type { Fixing, SectionDrawing } from './method.ts'

export interface SectionWork {
  readonly height: number
  readonly width: number
  readonly depth?: number | null
}

type Part = SectionDrawing['parts'][number]
type Dimension = SectionDrawing['dimensions'][number]

/** A frame's depth and the height of its rail where nobody measured them. Usual sizes, from memory. */
const USUAL_DEPTH = 30
const RAIL = 25
/** How far a usual hook, ring or screw head holds a frame off the wall. From memory. */
export const STAND_OFF = 6

export function box(kind: Part['kind'], x: number, y: number, width: number, height: number): Part {
  return {
    kind,
    closed: true,
    points: [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ],
  }
}

export function stroke(kind: Part['kind'], ...points: readonly Point[]): Part {
  return { kind, closed: false, points }
}

export function dimension(label: string, from: Point, to: Point, value: number | null): Dimension {
  return { label, from, to, value }
}

/**
 * The framed work itself, its top `drop` above the bearing point, its back `off` the wall: the stile beyond the section,
 * two rails and what they hold.
 */
export function framedWork(work: SectionWork, drop: number, off: number): readonly Part[] {
  const depth = work.depth ?? USUAL_DEPTH
  const rail = Math.min(RAIL, work.height / 4)
  const bottom = drop - work.height
  const panel = off + depth * 0.6
  return [
    box('frame', off, bottom, depth, work.height),
    box('frame', off, drop - rail, depth, rail),
    box('frame', off, bottom, depth, rail),
    stroke('work', { x: panel, y: drop - rail }, { x: panel, y: bottom + rail }),
  ]
}

/** A pad at the bottom, as thick as the top stands off, so that the work hangs plumb. */
export function bottomPad(work: SectionWork, drop: number, off: number): readonly Part[] {
  return off > 0 ? [box('spacer', 0, drop - work.height, off, Math.min(RAIL, work.height / 4) / 2)] : []
}

/** The fixing: a hook with its nail at an angle, a straight nail or screw with its head, by their own length. */
export function fixingInWall(fixing: Fixing): { readonly parts: readonly Part[]; readonly hole: Point } {
  const hole: Point = { x: 0, y: fixing.holeOffset }
  const length = fixing.length ?? 35
  const shank = (fixing.shank ?? 4) / 2
  if (fixing.kind === 'hook') {
    const into = length * 0.8
    return {
      hole,
      parts: [
        stroke(
          'fixing',
          { x: 3, y: hole.y + 6 },
          { x: 1, y: hole.y },
          { x: 1, y: -STAND_OFF },
          { x: STAND_OFF, y: -3 },
          { x: STAND_OFF, y: 4 },
        ),
        stroke('fixing', { x: 4, y: hole.y + 3 }, { x: -into, y: hole.y - into * 0.4 }),
      ],
    }
  }
  const out = Math.min(12, length / 3)
  return {
    hole,
    parts: [
      box('fixing', out - length, hole.y - shank, length, shank * 2),
      box('fixing', out, hole.y - shank * 2, 2, shank * 4),
    ],
  }
}

/** A frame by what holds its back over the fixing; `own` is drawn under the fixing, `more` over it. */
export function hungSection(
  { drop, work, fixing, off }: { drop: number; work: SectionWork; fixing: Fixing; off: number },
  own: Part,
  more: { readonly parts: readonly Part[]; readonly dimensions: SectionDrawing['dimensions'] } = {
    parts: [],
    dimensions: [],
  },
): SectionDrawing {
  const { parts, hole } = fixingInWall(fixing)
  return {
    bearing: { x: 0, y: 0 },
    hole,
    parts: [...framedWork(work, drop, off), ...bottomPad(work, drop, off), own, ...parts, ...more.parts],
    dimensions: [...dropAndHole(drop, work, off, hole), ...more.dimensions],
  }
}

/** A ring on the frame's back over the fixing. */
export function ringSection(drop: number, work: SectionWork, fixing: Fixing): SectionDrawing {
  const off = STAND_OFF
  const ring = stroke('hanger', { x: off, y: -30 }, { x: off / 2, y: -14 }, { x: off / 2, y: 0 })
  return hungSection({ drop, work, fixing, off }, ring)
}

/** A wire from the frame's back up over the hook. */
export function wireSection(drop: number, work: SectionWork, fixing: Fixing): SectionDrawing {
  const off = STAND_OFF + 2
  const wire = stroke('wire', { x: off, y: -Math.min(80, work.height / 4) }, { x: off / 2, y: 0 })
  return hungSection({ drop, work, fixing, off }, wire)
}

/** The top bar of a stretcher on a nail or screw: its lower inner edge bears. */
export function barSection(bar: number, clearance: number | null, work: SectionWork, fixing: Fixing): SectionDrawing {
  const { parts, hole } = fixingInWall(fixing)
  const depth = work.depth ?? USUAL_DEPTH
  const bottom = bar - work.height
  const canvas = clearance ?? depth * 0.8
  return {
    bearing: { x: 0, y: 0 },
    hole,
    parts: [
      box('bar', 1, 0, depth * 0.7, bar),
      box('bar', 1, bottom, depth * 0.7, Math.min(bar, work.height / 4)),
      stroke('work', { x: canvas, y: bar }, { x: canvas, y: bottom }),
      ...parts,
    ],
    dimensions: [
      ...dropAndHole(bar, work, 1, hole),
      dimension('free behind', { x: 0, y: -20 }, { x: canvas, y: -20 }, clearance),
    ],
  }
}

/** Two bevelled bars hooked into each other, and the spacer that keeps the bottom plumb. */
export function cleatSection(drop: number, depth: number | null, work: SectionWork, fixing: Fixing): SectionDrawing {
  const thick = depth ?? 18
  const q = fixing.holeOffset
  const low = Math.min(q, -10)
  return {
    bearing: { x: 0, y: 0 },
    hole: { x: 0, y: q },
    parts: [
      ...framedWork(work, drop, thick),
      {
        kind: 'fixing',
        closed: true,
        points: [
          { x: 0, y: low - 40 },
          { x: thick / 2, y: low - 40 },
          { x: thick / 2, y: thick / 2 },
          { x: 0, y: -thick / 4 },
        ],
      },
      {
        kind: 'hanger',
        closed: true,
        points: [
          { x: thick, y: 45 },
          { x: thick / 2, y: 45 },
          { x: thick / 2, y: thick / 2 },
          { x: 0.5, y: 0 },
          { x: thick / 2, y: 0 },
          { x: thick, y: 0 },
        ],
      },
      stroke('fixing', { x: thick / 2, y: low - 20 }, { x: -45, y: low - 20 }),
      ...bottomPad(work, drop, thick),
    ],
    dimensions: [
      ...dropAndHole(drop, work, thick, { x: 0, y: q }),
      dimension('thickness', { x: 0, y: drop - work.height - 12 }, { x: thick, y: drop - work.height - 12 }, depth),
    ],
  }
}

/** What every section shows: the drop from the top edge, the hole's offset, the depth of the frame. */
export function dropAndHole(drop: number, work: SectionWork, off: number, hole: Point | null): readonly Dimension[] {
  const depth = work.depth ?? null
  const out = off + (depth ?? USUAL_DEPTH)
  return [
    dimension('drop', { x: out + 8, y: drop }, { x: out + 8, y: 0 }, drop),
    ...(hole === null || Math.abs(hole.y) < 0.05
      ? []
      : [dimension('hole', { x: -20, y: 0 }, { x: -20, y: hole.y }, Math.abs(hole.y))]),
    dimension('depth', { x: off, y: drop + 12 }, { x: out, y: drop + 12 }, depth),
  ]
}
