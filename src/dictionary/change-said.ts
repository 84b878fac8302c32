/** A change of a record in a person's words and units, for the screen and for paper. */
import type { RecordChange } from '../contract/areas/history.ts'

type Field = RecordChange['fields'][number]

/** How a person wants figures and times. */
export interface ChangeStyle {
  /** Of millimetres, with its unit. */
  readonly length: (mm: number) => string
  /** Of kilograms, with its unit. */
  readonly mass: (kg: number) => string
  /** Of an ISO 8601 moment. */
  readonly moment: (at: string) => string
}

export interface FieldSaid {
  readonly word: string
  readonly from: string
  readonly to: string
}

/** Longer texts are cut: the record itself has them whole. */
const most = 160

const moment = /^\d{4}-\d\d-\d\dT\d\d:\d\d/

function valueSaid({ unit }: Field, value: Field['from'], name: string | null, style: ChangeStyle): string {
  if (value === null || value === '') return 'nothing'
  if (name !== null) return name === '' ? 'one without a name' : name
  if (typeof value === 'number' && unit === 'mm') return style.length(value)
  if (typeof value === 'number' && unit === 'kg') return style.mass(value)
  if (typeof value === 'string' && moment.test(value)) return style.moment(value)
  const text = treeOf(value)?.join('; ') ?? String(value)
  const cut = text.length > most ? `${text.slice(0, most)} …` : text
  return unit === '' ? cut : `${cut} ${unit}`
}

/** Figures within figures, as a back or an outline is kept; null for a plain text or figure. */
function treeOf(value: Field['from']): readonly string[] | null {
  if (typeof value === 'object') return measuresSaid(value)
  if (typeof value !== 'string' || !/^[[{]/.test(value)) return null
  try {
    return measuresSaid(JSON.parse(value))
  } catch {
    return null
  }
}

/** Measures within measures by their names: `left drop 83`; of a list by number from 1. */
export function measuresSaid(data: unknown, names = ''): readonly string[] {
  if (data === null || data === undefined || data === '') return []
  if (typeof data !== 'object') return [`${names.trim()} ${data}`.trim()]
  return Object.entries(data).flatMap(([name, value]) =>
    measuresSaid(value, `${names} ${Array.isArray(data) ? Number(name) + 1 : name}`),
  )
}

/** Its fields, without those that read the same before and after. */
export function fieldsSaid(change: RecordChange, style: ChangeStyle): readonly FieldSaid[] {
  return change.fields
    .map(field => ({
      word: field.called,
      from: valueSaid(field, field.from, field.names[0], style),
      to: valueSaid(field, field.to, field.names[1], style),
    }))
    .filter(({ from, to }) => from !== to)
}

/** "size of a work, added". The record's own changes need no such words. */
export function rowSaid({ kind, one }: Pick<RecordChange, 'kind' | 'one'>): string {
  return kind === 'changed' ? one : `${one}, ${kind}`
}
