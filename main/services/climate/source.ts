/** A logger's file, read by what the person said of it; both the preview and the taking in begin here. */
import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { columnLetters, textOf } from '../../../src/checklist/cell.ts'
import { isZone } from '../../../src/climate/clock.ts'
import { type LogShape, shapeOf } from '../../../src/climate/columns.ts'
import { type LogAsk, type LogRead, LogReader } from '../../../src/climate/read-log.ts'
import { usualStep } from '../../../src/climate/series.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { openTable } from '../../files/tables/open.ts'
import { type Limits, limits as usualLimits } from '../../files/tables/table.ts'
import type { Job } from '../service.ts'

/** Four years of a reading a minute; what is far beyond any logger must not pass. */
const limits: Limits = { ...usualLimits, rows: 2_100_000, columns: 60, cellLength: 2000 }

type Asked = Received<'climate.readFile'>
type Ask = Output<'climate.readFile'>['asks'][number]

export interface Source {
  readonly name: string
  readonly hash: string
  readonly shape: LogShape
  readonly read: LogRead
  readonly asks: readonly Ask[]
  readonly told: readonly string[]
}

const asked: Readonly<Record<LogAsk, string>> = {
  order: 'Every date of the file could be day and month or month and day. Say which comes first.',
  unit: 'No heading says whether temperatures are °C or °F. Say which.',
  zone: 'No time of the file says how far it is ahead of UTC. Say which clock the logger keeps.',
  'hour that never was':
    'The file has times in the hour that clocks of this zone skip in spring, so the logger does not keep summer time. Choose its offset, such as +01:00.',
}

/** Refuses whatever the file is not. What is still open is in `asks`. */
export async function sourceOf(job: Job, input: Asked): Promise<Source> {
  if (input.zone !== undefined && !isZone(input.zone)) {
    const sentence = `“${input.zone}” is no time zone. Write an offset such as +01:00, or a name such as Europe/Zurich.`
    throw new Refusal('no-zone', sentence, { field: 'zone' })
  }
  const path = job.handles.path(input.handle)
  const name = job.handles.name(input.handle)
  const watch = {
    signal: job.signal,
    progress: (done: number, total: number | null) => job.progress(done, total, `Reading ${name}`),
  }
  const table = await openTable(path, name, watch, { limits })
  if (table.kind === 'xlsx') {
    throw new Refusal(
      'not-text',
      'This is a workbook. Save it as CSV, or take the CSV that the logger’s program gives.',
      {
        field: 'handle',
      },
    )
  }
  const said = new Map((input.columns ?? []).map(({ column, is }) => [column - 1, is]))
  const top = (table.sheets[0]?.top ?? []).map(({ row, cells }) => ({ row, cells: cells.map(textOf) }))
  const shape = shapeOf(top, said)
  if (shape === null) {
    throw new Refusal(
      'no-readings',
      'No row among the first 200 has a date and a figure, so this is no logger’s file that can be read. Choose the CSV that the logger’s program gives.',
      { field: 'handle' },
    )
  }
  if (shape.torn) {
    throw new Refusal(
      'decimal-commas',
      'Rows have more cells than there are headings: decimal commas stand between columns that are parted by commas. Have the logger’s program write semicolons or decimal points.',
      { field: 'handle' },
    )
  }
  const reader = new LogReader(shape)
  for await (const batch of table.rows(0, watch)) {
    for (const { row, cells } of batch) reader.take(row, cells.map(textOf))
  }
  const { order = null, unit = null, zone = null } = input
  job.progress(0, null, `Putting the readings of ${name} in order`)
  const columns = missingColumns(shape)
  const read = reader.read({ order, unit, zone })
  const asks: Ask[] =
    columns === '' ? read.asks.map(code => ({ code, words: asked[code] })) : [{ code: 'columns', words: columns }]
  if (asks.length === 0 && read.series.at.length === 0) {
    asks.push({ code: 'nothing', words: 'No row of the file could be read. Look at the rows named.' })
  }
  job.progress(0, null, `Knowing ${name} again`)
  const sum = createHash('sha256')
  // The type of a stream's chunks is any; without an encoding they are buffers.
  for await (const bytes of createReadStream(path) as AsyncIterable<Buffer>) sum.update(bytes)
  return { name, hash: sum.digest('hex'), shape, read, asks, told: [...table.remarks(), ...toldOf(read)] }
}

function missingColumns({ columns, twice }: LogShape): string {
  const has = (role: string) => columns.some(column => column.role === role)
  if (twice.length > 0) return `More columns than one could be the ${twice.join(' and the ')}. Say which one is.`
  if (!has('moment') && !(has('date') && has('time'))) return 'Say which column has the date and which the time.'
  return has('temperature') || has('humidity')
    ? ''
    : 'No heading tells which column is temperature and which relative humidity. Say which are.'
}

const counted = (count: number, one: string, many: string) =>
  `${count.toLocaleString('en')} ${count === 1 ? one : many}`

function toldOf(read: LogRead): string[] {
  const told: string[] = []
  const say = (count: number, sentence: string) => {
    if (count > 0) told.push(sentence)
  }
  say(
    read.badCount,
    `${counted(read.badCount, 'row', 'rows')} could not be read and ${read.badCount === 1 ? 'is' : 'are'} left out.`,
  )
  say(read.empty, `${counted(read.empty, 'row has', 'rows have')} a time and no reading.`)
  say(
    read.repeats,
    `${counted(read.repeats, 'row repeats', 'rows repeat')} another and ${read.repeats === 1 ? 'is' : 'are'} counted once.`,
  )
  say(
    read.contradictions,
    `${counted(read.contradictions, 'row gives', 'rows give')} another value for a moment that has one; the first one stays.`,
  )
  const sure = read.twice - read.unsure
  say(
    sure,
    `${counted(sure, 'reading', 'readings')} of the hour that autumn has twice: told apart by their order in the file.`,
  )
  say(
    read.unsure,
    `${counted(read.unsure, 'reading', 'readings')} of the hour that autumn has twice, and the file has it once: taken as summer time.`,
  )
  const step = usualStep(read.series.at)
  if (step !== null)
    told.push(
      `A reading every ${step % 60 === 0 ? counted(step / 60, 'minute', 'minutes') : counted(step, 'second', 'seconds')}.`,
    )
  return told
}

const momentOf = (seconds: number | undefined) =>
  seconds === undefined ? null : new Date(seconds * 1000).toISOString()

export async function readFile(job: Job, input: Asked): Promise<Output<'climate.readFile'>> {
  const { name, shape, read, asks, told } = await sourceOf(job, input)
  return {
    name,
    headingRow: shape.headingRow,
    columns: shape.columns.map(({ heading, role, sample }, at) => ({
      column: at + 1,
      letters: columnLetters(at),
      heading,
      is: role,
      sample,
    })),
    order: read.order,
    unit: read.unit,
    asks: [...asks],
    count: read.series.at.length,
    first: momentOf(read.series.at[0]),
    last: momentOf(read.series.at.at(-1)),
    bad: [...read.bad],
    told: [...told],
  }
}
