/** The air of a room over a period, as a workbook and drawn on paper. It records nothing. */
import { limitKeys } from '../../../src/climate/limits.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { daySaid } from '../../../src/light/day.ts'
import { climateChart } from '../../../src/sheets/climate-chart.ts'
import type { ClimateQuestion } from '../../../src/sheets/climate-question.ts'
import { climateTables } from '../../../src/sheets/climate-tables.ts'
import { tablePages } from '../../../src/sheets/table-pages.ts'
import { airOf } from '../climate/room.ts'
import { dateAt } from '../days.ts'
import type { Job } from '../service.ts'
import { row } from '../sql.ts'
import { madeLine } from './tables.ts'
import { sheetTime, styleOf } from './wishes.ts'
import { type Ready, tables } from './written.ts'

const iso = (moment: number) => new Date(moment * 1000).toISOString()

/** Midnights by the clock of this machine from the last before `from` to the first after `until`, in seconds. */
function midnights(from: number, until: number): ClimateQuestion['days'] {
  const days: ClimateQuestion['days'][number][] = []
  const date = new Date(from * 1000)
  date.setHours(0, 0, 0, 0)
  for (let done = false; !done; date.setDate(date.getDate() + 1)) {
    const at = date.getTime() / 1000
    const words = daySaid(dateAt(iso(at)))
    const [day, month = '', year] = words.split(' ')
    days.push({ at, words: `${day} ${month.slice(0, 3)} ${year}`, monthBegins: date.getDate() === 1 })
    done = at > until
  }
  return days
}

const hour = 3600

/** Hours begin on the clock's own, in zones of half an hour too; none is cut where clocks change. */
function hoursOf(days: ClimateQuestion['days']): number[] {
  const [first, last] = [days[0]?.at ?? 0, days.at(-1)?.at ?? 0]
  return Array.from({ length: Math.floor((last - first) / hour) + 1 }, (_, n) => first + n * hour)
}

/** The air of a room, ready for paper. */
export async function climateReady(
  job: Job,
  { room, from, until, ...wishes }: Received<'sheet.climate'>,
): Promise<Ready> {
  job.progress(0, 3, 'Reading the air of the room')
  const { named, air } = await job.held(async () => {
    const air = airOf(job.db, { room, from, until })
    const named = row<{ name: string; number: string }>(job.db, 'SELECT name, number FROM room WHERE id = :room', {
      room,
    })
    return { named, air }
  })
  const called = [named?.number ?? '', named?.name ?? ''].filter(each => each !== '').join(' ')
  const moments = air.loggers.flatMap(({ series: { at } }) => [at[0] ?? 0, at.at(-1) ?? 0])
  if (moments.length === 0) {
    const sentence = `Nothing was read in ${called} in this time. Bring a logger’s file in, or take another period.`
    throw new Refusal('nothing-read', sentence, { field: from === undefined && until === undefined ? 'room' : 'from' })
  }
  const [first, last] = [
    from === undefined ? Math.min(...moments) : Date.parse(from) / 1000,
    until === undefined ? Math.max(...moments) : Date.parse(until) / 1000,
  ]
  const days = midnights(first, last)
  const dayOf = (moment: number) => daySaid(dateAt(iso(moment)))
  const style = styleOf(job, wishes)
  const question: ClimateQuestion = {
    room: called,
    period: `from ${dayOf(first)} to ${dayOf(last)}`,
    from: first,
    until: Math.max(last, first + hour),
    days,
    hours: hoursOf(days),
    limits: air.inForce,
    own: limitKeys.filter(key => air.own[key] !== null),
    why: air.own.why,
    loggers: air.loggers,
    files: air.files,
    imperial: style.unit !== 'mm' && style.unit !== 'cm',
    paper: style.paper,
    made: madeLine(job, 'climate of a room'),
    when: sheetTime,
  }
  const running = `${called}, ${question.period}`
  const paged: Ready['paged'] = faces => {
    const { pages } = tablePages(climateTables(question, true), style.paper, faces, {
      flowing: true,
      running,
      before: 1,
    })
    const all = pages.length + 1
    return { pages: [climateChart(question, faces, all), ...pages] }
  }
  return { kind: 'climate', title: called, sheets: climateTables(question, false), style, paged }
}

export async function climateSheet(job: Job, input: Received<'sheet.climate'>): Promise<Output<'sheet.climate'>> {
  return tables(job, await climateReady(job, input))
}
