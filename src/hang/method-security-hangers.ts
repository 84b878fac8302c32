/**
 * Security hangers: two brackets at the top carry on plates or hooks, a third at the bottom slips over a flat-headed
 * screw that is turned by a quarter with its own tool. Place, type and tool of every lock go into the register: without
 * them nobody gets the work off the wall.
 */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import { numberAt } from './back.ts'
import { choiceField, measureField, pairFields, spacingField } from './back-fields.ts'
import { measure, pairDrawing, plateAt, small } from './drawing-pieces.ts'
import { lockSection } from './lock-section.ts'
import {
  bare,
  carries,
  checkUp,
  keeps,
  measured,
  measuredOrZero,
  pairOn,
  pairShape,
  spacingFinding,
  unevenFinding,
} from './measures.ts'
import type { HangQuestion, PlainFigure, PlainFinding } from './method.ts'
import { defineMethod } from './method.ts'
import { pullOutFigure } from './pull-out.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'
import { floorAt } from './wall.ts'

const data = z.strictObject({
  ...pairShape,
  lock: z.strictObject({
    /** From the bottom edge up to the middle of the slot. */
    up: measured,
    /** From that side edge to the middle of the slot; one is enough, none is the middle. */
    left: measuredOrZero.nullable().optional(),
    right: measuredOrZero.nullable().optional(),
  }),
  /** How far the brackets hold the frame off the wall: the gauge for the head. */
  depth: measured.nullable().optional(),
  /** How the head must stand before the work is hung. */
  head: z.enum(['upright', 'level']),
  tool: z.enum(['flat-key', 'hex-key', 'pin-key', 'socket-key']),
  toolFrom: z.enum(['below', 'left', 'right']),
  toolLength: measured.nullable().optional(),
  diagonals,
})

type Data = z.output<typeof data>

const tools = [
  { value: 'flat-key', label: 'flat key' },
  { value: 'hex-key', label: 'hex key' },
  { value: 'pin-key', label: 'two-pin key' },
  { value: 'socket-key', label: 'socket key' },
] as const satisfies readonly { readonly value: Data['tool']; readonly label: string }[]

export const securityHangers = defineMethod({
  key: 'security-hangers',
  name: 'Security hangers',
  does: 'Two brackets at the top carry; a third at the bottom is locked over a screw head turned with its own tool.',
  schema: data,
  fixings: ['plate', 'hook', 'screw'],
  keepers: ['lock'],
  minutes: [30, 45],
  accuracy: '±1 to 1.5 mm along and up between the lock and the top brackets',
  adjust: ['Nothing once it is locked: open the lock, then redrill.'],
  comesDown: [
    'Look the lock up in the register: its place, its type and the tool, and who holds the tool.',
    'Turn the head by a quarter, back to how it stood before hanging; feel that the bottom comes free.',
    'Lift the work off its top brackets; take the lock screw out with it and strike it off the register.',
  ],
  section: (raw, work, fixing) => lockSection(raw, work, fixing),
  fields: [
    ...pairFields('top bracket', 'From the top edge down to where the bracket bears.'),
    spacingField('top bracket'),
    measureField(['lock', 'up'], 'Lock, up', 'From the bottom edge of the frame up to the middle of the lock’s slot.', {
      required: true,
    }),
    ...(['left', 'right'] as const).map(side =>
      measureField(
        ['lock', side],
        `Lock from the ${side} edge`,
        `From the ${side} edge to the middle of the slot; one side is enough, leave both out if it is in the middle.`,
      ),
    ),
    measureField(
      ['depth'],
      'Depth of the brackets',
      'How far they hold the frame off the wall: the lock’s head is set to this gauge.',
    ),
    choiceField(['head'], 'The head stands open when', 'It must stand so before the work is hung.', [
      { value: 'upright', label: 'upright' },
      { value: 'level', label: 'level' },
    ]),
    choiceField(['tool'], 'Tool', 'What turns the head: it goes into the lock register.', tools),
    choiceField(['toolFrom'], 'The tool comes in from', 'That side of the work must stay free for it.', [
      { value: 'below', label: 'below' },
      { value: 'left', label: 'the left' },
      { value: 'right', label: 'the right' },
    ]),
    measureField(['toolLength'], 'Length of the tool', 'With the hand that turns it.'),
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const { left, right, dimensions } = pairDrawing(raw, work, [], work.height / 8)
    const fromLeft = numberAt(raw, ['lock', 'left'])
    const fromRight = numberAt(raw, ['lock', 'right'])
    const x = fromLeft ?? (fromRight === null ? work.width / 2 : work.width - fromRight)
    const lock = { x, y: work.height - (numberAt(raw, ['lock', 'up']) ?? Math.min(20, work.height / 10)) }
    const size = small(work)
    return {
      rings: [left, right],
      lines: [left, right, lock].map(point => plateAt(point, size * 1.6, size)),
      blocks: [],
      dimensions: [
        ...dimensions,
        measure(raw, ['lock', 'up'], { x, y: work.height }, lock),
        measure(raw, ['lock', 'left'], { x: 0, y: lock.y }, lock),
        measure(raw, ['lock', 'right'], lock, { x: work.width, y: lock.y }),
      ],
    }
  },
  answer: (back, question) => {
    const { work, rules, say, fixing, keeper } = question
    const pair = pairOn(back, work)
    const x = lockAlong(back, work.width)
    checkUp(back.lock.up, work, 'back.data.lock.up')
    const tool = tools.find(one => one.value === back.tool)?.label ?? back.tool
    const room = toolRoom(back, x, work.width)
    const depth = back.depth ?? null
    return {
      ...bare,
      bearings: [
        carries('left', pair.left, back.left.drop),
        carries('right', pair.right, back.right.drop),
        keeps('lock', 'middle', x, back.lock.up, work.height),
      ],
      spacing: pair.measured,
      spacingFromInsets: pair.fromInsets,
      carriers: [pair.left, pair.right],
      locks: [
        { name: 'lock', type: keeper?.name ?? 'lock screw, turned by a quarter', tool, from: back.toolFrom, room },
      ],
      figures: [
        ...figuresOf(back, room, say),
        ...pullOutFigure(question, Math.min(back.left.drop, back.right.drop), depth ?? 0),
      ],
      findings: [
        ...spacingFinding(pair, rules.measureTolerance, say),
        ...unevenFinding(back.left.drop, back.right.drop, rules.dropTolerance, say),
        ...lockFindings(back, question),
        ...roomFindings(back, room, question),
        ...squareFindings(back.diagonals, work, say),
      ],
      needs: [
        { what: fixing.name, count: 2, per: 'wall' },
        { what: keeper?.name ?? 'lock screw', count: 1, per: 'wall' },
        { what: 'frame bracket with its screws', count: 3, per: 'work' },
        { what: 'depth gauge for the lock', count: 1, per: 'team' },
        { what: tool, count: 1, per: 'team' },
      ],
      cautions: [
        ...(pair.centred ? ['The brackets are taken to be centred: no inset was measured.'] : []),
        `Set the head ${back.head} and to its gauge before the work goes up.`,
        'Write the lock into the register before anybody leaves: place, type, tool and who holds it.',
      ],
    }
  },
})

