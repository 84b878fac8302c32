/** Which column of a logger's table is what: from its headings, unless a person said it. */
import { readDate, readTime } from './date-text.ts'

export const columnRoles = ['moment', 'date', 'time', 'temperature', 'humidity', 'nothing'] as const
export type ColumnRole = (typeof columnRoles)[number]
export const temperatureUnits = ['°C', '°F'] as const
export type TemperatureUnit = (typeof temperatureUnits)[number]

export interface LogColumn {
  readonly heading: string
  readonly role: ColumnRole
  readonly sample: string
}

export interface LogShape {
  /** The row of the headings, from 1; 0 where there are none. */
  readonly headingRow: number
  /** The first row of readings. */
  readonly firstRow: number
  readonly columns: readonly LogColumn[]
  /** As the heading says; null where it says none. */
  readonly unit: TemperatureUnit | null
  /** More columns of one kind than one, named; a person chooses. */
  readonly twice: readonly ('temperature' | 'humidity')[]
  /** Rows have more cells than headings: decimal commas between columns that are parted by commas. */
  readonly torn: boolean
}

const number = /^[-+]?\d+(?:[.,]\d+)?$/

/** A figure with a decimal point or comma; null where it is none. */
export function readFigure(text: string): number | null {
  const plain = text.replace(/\s*(?:%|°\s*[CF]|% ?RH)$/i, '').replace('\u2212', '-')
  return number.test(plain) ? Number(plain.replace(',', '.')) : null
}

const plain = (heading: string) => heading.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

function roleOf(heading: string, sample: string): ColumnRole {
  const words = plain(heading)
  const date = readDate(sample)
  if (date !== null) return readTime(date.rest) === null ? 'date' : 'moment'
  if (readTime(sample) !== null) return 'time'
  if (readFigure(sample) === null) return 'nothing'
  if (/\b(?:dew|frost|tau|taupunkt|rosee|wet bulb)/.test(words)) return 'nothing'
  if (/hum|feucht|\brh\b|%|\brf\b|\bhr\b/.test(words)) return 'humidity'
  return /temp|°|celsius|fahrenheit|\bdeg/.test(words) ? 'temperature' : 'nothing'
}

function unitOf(heading: string): TemperatureUnit | null {
  const words = plain(heading)
  if (/°\s*f|fahrenheit|deg\.?\s*f\b|[([_ ]f[)\]]?$/.test(words)) return '°F'
  return /°\s*c|celsius|deg\.?\s*c\b|[([_ ]c[)\]]?$/.test(words) ? '°C' : null
}

type Row = { readonly row: number; readonly cells: readonly string[] }

function isReading({ cells }: Row): boolean {
  const dated = cells.some(cell => readDate(cell.trim()) !== null)
  return dated && cells.filter(cell => readFigure(cell.trim()) !== null).length > 0
}

/** Null where no row of the first ones has a date and a figure. */
export function shapeOf(top: readonly Row[], said: ReadonlyMap<number, ColumnRole> = new Map()): LogShape | null {
  const at = top.findIndex(isReading)
  const first = top[at]
  if (first === undefined) return null
  const above = top.slice(0, at).findLast(row => row.cells.filter(cell => cell.trim() !== '').length > 1)
  const headings = above?.cells ?? []
  const following = top.slice(at).filter(isReading)
  const wide = Math.max(headings.length, first.cells.length)
  const columns: LogColumn[] = []
  for (let i = 0; i < wide; i++) {
    const sample = following.map(row => row.cells[i]?.trim() ?? '').find(cell => cell !== '') ?? ''
    const heading = headings[i]?.trim() ?? ''
    columns.push({ heading, sample, role: said.get(i) ?? (said.size > 0 ? 'nothing' : roleOf(heading, sample)) })
  }
  const count = (role: ColumnRole) => columns.filter(column => column.role === role).length
  const temperature = columns.find(column => column.role === 'temperature')
  const wider = following.filter(row => row.cells.length > headings.length).length
  return {
    headingRow: above?.row ?? 0,
    firstRow: first.row,
    columns,
    unit: temperature === undefined ? null : unitOf(temperature.heading),
    twice: (['temperature', 'humidity'] as const).filter(role => count(role) > 1),
    torn: headings.length > 0 && wider > following.length / 2,
  }
}
