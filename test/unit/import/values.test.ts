/** What a list says works are worth: read, asked, kept beside what was known, taken back whole. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { readHeading } from '../../../src/checklist/headings.ts'
import { headedCurrency, readValueCell } from '../../../src/checklist/values.ts'
import { type Desk, openDesk } from './desk.ts'

let desk: Desk
beforeEach(() => {
  desk = openDesk()
})
afterEach(() => desk.close())

const list = (heading: string, ...values: readonly string[]) =>
  `Lender’s no.\tArtist\tTitle\t${heading}\n${values.map((value, i) => `L-${i + 1}\tAda Ruel\tPans ${i + 1}\t${value}\n`).join('')}`
const take = (text: string) =>
  desk.call('import.accept', { handle: desk.give('quay list.tsv', text), lenderName: 'Quay' })
const worth = () =>
  desk.rows<{ title: string; value: number; currency: string; source: string }>(
    'SELECT title, value, currency, source FROM work_value JOIN work ON work.id = work ORDER BY title, work_value.day, work_value.id',
  )
const amounts = () => worth().map(({ title, value, currency }) => `${title}: ${currency} ${value}`)

/** Common practice, no source: how lists write money; three figures behind one mark as in the worked cases of `money`. */
describe('a cell', () => {
  test.each([
    ['12,000 EUR', 'Value', '', 'EUR 1200000'],
    ['€12 000', 'Insurance value', '', 'EUR 1200000'],
    ['USD 4.500,00', 'Value', '', 'USD 450000'],
    ['12’000.-', 'Versicherungswert (CHF)', 'de', 'CHF 1200000'],
    ['12000', 'Insurance value GBP', 'en', 'GBP 1200000'],
    ['1.500', 'Wert in EUR', 'de', 'EUR 150000'],
    ['£ 900', 'Value (GBP)', 'en', 'GBP 90000'],
    ['JPY 1.500', 'Value', '', 'JPY 1500'],
    ['1.2 million', 'Value (SEK)', 'en', 'SEK 120000000'],
  ] as const)('%s under “%s” is read', (text, column, language, expected) => {
    const { value, question } = readValueCell(text, { column, language })
    expect(question).toBeUndefined()
    expect(`${value?.currency} ${value?.minor}`).toBe(expected)
  })

  test.each([
    ['12,000', 'Value', '', 'In which currency?', []],
    ['on request', 'Value (EUR)', 'en', 'has no figure', []],
    ['1.500', 'Value (EUR)', 'en', 'thousands or decimals', ['EUR 1 500', 'EUR 1.50']],
    ['1,500', 'Valeur (EUR)', 'fr', 'thousands or decimals', ['EUR 1 500', 'EUR 1.50']],
    ['$ 900', 'Value', 'en', 'is the sign of', ['USD 900', 'AUD 900', 'CAD 900', 'HKD 900']],
    ['EUR 900', 'Value (GBP)', 'en', null, []],
    ['900 / 1200', 'Value (EUR)', 'en', 'no amount that can be read in one way', []],
    ['-900', 'Value (EUR)', 'en', 'negative', []],
  ] as const)('%s under “%s” is asked, or says its own', (text, column, language, words, options) => {
    const { value, question } = readValueCell(text, { column, language })
    if (words === null) return expect(value).toMatchObject({ minor: 90_000, currency: 'EUR' })
    expect(value).toBeUndefined()
    expect(question?.question).toContain(words)
    expect(question?.options.map(({ label }) => label.replace(/[\u00a0\u2009]/gu, ' '))).toEqual(options)
  })

  test('of a spreadsheet is its number in the currency of the heading, exactly', () => {
    const read = (number: number, column: string) =>
      readValueCell({ kind: 'number', text: String(number), number }, { column, language: 'en' })
    expect(read(4500.5, 'Value (EUR)').value).toMatchObject({ minor: 450_050, currency: 'EUR' })
    expect(read(0, 'Value (EUR)')).toEqual({})
    expect(read(4500, 'Value').question?.question).toContain('In which currency?')
    expect(read(4500.505, 'Value (EUR)').question?.question).toContain('decimals')
  })

  test('has its currency from the heading by code or sign, never from a word that is a code too', () => {
    expect(['Value (EUR)', 'Wert in chf', 'Value €', 'Insurance value GBP'].map(headedCurrency)).toEqual([
      'EUR',
      'CHF',
      'EUR',
      'GBP',
    ])
    expect(['Value of all works', 'Value £', 'Value EUR / USD', 'Value'].map(headedCurrency)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ])
    for (const heading of ['Value (EUR)', 'Insurance value SEK', 'Versicherungswert in CHF', 'Valeur d’assurance (€)'])
      expect(readHeading(heading).field, heading).toBe('value')
  })
})

