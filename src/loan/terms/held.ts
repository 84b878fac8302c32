/** Every kind of term by its test, and what is told where one is broken. */
import { humidityTerm, temperatureTerm } from './climate.ts'
import { barrierTerm, fixingTerm, framingTerm, glazingTerm, heightTerm, securityTerm } from './hang.ts'
import { doseTerm, lightTerm, uvTerm } from './light.ts'
import { moneyTerm } from './money.ts'
import { apartTerm, creditTerm, handlingTerm } from './near.ts'
import type { LentWork, TermTold } from './planned.ts'
import { type Say, type Term, type TermKind, termSaid } from './term.ts'

const tests: Readonly<Record<TermKind, (term: Term, work: LentWork, say: Say) => TermTold>> = {
  light: lightTerm,
  dose: doseTerm,
  uv: uvTerm,
  humidity: humidityTerm,
  temperature: temperatureTerm,
  glazing: glazingTerm,
  fixing: fixingTerm,
  framing: framingTerm,
  height: heightTerm,
  barrier: barrierTerm,
  apart: apartTerm,
  handling: handlingTerm,
  security: securityTerm,
  credit: creditTerm,
  indemnity: ({ choice }, { together }) => moneyTerm('indemnity', choice, together),
  vehicle: ({ choice }, { together }) => moneyTerm('vehicle', choice, together),
  journey: ({ choice }, { together }) => moneyTerm('journey', choice, together),
}

/** Whether a term holds for a work as it is planned and known today. */
export function termHeld(term: Term, work: LentWork, say: Say): TermTold {
  return tests[term.kind](term, work, say)
}

/** A broken term as a finding says it: the work, the agreement, its words, then where and by how much. */
export function brokenSaid(term: Term, work: LentWork, loan: string, told: TermTold, say: Say): string {
  return `${work.called}: loan ${loan} says “${termSaid(term, say)}”. ${told.text}`
}
