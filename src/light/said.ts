/** Budgets and limits of light in words, for screen and paper. */
import type { LightBudget, LightLimit } from '../contract/areas/light.ts'
import { decimal, THIN_SPACE } from '../measure/format.ts'

const whole = (value: number) => decimal(value, 0, THIN_SPACE)
const tenth = (value: number) => decimal(value, 1, THIN_SPACE)

export const shareOf = (most: number, { luxHours }: Pick<LightBudget, 'luxHours'>): number => most / luxHours

/** Whose word it is: the loan's name, else the house's. */
export function askedBy(asked: LightBudget['asked'], house: string): string {
  return asked === null ? house : `loan ${asked.loanNumber}, ${asked.partyName}`
}

/** Whether a limit is kept, as a sentence; `unit` is lx or µW/lm. */
export function limitSaid(of: LightLimit, unit: string, day: (date: string) => string): string {
  const open = of.unknownHours > 0 ? `; for ${tenth(of.unknownHours)} h nobody knows` : ''
  if (of.hours > 0) {
    const from = of.first === null ? '' : `, first on ${day(of.first)}`
    return `${tenth(of.hours)} h above it, up to ${tenth(of.greatest ?? 0)} ${unit}${from}${open}`
  }
  if (of.within > 0) return `kept for ${tenth(of.within)} h, ${tenth(of.greatest ?? 0)} ${unit} at most${open}`
  return of.unknownHours > 0 ? `not known: none of its ${tenth(of.unknownHours)} h was read` : 'no hours lit are known'
}

/** A limit is broken, kept throughout, or not known throughout. */
export function limitState({ hours, within, unknownHours }: LightLimit): 'broken' | 'kept' | 'unknown' {
  if (hours > 0) return 'broken'
  return within > 0 && unknownHours === 0 ? 'kept' : 'unknown'
}

/** Ultraviolet until today: its dose and the hours it was read for. */
export function violetSaid(violet: {
  readonly ever: number
  readonly hours: number
  readonly unknownHours: number
}): string {
  if (violet.hours === 0)
    return violet.unknownHours === 0 ? '' : `not known: it was read for none of ${tenth(violet.unknownHours)} h lit`
  const open = violet.unknownHours === 0 ? '' : `; for ${tenth(violet.unknownHours)} h more nobody read it`
  return `${whole(violet.ever)} mWh/m² in the ${tenth(violet.hours)} h for which it was read${open}`
}

/** Whether anything is known of its ultraviolet, with what is planned. */
export const violetKnown = (violets: readonly LightLimit[]): boolean => violets.some(of => of.hours + of.within > 0)
