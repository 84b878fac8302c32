/** Terms of relative humidity and temperature, against what loggers of the room have shown. */
import { broken, type Extremes, holds, type LentWork, type TermTold, unknown } from './planned.ts'
import type { Term } from './term.ts'

const short = (value: number) => String(Math.round(value * 10) / 10)

function within({ low, high }: Term, seen: Extremes | null, room: string, unit: string): TermTold {
  if (seen === null) return unknown('No reading of its room’s climate is on record: hold it against the logger.')
  const over = high === null ? 0 : seen.most - high
  const under = low === null ? 0 : low - seen.least
  const figures = { low, high, least: seen.least, most: seen.most }
  if (over > 0 && over >= under)
    return broken(`${room} reached ${short(seen.most)} ${unit}, ${short(over)} too much.`, figures)
  if (under > 0) return broken(`${room} fell to ${short(seen.least)} ${unit}, ${short(under)} too little.`, figures)
  return holds(`${room} stayed between ${short(seen.least)} and ${short(seen.most)} ${unit}.`, figures)
}

/** Per cent of relative humidity. */
export function humidityTerm(term: Term, { climate }: LentWork): TermTold {
  return within(term, climate?.humidity ?? null, climate?.room ?? '', '%')
}

/** Degrees Celsius. */
export function temperatureTerm(term: Term, { climate }: LentWork): TermTold {
  return within(term, climate?.temperature ?? null, climate?.room ?? '', '°C')
}
