/** Columns corrected by hand once are understood without a word in the next list of the same lender, and of no other. */
import { afterEach, beforeEach, expect, test } from 'vitest'
import { type Desk, openDesk } from './desk.ts'

let desk: Desk
beforeEach(() => {
  desk = openDesk()
})
afterEach(() => desk.close())

// Headings that no word list knows: only a person can tell what they are.
const first = 'Sig;Betitelt;Von;Tall;Across;Shelf\nQ 1;Groyne;Ina Vorr;40;50;B 3\nQ 2;Nets;Oda Ketil;61;91,5;B 4\n'
const second = 'Shelf;Von;Betitelt;Sig;Across;Tall\nC 1;Ina Vorr;Slack water;Q 9;70;30\n'
const corrected = [
  { column: 'Sig', field: 'lenderNumber' },
  { column: 'Betitelt', field: 'title' },
  { column: 'Von', field: 'maker' },
  { column: 'Tall', field: 'height', unit: 'cm', part: 'framed' },
  { column: 'Across', field: 'width', unit: 'cm', part: 'framed' },
  { column: 'Shelf', field: 'ignore' },
] as const

const works = () =>
  desk.rows<{ title: string; maker: string; number: string; h: number; w: number }>(
    `SELECT title, maker, hang_height AS h, hang_width AS w,
       (SELECT text FROM work_number WHERE work = work.id AND kind = 'lender') AS number
     FROM work ORDER BY n`,
  )

async function lender(name: string): Promise<string> {
  return (await desk.call('party.add', { kind: 'lender', name })).id
}

test('the next list of the lender, its columns in another order, comes in as the first was corrected', async () => {
  const quay = await lender('Quay Collection')
  await desk.call('import.accept', { text: first, lender: quay, mapping: [...corrected] })
  expect(works()).toEqual([
    { title: 'Groyne', maker: 'Ina Vorr', number: 'Q 1', h: 400, w: 500 },
    { title: 'Nets', maker: 'Oda Ketil', number: 'Q 2', h: 610, w: 915 },
  ])

  // By name as by id: whoever types the lender means the same one.
  for (const whose of [{ lender: quay }, { lenderName: 'QUAY COLLECTION' }]) {
    const preview = await desk.call('import.preview', { text: second, ...whose })
    expect(preview.headingRow).toBe(1)
    expect(preview.columns.map(({ heading, field, unit, part, by }) => [heading, field, unit, part, by])).toEqual([
      ['Shelf', 'ignore', null, null, 'remembered'],
      ['Von', 'maker', null, null, 'remembered'],
      ['Betitelt', 'title', null, null, 'remembered'],
      ['Sig', 'lenderNumber', null, null, 'remembered'],
      ['Across', 'width', 'cm', 'framed', 'remembered'],
      ['Tall', 'height', 'cm', 'framed', 'remembered'],
    ])
  }
  const taken = await desk.call('import.accept', { text: second, lender: quay })
  expect(taken).toMatchObject({ added: 1, questions: [], refused: [] })
  expect(works().at(-1)).toEqual({ title: 'Slack water', maker: 'Ina Vorr', number: 'Q 9', h: 300, w: 700 })
})

test('another lender’s list with the same headings is not taken so, nor is one that names no lender', async () => {
  await desk.call('import.accept', { text: first, lender: await lender('Quay Collection'), mapping: [...corrected] })
  for (const whose of [{ lender: await lender('Mole House') }, { lenderName: 'Somebody New' }, {}]) {
    await expect(desk.call('import.accept', { text: second, ...whose })).rejects.toMatchObject({ code: 'no-headings' })
    // A preview shows the rows, so that somebody can say what the columns are.
    const { columns, headingRow, remarks } = await desk.call('import.preview', { text: second, ...whose })
    expect({ headingRow, fields: columns.map(({ field }) => field) }).toEqual({
      headingRow: 0,
      fields: Array(6).fill(null),
    })
    expect(remarks[0]).toContain('No row with headings was found')
  }
})

test('a correction of today goes before what is remembered, and is remembered in its place', async () => {
  const quay = await lender('Quay Collection')
  await desk.call('import.accept', { text: first, lender: quay, mapping: [...corrected] })
  const text = 'Sig;Betitelt;Von;Shelf\nQ 11;Kelp;Ina Vorr;wire, two hooks\n'
  await desk.call('import.accept', { text, lender: quay, mapping: [{ column: 'Shelf', field: 'handling' }] })
  const { mapping } = await desk.call('import.mapping', { lender: quay })
  const kept = new Map(mapping.map(({ heading, field }) => [heading, field]))
  expect(kept.get('Shelf')).toBe('handling')
  // What this list lacks stays known for the next.
  expect(kept.get('Tall')).toBe('height')
})

test('a list of a new lender is remembered under the lender that it brings in', async () => {
  await desk.call('import.accept', { text: first, lenderName: 'Quay Collection', mapping: [...corrected] })
  const { columns } = await desk.call('import.preview', { text: second, lenderName: 'Quay Collection' })
  expect(columns.every(column => column.by === 'remembered')).toBe(true)
})

test('undo of the list also forgets its corrections', async () => {
  const quay = await lender('Quay Collection')
  await desk.call('import.accept', { text: first, lender: quay, mapping: [...corrected] })
  await desk.call('edit.undo', {})
  await expect(desk.call('import.accept', { text: second, lender: quay })).rejects.toMatchObject({
    code: 'no-headings',
  })
})

test('two columns of one heading keep what was said of each', async () => {
  const quay = await lender('Quay Collection')
  const text = 'Title;Artist;Gauge;Gauge\nGroyne;Ina Vorr;40 x 50 cm;B 3\n'
  const mapping = [
    { column: 3, field: 'size' },
    { column: 4, field: 'ignore' },
  ] as const
  await desk.call('import.accept', { text, lender: quay, mapping: [...mapping] })
  const { columns } = await desk.call('import.preview', { text, lender: quay })
  expect(columns.map(({ field }) => field)).toEqual(['title', 'maker', 'size', 'ignore'])
})

test('what a person says of a column no other takes from it, whichever comes first', async () => {
  const text = 'Title;Work name;Artist\nMs.;Groyne;Ina Vorr\n'
  const { columns } = await desk.call('import.preview', { text, mapping: [{ column: 2, field: 'title' }] })
  expect(columns.map(({ field }) => field)).toEqual([null, 'title', 'maker'])
  await desk.call('import.accept', { text, mapping: [{ column: 2, field: 'title' }] })
  expect(works().map(({ title }) => title)).toEqual(['Groyne'])
})
