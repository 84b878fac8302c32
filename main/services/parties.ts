/** Lenders and other parties. */
import type { Output, Received } from '../../src/contract/contract.ts'
import { changeFields, notFound } from './change.ts'
import type { Reading, ServicesOf, Writing } from './service.ts'
import { insert, rows, update, value } from './sql.ts'
import { workName } from './works/facts.ts'

/** For comparing names: no accents, no case, single spaces. */
export function plainName(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}

function list({ db }: Reading): Output<'party.list'> {
  return {
    parties: rows(
      db,
      `SELECT party.id, party.kind, party.name, party.contact, party.credit_line AS creditLine, count(work.id) AS works
       FROM party LEFT JOIN work ON work.lender = party.id GROUP BY party.id ORDER BY party.name COLLATE NOCASE, party.id`,
    ),
  }
}

function add(writing: Writing, input: Received<'party.add'>): Output<'party.add'> {
  const id = writing.newId()
  writing.label(`Add ${input.name}`)
  insert(writing.db, 'party', {
    id,
    kind: input.kind,
    name: input.name,
    name_norm: plainName(input.name),
    contact: input.contact ?? '',
    credit_line: input.creditLine ?? '',
  })
  if (input.work === undefined) return { id, clashes: [] }
  const there = value(writing.db, 'SELECT id FROM work WHERE id = :work', { work: input.work.id })
  if (there === undefined) throw notFound('work', 'work.id')
  writing.label(`Add ${input.name} as lender of ${workName(writing.db, input.work.id)}`)
  const changes = { lender: { was: input.work.was, to: id } }
  const { clashes } = changeFields(writing, 'work', input.work.id, changes, { lender: 'lender' }, 'work')
  return { id, clashes }
}

function change(writing: Writing, { id, changes }: Received<'party.update'>): Output<'party.update'> {
  const name = value<string>(writing.db, 'SELECT name FROM party WHERE id = :id', { id })
  writing.label(`Change ${name ?? 'a party'}`)
  const columns = { name: 'name', contact: 'contact', creditLine: 'credit_line' }
  const { saved, clashes, values } = changeFields(writing, 'party', id, changes, columns, 'party')
  if (typeof values.name === 'string') update(writing.db, 'party', id, { name_norm: plainName(values.name) })
  return { saved, clashes }
}

export const partyServices: ServicesOf<'party.list' | 'party.add' | 'party.update'> = {
  'party.list': list,
  'party.add': add,
  'party.update': change,
}
