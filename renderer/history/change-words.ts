/** A change of a record in a person's words and units. */
import type { Output } from '../../src/contract/contract.ts'
import { desk } from '../host/desk.svelte.ts'

export type Change = Output<'edit.history'>['changes'][number]
type Field = Change['fields'][number]

/** Longer texts are cut: the record itself has them whole. */
const most = 160

const moment = /^\d{4}-\d\d-\d\dT\d\d:\d\d/
const time = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' })

function valueSaid({ unit }: Field, value: Field['from'], name: string | null): string {
  if (value === null || value === '') return 'nothing'
  if (name !== null) return name === '' ? 'one without a name' : name
  if (typeof value === 'number' && unit === 'mm') return desk.lengthWithUnit(value)
  if (typeof value === 'number' && unit === 'kg') return desk.mass(value)
  if (typeof value === 'string' && moment.test(value)) return time.format(new Date(value))
  const text = typeof value === 'string' ? value : JSON.stringify(value)
  const cut = text.length > most ? `${text.slice(0, most)} …` : text
  return unit === '' ? cut : `${cut} ${unit}`
}

export interface FieldSaid {
  readonly word: string
  readonly from: string
  readonly to: string
}

/** Its fields, without those that read the same before and after. */
export function fieldsSaid(change: Change): readonly FieldSaid[] {
  return change.fields
    .map(field => ({
      word: field.called,
      from: valueSaid(field, field.from, field.names[0]),
      to: valueSaid(field, field.to, field.names[1]),
    }))
    .filter(({ from, to }) => from !== to)
}

/** "size of a work, added". The record's own changes need no such words. */
export function rowSaid(change: Change): string {
  return change.kind === 'changed' ? change.one : `${change.one}, ${change.kind}`
}
