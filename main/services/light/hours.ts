/** Hours a day on which a show is lit. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { dateOf, dayOf, daySaid } from '../../../src/light/day.ts'
import { type HoursLit, type LitFor, overfull } from '../../../src/light/hours.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, value } from '../sql.ts'

type Stored = Output<'light.hours'>['hours'][number]

/** All that a show is lit over, in years: a date of another century is a slip of the finger. */
const longest = 20

function storedOf(db: ReadHandle, exhibition: string): Stored[] {
  return rows<Stored>(
    db,
    `SELECT id, kind, first, last, weekdays, hours, lux, note FROM hours_lit WHERE exhibition = :exhibition
     ORDER BY first, last, kind, id`,
    { exhibition },
  )
}

const asLit = (each: Pick<Stored, 'kind' | 'weekdays' | 'hours' | 'lux' | 'first' | 'last'>): HoursLit => ({
  kind: each.kind,
  weekdays: each.weekdays,
  hours: each.hours,
  lux: each.lux,
  first: dayOf(each.first),
  last: dayOf(each.last),
})

/** Hours lit of a show; none where nobody has said any. */
export function hoursOf(db: ReadHandle, exhibition: string): HoursLit[] {
  return storedOf(db, exhibition).map(asLit)
}

export function list({ db }: Reading, { exhibition }: Received<'light.hours'>): Output<'light.hours'> {
  if (value(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined) {
    throw notFound('exhibition', 'exhibition')
  }
  return { hours: storedOf(db, exhibition) }
}

const named: Readonly<Record<LitFor, string>> = {
  open: 'opening hours',
  cleaning: 'hours of cleaning',
  installing: 'hours of installing',
  event: 'an event',
  closed: 'closed days',
}

type Entry = Omit<Stored, 'id' | 'note'>

/** Refuses an entry that says nothing, or more than a day or a show has; `others` are those of its show beside it. */
function refuseWrong(entry: Entry, others: readonly HoursLit[], prefix: string): void {
  const { kind, first, last } = entry
  if (last < first) {
    throw new Refusal('reversed', `The last day, ${last}, is before the first, ${first}. Put them in order.`, {
      field: `${prefix}last`,
    })
  }
  if (kind !== 'closed' && entry.hours === 0) {
    throw new Refusal('no-hours', 'Say how many hours a day it is lit.', { field: `${prefix}hours` })
  }
  const all = [...others, asLit(entry)]
  const [from, to] = [Math.min(...all.map(each => each.first)), Math.max(...all.map(each => each.last))]
  if (to - from > longest * 366) {
    const sentence = `The show would be lit from ${daySaid(dateOf(from))} to ${daySaid(dateOf(to))}, more than ${longest} years. Look at the years of the dates.`
    throw new Refusal('too-long', sentence, { field: `${prefix}last` })
  }
  const full = overfull(all)
  if (full !== null) {
    const sentence = `On ${daySaid(dateOf(full.day))} it would be lit ${full.hours} hours of 24. Shorten one of the entries that meet on that day.`
    throw new Refusal('too-many-hours', sentence, { field: `${prefix}hours` })
  }
}

export function add(writing: Writing, input: Received<'light.addHours'>): Output<'light.addHours'> {
  const { db } = writing
  const title = openExhibition(db, input.exhibition)
  const { kind, first, last } = input
  const stored = {
    kind,
    first,
    last,
    weekdays: input.weekdays ?? 127,
    hours: kind === 'closed' ? 0 : (input.hours ?? 0),
    lux: input.lux ?? null,
  }
  refuseWrong(stored, hoursOf(db, input.exhibition), '')
  const id = writing.newId()
  writing.label(`Add ${named[kind]} of ${title}`)
  insert(db, 'hours_lit', { id, exhibition: input.exhibition, ...stored, note: input.note ?? '' })
  return { id }
}

const columns = {
  ...{ kind: 'kind', first: 'first', last: 'last', weekdays: 'weekdays' },
  ...{ hours: 'hours', lux: 'lux', note: 'note' },
}

export function change(writing: Writing, { id, changes }: Received<'light.updateHours'>): Output<'light.updateHours'> {
  const { db } = writing
  const exhibition = value<string>(db, 'SELECT exhibition FROM hours_lit WHERE id = :id', { id })
  const all = exhibition === undefined ? [] : storedOf(db, exhibition)
  const now = all.find(each => each.id === id)
  if (exhibition === undefined || now === undefined) throw notFound('entry of hours lit')
  const title = openExhibition(db, exhibition, 'id')
  writing.label(`Change ${named[now.kind]} of ${title}`)
  // As it will be, looked at before it is written: the table takes no reversed days, not even on the way.
  const going = Object.entries(changes).filter(([field, each]) => now[field as keyof Stored] === each?.was) // its own fields
  const after: Stored = { ...now, ...Object.fromEntries(going.map(([field, each]) => [field, each?.to])) }
  const others = all.filter(each => each.id !== id).map(asLit)
  refuseWrong(after, others, 'changes.')
  const { saved, clashes } = changeFields(writing, 'hours_lit', id, changes, columns, 'entry of hours lit')
  return { saved, clashes }
}

export function remove(writing: Writing, { id }: Received<'light.removeHours'>): Output<'light.removeHours'> {
  const found = row<{ exhibition: string; kind: LitFor }>(
    writing.db,
    'SELECT exhibition, kind FROM hours_lit WHERE id = :id',
    { id },
  )
  if (found === undefined) throw notFound('entry of hours lit')
  const title = openExhibition(writing.db, found.exhibition, 'id')
  writing.label(`Take ${named[found.kind]} of ${title} away`)
  removeRow(writing.db, 'hours_lit', id)
  return { done: true }
}
