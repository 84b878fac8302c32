/** What is known of a room's air, what it is held to, and where it was left. */
import { joined } from '../../../src/climate/joined.ts'
import { type LimitKey, type Limits, limitKeys, limitsWrong } from '../../../src/climate/limits.ts'
import { absoluteHumidity, dewPoint } from '../../../src/climate/moist-air.ts'
import { outOf, type Summary, summaryOf, timeOut } from '../../../src/climate/out.ts'
import { unpacked } from '../../../src/climate/pack.ts'
import { gapsOf, type Series, usualStep } from '../../../src/climate/series.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { NumberRuleKey } from '../../../src/model/house-rules.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound } from '../change.ts'
import { ruleNumber, rulesOf } from '../rules.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, row, rows, value } from '../sql.ts'
import { packedDays } from './stored.ts'

const ruleOf: Readonly<Record<LimitKey, NumberRuleKey>> = {
  humidityLow: 'climateHumidityLow',
  humidityHigh: 'climateHumidityHigh',
  humidityChange: 'climateHumidityChange',
  celsiusLow: 'climateCelsiusLow',
  celsiusHigh: 'climateCelsiusHigh',
  celsiusChange: 'climateCelsiusChange',
}

const columns = {
  humidityLow: 'humidity_low',
  humidityHigh: 'humidity_high',
  humidityChange: 'humidity_change',
  celsiusLow: 'celsius_low',
  celsiusHigh: 'celsius_high',
  celsiusChange: 'celsius_change',
  why: 'why',
} as const

type Own = Output<'climate.room'>['own']

function ownOf(db: ReadHandle, room: string): Own {
  const none = Object.fromEntries(limitKeys.map(key => [key, null]))
  const list = Object.entries(columns).map(([key, column]) => `${column} AS ${key}`)
  const stored = row<Own>(db, `SELECT ${list.join(', ')} FROM climate_limit WHERE room = :room`, { room })
  return stored ?? ({ ...none, why: '' } as Own) // every key of a limit is in `none`
}

function inForceOf(db: ReadHandle, own: Own): Limits {
  const rule = rulesOf(db)
  const limits = Object.fromEntries(limitKeys.map(key => [key, own[key] ?? Number(rule(ruleOf[key]))]))
  return limits as Limits // every key is there
}

const mostTold = 1000
const momentOf = (seconds: number) => new Date(seconds * 1000).toISOString()

function within({ at, celsius, humidity }: Series, from: number, until: number): Series {
  const first = at.findIndex(moment => moment >= from)
  const last = at.findLastIndex(moment => moment <= until) + 1
  const cut = <T>(values: readonly T[]) => (first < 0 ? [] : values.slice(first, last))
  return { at: cut(at), celsius: cut(celsius), humidity: cut(humidity) }
}

function summary(found: Summary | null) {
  return found === null ? null : { ...found, leastAt: momentOf(found.leastAt), mostAt: momentOf(found.mostAt) }
}

function told(
  logger: string,
  series: Series,
  limits: Limits,
  joins: number,
): Output<'climate.room'>['loggers'][number] {
  const apart = outOf(series, limits)
  const out = joined(series, apart, joins * (usualStep(series.at) ?? 0))
  const { known, beyond } = timeOut(series, apart)
  const [humidity, celsius] = [summaryOf(series.at, series.humidity), summaryOf(series.at, series.celsius)]
  const both = humidity !== null && celsius !== null
  const gaps = gapsOf(series.at)
  return {
    logger,
    count: series.at.length,
    first: momentOf(series.at[0] ?? 0),
    last: momentOf(series.at.at(-1) ?? 0),
    humidity: summary(humidity),
    celsius: summary(celsius),
    dewPoint: both ? dewPoint(celsius.mean, humidity.mean) : null,
    water: both ? absoluteHumidity(celsius.mean, humidity.mean) : null,
    hoursKnown: known / 3600,
    hoursOut: beyond / 3600,
    out: out.slice(0, mostTold).map(({ beyond, ...each }) => ({
      ...each,
      hoursBeyond: beyond / 3600,
      from: momentOf(each.from),
      until: momentOf(each.until),
      worstAt: momentOf(each.worstAt),
    })),
    outCount: out.length,
    outApart: apart.length,
    gaps: gaps.slice(0, mostTold).map(gap => ({ from: momentOf(gap.from), until: momentOf(gap.until) })),
    gapCount: gaps.length,
  }
}

