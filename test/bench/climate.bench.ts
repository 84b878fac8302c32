/**
 * A logger's file of 200 MB, two million readings a minute apart with the columns that such programs add: read as a
 * preview, cancelled half-way, brought in, and asked of afterwards. Wanted: progress at least twice a second, a cancel
 * that is answered at once and leaves nothing, less than the worker's 1.5 GB. A general tool beside it: the time that Node
 * takes to read the same file line by line and split each.
 */
import { closeSync, createReadStream, openSync, statSync, writeSync } from 'node:fs'
import { loadavg } from 'node:os'
import { createInterface } from 'node:readline'
import { answer } from '../../main/hosts/answer.ts'
import type { Host } from '../../main/hosts/host.ts'
import { callOn } from '../contract/fixture.ts'
import { withDemo } from './many-works.ts'

const rows = 2_050_000
const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`

/** As loggers write: a heading, then date and time, two figures, and what nobody asks for. */
function writeLog(path: string): void {
  const file = openSync(path, 'w')
  writeSync(file, 'Date and time;Temperature °C;Relative humidity %;Dew point °C;Battery V;Serial number;Remarks\n')
  const first = Date.UTC(2027, 0, 1)
  let text = ''
  for (let at = 0; at < rows; at++) {
    const moment = new Date(first + at * 60_000).toISOString().slice(0, 19).replace('T', ' ')
    const [celsius, humidity] = [
      20 + 2 * Math.sin(at / 700) + (at % 7) / 50,
      50 + 6 * Math.sin(at / 1900) + (at % 11) / 20,
    ]
    text += `${moment}Z;${celsius.toFixed(2)};${humidity.toFixed(2)};9.61;3.58;LOGGER-0000-4711-2027;north wall by the door, 1.6 m\n`
    if (text.length > 4e6 || at === rows - 1) {
      writeSync(file, text)
      text = ''
    }
  }
  closeSync(file)
}

interface Told {
  readonly ms: number
  readonly value: unknown
  readonly code: string | null
  /** Times at which progress was told, ms from the beginning. */
  readonly progress: readonly number[]
  /** How long until the answer to a cancel; null where none was asked. */
  readonly cancelled: number | null
}

/** One long call; `cancelAt`: once so much of its work is done. */
async function long(host: Host, name: string, input: object, cancelAt: number | null = null): Promise<Told> {
  const begun = performance.now()
  const job = `bench ${begun}`
  const progress: number[] = []
  let asked: number | null = null
  const stop = host.subscribe(event => {
    if (event.kind !== 'progress' || event.job !== job) return
    progress.push(performance.now() - begun)
    if (cancelAt !== null && asked === null && event.total !== null && event.done > event.total * cancelAt) {
      asked = performance.now()
      host.cancel(job)
    }
  })
  const answered = await answer(host, name, input, job)
  stop()
  const now = performance.now()
  const told = { ms: now - begun, progress, cancelled: asked === null ? null : now - asked }
  return answered.ok
    ? { ...told, value: answered.value, code: null }
    : { ...told, value: answered.refusal.message, code: answered.refusal.code }
}

/** The longest that a person waits without a sign. */
const silent = ({ progress, ms }: Told) =>
  Math.max(...[...progress, ms].map((time, at) => time - (progress[at - 1] ?? 0))).toFixed(0)

async function plainly(path: string): Promise<number> {
  const begun = performance.now()
  let cells = 0
  for await (const line of createInterface({ input: createReadStream(path) })) cells += line.split(';').length
  if (cells < rows) throw new Error('rows are missing')
  return performance.now() - begun
}

await withDemo(async host => {
  const { handle, path } = host.handles.create('logger.csv')
  writeLog(path)
  console.log(`  load ${loadavg()[0]?.toFixed(1)}, ${(statSync(path).size / 1e6).toFixed(0)} MB, ${rows} readings`)
  const held = async () => {
    const { rooms } = await callOn(host, 'climate.rooms', {})
    return rooms.reduce((sum, each) => sum + each.count, 0)
  }
  const before = await held()
  const empty = (await callOn(host, 'climate.rooms', {})).rooms.find(each => each.count === 0)
  if (empty === undefined) throw new Error('every room has readings')
  const what = { room: empty.id, logger: 'Logger 1', by: 'Tamsin Oake' }
  const tell = (name: string, told: Told) =>
    console.log(
      `  ${name.padEnd(26)} ${seconds(told.ms)}; ${told.progress.length} signs of progress, at most ${silent(told)} ms without one${told.code === null ? '' : `; ${told.code}`}${told.cancelled === null ? '' : `, ${told.cancelled.toFixed(0)} ms after it was asked`}`,
    )
  tell('read as a preview', await long(host, 'climate.readFile', { handle }))
  console.log(`    peak memory of the process ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`)
  tell('cancelled half-way', await long(host, 'climate.takeFile', { handle, ...what }, 0.5))
  console.log(`    readings held after it: ${(await held()) - before} more`)
  const taken = await long(host, 'climate.takeFile', { handle, ...what })
  tell('brought in', taken)
  console.log(`    readings held after it: ${(await held()) - before} more; ${JSON.stringify(taken.value)}`)
  console.log(`    peak memory of the process ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`)
  const at = { room: empty.id, from: '2028-01-01T00:00:00Z', until: '2028-12-31T23:59:59Z' }
  for (const name of ['climate.room', 'climate.readings'] as const) {
    for (const time of ['first', 'again']) {
      const begun = performance.now()
      const answered = await callOn(host, name, at)
      const size = (JSON.stringify(answered).length / 1e6).toFixed(2)
      console.log(`  ${name}, a year at a minute, ${time}: ${(performance.now() - begun).toFixed(0)} ms, ${size} MB`)
    }
  }
  console.log(`  Node alone, lines split       ${seconds(await plainly(path))}`)
})
