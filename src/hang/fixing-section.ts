/**
 * A section through one kind of fixing alone, as the library shows it: the wall's face, the fixing by its own length,
 * shank and head, where a work bears on it and where its hole is. x out of the wall from its face, y up from the bearing
 * point, mm. The rule it keeps: what nobody measured is drawn at a usual size and carries no figure.
 */
import type { Point } from '../geometry/rect.ts'
import type { Fixing, SectionDrawing } from './method.ts'
import { box, dimension, fixingInWall, STAND_OFF, stroke } from './section.ts'

type Parts = SectionDrawing['parts']
type Shape = Pick<Fixing, 'kind' | 'holeOffset' | 'length' | 'shank' | 'head'>

/** Usual sizes where nobody measured; from memory. mm. */
const USUAL = { length: 35, shank: 4, plate: 60, cleat: 18, rail: 20, bracket: 60 } as const

/** Shapes whose place on the wall is not a hole that this fixing makes. */
const NO_HOLE: ReadonlySet<Fixing['kind']> = new Set(['rail-hook'])

/** The section of a fixing; `holeOffset` up positive, from where a work bears to the hole. */
export function fixingSection(fixing: Shape): SectionDrawing {
  const hole: Point | null = NO_HOLE.has(fixing.kind) ? null : { x: 0, y: fixing.holeOffset }
  const parts = partsOf(fixing)
  const out = Math.max(...parts.flatMap(part => part.points.map(point => point.x)), STAND_OFF)
  const into = -(fixing.length ?? USUAL.length)
  const tip = Math.min(...parts.flatMap(part => part.points.map(point => point.x)))
  const low = Math.min(...parts.flatMap(part => part.points.map(point => point.y)))
  return {
    bearing: { x: 0, y: 0 },
    hole,
    parts,
    dimensions: [
      ...(hole === null || Math.abs(hole.y) < 0.05
        ? []
        : [dimension('hole', { x: out + 6, y: 0 }, { x: out + 6, y: hole.y }, Math.abs(hole.y))]),
      ...(into < 0 && hole !== null && hasShank(fixing.kind)
        ? [
            dimension(
              'length',
              { x: tip, y: low - 10 },
              { x: tip + Math.abs(into), y: low - 10 },
              fixing.length ?? null,
            ),
          ]
        : []),
    ],
  }
}

/** Its length is that of what goes into the wall, straight on. */
function hasShank(kind: Fixing['kind']): boolean {
  return kind === 'nail' || kind === 'screw'
}

function partsOf(fixing: Shape): Parts {
  const y = fixing.holeOffset
  switch (fixing.kind) {
    case 'hook':
      return fixingInWall({ ...fixing, name: '', ratedKg: null }).parts
    case 'nail':
    case 'screw':
      return shankAt(fixing, y, Math.min(12, (fixing.length ?? USUAL.length) / 3))
    case 'plate':
    case 'lock': {
      const reach = Math.max(USUAL.plate / 2, Math.abs(y) + 12)
      return [
        box('fixing', 0, Math.min(y, 0) - 12, 2, reach + 12),
        ...shankAt(fixing, y, 2),
        ...(fixing.kind === 'lock'
          ? [stroke('fixing', { x: 2, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 8 }, { x: 7, y: 8 })]
          : [stroke('fixing', { x: 2, y: 0 }, { x: 8, y: 0 }, { x: 8, y: 6 })]),
      ]
    }
    case 'cleat': {
      const thick = USUAL.cleat
      const low = Math.min(y, -10) - 20
      return [
        {
          kind: 'fixing',
          closed: true,
          points: [
            { x: 0, y: low },
            { x: thick / 2, y: low },
            { x: thick / 2, y: thick / 2 },
            { x: 0, y: 0 },
          ],
        },
        ...shankAt(fixing, y, thick / 2),
      ]
    }
    case 'rail-hook': {
      const { rail } = USUAL
      return [
        box('bar', 0, -40, rail, 40),
        stroke('fixing', { x: 3, y: 0 }, { x: 3, y: 10 }, { x: rail + 5, y: 10 }, { x: rail + 5, y: -52 }),
      ]
    }
    case 'steel-point':
      return shankAt({ ...fixing, head: fixing.head ?? 10 }, y, 2)
    case 'bracket': {
      const { bracket } = USUAL
      return [
        box('shelf', 0, Math.min(y, -bracket) - 10, 4, Math.max(bracket, Math.abs(y)) + 10),
        box('shelf', 0, -4, bracket, 4),
        ...shankAt(fixing, y, 4),
      ]
    }
  }
}

/** A straight shank with its head, `out` standing out of the wall's face. */
function shankAt(fixing: Shape, y: number, out: number): Parts {
  const length = fixing.length ?? USUAL.length
  const half = (fixing.shank ?? USUAL.shank) / 2
  const head = (fixing.head ?? half * 4) / 2
  return [
    box('fixing', out - length, y - half, length, half * 2),
    box('fixing', out, y - head, Math.max(1.5, half), head * 2),
  ]
}