function filesOf(db: ReadHandle, room: string): Output<'climate.room'>['files'] {
  type File = Output<'climate.room'>['files'][number]
  return rows<Omit<File, 'told' | 'withdrawn'> & { told: string; why: string | null; withdrawnBy: string | null }>(
    db,
    `SELECT own.id, own.name, own.logger, own.count, own.first, own.last, own.told, own.recorded_at AS recordedAt,
      own.recorded_by AS recordedBy, later.note AS why, later.recorded_by AS withdrawnBy
     FROM climate_file AS own LEFT JOIN climate_file AS later ON later.withdraws = own.id
     WHERE own.room = :room AND own.withdraws IS NULL ORDER BY own.first DESC, own.id`,
    { room },
  ).map(({ told, why, withdrawnBy, ...file }) => ({
    ...file,
    told: JSON.parse(told),
    withdrawn: why === null ? null : { why, by: withdrawnBy ?? '' },
  }))
}

function known(db: ReadHandle, room: string): void {
  if (value(db, 'SELECT id FROM room WHERE id = :room', { room }) === undefined) throw notFound('room', 'room')
}

type LoggerTold = Output<'climate.room'>['loggers'][number]

export interface AirOfRoom {
  readonly own: Own
  readonly inForce: Limits
  readonly files: Output<'climate.room'>['files']
  /** Those that read something between the moments. */
  readonly loggers: readonly { readonly series: Series; readonly told: LoggerTold }[]
}

/** Refuses `not-found`. */
export function airOf(db: ReadHandle, { room, from, until }: Received<'climate.room'>): AirOfRoom {
  known(db, room)
  const own = ownOf(db, room)
  const inForce = inForceOf(db, own)
  const joins = ruleNumber(db, 'climateJoin')
  const [first, last] = [
    from === undefined ? -1e12 : Date.parse(from) / 1000,
    until === undefined ? 1e12 : Date.parse(until) / 1000,
  ]
  const loggers = packedDays(db, room, from, until).flatMap(({ logger, days }) => {
    const series = within(unpacked(days), first, last)
    return series.at.length === 0 ? [] : [{ series, told: told(logger, series, inForce, joins) }]
  })
  return { own, inForce, files: filesOf(db, room), loggers }
}

export function room({ db }: Reading, input: Received<'climate.room'>): Output<'climate.room'> {
  const { loggers, ...air } = airOf(db, input)
  return { ...air, loggers: loggers.map(each => each.told) }
}

export function readings(
  { db }: Reading,
  { room, from, until }: Received<'climate.readings'>,
): Output<'climate.readings'> {
  known(db, room)
  return { loggers: packedDays(db, room, from, until).map(({ logger, days }) => ({ logger, days: [...days] })) }
}

export function list({ db }: Reading): Output<'climate.rooms'> {
  const rooms = rows<Output<'climate.rooms'>['rooms'][number]>(
    db,
    `SELECT room.id, room.name, room.number, coalesce(sum(own.count), 0) AS count, min(own.first) AS first, max(own.last) AS last
     FROM room LEFT JOIN climate_file AS own ON own.room = room.id AND own.withdraws IS NULL
       AND NOT EXISTS (SELECT 1 FROM climate_file AS later WHERE later.withdraws = own.id)
     GROUP BY room.id ORDER BY room.position, room.id`,
  )
  return { rooms }
}

export function setLimits(writing: Writing, input: Received<'climate.setLimits'>): Output<'climate.setLimits'> {
  const { db } = writing
  const name = value<string>(db, 'SELECT name FROM room WHERE id = :room', { room: input.room })
  if (name === undefined) throw notFound('room', 'room')
  let id = value<string>(db, 'SELECT id FROM climate_limit WHERE room = :room', { room: input.room })
  if (id === undefined) {
    id = writing.newId()
    insert(db, 'climate_limit', { id, room: input.room })
  }
  writing.label(`Say what the air of ${name} is held to`)
  const { saved, clashes } = changeFields(writing, 'climate_limit', id, input.changes, columns, 'limit')
  const wrong = limitsWrong(inForceOf(db, ownOf(db, input.room)))
  if (wrong !== '') throw new Refusal('limits-cross', wrong, { field: 'changes' })
  return { saved, clashes }
}
