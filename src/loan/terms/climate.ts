/** Terms of relative humidity and temperature, against what loggers showed where the work was while it was lent. */
import { airHeld, daysRead, secondsOf, wider } from '../../climate/beyond.ts'
import type { Quantity, Reach } from '../../climate/day-air.ts'
import { degrees, lasting, percent } from '../../climate/said.ts'
import { broken, type Climate, holds, type LentWork, type TermTold, unknown } from './planned.ts'
import type { Term } from './term.ts'

interface Unit {
  readonly noun: string
  readonly said: (value: number) => string
  readonly span: (value: number) => string
}

const units: Readonly<Record<Quantity, Unit>> = {
  humidity: { noun: 'relative humidity', said: percent, span: percent },
  celsius: { noun: 'temperature', said: value => degrees(value, false), span: value => `${value.toFixed(1)} K` },
}

const numbered = (count: number) => `${count} ${count === 1 ? 'day' : 'days'}`

function within({ low, high }: Term, climate: Climate | null, of: Quantity): TermTold {
  if (climate === null)
    return unknown(
      'Neither the loan nor a show says from which day on: enter its dates, then its room’s climate counts.',
    )
  const { rooms, period, days, said, dayOf } = climate
  if (rooms.length === 0)
    return unknown(`Nothing says in which room it is ${period}: put it on a wall or record where it stands.`)
  const held = rooms.map(({ room, loggers, spans }) => ({ room, ...airHeld(loggers, spans, of, { low, high }) }))
  const all = held.reduce<Reach | null>((reach, one) => wider(reach, one.reach), null)
  const read = new Set(rooms.flatMap(({ loggers, spans }) => [...daysRead(loggers, spans, of, dayOf)])).size
  const { noun, said: write, span } = units[of]
  const names = [...new Set(held.map(({ room }) => room))].join(', ')
  if (all === null)
    return unknown(
      `No ${noun} of ${names} is on record ${period}${days === null ? '' : `, ${numbered(days)}`}: bring its logger’s file in.`,
    )
  const covered = `Read on ${days === null ? numbered(read) : `${read} of ${numbered(days)}`} ${period}.`
  const over = high === null ? 0 : all.most - high
  const under = low === null ? 0 : low - all.least
  if (over <= 1e-9 && under <= 1e-9)
    return holds(`${names} stayed between ${write(all.least)} and ${write(all.most)}. ${covered}`)
  const damp = over >= under
  const at = damp ? all.mostAt : all.leastAt
  const seconds = held.reduce((sum, { beyond }) => sum + secondsOf(beyond), 0)
  const bad = held.filter(({ beyond }) => beyond.length > 0)
  const each = bad.length > 1 ? ` (${bad.map(one => `${one.room} ${lasting(secondsOf(one.beyond))}`).join(', ')})` : ''
  const room = held.find(({ reach }) => (damp ? reach?.mostAt : reach?.leastAt) === at)?.room ?? names
  const worst = damp
    ? `${room} reached ${write(all.most)} on ${said(at)}, ${span(over)} too much`
    : `${room} fell to ${write(all.least)} on ${said(at)}, ${span(under)} too little`
  // Days read are in no figure: a settlement lapses when it gets worse, not with every file.
  const figures = { low, high, worst: damp ? all.most : all.least, room, seconds }
  return broken(`${worst}; beyond the term for ${lasting(seconds)}${each}. ${covered}`, figures)
}

/** Per cent of relative humidity. */
export function humidityTerm(term: Term, { climate }: LentWork): TermTold {
  return within(term, climate, 'humidity')
}

/** Degrees Celsius. */
export function temperatureTerm(term: Term, { climate }: LentWork): TermTold {
  return within(term, climate, 'celsius')
}
