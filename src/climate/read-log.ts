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

interface Understood {
  readonly date: DateRead
  readonly seconds: number
  readonly offset: number | null
  readonly temperature: number | null
  readonly humidity: number | null
}

/** Rows understood, a column each, NaN where nothing was said: two million objects are more memory than a worker has, and most of its time. */
class Rows {
  readonly row: number[] = []
  private readonly date: number[] = []
  readonly seconds: number[] = []
  readonly offset: number[] = []
  readonly temperature: number[] = []
  readonly humidity: number[] = []

  add(row: number, { date, seconds, offset, temperature, humidity }: Understood): void {
    const { year, first, second, yearFirst } = date
    this.row.push(row)
    this.date.push(((year * 100 + first) * 100 + second) * 2 + Number(yearFirst))
    this.seconds.push(seconds)
    this.offset.push(offset ?? Number.NaN)
    this.temperature.push(temperature ?? Number.NaN)
    this.humidity.push(humidity ?? Number.NaN)
  }

  get count(): number {
    return this.row.length
  }

  /** One number a date, the same for the same. */
  dateKey(at: number): number {
    return this.date[at] ?? 0
  }

  dateAt(at: number): DateRead {
    const key = this.dateKey(at)
    const digits = Math.floor(key / 2)
    return {
      year: Math.floor(digits / 10_000),
      first: Math.floor(digits / 100) % 100,
      second: digits % 100,
      yearFirst: key % 2 === 1,
    }
  }

  /** Each date once. */
  *dates(): Generator<DateRead> {
    let last = -1
    for (let at = 0; at < this.count; at++) {
      const key = this.dateKey(at)
      if (key !== last) yield this.dateAt(at)
      last = key
    }
  }
}

export class LogReader {
  private readonly taken = new Rows()
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
    const understood = this.understood(cells)
    if (typeof understood === 'string') this.refuse(row, understood)
    else if (understood.temperature === null && understood.humidity === null) this.empty++
    else this.taken.add(row, understood)
  }

  /** What a row says, or why it says nothing. */
  private understood(cells: readonly string[]): Understood | string {
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
    return { date: read.date, ...time, ...figures }
  }

  /** All rows are there. */
  read(choices: LogChoices): LogRead {
    const { taken } = this
    const found = orderOf(taken.dates())
    const written = [...taken.dates()].every(each => each.yearFirst)
    const order = choices.order ?? found ?? (written ? 'month first' : null)
    const hasTemperature = taken.temperature.some(each => !Number.isNaN(each))
    const unit = choices.unit ?? this.shape.unit ?? (hasTemperature ? null : '°C')
    const told = taken.offset.every(each => !Number.isNaN(each))
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

  private placed(order: DateOrder, unit: TemperatureUnit, zone: string) {
    const offsetAt = offsetsOf(zone)
    const { taken } = this
    /** Places in `taken` of rows that can be, and their local time and °C. */
    const dated: { readonly at: number[]; readonly local: number[]; readonly celsius: number[] } = {
      at: [],
      local: [],
      celsius: [],
    }
    let [lastDate, midnight]: [number, number | null] = [-1, null]
    for (let at = 0; at < taken.count; at++) {
      const [row, key] = [taken.row[at] ?? 0, taken.dateKey(at)]
      if (key !== lastDate) midnight = midnightOf(taken.dateAt(at), order)
      lastDate = key
      if (midnight === null) {
        this.refuse(row, 'there is no such day in the calendar')
        continue
      }
      const temperature = taken.temperature[at] ?? Number.NaN
      const celsius = unit === '°C' ? temperature : toCelsius(temperature)
      const [least, most] = bounds.celsius
      if (celsius < least || celsius > most) {
        this.refuse(row, `a temperature of ${temperature} ${unit} cannot be in a room`)
        continue
      }
      dated.at.push(at)
      dated.local.push(midnight + (taken.seconds[at] ?? 0))
      dated.celsius.push(celsius)
    }
    // Some write the newest first.
    if ((dated.local[0] ?? 0) > (dated.local.at(-1) ?? 0)) {
      for (const column of [dated.at, dated.local, dated.celsius]) column.reverse()
    }
    const points: Points = { at: [], celsius: [], humidity: [] }
    let [never, twice, unsure, last, second, open] = [0, 0, 0, Number.NEGATIVE_INFINITY, false, 0]
    const closeHour = () => {
      if (!second) unsure += open
      twice += open
      open = 0
      second = false
    }
    for (const [n, local] of dated.local.entries()) {
      const place = dated.at[n] ?? 0
      const offset = taken.offset[place] ?? Number.NaN
      const moments = Number.isNaN(offset) ? momentsOf(local, offsetAt) : [local - offset]
      if (moments.length === 0) never++
      if (moments.length < 2) closeHour()
      else {
        second ||= open > 0 && local <= last
        open++
      }
      last = local
      const at = moments[second ? moments.length - 1 : 0]
      if (at === undefined) continue
      points.at.push(at)
      points.celsius.push(dated.celsius[n] ?? Number.NaN)
      points.humidity.push(taken.humidity[place] ?? Number.NaN)
    }
    closeHour()
    return { ...onceEach(inOrder(points)), twice, unsure, never }
  }
}

/** NaN where nothing was read. */
type Points = Readonly<Record<'at' | 'celsius' | 'humidity', number[]>>

/** By time; those of one moment stay as they stood. */
function inOrder(points: Points): Points {
  if (points.at.every((moment, n) => moment >= (points.at[n - 1] ?? moment))) return points
  const order = Uint32Array.from(points.at.keys()).sort((a, b) => (points.at[a] ?? 0) - (points.at[b] ?? 0) || a - b)
  const pick = (values: readonly number[]) => Array.from(order, n => values[n] ?? Number.NaN)
  return { at: pick(points.at), celsius: pick(points.celsius), humidity: pick(points.humidity) }
}

/** Each moment once, the first that was said of it, and how many were said again or otherwise. */
function onceEach({ at, celsius, humidity }: Points) {
  const series: { at: number[]; celsius: (number | null)[]; humidity: (number | null)[] } = {
    at: [],
    celsius: [],
    humidity: [],
  }
  const same = (a = Number.NaN, b = Number.NaN) => a === b || (Number.isNaN(a) && Number.isNaN(b))
  const said = (value = Number.NaN) => (Number.isNaN(value) ? null : value)
  let [repeats, contradictions] = [0, 0]
  for (const [n, moment] of at.entries()) {
    if (n > 0 && at[n - 1] === moment) {
      if (same(celsius[n - 1], celsius[n]) && same(humidity[n - 1], humidity[n])) repeats++
      else contradictions++
      continue
    }
    series.at.push(moment)
    series.celsius.push(said(celsius[n]))
    series.humidity.push(said(humidity[n]))
  }
  return { series, repeats, contradictions }
}

const short = (text: string) => (text.length > 40 ? `${text.slice(0, 39)}…` : text)
