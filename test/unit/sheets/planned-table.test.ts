/** What handlers take in their hands: the day once, what is overdue by its day, and works in no place in two words. */
import { expect, test } from 'vitest'
import type { PlannedLine } from '../../../src/contract/areas/planned.ts'
import { plannedSheet } from '../../../src/sheets/planned-table.ts'

const finding = (code: string, text: string): PlannedLine['findings'][number] => ({
  severity: 'settle',
  code,
  subject: { kind: 'work', id: 'w' },
  text,
  figures: {},
})
const line: PlannedLine = {
  id: 'p',
  kind: 'work',
  thing: 'w',
  number: 'L-1.1',
  title: 'Salt pans',
  fromWords: '',
  place: 'r',
  words: 'North Room, north wall',
  spot: 'position 2',
  day: '2031-03-02',
  hour: '09:30',
  method: 'by hand',
  people: '',
  hands: 2,
  reason: '',
  note: '',
  overdue: false,
  way: '',
  done: null,
  findings: [
    finding('not-arrived', 'Salt pans has not arrived: the record has it in no place. Record its arrival first.'),
  ],
}

function cells(day: string | null, ...planned: readonly PlannedLine[]) {
  const { columns, rows } = plannedSheet({ days: '2 March 2031', day, lines: [], planned })
  return rows.map(row =>
    Object.fromEntries(
      columns.map(({ key }, at) => {
        const cell = row[at]
        return [key, cell === undefined || !('text' in cell) ? '' : cell.text]
      }),
    ),
  )
}

test('on the sheet of its day a plan has its hour alone, on one of several days its day too', () => {
  expect(cells('2031-03-02', line)[0]?.when).toBe('09:30')
  expect(cells(null, line)[0]?.when).toMatch(/^2 March 2031 09:30$/u)
  expect(cells('2031-03-02', { ...line, day: '2031-02-27', overdue: true })[0]?.when).toMatch(
    /^overdue: 27 Feb\S* 2031 09:30$/u,
  )
})

test('what the record has in no place says so where it comes from, and its other findings stay whole', () => {
  const gone = finding('place-gone', 'The yard is not there any more. Plan another place.')
  const [row] = cells('2031-03-02', { ...line, findings: [...line.findings, gone] })
  expect(row?.from).toBe('in no place')
  expect(row?.settle).toBe('Record its arrival first. The yard is not there any more. Plan another place.')
  // What is somewhere outside has not arrived either, and its sentence says where it is.
  const outside = finding(
    'not-arrived',
    'Salt pans has not arrived: it is at Quay 4. Plan or record its arrival first.',
  )
  const [other] = cells('2031-03-02', { ...line, fromWords: 'Quay 4', findings: [outside] })
  expect([other?.from, other?.settle]).toEqual(['Quay 4', outside.text])
})
