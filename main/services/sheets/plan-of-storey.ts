/** A storey as it goes out of the house now, and how that stands to what went out for a show. */
import { formatArea } from '../../../src/measure/area.ts'
import { figuresOf, type StoreyFigures } from '../../../src/plan/figures.ts'
import { planContent } from '../../../src/plan/plan-content.ts'
import { plan } from '../plan/get.ts'
import type { Reading } from '../service.ts'
import { type Standing, standingOf, toldStanding } from './prints.ts'

type Plan = ReturnType<typeof plan>

/** Only prints of a show are counted: the building alone belongs to none. */
export interface PlanOfStorey {
  readonly plan: Plan
  readonly drawn: StoreyFigures
  readonly standing: Standing | null
}

/** The kind of its prints. */
export function kindOf(storey: string): string {
  return storey === '' ? 'plan' : `plan: ${storey}`
}

export function planOfStorey(
  reading: Reading,
  exhibition: string | null,
  storey: string,
  system: 'metric' | 'imperial',
): PlanOfStorey {
  const read = plan(reading, { exhibition })
  const drawn = figuresOf(read.rooms, storey, area => formatArea(area, system), read.zones)
  return { plan: read, drawn, standing: exhibition === null ? null : standingIn(reading, exhibition, read, storey) }
}

function standingIn({ db }: Reading, exhibition: string, { rooms, zones, building }: Plan, storey: string): Standing {
  // The same for every paper, unit and person.
  const drawn = figuresOf(rooms, storey, area => formatArea(area, 'metric'), zones)
  const content = planContent(drawn, building?.north ?? null)
  return standingOf(db, { exhibition, face: null, kind: kindOf(storey) }, content)
}

/** The plan of each storey that has rooms. */
export function plansOf(reading: Reading, exhibition: string) {
  const read = plan(reading, { exhibition })
  return read.storeys.flatMap(storey => {
    const rooms = read.rooms.filter(room => room.storey === storey).length
    return rooms === 0 ? [] : [{ storey, rooms, ...toldStanding(standingIn(reading, exhibition, read, storey)) }]
  })
}
