/** Changes of records in the words and units of the person at the desk. */
import type { RecordChange } from '../../src/contract/areas/history.ts'
import { type FieldSaid, fieldsSaid as said } from '../../src/dictionary/change-said.ts'
import { desk } from '../host/desk.svelte.ts'

export type Change = RecordChange

const time = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' })

export function fieldsSaid(change: Change): readonly FieldSaid[] {
  return said(change, {
    length: mm => desk.lengthWithUnit(mm),
    mass: kg => desk.mass(kg),
    moment: at => time.format(new Date(at)),
  })
}
