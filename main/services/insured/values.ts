/** A work's own valuations. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { valueOn } from '../../../src/insurance/value.ts'
import { daySaid } from '../../../src/light/day.ts'
import { writeAmount } from '../../../src/money/write.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dateAt, dayAt } from '../days.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, value } from '../sql.ts'
import { workName } from '../works/facts.ts'
import { factsOf } from './facts.ts'

interface Stored {
  readonly id: string
  readonly minor: number
  readonly currency: string
  readonly day: string
  readonly source: string
  readonly by: string
}

function hasWork(db: ReadHandle, work: string): void {
  if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
}

export function list({ db, now }: Reading, { work }: Received<'insured.values'>): Output<'insured.values'> {
  hasWork(db, work)
  const values = rows<Stored>(
    db,
    `SELECT id, value AS minor, currency, day, source, "by" FROM work_value WHERE work = :work ORDER BY day DESC, id DESC`,
    { work },
  )
  const facts = factsOf(db, { works: [work] })
  const { by } = valueOn(facts.agreed(work), facts.valued(work), dayAt(now()), 'unsaid')
  return {
    counts: by === null ? null : { ...by },
    values: values.map(({ minor, currency, ...each }) => ({ ...each, value: { minor, currency } })),
  }
}

export function add(writing: Writing, input: Received<'insured.addValue'>): Output<'insured.addValue'> {
  const { db, now, person } = writing
  hasWork(db, input.work)
  const day = input.day ?? dateAt(now())
  if (
    value(db, 'SELECT id FROM work_value WHERE work = :work AND day = :day', { work: input.work, day }) !== undefined
  ) {
    const sentence = `${workName(db, input.work)} has a valuation from ${daySaid(day)} already. Take that away first, or say another day.`
    throw new Refusal('day-taken', sentence, { field: 'day' })
  }
  writing.label(`Value ${workName(db, input.work)} at ${writeAmount(input.value)} from ${daySaid(day)}`)
  const id = writing.newId()
  const { minor, currency } = input.value
  const said = { day, source: input.source ?? '', by: person?.name ?? '' }
  insert(db, 'work_value', { id, work: input.work, value: minor, currency, ...said })
  return { id }
}

export function remove(writing: Writing, { id }: Received<'insured.removeValue'>): Output<'insured.removeValue'> {
  const found = row<{ work: string; day: string }>(writing.db, 'SELECT work, day FROM work_value WHERE id = :id', {
    id,
  })
  if (found === undefined) throw notFound('valuation')
  writing.label(`Take the valuation of ${workName(writing.db, found.work)} from ${daySaid(found.day)} away`)
  removeRow(writing.db, 'work_value', id)
  return { done: true }
}
