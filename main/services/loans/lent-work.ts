/** A lent work as its terms are held against it: from the wall it stands on, its page and what a meter showed. */

import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import { floorAt } from '../../../src/hang/wall.ts'
import { barriersSeen } from '../../../src/loan/terms/barriers.ts'
import type { HungPlan, LentWork } from '../../../src/loan/terms/planned.ts'
import { calledOn } from '../../../src/model/called.ts'
import { rectOf } from '../../../src/model/hung-rect.ts'
import type { TermWork } from '../../../src/sequence/terms-offered.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import { readingsOf } from '../light/readings.ts'
import { thingsOf } from '../rooms/standing.ts'
import { row, rows } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'

export interface Spot {
  readonly elevation: Elevation
  readonly placed: PlacedWork
}

/** Air and people are asked for loan by loan, and only where a term is about them. */
export type KnownWork = Omit<LentWork, 'climate' | 'together' | 'people'>

export type DoseOf = (work: string) => LentWork['dose']

const asTermWork = ({ work, running, title, maker, lightLimit }: PlacedWork): TermWork => ({
  work,
  running,
  title,
  maker,
  limit: lightLimit,
})

function hungPlan(db: ReadHandle, { elevation, placed }: Spot): HungPlan {
  const { wall, room, plan, works, exhibition } = elevation
  const rect = rectOf(placed)
  // Above the floor under the work's middle, as a tape is held.
  const floor = floorAt(wall.floor, placed.x)
  const at = works.findIndex(each => each.placement === placed.placement)
  const barriers = thingsOf(db, exhibition).filter(each => each.kind === 'barrier' && each.room === room.id)
  const ticks = rows<{ by: string; at: string }>(
    db,
    `SELECT "by", at FROM placement_step WHERE placement = :placement AND state <> 'planned' ORDER BY at, id`,
    { placement: placed.placement },
  )
  return {
    wall: `${room.name}, ${wall.name}`,
    plannedLux: plan.plannedLux,
    lower: rect === undefined ? null : rect.y - floor,
    upper: rect === undefined ? null : rect.y + rect.height - floor,
    span: rect === undefined ? null : [rect.x, rect.x + rect.width],
    method: placed.back?.method ?? null,
    kept: placed.keeper !== null,
    beside: [works[at - 1], works[at + 1]].flatMap(each => (each === undefined ? [] : [asTermWork(each)])),
    barriers: barriersSeen(
      { from: wall.from, to: wall.to, face: wall.exhibition === null ? 0 : (wall.thickness ?? 0) / 2 },
      barriers,
    ),
    hands: [...new Set(ticks.flatMap(({ by }) => (by === '' ? [] : [by])))],
    hungOn: [...new Set(ticks.map(({ at: moment }) => dateAt(moment)))],
    label: placed.label.text,
  }
}

interface Facts {
  readonly title: string
  readonly number: string
  readonly glazing: LentWork['glazing']
  readonly part: string
  readonly height: number | null
  readonly creditLine: string
  readonly width: number | null
  readonly depth: number | null
  readonly diameter: number | null
  readonly mass: number | null
}

export function lentWork(db: ReadHandle, work: string, spot: Spot | null, dose: DoseOf): KnownWork {
  const facts = row<Facts>(
    db,
    `SELECT title, coalesce(${firstNumber}, '') AS number, glazing, hang_part AS part, hang_height AS height,
      credit_line AS creditLine, hang_width AS width, hang_depth AS depth, hang_diameter AS diameter, mass
     FROM work WHERE id = :work`,
    { work },
  )
  if (facts === undefined) throw notFound('work', 'work')
  const readings = readingsOf(db, work).filter(each => each.struck === null)
  const read = readings.at(-1)
  // Not every reading of a level has its ultraviolet.
  const violet = readings.findLast(each => each.uv !== null)
  const running = spot?.placed.work === work ? spot.placed.running : ''
  return {
    called: calledOn({ ...facts, running }),
    glazing: facts.glazing,
    part: facts.height === null ? null : facts.part,
    size: { width: facts.width ?? facts.diameter, height: facts.height ?? facts.diameter, depth: facts.depth },
    mass: facts.mass,
    hung: spot === null ? null : hungPlan(db, spot),
    reading: read === undefined ? null : { lux: read.lux, day: dateAt(read.at) },
    violet: violet?.uv == null ? null : { uv: violet.uv, day: dateAt(violet.at) },
    dose: dose(work),
    creditLine: facts.creditLine,
  }
}
