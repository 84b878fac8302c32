/** The demo's walls: what is planned for each, where works hang, one layout kept before the order was changed. */
import type { Input } from '../../src/contract/contract.ts'
import { floorAt } from '../../src/hang/wall.ts'
import { layGrid } from '../../src/layout/grid.ts'
import { layRow } from '../../src/layout/row.ts'
import { laySet } from '../../src/layout/set.ts'
import { hangingFigures, listedFigures } from './measures.ts'
import { baseHeight } from './museum/backs.ts'
import { lit } from './museum/light.ts'
import type { LabelSide } from './museum/placement-shape.ts'
import {
  blocks,
  type DemoBlock,
  type DemoRow,
  keptLayout,
  labelsElsewhere,
  plans,
  rows,
  shelfTop,
} from './museum/placements.ts'
import { rooms } from './museum/rooms.ts'
import { sets } from './museum/sets.ts'
import type { DemoWork } from './museum/work-shape.ts'
import { works } from './museum/works.ts'
import type { Session } from './session.ts'
import { dayAfter, type ShowIds } from './write-checklist.ts'
import type { HouseIds } from './write-house.ts'
import { fixParts } from './write-sets.ts'

type Place = Input<'placement.put'>['places'][number]

const byKey: ReadonlyMap<string, DemoWork> = new Map(works.map(work => [work.key, work]))

/** Height of the house's line: blocks stand about it. */
const LINE = 1480

function figuresOf(key: string, row: DemoRow): readonly [height: number, width: number] {
  const set = sets.find(each => each.key === key)
  if (set !== undefined) {
    const parts = set.parts.map(id => {
      const [height, width] = figuresOf(id, row)
      return { id, height, width }
    })
    const { height, width } = laySet({ ...set, parts })
    return [height, width]
  }
  const work = byKey.get(key)
  if (work === undefined) throw new Error(`the demo has no work ${key}`)
  return row.plannedAsListed === true ? listedFigures(work) : hangingFigures(work)
}

function gridOf(block: DemoBlock, row: DemoRow, x: number) {
  const [height, width] = figuresOf(block.works[0] ?? '', row)
  const { columns, gap } = block
  const rowCount = Math.ceil(block.works.length / columns)
  return layGrid({ columns, rows: rowCount, width, height, gapX: gap, gapY: gap, centre: { x, y: LINE } })
}

const wallFacts = new Map(rooms.flatMap(room => room.walls.map(wall => [wall.key, wall])))

/** Height of the middle of what stands on a shelf, a plinth or in a case; null for what hangs. */
function standsAt(key: string, row: DemoRow, x: number): number | null {
  const hangs = byKey.get(key)?.hangs ?? null
  const [height, width] = figuresOf(key, row)
  const floor = floorAt(wallFacts.get(row.wall)?.floor ?? [], x)
  if (hangs === 'shelf') return floor + shelfTop + height / 2
  const base = hangs === null ? null : baseHeight(hangs, height, width)
  return base === null ? null : floor + base + height / 2
}

export interface Centre {
  readonly key: string
  readonly x: number
  readonly y: number | null
}

/** Centre of each work of a row along the wall; works of a block also in height. */
export function centresOf(row: DemoRow): readonly Centre[] {
  const block = (key: string) => blocks.find(each => each.key === key)
  const parts = row.works.map(key => {
    const grouped = block(key)
    return { id: key, width: grouped === undefined ? figuresOf(key, row)[1] : gridOf(grouped, row, 0).width }
  })
  const rule = { rule: 'margins', left: row.margin, right: row.margin } as const
  const laid = layRow({ from: row.from, to: row.to, works: parts, rule })
  // What does not fit is hung about the middle all the same: it is there to be found.
  const middle = (row.from + row.to) / 2
  const placed: readonly { readonly id: string; readonly centre: number }[] = laid.fits
    ? laid.works
    : parts.map(part => ({ id: part.id, centre: middle }))
  return placed.flatMap(({ id, centre }): Centre | readonly Centre[] => {
    const grouped = block(id)
    if (grouped === undefined) return { key: id, x: centre, y: standsAt(id, row, centre) }
    const { cells } = gridOf(grouped, row, centre)
    return grouped.works.map((key, index) => ({ key, x: cells[index]?.x ?? centre, y: cells[index]?.y ?? LINE }))
  })
}

