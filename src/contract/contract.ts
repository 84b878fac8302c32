/**
 * The contract: every procedure once. All three hosts serve exactly this table; the renderer's client and the command
 * line are typed from it.
 */
import type * as z from 'zod'
import { climateArea } from './areas/climate.ts'
import { computationsArea } from './areas/computations.ts'
import { conditionArea } from './areas/condition.ts'
import { crewArea } from './areas/crew.ts'
import { damageArea } from './areas/damage.ts'
import { deskArea } from './areas/desk.ts'
import { drawingArea } from './areas/drawing.ts'
import { exhibitionsArea } from './areas/exhibitions.ts'
import { fixturesArea } from './areas/fixtures.ts'
import { historyArea } from './areas/history.ts'
import { importArea } from './areas/import.ts'
import { insuredArea } from './areas/insured.ts'
import { labelsArea } from './areas/labels.ts'
import { leavingArea } from './areas/leaving.ts'
import { lightArea } from './areas/light.ts'
import { loansArea } from './areas/loans.ts'
import { marksArea } from './areas/marks.ts'
import { movementsArea } from './areas/movements.ts'
import { numbersArea } from './areas/numbers.ts'
import { onDayArea } from './areas/on-day.ts'
import { partiesArea } from './areas/parties.ts'
import { partitionsArea } from './areas/partitions.ts'
import { planArea } from './areas/plan.ts'
import { planWallsArea } from './areas/plan-walls.ts'
import { plannedArea } from './areas/planned.ts'
import { receiptsArea } from './areas/receipts.ts'
import { roomsArea } from './areas/rooms.ts'
import { routeArea } from './areas/route.ts'
import { sequenceArea } from './areas/sequence.ts'
import { sequenceRulesArea } from './areas/sequence-rules.ts'
import { setsArea } from './areas/sets.ts'
import { sheetsArea } from './areas/sheets.ts'
import { standingArea } from './areas/standing.ts'
import { surveyArea } from './areas/survey.ts'
import { underlayArea } from './areas/underlay.ts'
import { wallsArea } from './areas/walls.ts'
import { weightArea } from './areas/weight.ts'
import { worksArea } from './areas/works.ts'
import { workListArea } from './areas/works-list.ts'
import type { Kind } from './procedure.ts'

export const contract = {
  ...deskArea,
  ...historyArea,
  ...worksArea,
  ...workListArea,
  ...setsArea,
  ...partiesArea,
  ...planArea,
  ...planWallsArea,
  ...exhibitionsArea,
  ...roomsArea,
  ...routeArea,
  ...surveyArea,
  ...fixturesArea,
  ...partitionsArea,
  ...standingArea,
  ...wallsArea,
  ...weightArea,
  ...sequenceArea,
  ...sequenceRulesArea,
  ...marksArea,
  ...labelsArea,
  ...movementsArea,
  ...plannedArea,
  ...numbersArea,
  ...conditionArea,
  ...damageArea,
  ...climateArea,
  ...lightArea,
  ...leavingArea,
  ...onDayArea,
  ...loansArea,
  ...receiptsArea,
  ...insuredArea,
  ...sheetsArea,
  ...importArea,
  ...drawingArea,
  ...underlayArea,
  ...computationsArea,
  ...crewArea,
} as const

export type Contract = typeof contract
export type Name = keyof Contract
export type NameOf<K extends Kind> = { [N in Name]: Contract[N]['kind'] extends K ? N : never }[Name]
/** What a caller gives. */
export type Input<N extends Name> = z.input<Contract[N]['input']>
/** What a service receives, after the schema. */
export type Received<N extends Name> = z.output<Contract[N]['input']>
export type Output<N extends Name> = z.output<Contract[N]['output']>

export function isName(text: string): text is Name {
  return Object.hasOwn(contract, text)
}
