/** Every kind of term by its test, and what is told where one is broken. */
import { daySaid } from '../../light/day.ts'
import type { TermWord } from './asked.ts'
import { humidityTerm, temperatureTerm } from './climate.ts'
import {
  barrierTerm,
  fixingTerm,
  framingTerm,
  glazingTerm,
  heightTerm,
  massTerm,
  securityTerm,
  sizeTerm,
} from './hang.ts'
import { doseTerm, lightTerm, uvTerm } from './light.ts'
import { moneyTerm } from './money.ts'
import { apartTerm, creditTerm } from './near.ts'
import { courierTerm, handlingTerm } from './people.ts'
import { broken, holds, type LentWork, type TermTold } from './planned.ts'
import { type Say, termSaid } from './said.ts'
import type { Term, TermKind } from './term.ts'

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
  courier: courierTerm,
  'hung-width': (term, work, say) => sizeTerm({ ...term, kind: 'hung-width' }, work, say),
  'hung-height': (term, work, say) => sizeTerm({ ...term, kind: 'hung-height' }, work, say),
  'hung-depth': (term, work, say) => sizeTerm({ ...term, kind: 'hung-depth' }, work, say),
  'hung-mass': massTerm,
  credit: creditTerm,
  indemnity: ({ choice }, { together }) => moneyTerm('indemnity', choice, together),
  vehicle: ({ choice }, { together }) => moneyTerm('vehicle', choice, together),
  journey: ({ choice }, { together }) => moneyTerm('journey', choice, together),
}

/** Whether a term holds for a work as it is planned and known today; where a person is asked, by their word. */
export function termHeld(term: Term, work: LentWork, say: Say): TermTold {
  const told = tests[term.kind](term, work, say)
  return told.state === 'asked' && term.confirmed !== null ? byWord(term.confirmed) : told
}

function byWord({ kept, by, on, note }: TermWord): TermTold {
  const how = note.trim() === '' ? '.' : `: “${note.trim()}”.`
  const figures = { by, on }
  return kept
    ? holds(`${by} confirmed it on ${daySaid(on)}${how}`, figures)
    : broken(`${by} said on ${daySaid(on)} that it is not so${how}`, figures)
}

/** A term that is broken or asked as a finding says it: the work or works, the agreement, its words, then where and by how much. */
export function quoted(term: Term, who: string, loan: string, told: TermTold, say: Say): string {
  return `${who}: loan ${loan} says “${termSaid(term, say)}”. ${told.text}`
}
