/** Loggers' files written into the record and withdrawn in it. Nothing here changes or removes a row. */
import { packed, unpacked } from '../../../src/climate/pack.ts'
import type { Series } from '../../../src/climate/series.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { lastLink } from '../../database/chain.ts'
import { climateHash } from '../../database/climate-chain.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { signed } from '../record/record.ts'
import type { Job, Writing } from '../service.ts'
import { insert, row, value } from '../sql.ts'
import { sourceOf } from './source.ts'
import { packedDays } from './stored.ts'

const inForce = 'withdraws IS NULL AND id NOT IN (SELECT withdraws FROM climate_file WHERE withdraws IS NOT NULL)'
const momentOf = (seconds: number | undefined) => new Date((seconds ?? 0) * 1000).toISOString()

/** Those of a series that the logger has not on record yet, and how many it has with the same or another value. */
function unknown(db: ReadHandle, room: string, logger: string, series: Series) {
  const [first = 0] = series.at
  const known = packedDays(db, room, momentOf(first), momentOf(series.at.at(-1))).find(one => one.logger === logger)
  const stored = unpacked(known?.days ?? [])
  const at = new Map(stored.at.map((moment, i) => [moment, i]))
  const kept: number[] = []
  let [repeated, other] = [0, 0]
  const near = (a: number | null, b: number | null) => (a === null || b === null ? a === b : Math.abs(a - b) < 0.0051)
  series.at.forEach((moment, i) => {
    const own = at.get(moment)
    if (own === undefined) kept.push(i)
    else if (
      near(stored.celsius[own] ?? null, series.celsius[i] ?? null) &&
      near(stored.humidity[own] ?? null, series.humidity[i] ?? null)
    ) {
      repeated++
    } else other++
  })
  const pick = <T>(values: readonly T[]) => kept.map(i => values[i] as T) // each index is one of the series
  return {
    fresh: { at: pick(series.at), celsius: pick(series.celsius), humidity: pick(series.humidity) },
    repeated,
    other,
  }
}

/** Refuses what the reading refuses, `to-settle`, `brought-in-already`, `nothing-new`, `not-found`, `no-name`. */
export async function takeFile(job: Job, input: Received<'climate.takeFile'>): Promise<Output<'climate.takeFile'>> {
  const { room, logger, by: given, ...asked } = input
  const source = await sourceOf(job, asked)
  const [open] = source.asks
  if (open !== undefined) {
    const field = open.code === 'order' || open.code === 'unit' || open.code === 'columns' ? open.code : 'zone'
    throw new Refusal('to-settle', open.words, { field: open.code === 'nothing' ? 'handle' : field })
  }
  const { name, hash, read, shape } = source
  return await job.write(writing => {
    const { db } = writing
    const by = signed(writing, given)
    const words = value<string>(db, 'SELECT name FROM room WHERE id = :room', { room })
    if (words === undefined) throw notFound('room', 'room')
    const same = `SELECT recorded_by FROM climate_file WHERE room = :room AND file_hash = :hash AND ${inForce}`
    const before = value<string>(db, same, { room, hash })
    if (before !== undefined) {
      throw new Refusal('brought-in-already', `${before} has brought this very file in for ${words} already.`, {
        field: 'handle',
      })
    }
    job.progress(0, null, `Looking what of ${name} is on record`)
    const { fresh, repeated, other } = unknown(db, room, logger, read.series)
    if (fresh.at.length === 0) {
      const sentence = `Every moment of this file is on record for ${logger} in ${words} already. Was it another logger?`
      throw new Refusal('nothing-new', sentence, { field: 'logger' })
    }
    const told = [...source.told]
    if (repeated > 0) told.push(`${repeated.toLocaleString('en')} of its readings were on record already.`)
    if (other > 0) {
      told.push(
        `${other.toLocaleString('en')} of its moments are on record with another value; what is on record stays.`,
      )
    }
    const id = writing.newId()
    const columns = shape.columns.map(column => ({ heading: column.heading, is: column.role }))
    writing.label(`Bring ${name} in for ${words}`)
    job.progress(0, null, `Packing ${name}`)
    const days = packed(fresh).map(day => ({ id: writing.newId(), ...day }))
    const file = {
      id,
      room,
      room_words: words,
      name,
      file_hash: hash,
      logger,
      read_as: JSON.stringify({ columns, order: read.order, unit: read.unit, zone: input.zone ?? null }),
      told: JSON.stringify(told),
      count: fresh.at.length,
      first: momentOf(fresh.at[0]),
      last: momentOf(fresh.at.at(-1)),
      note: '',
      withdraws: null,
      recorded_at: writing.now(),
      recorded_by: by,
    }
    insert(db, 'climate_file', { ...file, hash: climateHash(lastLink(db, 'climate_file'), file, days) })
    days.forEach((day, done) => {
      insert(db, 'climate_day', { file: id, ...day })
      job.progress(done, days.length, `Writing ${name}`)
    })
    return { id, count: fresh.at.length, told }
  })
}

export function withdrawFile(
  writing: Writing,
  input: Received<'climate.withdrawFile'>,
): Output<'climate.withdrawFile'> {
  const { db } = writing
  const by = signed(writing, input.by)
  const wrong = row<{ room: string; room_words: string; name: string; file_hash: string; logger: string }>(
    db,
    'SELECT room, room_words, name, file_hash, logger FROM climate_file WHERE id = :file AND withdraws IS NULL',
    { file: input.file },
  )
  if (wrong === undefined) throw notFound('logger’s file', 'file')
  if (value(db, 'SELECT id FROM climate_file WHERE withdraws = :file', { file: input.file }) !== undefined) {
    throw new Refusal('withdrawn-already', 'This file was withdrawn already.', { field: 'file' })
  }
  const at = writing.now()
  writing.label(`Withdraw ${wrong.name} of ${wrong.room_words}`)
  const file = {
    ...{ id: writing.newId(), ...wrong, read_as: '{}', told: '[]', count: 0, first: at, last: at, note: input.why },
    ...{ withdraws: input.file, recorded_at: at, recorded_by: by },
  }
  insert(db, 'climate_file', { ...file, hash: climateHash(lastLink(db, 'climate_file'), file, []) })
  return { done: true }
}
