/** How a work's page says backs, sizes and changes of the record. */
import type { Output } from '../../src/contract/contract.ts'
import { findMethod } from '../../src/hang/methods.ts'
import { workFacts } from '../../src/model/work-facts.ts'
import { desk } from '../host/desk.svelte.ts'
import { flat, keyOf } from './back-data.ts'

type Got = Output<'work.get'>
export type SizeRow = Got['sizes'][number]
export type Change = Output<'edit.history'>['changes'][number]

/** The measures of one record of the back in a line. */
export function backWords(back: Got['backs'][number]): string {
  const method = findMethod(back.method)
  const values = flat(back.data)
  const said = (method?.fields ?? []).flatMap(({ path, label, kind }) => {
    const value = values.get(keyOf(path))
    return kind === 'length' && typeof value === 'number' ? [`${label.toLowerCase()} ${desk.length(value)}`] : []
  })
  return `${method?.name ?? back.method} from the ${back.seenFrom}: ${said.join(', ')}`
}

/** Height, width, depth and diameter as far as they are known. */
export function figuresOf(size: Pick<SizeRow, 'height' | 'width' | 'depth' | 'diameter'>): string {
  const sides = [size.height, size.width, size.depth].flatMap(mm => (mm === null ? [] : [desk.length(mm)]))
  const round = size.diameter === null ? [] : [`⌀ ${desk.length(size.diameter)}`]
  return [...(sides.length > 0 ? [sides.join(' × ')] : []), ...round].join(', ')
}

/** The columns of a work that people write, in their words. */
const facts: Readonly<Record<string, string>> = Object.fromEntries(
  Object.values(workFacts).map(({ column, words }) => [column, words]),
)

export interface FieldChange {
  readonly word: string
  readonly title: boolean
  readonly from: string
  readonly to: string
}

/** What people changed; figures that follow from other rows are left out, since those rows say it themselves. */
export function fieldChanges(change: Change, lender: (id: string) => string): readonly FieldChange[] {
  const say = (field: string, value: unknown): string => {
    if (value === null || value === undefined || value === '') return 'nothing'
    if (field === 'lender') return lender(String(value))
    return field === 'light_limit' ? `${value} lx` : String(value)
  }
  return Object.entries(change.fields).flatMap(([field, [from, to]]) => {
    const word = facts[field]
    if (word === undefined || say(field, from) === say(field, to)) return []
    return [{ word, title: field === 'title', from: say(field, from), to: say(field, to) }]
  })
}
