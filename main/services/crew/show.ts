/** What the crew's plans are computed from: the walls of a show, its crew, the house's times, equipment and library. */
import type { CrewPlanAnswer } from '../../../src/contract/areas/crew-shape.ts'
import type { HandlingRules, Say } from '../../../src/crew/handling.ts'
import type { StockedFixing } from '../../../src/crew/hardware.ts'
import { type StepTime, timesInForce } from '../../../src/crew/minutes.ts'
import type { MeasureSystem } from '../../../src/crew/niosh-tables.ts'
import { type CrewWork, crewWorks } from '../../../src/crew/show.ts'
import { sayIn } from '../../../src/hang/marks.ts'
import { massText } from '../../../src/sheets/figures.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'
import { facesOf, showTitle } from '../sheets/tables.ts'
import { styleOf, type Wishes } from '../sheets/wishes.ts'
import { row, rows } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'

export type EquipmentRow = CrewPlanAnswer['equipment'][number]

export interface CrewShow {
  readonly title: string
  readonly works: readonly CrewWork[]
  readonly crew: CrewPlanAnswer['crew']
  readonly times: readonly StepTime[]
  readonly equipment: readonly EquipmentRow[]
  readonly say: Say
  /** Whose constants a lift is computed with: the reader’s. */
  readonly system: MeasureSystem
}

export function equipmentOf(db: ReadHandle): EquipmentRow[] {
  return rows<EquipmentRow>(
    db,
    `SELECT id, name, carries_kg AS carriesKg, reaches, "count", people, note FROM equipment
     ORDER BY carries_kg IS NULL, carries_kg, name, id`,
  )
}

/** Sentences in the units of whoever reads, or as a sheet wishes them. Refuses `not-found` where there is no such exhibition. */
export function crewShow(
  { db, person }: Pick<Reading, 'db' | 'person'>,
  exhibition: string,
  wishes: Wishes = {},
): CrewShow {
  const title = showTitle(db, exhibition)
  const style = styleOf({ db, person }, wishes)
  const say: Say = { length: sayIn(style.unit, style.steps), mass: kg => massText(kg, style.unit) }
  const equipment = equipmentOf(db)
  return {
    title,
    works: crewWorks({
      elevations: facesOf(db, exhibition).map(face => elevationOf(db, exhibition, face)),
      rules: handlingRules(db),
      equipment,
      style,
      say,
    }),
    crew: crewOf(db, exhibition),
    times: timesOf(db),
    equipment,
    say,
    system: style.unit === 'in' ? 'us' : 'metric',
  }
}

function handlingRules(db: ReadHandle): HandlingRules {
  return {
    aloneKg: ruleNumber(db, 'aloneKg'),
    aloneSide: ruleNumber(db, 'aloneSide'),
    onePersonKg: ruleNumber(db, 'onePersonKg'),
    onePersonSize: ruleNumber(db, 'onePersonSize'),
    liftKg: ruleNumber(db, 'liftKg'),
    liftLongSide: ruleNumber(db, 'liftLongSide'),
    liftShortSide: ruleNumber(db, 'liftShortSide'),
    hoistKg: ruleNumber(db, 'hoistKg'),
    stepsReach: ruleNumber(db, 'stepsReach'),
    platformReach: ruleNumber(db, 'platformReach'),
  }
}

function crewOf(db: ReadHandle, exhibition: string): CrewPlanAnswer['crew'] {
  const own = row<{ teams: number | null; hours: number | null; spare: number | null }>(
    db,
    'SELECT crew_teams AS teams, crew_hours AS hours, crew_spare AS spare FROM exhibition WHERE id = :exhibition',
    { exhibition },
  )
  const from = (value: number | null | undefined) => (value == null ? 'house rule' : 'this show')
  return {
    // A house rule may be any number; teams are whole, and there is one at least.
    teams: own?.teams ?? Math.max(1, Math.round(ruleNumber(db, 'crewTeams'))),
    teamsFrom: from(own?.teams),
    hours: own?.hours ?? (ruleNumber(db, 'crewHours') || 1),
    hoursFrom: from(own?.hours),
    spare: own?.spare ?? ruleNumber(db, 'hardwareSpare'),
    spareFrom: from(own?.spare),
    contingency: ruleNumber(db, 'crewContingency'),
  }
}

export function timesOf(db: ReadHandle): readonly StepTime[] {
  const own = rows<{ id: string; minutes: number; source: string }>(
    db,
    'SELECT id, minutes, source FROM method_time ORDER BY id',
  )
  return timesInForce(new Map(own.map(({ id, ...time }) => [id, time])))
}

export function stockedFixings(db: ReadHandle): readonly StockedFixing[] {
  return rows<StockedFixing>(
    db,
    'SELECT id, name, kind, wall_type AS wallType, in_stock AS inStock, bit, tool FROM fixing_kind ORDER BY name, id',
  )
}

/** A work as every answer of the crew names it. */
export function calledWork({ placed, elevation }: CrewWork) {
  return {
    placement: placed.placement,
    entry: placed.entry,
    work: placed.work,
    running: placed.running,
    number: placed.number,
    title: placed.title,
    face: elevation.wall.face,
    faceName: faceNameOf(elevation),
  }
}

export function faceNameOf({ room, wall }: CrewWork['elevation']): string {
  return `${room.name}, ${wall.name}`
}