/** @param today ISO 8601, from which the days that it is lit count */
export async function writePlans(
  session: Session,
  house: HouseIds,
  show: ShowIds,
  today: string,
  daysAgo: number,
): Promise<void> {
  await session.edit('Plan the walls: order, light, lines', 'wall.plan', daysAgo, act => {
    for (const plan of plans) {
      act('wall.plan', {
        exhibition: show.exhibition,
        face: house.faces.get(plan.wall) ?? '',
        changes: {
          visitorOrder: { was: null, to: plan.order },
          plannedLux: { was: null, to: plan.lux },
          ...(plan.rule === undefined ? {} : { rule: { was: 'centre', to: plan.rule } }),
          ...(plan.line === undefined ? {} : { centreLine: { was: null, to: plan.line } }),
          ...(plan.distance === undefined ? {} : { viewingDistance: { was: null, to: plan.distance } }),
          ...(plan.viewers === undefined ? {} : { viewers: { was: [], to: [...plan.viewers] } }),
          ...(plan.colour === undefined ? {} : { colour: { was: '', to: plan.colour } }),
          ...(plan.note === undefined ? {} : { note: { was: '', to: plan.note } }),
        },
      })
    }
    for (const { from, until, ...hours } of lit) {
      const days = { first: dayAfter(today, from), last: dayAfter(today, until) }
      act('light.addHours', { exhibition: show.exhibition, ...days, ...hours })
    }
  })
}

export async function writePlacements(
  session: Session,
  house: HouseIds,
  show: ShowIds,
  daysAgo: number,
): Promise<void> {
  const entryOf = (key: string) => show.works.get(key)?.entry ?? ''
  const { exhibition } = show
  await session.edit('Lay out the walls', 'placement.put', daysAgo, act => {
    for (const row of rows) {
      const face = house.faces.get(row.wall) ?? ''
      const centres = centresOf(row)
      const places = centres.map(
        ({ key, x, y }): Place => ({ entry: entryOf(key), face, x, rule: y === null ? 'face' : 'hand', y, was: null }),
      )
      const { placements } = act('placement.put', { exhibition, places })
      for (const [index, { key }] of centres.entries()) {
        const { fixing, keeper, lockTool } = byKey.get(key) ?? {}
        act('placement.update', {
          id: placements[index] ?? '',
          changes: {
            ...(fixing === undefined ? {} : { fixing: { was: null, to: house.fixings[fixing] } }),
            ...(keeper === undefined ? {} : { keeper: { was: null, to: house.fixings[keeper] } }),
            ...(lockTool === undefined ? {} : { lockTool: { was: '', to: lockTool } }),
            ...(labelOf(key, row) === '' ? {} : { labelSide: { was: '', to: labelOf(key, row) } }),
          },
        })
        fixParts(act, placements[index] ?? '', key, house, show)
      }
      if (row.held === true) act('placement.hold', { placements, held: true })
    }
  })
  await keepFirstTry(session, house, show, daysAgo)
}

/** Where a work's label stands: beside it as its row says, unless the work needs another place or shares one. */
function labelOf(key: string, row: DemoRow): LabelSide {
  return labelsElsewhere[key] ?? row.label ?? ''
}

/** Before: two works stood the other way round, and that was kept under a name. Now they stand as the row says. */
async function keepFirstTry(session: Session, house: HouseIds, show: ShowIds, daysAgo: number): Promise<void> {
  const { exhibition } = show
  const face = house.faces.get(keptLayout.wall) ?? ''
  const row = rows.find(each => each.wall === keptLayout.wall)
  if (row === undefined) return
  const place = (order: DemoRow, was: DemoRow): Place[] => {
    const before = new Map(centresOf(was).map(({ key, x }) => [key, x]))
    return centresOf(order).map(({ key, x }) => ({
      entry: show.works.get(key)?.entry ?? '',
      face,
      x,
      rule: 'face',
      y: null,
      was: { face, x: before.get(key) ?? x, rule: 'face', y: null },
    }))
  }
  const [a, b] = keptLayout.swapped
  const first: DemoRow = { ...row, works: row.works.map(key => (key === a ? b : key === b ? a : key)) }
  await session.edit(`Keep “${keptLayout.name}”`, 'layout.keep', daysAgo - 1, act => {
    act('placement.put', { exhibition, places: place(first, row) })
    act('layout.keep', { exhibition, face, name: keptLayout.name })
  })
  await session.edit('Change the order of the long wall', 'placement.put', daysAgo - 2, act =>
    act('placement.put', { exhibition, places: place(row, first) }),
  )
}
