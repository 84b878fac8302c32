/**
 * Which works hang where. A row stands in one bay, from `from` to `to` along the wall, with its ends clear by `margin`
 * and equal gaps between; where a row was planned on listed widths (`plannedAsListed`) the centres are those of the list.
 */
import type { Input } from '../../../src/contract/contract.ts'
import type { LabelSide, Rule, Viewer } from './placement-shape.ts'

export interface DemoRow {
  readonly wall: string
  readonly from: number
  readonly to: number
  readonly margin: number
  readonly works: readonly string[]
  readonly plannedAsListed?: boolean
  readonly label?: LabelSide
  readonly held?: boolean
}

/** A block of equal works in rows about the line, as one thing in its row. */
export interface DemoBlock {
  readonly key: string
  readonly columns: number
  readonly gap: number
  readonly works: readonly string[]
}

export interface DemoPlan {
  readonly wall: string
  readonly order: number
  readonly lux: number | null
  readonly rule?: Rule
  readonly line?: number
  readonly distance?: number
  readonly viewers?: readonly Viewer[]
  readonly colour?: string
  readonly note?: string
}

export const blocks: readonly DemoBlock[] = [
  {
    key: 'six locks',
    columns: 3,
    gap: 90,
    works: ['lock-i', 'lock-ii', 'lock-iii', 'lock-iv', 'lock-v', 'lock-vi'],
  },
]

export const rows: readonly DemoRow[] = [
  { wall: 'river north', from: 2000, to: 5200, margin: 400, works: ['valley'], label: 'right' },
  {
    wall: 'river east',
    from: 0,
    to: 3900,
    margin: 350,
    works: ['ferry-etching', 'orchard-bank', 'willow-cut', 'shallows'],
    label: 'right',
  },
  {
    wall: 'river south',
    from: 0,
    to: 7200,
    margin: 600,
    works: ['bleaching', 'two-kilns', 'six locks', 'sluice-red', 'quay-evening'],
    label: 'right',
  },
  {
    wall: 'long north',
    from: 0,
    to: 9200,
    margin: 699,
    works: ['weir-low', 'ferry-rope', 'sluice-winter', 'flood-sallowford', 'weir-high', 'millrace-cloth', 'reeds-lock'],
    plannedAsListed: true,
    label: 'right',
  },
  { wall: 'long corner', from: 0, to: 2404, margin: 300, works: ['nine-knots'], label: 'left', held: true },
  {
    wall: 'long south',
    from: 0,
    to: 7500,
    margin: 540,
    works: ['reed-bed', 'long-stripe', 'heddle-song', 'tenter-field', 'small-ikat'],
    label: 'right',
  },
  {
    wall: 'long west',
    from: 1600,
    to: 6100,
    margin: 400,
    works: ['after-rain', 'mill-lane', 'dye-yard', 'steps-night'],
    label: 'right',
  },
  {
    wall: 'mill north',
    from: 0,
    to: 4200,
    margin: 600,
    works: ['jars-i', 'jars-ii', 'jars-iii', 'notice-dyers'],
    label: 'right',
  },
  { wall: 'mill slant', from: 0, to: 2600, margin: 0, works: ['whole-river'] },
  {
    wall: 'mill east',
    from: 0,
    to: 4200,
    margin: 500,
    works: ['sand-i', 'sand-ii', 'sand-iii', 'what-floated'],
    label: 'right',
  },
  {
    wall: 'mill south',
    from: 0,
    to: 5200,
    margin: 460,
    works: ['high-street', 'pump-house', 'new-bank', 'low-sun'],
    label: 'right',
  },
  { wall: 'river west', from: 3400, to: 5400, margin: 240, works: ['reeds-print', 'weir-print'], label: 'right' },
  { wall: 'river west', from: 0, to: 2000, margin: 280, works: ['gauge', 'ford'], label: 'right' },
  { wall: 'mill west', from: 100, to: 3400, margin: 380, works: ['dye-jar', 'lock-model', 'shuttles'], label: 'right' },
]

