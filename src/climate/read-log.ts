/**
 * A logger's table read row by row into a series. Whatever can be read in two ways is asked, never chosen in silence;
 * a row that cannot be read is named and left out.
 */
import { celsius as toCelsius } from '../measure/temperature.ts'
import { momentsOf, offsetsOf } from './clock.ts'
import { type LogShape, readFigure, type TemperatureUnit } from './columns.ts'
import { type DateOrder, type DateRead, midnightOf, orderOf, readDate, readTime } from './date-text.ts'
import type { Series } from './series.ts'

/** What air in a room can be: beyond it a sensor or a column is wrong. */
export const bounds = { celsius: [-40, 80], humidity: [0, 100] } as const
const badNamed = 20
/** How loggers write that they read nothing. */
const nothing = /^(?:|-+|n\/?a|nan|null)$/i

export interface LogChoices {
  /** Null where nobody said: then the dates must tell. */
  readonly order: DateOrder | null
  readonly unit: TemperatureUnit | null
  /** An offset or a name of the IANA database; null where nobody said. */
  readonly zone: string | null
}

export interface BadRow {
  readonly row: number
  readonly words: string
}

export type LogAsk = 'order' | 'unit' | 'zone' | 'hour that never was'

export interface LogRead {
  readonly series: Series
  readonly order: DateOrder | null
  readonly unit: TemperatureUnit | null
  readonly bad: readonly BadRow[]
  readonly badCount: number
  /** Rows with a time and no value. */
  readonly empty: number
  /** Rows that say again what another said; and rows with another value for a moment that has one: the first stays. */
  readonly repeats: number
  readonly contradictions: number
  /** Readings of the hour that clocks show twice, told apart by their order; and those whose order does not tell. */
  readonly twice: number
  readonly unsure: number
  /** Rows with a time that clocks of the zone skip. */
  readonly never: number
  readonly asks: readonly LogAsk[]
}

interface Taken {
  readonly row: number
  readonly date: DateRead
  readonly seconds: number
  readonly offset: number | null
  readonly temperature: number | null
  readonly humidity: number | null
}

export class LogReader {
  private readonly taken: Taken[] = []
  private readonly bad: BadRow[] = []
  private badCount = 0
  private empty = 0
  private readonly at: Readonly<Record<'moment' | 'date' | 'time' | 'temperature' | 'humidity', number>>
  private readonly shape: LogShape

  constructor(shape: LogShape) {
    this.shape = shape
    const find = (role: string) => shape.columns.findIndex(column => column.role === role)
    this.at = {
      ...{ moment: find('moment'), date: find('date'), time: find('time') },
      ...{ temperature: find('temperature'), humidity: find('humidity') },
    }
  }

  private refuse(row: number, words: string): void {
    this.badCount++
    if (this.bad.length < badNamed) this.bad.push({ row, words })
  }

  /** A row of the table, with its number in the file. */
  take(row: number, cells: readonly string[]): void {
    if (row < this.shape.firstRow || cells.every(cell => cell.trim() === '')) return
    const understood = this.understood(row, cells)
    if (typeof understood === 'string') this.refuse(row, understood)
    else if (understood.temperature === null && understood.humidity === null) this.empty++
    else this.taken.push(understood)
  }

  /** What a row says, or why it says nothing. */
  private understood(row: number, cells: readonly string[]): Taken | string {
    const cell = (at: number) => (at < 0 ? '' : (cells[at] ?? '').trim())
    const whole = this.at.moment >= 0
    const written = cell(whole ? this.at.moment : this.at.date)
    const read = readDate(written)
    if (read === null) return written === '' ? 'it has no date' : `“${short(written)}” is no date`
    const clock = whole ? read.rest : cell(this.at.time)
    const time = readTime(clock)
    if (time === null) return clock === '' ? 'it has no time' : `“${short(clock)}” is no time`
    const [temperature, humidity] = [cell(this.at.temperature), cell(this.at.humidity)]
    const figures = { temperature: readFigure(temperature), humidity: readFigure(humidity) }
    if (figures.temperature === null && !nothing.test(temperature)) return `“${short(temperature)}” is no temperature`
    if (figures.humidity === null && !nothing.test(humidity)) return `“${short(humidity)}” is no humidity`
    const [least, most] = bounds.humidity
    if (figures.humidity !== null && (figures.humidity < least || figures.humidity > most)) {
      return `a relative humidity of ${figures.humidity} % cannot be`
    }
    return { row, date: read.date, ...time, ...figures }
  }

