/** Readings of a meter, written into the record and struck in it. Nothing here changes or removes a row. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { perLumen } from '../../../src/light/budget.ts'
import { lastLink } from '../../database/chain.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type ReadingRow, readingHash } from '../../database/light-chain.ts'
import { notFound } from '../change.ts'
import { signed } from '../record/record.ts'
import type { Writing } from '../service.ts'
import { sheetTime } from '../sheets/wishes.ts'
import { insert, row, rows, value } from '../sql.ts'

/** A clock that is a minute ahead of another is no reading from the future. */
const clockSlack = 60_000

export function add(writing: Writing, input: Received<'light.addReading'>): Output<'light.addReading'> {
  const { db, now } = writing
  const by = signed(writing, input.by)
  if (value(db, 'SELECT id FROM work WHERE id = :work', { work: input.work }) === undefined) {
    throw notFound('work', 'work')
  }
  const at = new Date(input.at ?? now()).toISOString()
  if (Date.parse(at) > Date.parse(now()) + clockSlack) {
    const sentence = `It is ${sheetTime(now())} now: nobody has read a meter on ${sheetTime(at)} yet.`
    throw new Refusal('in-the-future', sentence, { field: 'at' })
  }
  if (input.uv !== undefined && input.uvArea !== undefined) {
    const sentence = 'Ultraviolet is one figure: µW/lm, or mW/m² where the meter shows that. Give the one it shows.'
    throw new Refusal('two-figures', sentence, { field: 'uvArea' })
  }
  return record(db, {
    id: writing.newId(),
    work: input.work,
    at,
    points: JSON.stringify(input.points),
    lux: Math.max(...input.points),
    uv: input.uv ?? null,
    meter: input.meter ?? '',
    note: input.note ?? '',
    strikes: null,
    recorded_at: now(),
    recorded_by: by,
    uv_area: input.uvArea ?? null,
  })
}

function record(db: Writing['db'], reading: ReadingRow): { id: string } {
  insert(db, 'light_reading', { ...reading, hash: readingHash(lastLink(db, 'light_reading'), reading) })
  return { id: reading.id }
}

export function strike(writing: Writing, input: Received<'light.strikeReading'>): Output<'light.strikeReading'> {
  const { db } = writing
  const by = signed(writing, input.by)
  const wrong = row<{ work: string; at: string; lux: number; strikes: string | null; struck: number }>(
    db,
    `SELECT work, at, lux, strikes, EXISTS (SELECT 1 FROM light_reading AS later WHERE later.strikes = light_reading.id) AS struck
     FROM light_reading WHERE id = :id`,
    { id: input.reading },
  )
  if (wrong === undefined || wrong.strikes !== null) throw notFound('reading', 'reading')
  if (wrong.struck === 1) {
    throw new Refusal('corrected-already', 'This reading was struck already. Record what the meter really showed.', {
      field: 'reading',
    })
  }
  const { work, at, lux } = wrong
  const said = { points: '[]', uv: null, uv_area: null, meter: '', note: input.why, strikes: input.reading }
  return record(db, { id: writing.newId(), work, at, lux, ...said, recorded_at: writing.now(), recorded_by: by })
}

type Told = Output<'light.ledger'>['readings'][number]

interface Stored extends Omit<Told, 'points' | 'struck'> {
  readonly points: string
  readonly why: string | null
  readonly struckBy: string | null
}

/** Every reading of a work, the first one first, struck ones among them. */
export function readingsOf(db: ReadHandle, work: string): Told[] {
  return rows<Stored>(
    db,
    `SELECT own.id, own.at, own.points, own.lux, own.uv, own.uv_area AS uvArea, own.meter, own.note, own.recorded_at AS recordedAt,
      own.recorded_by AS recordedBy, later.note AS why, later.recorded_by AS struckBy
     FROM light_reading AS own LEFT JOIN light_reading AS later ON later.strikes = own.id
     WHERE own.work = :work AND own.strikes IS NULL ORDER BY own.at, own.id`,
    { work },
  ).map(({ points, why, struckBy, uv, ...each }) => ({
    ...each,
    uv: each.uvArea === null ? uv : perLumen(each.uvArea, each.lux),
    points: JSON.parse(points),
    struck: why === null ? null : { why, by: struckBy ?? '' },
  }))
}
