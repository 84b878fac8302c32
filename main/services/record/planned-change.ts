/** Planned movements written: by hand, from the plan of a show, changed, put on another day, taken off. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { daySaid } from '../../../src/light/day.ts'
import { insideItself } from '../../../src/record/nested.ts'
import { changeFields, notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, update } from '../sql.ts'
import { nameOf } from './carry.ts'
import { type NamedPlace, placeNamed } from './places.ts'
import { thingsAsked, toPlan } from './planned.ts'
import { type Planned, placeSaid, plannedMoves } from './planned-rows.ts'

/** Where a thing can be put down. Refuses a lift, and a place that is not there. */
function placeFor({ db }: Writing, place: string, field: string): NamedPlace {
  const to = placeNamed(db, place, field)
  if (to.kind !== 'lift') return to
  throw new Refusal('bad-input', `${to.words} is a lift: say where it goes, the lift is on the way.`, { field })
}

function refuseInside(
  { thing, name }: { readonly thing: string; readonly name: string },
  to: NamedPlace,
  field: string,
) {
  if (!insideItself(thing, to.place, new Map())) return
  throw new Refusal('inside-itself', `${name} cannot be put into itself. Plan another place.`, { field })
}

function refusePast({ now }: Writing, day: string, field: string): void {
  const today = dateAt(now())
  if (day >= today) return
  const sentence = `${daySaid(day)} is over: today is ${daySaid(today)}. Plan a day to come, or record what was moved.`
  throw new Refusal('in-the-past', sentence, { field })
}

type How = Pick<Received<'planned.add'>, 'day' | 'hour' | 'method' | 'people' | 'hands' | 'reason' | 'note'>

function write(
  writing: Writing,
  { kind, thing }: Pick<Planned, 'kind' | 'thing'>,
  to: NamedPlace,
  spot: string,
  how: How,
) {
  const id = writing.newId()
  insert(writing.db, 'planned_move', {
    id,
    work: kind === 'work' ? thing : null,
    crate: kind === 'crate' ? thing : null,
    place: to.place,
    place_words: to.words,
    spot,
    day: how.day,
    hour: how.hour ?? '',
    method: how.method ?? '',
    people: how.people ?? '',
    hands: how.hands ?? null,
    reason: how.reason ?? '',
    note: how.note ?? '',
  })
  return id
}

const several = (count: number) => (count === 1 ? '1 movement' : `${count} movements`)

export function add(writing: Writing, input: Received<'planned.add'>): Output<'planned.add'> {
  const to = placeFor(writing, input.to, 'to')
  refusePast(writing, input.day, 'day')
  const things = thingsAsked(writing.db, input)
  for (const thing of things) refuseInside(thing, to, 'to')
  const [first] = things
  const what = things.length === 1 ? (first?.name ?? '') : `${things.length} things`
  writing.label(`Plan to move ${what} to ${to.words} on ${daySaid(input.day)}`)
  return { plans: things.map(thing => ({ id: write(writing, thing, to, input.spot ?? '', input) })) }
}

export function fromShow(writing: Writing, input: Received<'planned.fromShow'>): Output<'planned.fromShow'> {
  const { db } = writing
  openExhibition(db, input.exhibition)
  const wanted = input.works === undefined ? null : new Set(input.works)
  const due = toPlan(db, input.exhibition, writing.now()).filter(({ work }) => wanted === null || wanted.has(work))
  refusePast(writing, input.day, 'day')
  if (due.length === 0) {
    throw new Refusal(
      'nothing-to-plan',
      'Every work on a wall of the plan is there already, or planned to go there. Put works on walls first.',
    )
  }
  writing.label(`Plan ${several(due.length)} to the walls of the show on ${daySaid(input.day)}`)
  return {
    plans: due.map(({ work, face, spot }) => {
      const to = placeNamed(db, face, 'exhibition')
      return { id: write(writing, { kind: 'work', thing: work }, to, spot, input) }
    }),
  }
}

/** Refuses `not-found`, and what a record fulfils. */
function openOf({ db }: Writing, ids: readonly string[], field: (index: number) => string): Planned[] {
  const all = new Map(plannedMoves(db).map(plan => [plan.id, plan]))
  return ids.map((id, index) => {
    const plan = all.get(id)
    if (plan === undefined) throw notFound('planned movement', field(index))
    if (plan.movement === null) return plan
    const sentence = `${nameOf(db, plan.kind, plan.thing, field(index))} was moved as planned, and the record names the plan. Plan a new movement, or set the record right first.`
    throw new Refusal('done-already', sentence, { field: field(index), details: { movement: plan.movement } })
  })
}

const columns = {
  to: 'place',
  spot: 'spot',
  day: 'day',
  hour: 'hour',
  method: 'method',
  people: 'people',
  hands: 'hands',
  reason: 'reason',
  note: 'note',
} as const

export function change(writing: Writing, { id, changes }: Received<'planned.update'>): Output<'planned.update'> {
  const { db } = writing
  const [plan] = openOf(writing, [id], () => 'id')
  if (plan === undefined) throw notFound('planned movement')
  const name = nameOf(db, plan.kind, plan.thing, 'id')
  const to = changes.to === undefined ? undefined : placeFor(writing, changes.to.to, 'changes.to.to')
  if (to !== undefined) refuseInside({ thing: plan.thing, name }, to, 'changes.to.to')
  if (changes.day !== undefined && changes.day.to !== plan.day) refusePast(writing, changes.day.to, 'changes.day.to')
  writing.label(`Change the planned movement of ${name} to ${placeSaid(db, plan)}`)
  const { saved, clashes } = changeFields(writing, 'planned_move', id, changes, columns, 'planned movement')
  if (to !== undefined && saved.includes('to')) update(db, 'planned_move', id, { place_words: to.words })
  return { saved, clashes }
}

export function setDay(writing: Writing, { ids, day, hour }: Received<'planned.setDay'>): Output<'planned.setDay'> {
  const plans = openOf(writing, ids, index => `ids.${index}`)
  refusePast(writing, day, 'day')
  writing.label(`Put ${several(plans.length)} on ${daySaid(day)}`)
  for (const { id } of plans) update(writing.db, 'planned_move', id, { day, ...(hour === undefined ? {} : { hour }) })
  return { done: true }
}

export function remove(writing: Writing, { ids }: Received<'planned.remove'>): Output<'planned.remove'> {
  const plans = openOf(writing, [...new Set(ids)], index => `ids.${index}`)
  const [first] = plans
  const what =
    plans.length === 1 && first !== undefined
      ? `the movement of ${nameOf(writing.db, first.kind, first.thing, 'ids.0')} to ${placeSaid(writing.db, first)}`
      : several(plans.length)
  writing.label(`Take ${what} off the plan`)
  for (const { id } of plans) removeRow(writing.db, 'planned_move', id)
  return { done: true }
}