  /** All rows are there. */
  read(choices: LogChoices): LogRead {
    const found = orderOf(this.dates())
    const written = this.taken.every(each => each.date.yearFirst)
    const order = choices.order ?? found ?? (written ? 'month first' : null)
    const hasTemperature = this.taken.some(each => each.temperature !== null)
    const unit = choices.unit ?? this.shape.unit ?? (hasTemperature ? null : '°C')
    const told = this.taken.every(each => each.offset !== null)
    const zone = choices.zone ?? (told ? '+00:00' : null)
    const asks: LogAsk[] = []
    if (order === null) asks.push('order')
    if (unit === null) asks.push('unit')
    if (zone === null) asks.push('zone')
    const { bad, empty } = this
    const none = { repeats: 0, contradictions: 0, twice: 0, unsure: 0, never: 0 }
    if (order === null || unit === null || zone === null) {
      const series = { at: [], celsius: [], humidity: [] }
      return { series, order, unit, bad, badCount: this.badCount, empty, ...none, asks }
    }
    const read = this.placed(order, unit, zone)
    if (read.never > 0) asks.push('hour that never was')
    return { ...read, order, unit: hasTemperature ? unit : null, bad, badCount: this.badCount, empty, asks }
  }

  private *dates(): Generator<DateRead> {
    for (const { date } of this.taken) yield date
  }

  private placed(order: DateOrder, unit: TemperatureUnit, zone: string) {
    const offsetAt = offsetsOf(zone)
    const dated: { taken: Taken; local: number; celsius: number | null }[] = []
    for (const taken of this.taken) {
      const midnight = midnightOf(taken.date, order)
      if (midnight === null) {
        this.refuse(taken.row, 'there is no such day in the calendar')
        continue
      }
      const { temperature } = taken
      const celsius = temperature === null || unit === '°C' ? temperature : toCelsius(temperature)
      const [least, most] = bounds.celsius
      if (celsius !== null && (celsius < least || celsius > most)) {
        this.refuse(taken.row, `a temperature of ${temperature} ${unit} cannot be in a room`)
        continue
      }
      dated.push({ taken, local: midnight + taken.seconds, celsius })
    }
    // Some write the newest first.
    if ((dated[0]?.local ?? 0) > (dated.at(-1)?.local ?? 0)) dated.reverse()
    const points: { at: number; celsius: number | null; humidity: number | null }[] = []
    let [never, twice, unsure, last, second, open] = [0, 0, 0, Number.NEGATIVE_INFINITY, false, 0]
    const closeHour = () => {
      if (!second) unsure += open
      twice += open
      open = 0
      second = false
    }
    for (const { taken, local, celsius } of dated) {
      const { offset, humidity } = taken
      const moments = offset === null ? momentsOf(local, offsetAt) : [local - offset]
      if (moments.length === 0) never++
      if (moments.length < 2) closeHour()
      else {
        second ||= open > 0 && local <= last
        open++
      }
      last = local
      const at = moments[second ? moments.length - 1 : 0]
      if (at !== undefined) points.push({ at, celsius, humidity })
    }
    closeHour()
    points.sort((a, b) => a.at - b.at)
    let [repeats, contradictions] = [0, 0]
    const kept = points.filter((point, i) => {
      const before = points[i - 1]
      if (before === undefined || before.at !== point.at) return true
      if (before.celsius === point.celsius && before.humidity === point.humidity) repeats++
      else contradictions++
      return false
    })
    const series: Series = {
      at: kept.map(each => each.at),
      celsius: kept.map(each => each.celsius),
      humidity: kept.map(each => each.humidity),
    }
    return { series, repeats, contradictions, twice, unsure, never }
  }
}

const short = (text: string) => (text.length > 40 ? `${text.slice(0, 39)}…` : text)
