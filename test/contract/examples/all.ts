/** Examples of every procedure. A procedure without its examples does not compile. */
import type { Name } from '../../../src/contract/contract.ts'
import { climateExamples } from './climate.ts'
import { computationsExamples } from './computations.ts'
import { conditionExamples } from './condition.ts'
import { crewExamples } from './crew.ts'
import { damageExamples } from './damage.ts'
import { deskExamples } from './desk.ts'
import { drawingExamples } from './drawing.ts'
import { exhibitionsExamples } from './exhibitions.ts'
import { fixturesExamples } from './fixtures.ts'
import { historyExamples } from './history.ts'
import { importExamples } from './import.ts'
import { insuredExamples } from './insured.ts'
import { labelsExamples } from './labels.ts'
import { leavingExamples } from './leaving.ts'
import { lightExamples } from './light.ts'
import { loansExamples } from './loans.ts'
import { marksExamples } from './marks.ts'
import { movementsExamples } from './movements.ts'
import { numbersExamples } from './numbers.ts'
import { onDayExamples } from './on-day.ts'
import { partiesExamples } from './parties.ts'
import { partitionsExamples } from './partitions.ts'
import { planExamples } from './plan.ts'
import { planWallsExamples } from './plan-walls.ts'
import { plannedExamples } from './planned.ts'
import { receiptsExamples } from './receipts.ts'
import { roomsExamples } from './rooms.ts'
import { routeExamples } from './route.ts'
import { sequenceExamples } from './sequence.ts'
import { sequenceRulesExamples } from './sequence-rules.ts'
import { setsExamples } from './sets.ts'
import { sheetsExamples } from './sheets.ts'
import { standingExamples } from './standing.ts'
import { surveyExamples } from './survey.ts'
import type { ExamplesOf } from './types.ts'
import { underlayExamples } from './underlay.ts'
import { wallsExamples } from './walls.ts'
import { weightExamples } from './weight.ts'
import { worksExamples } from './works.ts'

export const examples: ExamplesOf<Name> = {
  ...deskExamples,
  ...historyExamples,
  ...worksExamples,
  ...setsExamples,
  ...partiesExamples,
  ...planExamples,
  ...planWallsExamples,
  ...exhibitionsExamples,
  ...roomsExamples,
  ...routeExamples,
  ...fixturesExamples,
  ...partitionsExamples,
  ...standingExamples,
  ...surveyExamples,
  ...wallsExamples,
  ...weightExamples,
  ...sequenceExamples,
  ...sequenceRulesExamples,
  ...marksExamples,
  ...labelsExamples,
  ...movementsExamples,
  ...plannedExamples,
  ...numbersExamples,
  ...conditionExamples,
  ...damageExamples,
  ...leavingExamples,
  ...onDayExamples,
  ...climateExamples,
  ...lightExamples,
  ...loansExamples,
  ...receiptsExamples,
  ...insuredExamples,
  ...computationsExamples,
  ...crewExamples,
  ...importExamples,
  ...drawingExamples,
  ...underlayExamples,
  ...sheetsExamples,
}
