/** Readings as they are stored: the days of files in force, by logger. */
import { type DayAir, dayAirOf, eachDayOnce } from '../../../src/climate/day-air.ts'
import type { PackedDay } from '../../../src/climate/pack.ts'
import { secondsOfDay } from '../../../src/climate/pack.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { row, rows } from '../sql.ts'

export interface LoggerDays {
  readonly logger: string
  readonly days: readonly Omit<PackedDay, 'count'>[]
}

const daysInForce = `FROM climate_file AS own JOIN climate_day ON climate_day.file = own.id
  WHERE own.room = :room AND own.withdraws IS NULL AND climate_day.day BETWEEN :from AND :until
    AND NOT EXISTS (SELECT 1 FROM climate_file AS later WHERE later.withdraws = own.id)
  ORDER BY own.logger, climate_day.day, climate_day.id`

/** Whole days of UTC that the span touches, in order; loggers by their names. */
export function packedDays(db: ReadHandle, room: string, from?: string, until?: string): LoggerDays[] {
  const day = (moment: string) => Math.floor(Date.parse(moment) / 1000 / secondsOfDay)
  const found = new Map<string, Omit<PackedDay, 'count'>[]>()
  for (const { logger, ...packed } of rows<Omit<PackedDay, 'count'> & { logger: string }>(
    db,
    `SELECT own.logger, climate_day.day, seconds, celsius, humidity ${daysInForce}`,
    { room, from: from === undefined ? -1e6 : day(from), until: until === undefined ? 1e6 : day(until) },
  )) {
    const days = found.get(logger)
    if (days === undefined) found.set(logger, [packed])
    else days.push(packed)
  }
  return [...found].map(([logger, days]) => ({ logger, days }))
}

/** So many readings are kept unpacked, some 16 bytes each: two years of a reading every five minutes in ten rooms. */
const mostKept = 2_000_000

/** Days of a connection by the key of their row, the one unpacked first first. Such a row never changes. */
class Unpacked {
  private readonly days = new Map<string, DayAir>()
  private readings = 0

  of(db: ReadHandle, id: string): DayAir {
    const known = this.days.get(id)
    if (known !== undefined) return known
    const sql = 'SELECT day, seconds, celsius, humidity FROM climate_day WHERE id = :id'
    const found = dayAirOf(
      row<Omit<PackedDay, 'count'>>(db, sql, { id }) ?? { day: 0, seconds: '', celsius: '', humidity: '' },
    )
    this.days.set(id, found)
    this.readings += found.at.length
    for (const [old, { at }] of this.days) {
      if (this.readings <= mostKept || old === id) break
      this.days.delete(old)
      this.readings -= at.length
    }
    return found
  }
}

const unpackedBy = new WeakMap<ReadHandle, Unpacked>()

/** The days of UTC from one to another, of each logger of a room in order; only what was not looked at lately is unpacked. */
export function airOfDays(db: ReadHandle, room: string, from: number, until: number): DayAir[][] {
  const kept = unpackedBy.get(db) ?? new Unpacked()
  unpackedBy.set(db, kept)
  const found = rows<{ logger: string; id: string }>(db, `SELECT own.logger, climate_day.id ${daysInForce}`, {
    ...{ room, from, until },
  })
  const loggers = Map.groupBy(found, ({ logger }) => logger)
  return [...loggers.values()].map(days => eachDayOnce(days.map(({ id }) => kept.of(db, id))))
}