/** Works whose label stands elsewhere than their row says: on the other side, or nowhere, since one text serves several. */
export const labelsElsewhere: Readonly<Record<string, LabelSide>> = {
  'lock-i': '',
  'lock-ii': '',
  'lock-iii': '',
  'lock-iv': '',
  'lock-v': '',
  'lock-vi': '',
  'quay-evening': '',
  'flood-sallowford': '',
  'what-floated': 'left',
}

/** Top of the shelves above the floor. */
export const shelfTop = 1120

/** What has been done on the walls so far, in the order in which it was done. */
export interface DemoDone {
  readonly wall: string
  /** Drilled, and hung so far. */
  readonly hung: readonly string[]
  readonly level?: boolean
  /** Locked, then checked by the other person. */
  readonly locked?: readonly string[]
  readonly checked?: readonly string[]
  /** Drilled and not hung yet; services looked for and marked only. */
  readonly drilled?: readonly string[]
  readonly marked?: readonly string[]
}

export const done: readonly DemoDone[] = [
  { wall: 'river north', hung: ['valley'], level: true, locked: ['valley'], checked: ['valley'] },
  { wall: 'river east', hung: ['ferry-etching', 'orchard-bank', 'willow-cut', 'shallows'] },
  {
    wall: 'long west',
    hung: ['after-rain', 'mill-lane'],
    level: true,
    checked: ['after-rain'],
    marked: ['dye-yard'],
  },
]

/** A photograph that hung in a gap for a day and was taken off again: its holes stayed, and one of them is filled. */
export const tried = { wall: 'long west', work: 'fern-bank', x: 3980, y: 1480, fixing: 'hook13' } as const

const bench = [
  { kind: 'standing', share: 0.6 },
  { kind: 'seated', share: 0.25 },
  { kind: 'wheelchair', share: 0.15 },
] as const satisfies readonly Viewer[]

const school = [
  { kind: 'standing', share: 0.5 },
  { kind: 'wheelchair', share: 0.1 },
  { kind: 'child', share: 0.4 },
] as const satisfies readonly Viewer[]

export const plans: readonly DemoPlan[] = [
  {
    wall: 'river west',
    order: 1,
    lux: 50,
    note: 'Title of the show above the passage; two sets left of it, two prints on the rail right of it.',
  },
  { wall: 'river north', order: 2, lux: 200, distance: 2600, viewers: bench, colour: '#D9D4C5' },
  { wall: 'river east', order: 3, lux: 50, distance: 1800 },
  { wall: 'river south', order: 4, lux: 50, distance: 2200 },
  { wall: 'long west', order: 5, lux: 150, distance: 1800 },
  { wall: 'long north', order: 6, lux: 50, distance: 2400, viewers: bench },
  { wall: 'long east', order: 7, lux: null, note: 'Kept free for the loan that is still asked for.' },
  { wall: 'long corner', order: 8, lux: 50, distance: 2000 },
  { wall: 'long south', order: 9, lux: 50, distance: 2000, note: 'Cleats go into the ply; slide, then pin the ends.' },
  { wall: 'mill west', order: 10, lux: null },
  { wall: 'mill north', order: 11, lux: 50, rule: 'top', line: 1760, distance: 1500 },
  { wall: 'mill slant', order: 12, lux: 50, distance: 2200 },
  { wall: 'mill east', order: 13, lux: 50, line: 1400, distance: 1500, viewers: school },
  { wall: 'mill south', order: 14, lux: 200, line: 1420, distance: 2000, viewers: school },
]

/** The first try for the gallery's long wall, kept before the order was changed. */
export const keptLayout: Pick<Input<'layout.keep'>, 'name'> & {
  readonly wall: string
  readonly swapped: readonly [string, string]
} = {
  name: 'First try, cloth in the middle',
  wall: 'long north',
  swapped: ['millrace-cloth', 'reeds-lock'],
}

/** The wall on which the demo opens. */
export const bestWall = 'long north'
