/**
 * What is on record of the demo: a crate from a lender into the store, and a painting out of it that was looked at
 * twice. Places of findings are parts of its width and height, from the left and the top edge.
 */
import type { Input } from '../../../src/contract/contract.ts'

export type Finding = Omit<Input<'condition.addFinding'>, 'report' | 'points' | 'follows'> & {
  readonly at: readonly (readonly [number, number])[]
  /** Number of the finding of the first report that it goes on from. */
  readonly goesOnFrom?: number
}

export const store = { kind: 'place', name: 'Store, bay 2' } as const
export const crate = { kind: 'crate', name: 'Crate 4', width: 1400, height: 1150, depth: 420, holdHours: 24 } as const

/** In the crate together; the first is the one that was looked at. */
export const crated = ['quay-evening', 'high-street', 'two-kilns'] as const

/** Days before today: packed at the lender’s, put down in the store, opened. */
export const moved = { packed: 8, stored: 7, opened: 6 } as const

const stable = { age: 'old', severity: 'slight', stable: 'stable' } as const

export const incoming: readonly Finding[] = [
  {
    ...stable,
    form: 'area',
    term: 'painting.crackle',
    at: [
      [0.12, 0.1],
      [0.36, 0.08],
      [0.41, 0.22],
      [0.27, 0.31],
      [0.13, 0.25],
    ],
    note: 'Fine net in the sky, flat.',
  },
  {
    ...stable,
    form: 'outline',
    term: 'painting.scratch',
    at: [
      [0.62, 0.55],
      [0.66, 0.57],
      [0.69, 0.61],
    ],
    note: 'In the varnish alone; seen in raking light.',
  },
  { ...stable, form: 'mark', term: 'frame.open-joint', at: [[0.985, 0.98]], across: 2 },
  { ...stable, form: 'mark', term: 'painting.loss', at: [[0.47, 0.83]], across: 3 },
  {
    ...stable,
    side: 'back',
    form: 'area',
    term: 'painting.accretion',
    at: [
      [0.2, 0.7],
      [0.34, 0.69],
      [0.35, 0.78],
      [0.21, 0.79],
    ],
    note: 'Rest of an old label.',
  },
]

/** Before it hangs: the joint has opened, the loss is not found again, a loose plate is new. */
export const check: readonly Finding[] = [
  { ...incoming[0], goesOnFrom: 1 } as Finding,
  { ...incoming[1], goesOnFrom: 2 } as Finding,
  { ...incoming[2], across: 6, severity: 'marked', stable: 'unstable', goesOnFrom: 3 } as Finding,
  {
    side: 'back',
    form: 'mark',
    term: 'frame.loose-hardware',
    age: 'new',
    severity: 'marked',
    stable: 'unsure',
    at: [[0.1, 0.12]],
    across: 20,
    note: 'Lower screw of the plate turns by hand.',
  },
]

export const packing = 'Crate 4, slot 1: corner blocks, soft wrap; dry, indicator white.'

/** Signed by the one who brought it and the one who took it in, drawn in a field 1000 by 320. */
export const signatures = [
  {
    role: 'courier',
    name: 'Maud Ellersby',
    strokes: [
      [
        90, 250, 120, 120, 160, 70, 190, 210, 240, 90, 280, 240, 330, 180, 380, 230, 420, 170, 470, 235, 560, 190, 640,
        225,
      ],
      [700, 90, 690, 200, 720, 245, 790, 215, 870, 190],
    ],
  },
  {
    role: 'technician',
    name: 'Dov Hasterley',
    strokes: [
      [120, 60, 115, 180, 125, 255],
      [80, 80, 220, 70, 300, 150, 240, 240, 110, 260],
      [360, 120, 365, 245],
      [360, 190, 430, 170, 450, 245, 520, 200, 600, 235, 700, 195, 820, 225],
    ],
  },
] as const
