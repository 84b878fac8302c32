/**
 * Generic kinds of fixing that most houses have in a drawer, by what they are. The rule it keeps: no rating and no
 * maker's name; sizes are those of the trade's customary pieces (common practice, no source) and are to be measured on
 * the piece itself. What they hold stands on the packet alone.
 */
import type { FixingShape } from './fixing-shapes.ts'

export interface UsualFixing {
  readonly name: string
  readonly kind: FixingShape
  /** From bearing point to hole, up positive. mm, as all sizes. */
  readonly holeOffset: number
  readonly shank?: number
  readonly length?: number
  readonly head?: number
  readonly bit: string
  readonly tool: string
  readonly note: string
}

/** What stands as the source of every size below. */
export const USUAL_SOURCE = 'sizes: common practice, no source'

const HAMMER = 'light hammer'
const DRIVER = 'driver'

/** A work bears on the shank's top, and the hole is where its middle is: half a shank lower. */
function screw(shank: number, length: number, head: number, bit: string, note: string, called = ''): UsualFixing {
  return {
    name: `screw ${shank} × ${length}${called}`,
    kind: 'screw',
    holeOffset: -shank / 2,
    shank,
    length,
    head,
    bit,
    tool: DRIVER,
    note,
  }
}

function hook(nails: string, holeOffset: number, shank: number, length: number, head: number): UsualFixing {
  const note = 'Nails driven at a slant; the lowest hole is meant.'
  return { name: `hook, ${nails}`, kind: 'hook', holeOffset, shank, length, head, bit: '', tool: HAMMER, note }
}

export const usualFixings: readonly UsualFixing[] = [
  hook('one nail', 12, 1.8, 30, 4),
  hook('two nails', 14, 2.2, 38, 5),
  hook('three nails', 18, 2.4, 44, 5),
  {
    name: 'nail 3.1 × 50',
    kind: 'nail',
    holeOffset: -1.55,
    shank: 3.1,
    length: 50,
    head: 7,
    bit: '2 mm wood',
    tool: HAMMER,
    note: 'For stretcher bars of light canvases.',
  },
  screw(4, 40, 8, '2.5 mm wood', 'Into wood or a stud.'),
  screw(5, 60, 9.5, '3 mm wood', 'Into wood or a stud.'),
  screw(5, 50, 9.5, '8 mm masonry', 'Plug 8 × 40.', ' with plug'),
  screw(6, 60, 11, '8 mm masonry', 'Plug 8 × 50.', ' with plug'),
  screw(5, 60, 9.5, 'as its packet says', 'Opens behind a board; not for plaster on lath.', ' in a cavity anchor'),
  {
    name: 'cleat, 30 mm',
    kind: 'cleat',
    holeOffset: -11,
    length: 40,
    bit: '3.5 mm wood',
    tool: DRIVER,
    note: 'A pair; every screw in, into studs or backing.',
  },
  {
    name: 'hanger plate',
    kind: 'plate',
    holeOffset: -6,
    shank: 4.5,
    length: 55,
    bit: '3 mm wood; 6 mm masonry',
    tool: DRIVER,
    note: 'Two to a work, with a lock below.',
  },
  {
    name: 'lock screw',
    kind: 'lock',
    holeOffset: 0,
    shank: 5,
    length: 50,
    head: 14,
    bit: '3 mm wood; 6 mm masonry',
    tool: 'its own key',
    note: 'Keeps, carries nothing.',
  },
  {
    name: 'rail hook',
    kind: 'rail-hook',
    holeOffset: 0,
    bit: '',
    tool: '',
    note: 'It must fit the rail’s own moulding.',
  },
  {
    name: 'steel point 12 mm',
    kind: 'steel-point',
    holeOffset: 0,
    shank: 2.5,
    length: 25,
    head: 12,
    bit: '2 mm wood',
    tool: 'light hammer with a nylon face',
    note: 'For magnets.',
  },
  {
    name: 'shelf bracket',
    kind: 'bracket',
    holeOffset: 0,
    shank: 6,
    length: 60,
    bit: '8 mm masonry',
    tool: DRIVER,
    note: 'Measure its own holes.',
  },
]

/** Those that a library does not have yet, by name in any case of letters. */
export function usualMissing(names: readonly string[]): readonly UsualFixing[] {
  const known = new Set(names.map(name => name.trim().toLowerCase()))
  return usualFixings.filter(one => !known.has(one.name.toLowerCase()))
}
