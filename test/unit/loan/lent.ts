/** A lent work on its wall, as terms are held against it in the tests. */
import { dayAirOf } from '../../../src/climate/day-air.ts'
import { packed } from '../../../src/climate/pack.ts'
import { termHeld } from '../../../src/loan/terms/held.ts'
import type { Climate, HungPlan, LentWork } from '../../../src/loan/terms/planned.ts'
import type { Term, TermKind } from '../../../src/loan/terms/term.ts'

export const say = (mm: number) => `${Math.round(mm)} mm`
const other = { work: 'w2', running: '12', title: 'Groyne', maker: 'Bo Lind', limit: null }

const hung: HungPlan = {
  wall: 'Room 1, north',
  plannedLux: 50,
  lower: 1000,
  upper: 1600,
  span: [2000, 2500],
  method: 'd-rings',
  kept: false,
  beside: [other],
  barriers: [{ from: 1500, to: 3000, away: 600 }],
  hands: ['Tamsin Oake'],
  hungOn: ['2031-03-05'],
  label: '',
}
/** Twelve readings, one every ten minutes from noon of 10 March 2031; the work is in the room all that day. */
const noon = Date.parse('2031-03-10T12:00:00Z') / 1000
const readings = {
  at: Array.from({ length: 12 }, (_, i) => noon + i * 600),
  humidity: [44, 50, 50, 56, 50, 50, 50, 50, 50, 50, 50, 50],
  celsius: [18.5, 19, 20, 21, 20, 20, 20, 20, 20, 20, 20, 20],
}
export const room = {
  room: 'Room 1',
  loggers: [packed(readings).map(dayAirOf)],
  spans: [{ from: noon - 43_200, until: noon + 43_200 }],
}
export const climate: Climate = {
  rooms: [room],
  period: 'from 1 March 2031 to 31 March 2031',
  days: 31,
  said: moment => new Date(moment * 1000).toISOString().slice(11, 16),
  dayOf: moment => Math.floor(moment / 86_400),
}
export const work: LentWork = {
  called: '4',
  glazing: 'acrylic',
  part: 'framed',
  size: { width: 500, height: 600, depth: 60 },
  mass: 8,
  hung,
  reading: { lux: 48, day: '2031-03-10' },
  violet: { uv: 12, day: '2031-03-03' },
  dose: { most: 11_200, unknownHours: 0 },
  climate,
  creditLine: 'Quay Collection, Tamble',
  together: null,
  people: null,
}
export const term = (kind: TermKind, more: Partial<Term> = {}): Term => ({
  kind,
  low: null,
  high: null,
  choice: '',
  said: '',
  confirmed: null,
  ...more,
})
export const state = (asked: Term, of: LentWork = work) => termHeld(asked, of, say).state
export const text = (asked: Term, of: LentWork = work) => termHeld(asked, of, say).text
export const on = (more: Partial<HungPlan>): LentWork => ({ ...work, hung: { ...hung, ...more } })
