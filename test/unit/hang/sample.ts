/** A plain wall, a hook and a question to begin from; each test says only what it is about. */
import type { MarksQuestion } from '../../../src/hang/marks-shape.ts'
import type { Fixing } from '../../../src/hang/method.ts'
import type { WallFacts } from '../../../src/hang/wall.ts'

export const plainWall: WallFacts = {
  length: 9140,
  height: 3450,
  wallType: 'drywall',
  datum: 1480,
  floor: [],
  skirting: null,
  studFirst: null,
  studSpacing: null,
  backingFrom: null,
  backingTo: null,
  openings: [],
  keepClears: [],
}

export const hook: Fixing = { name: 'Hook 50 lb', kind: 'hook', holeOffset: 14, ratedKg: 22.6796185 }
export const screw: Fixing = { name: 'Screw 4.5 mm', kind: 'screw', holeOffset: -2.25, ratedKg: 25, shank: 4.5 }

export function question(changes: Partial<MarksQuestion>): MarksQuestion {
  return {
    work: { height: 910, width: 710, mass: 9.5 },
    back: {
      method: 'd-rings',
      seenFrom: 'front',
      data: { left: { drop: 140, inset: 55 }, right: { drop: 140, inset: 55 } },
    },
    centre: { x: 2367, y: 1480 },
    wall: plainWall,
    fixings: [hook],
    ...changes,
  }
}