/** From the work's left edge to the lock. */
function lockAlong(back: Data, width: number): number {
  const { left, right } = back.lock
  const x = left ?? (right === null || right === undefined ? width / 2 : width - right)
  if (x < 0 || x > width) {
    throw new Refusal('lock-off-the-work', 'The lock would stand beside the work. Measure it from its own side edge.', {
      field: `back.data.lock.${left === null || left === undefined ? 'right' : 'left'}`,
      details: { fromLeft: x, width },
    })
  }
  return x
}

/** What must stay free beside the work for the tool, mm; null without its length. */
function toolRoom(back: Data, x: number, width: number): number | null {
  const long = back.toolLength ?? null
  if (long === null) return null
  const inside = back.toolFrom === 'below' ? back.lock.up : back.toolFrom === 'left' ? x : width - x
  return Math.max(0, long - inside)
}

const beside = { below: 'below the work', left: 'to the left of the work', right: 'to the right of the work' } as const

function figuresOf(back: Data, room: number | null, say: (mm: number) => string): readonly PlainFigure[] {
  return [
    ...(room === null
      ? []
      : [
          {
            key: 'tool-room',
            label: `To stay free ${beside[back.toolFrom]} for the tool`,
            value: room,
            unit: 'mm' as const,
            working: `the tool is ${say(back.toolLength ?? 0)} long, less what lies behind the work`,
          },
        ]),
    ...(back.depth === null || back.depth === undefined
      ? []
      : [
          {
            key: 'lock-gauge',
            label: 'From the wall to the inner face of the lock’s head',
            value: back.depth,
            unit: 'mm' as const,
            working: 'as deep as the brackets',
          },
        ]),
  ]
}

function lockFindings(back: Data, { work, keeper, placed, rules, say }: HangQuestion): readonly PlainFinding[] {
  const { left, right } = back.lock
  const both = left !== null && left !== undefined && right !== null && right !== undefined
  const off = both ? left + right - work.width : 0
  return [
    ...(Math.abs(off) > rules.measureTolerance + 1e-9
      ? [
          {
            severity: 'settle' as const,
            code: 'lock-insets-differ',
            text: `The lock's two measures from the sides and the width differ by ${say(Math.abs(off))}. Measure again.`,
            figures: { left: left ?? null, right: right ?? null, width: work.width, difference: off },
          },
        ]
      : []),
    ...(placed && keeper === null
      ? [
          {
            severity: 'settle' as const,
            code: 'lock-not-chosen',
            text: 'Nobody has chosen the lock screw: its hole is not known before.',
            figures: {},
          },
        ]
      : []),
  ]
}

/** Room for the tool down to the floor or to the end of the wall; what hangs beside is for the layout to see. */
function roomFindings(
  back: Data,
  room: number | null,
  { work, centre, wall, placed, say }: HangQuestion,
): readonly PlainFinding[] {
  if (room === null) {
    return [
      {
        severity: 'settle',
        code: 'tool-not-measured',
        text: 'Nobody has measured the tool: the room that it needs beside the work is not known.',
        figures: {},
      },
    ]
  }
  if (!placed) return []
  const free =
    back.toolFrom === 'below'
      ? centre.y - work.height / 2 - floorAt(wall.floor, centre.x)
      : back.toolFrom === 'left'
        ? centre.x - work.width / 2
        : wall.length - centre.x - work.width / 2
  if (free >= room) return []
  return [
    {
      severity: 'stop',
      code: 'tool-no-room',
      text: `The tool needs ${say(room)} ${beside[back.toolFrom]} and there are ${say(Math.max(0, free))}: the lock could not be turned.`,
      figures: { room, free, from: back.toolFrom },
    },
  ]
}
