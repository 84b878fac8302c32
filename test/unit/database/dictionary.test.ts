/** The data dictionary speaks of every table and column that a catalogue has, and of none that it has not. */
import { expect, test } from 'vitest'
import { createCatalogue } from '../../../main/database/catalogue.ts'
import { partsOfRule } from '../../../main/database/migrations/0014-removed-rows.ts'
import { withinColumns } from '../../../main/database/migrations/0015-loans.ts'
import { schemaOf } from '../../../main/database/schema.ts'
import { exempt } from '../../../main/database/tables.ts'
import { dictionary } from '../../../src/dictionary/dictionary.ts'
import { dictionaryRows } from '../../../src/dictionary/rows.ts'
import { testClock, testFolder } from './fixture.ts'

function schema() {
  const catalogue = createCatalogue(`${testFolder()}/words.hangwright`, testClock())
  try {
    return schemaOf(catalogue.db)
  } finally {
    catalogue.close()
  }
}

test('every column has its words, in the order of the file; no word speaks of what is gone', () => {
  const tables = schema()
  const stored = tables.flatMap(({ name, columns }) => columns.map(column => `${name}.${column.name}`))
  const worded = Object.entries(dictionary).flatMap(([name, { columns }]) =>
    Object.keys(columns).map(column => `${name}.${column}`),
  )
  expect([...worded].sort()).toEqual([...stored].sort())
  const rows = dictionaryRows(tables)
  expect(rows.map(([table, , , column]) => `${table}.${column}`)).toEqual(stored)
  for (const [table, one, , column, called] of rows) expect([table, column, one, called]).not.toContain('')
})

test('what the file itself says stands beside the words: type, whether it may be empty, values, references', () => {
  const rows = new Map(dictionaryRows(schema()).map(row => [`${row[0]}.${row[3]}`, row]))
  expect(rows.get('work_size.height')).toEqual([
    'work_size',
    'size of a work',
    'A size with its source. Which is in force is in the work.',
    'height',
    'height',
    '',
    'REAL',
    'mm',
    'yes',
    '',
    '',
  ])
  expect(rows.get('work_size.kind')?.slice(6)).toEqual(['TEXT', '', 'no', 'listed; measured', ''])
  expect(rows.get('work_size.work')?.slice(8)).toEqual(['no', '', 'work'])
  expect(rows.get('condition_finding.age')?.[9]).toBe('(nothing); old; new; unsure')
  expect(rows.get('person.fraction')?.[9]).toBe('8; 16; 32')
})

test('of each table’s columns, the first that a removed row is found by is the one it is a part of', () => {
  for (const [name, { columns, within }] of Object.entries(dictionary)) {
    if (within === '' || Object.hasOwn(exempt, name)) continue
    if (partsOfRule.some(part => part === name)) expect(within).toBe('rule')
    else expect([name, withinColumns.find(column => Object.hasOwn(columns, column))]).toEqual([name, within])
  }
})
