/** Readings as they are stored: the days of files in force, by logger. */
import type { PackedDay } from '../../../src/climate/pack.ts'
import { secondsOfDay } from '../../../src/climate/pack.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'

export interface LoggerDays {
  readonly logger: string
  readonly days: readonly Omit<PackedDay, 'count'>[]
}

/** Whole days of UTC that the span touches, in order; loggers by their names. */
export function packedDays(db: ReadHandle, room: string, from?: string, until?: string): LoggerDays[] {
  const day = (moment: string) => Math.floor(Date.parse(moment) / 1000 / secondsOfDay)
  const found = new Map<string, Omit<PackedDay, 'count'>[]>()
  for (const { logger, ...packed } of rows<Omit<PackedDay, 'count'> & { logger: string }>(
    db,
    `SELECT own.logger, climate_day.day, seconds, celsius, humidity FROM climate_file AS own
     JOIN climate_day ON climate_day.file = own.id
     WHERE own.room = :room AND own.withdraws IS NULL AND climate_day.day BETWEEN :from AND :until
       AND NOT EXISTS (SELECT 1 FROM climate_file AS later WHERE later.withdraws = own.id)
     ORDER BY own.logger, climate_day.day, climate_day.id`,
    { room, from: from === undefined ? -1e6 : day(from), until: until === undefined ? 1e6 : day(until) },
  )) {
    const days = found.get(logger)
    if (days === undefined) found.set(logger, [packed])
    else days.push(packed)
  }
  return [...found].map(([logger, days]) => ({ logger, days }))
}