test('a list’s values are valuations of its name, once; another value stands beside the first; undo takes both lists back', async () => {
  const first = list('Value (EUR)', '12,000', '4 500', '')
  expect(await take(first)).toMatchObject({ added: 3, questions: [] })
  expect(worth()).toEqual([
    { title: 'Pans 1', value: 1_200_000, currency: 'EUR', source: 'quay list.tsv' },
    { title: 'Pans 2', value: 450_000, currency: 'EUR', source: 'quay list.tsv' },
  ])
  const before = desk.dump()
  expect(await take(first)).toMatchObject({ run: null, unchanged: 3 })
  expect(desk.dump()).toBe(before)

  const preview = await desk.call('import.preview', {
    handle: desk.give('quay list.tsv', list('Value (EUR)', '12,000', '5 000', '700')),
    lenderName: 'Quay',
  })
  expect(preview.rows.map(({ outcome }) => outcome)).toEqual(['unchanged', 'update', 'update'])
  const said = preview.rows.flatMap(({ changes }) => changes.map(({ field, list: to, yours }) => [field, to, yours]))
  expect(JSON.stringify(said).replace(/[\u00a0\u2009]/gu, ' ')).toBe(
    '[["value","EUR 5 000","EUR 4 500"],["value","EUR 700",""]]',
  )
  await take(list('Value (EUR)', '12,000', '5 000', '700'))
  expect(amounts()).toEqual(['Pans 1: EUR 1200000', 'Pans 2: EUR 450000', 'Pans 2: EUR 500000', 'Pans 3: EUR 70000'])
  // The same figures in another currency are other values.
  await take(list('Value (CHF)', '12,000', '5 000', '700'))
  expect(amounts()).toHaveLength(7)
  await desk.call('edit.undo', {})
  await desk.call('edit.undo', {})
  expect(amounts()).toEqual(['Pans 1: EUR 1200000', 'Pans 2: EUR 450000'])
  await desk.call('edit.undo', {})
  expect(worth()).toEqual([])
})

test('what is unclear is asked, and its answer is the valuation: in the preview or later, a currency or the whole', async () => {
  const text = list('Value', '12,000', 'on request', '1.500 EUR')
  const preview = await desk.call('import.preview', { text, lenderName: 'Quay' })
  expect(preview.rows.map(({ questions }) => questions.map(({ field, kind }) => [field, kind]))).toEqual([
    [['value', 'value']],
    [['value', 'value']],
    [['value', 'value']],
  ])
  await expect(
    desk.call('import.accept', { text, lenderName: 'Quay', answers: [{ row: 2, field: 'value', answer: '12' }] }),
  ).rejects.toMatchObject({ code: 'bad-answer' })
  await desk.call('import.accept', { text, lenderName: 'Quay', answers: [{ row: 2, field: 'value', answer: 'EUR' }] })
  expect(amounts()).toEqual(['Pans 1: EUR 1200000'])
  const { questions } = await desk.call('import.questions', {})
  expect(questions.map(question => question.text)).toEqual(['on request', '1.500 EUR'])
  const [request, mark] = questions
  await expect(desk.call('import.answer', { id: request?.id ?? '', answer: 'about five' })).rejects.toMatchObject({
    code: 'still-unclear',
  })
  await desk.call('import.answer', { id: request?.id ?? '', answer: 'none' })
  await desk.call('import.answer', { id: mark?.id ?? '', answer: '1' })
  expect(amounts()).toEqual(['Pans 1: EUR 1200000', 'Pans 3: EUR 150000'])
  expect(worth()[1]?.source).toContain('answered')
  await desk.call('edit.undo', {})
  expect(amounts()).toEqual(['Pans 1: EUR 1200000'])
})

test('what a loan that is open agrees already is not valued again', async () => {
  await take(list('Value (EUR)', ''))
  const [work] = desk.rows<{ id: string; lender: string }>('SELECT id, lender FROM work')
  const { id: loan } = await desk.call('loan.add', { party: work?.lender ?? '', number: 'QC 7' })
  const { added } = await desk.call('loan.addWorks', { loan, works: [work?.id ?? ''] })
  const agreed = { minor: 1_200_000, currency: 'EUR' }
  await desk.call('loan.updateWork', { id: added[0]?.id ?? '', changes: { value: { was: null, to: agreed } } })
  await take(list('Value (EUR)', '12,000'))
  expect(worth()).toEqual([])
  await take(list('Value (EUR)', '13,000'))
  expect(amounts()).toEqual(['Pans 1: EUR 1300000'])
})
