import { describe, expect, test } from 'vitest'
import type { TableRow } from '../../../src/checklist/cell.ts'
import { type ListShape, recognise } from '../../../src/checklist/recognise.ts'

function table(rows: readonly (readonly string[])[]): TableRow[] {
  return rows.map((cells, i) => ({ row: i + 1, cells }))
}

function told(shape: ListShape): string[] {
  return shape.columns.map(use => [use.field ?? '?', use.part, use.unit].filter(word => word !== null).join(' '))
}

describe('headings', () => {
  test('English, below a title that spans the sheet', () => {
    const shape = recognise(
      table([
        ['Low Water: works from the Quay Collection'],
        [],
        [
          'No.',
          'Accession #',
          'Artist / Maker',
          'Title',
          'Year',
          'Medium',
          'Framed dimensions (in.)',
          'Weight (kg)',
          'Credit Line',
          'Max. lux',
        ],
        ['1', '1995.5.2', 'Ada Ruel', 'Salt pans', '1901', 'etching', '24 x 36', '4', '', '50'],
        ['2', '1995.5.3', 'Ada Ruel', 'Causeway', '1902', 'oil', '20 x 30', '5', '', '200'],
      ]),
    )
    expect(shape.headingRow).toBe(3)
    expect(shape.language).toBe('en')
    expect(told(shape)).toEqual([
      'running',
      'permanent',
      'maker',
      'title',
      'date',
      'medium',
      'size framed in',
      'mass kg',
      'credit',
      'lightLimit',
    ])
  })

  test('French', () => {
    const shape = recognise(
      table([
        [
          'N° d’inventaire',
          'Artiste',
          'Titre de l’œuvre',
          'Datation',
          'Technique',
          'H (cm)',
          'L (cm)',
          'P (cm)',
          'Poids (kg)',
          'Prêteur',
          'Valeur d’assurance',
        ],
      ]),
    )
    expect(shape.language).toBe('fr')
    expect(told(shape)).toEqual([
      'permanent',
      'maker',
      'title',
      'date',
      'medium',
      'height cm',
      'width cm',
      'depth cm',
      'mass kg',
      'lender',
      'value',
    ])
  })

  test('German', () => {
    const shape = recognise(
      table([
        [
          'Lfd. Nr.',
          'Inv.-Nr.',
          'Künstler/in',
          'Titel',
          'Datierung',
          'Technik',
          'Maße (H × B) in cm',
          'Rahmenmaß (cm)',
          'Leihgeber',
          'Versicherungswert',
        ],
      ]),
    )
    expect(shape.language).toBe('de')
    expect(told(shape)).toEqual([
      'running',
      'permanent',
      'maker',
      'title',
      'date',
      'medium',
      'size cm',
      'size framed cm',
      'lender',
      'value',
    ])
  })

  test('in two rows: the part above, the sides below', () => {
    const shape = recognise(
      table([
        ['', '', 'Unframed (cm)', '', 'Framed (cm)', '', ''],
        ['Artist', 'Title', 'H', 'W', 'H', 'W', 'Notes'],
        ['Ada Ruel', 'Salt pans', '30', '40', '50', '60', ''],
      ]),
    )
    expect(shape.headingRow).toBe(2)
    expect(told(shape)).toEqual([
      'maker',
      'title',
      'height support cm',
      'width support cm',
      'height framed cm',
      'width framed cm',
      'note',
    ])
  })
})

test('a bare number counts the rows, or is the lender’s', () => {
  const rows = (numbers: readonly string[]) =>
    table([['No.', 'Title', 'Artist'], ...numbers.map(number => [number, 'Nets', 'Bo Lind'])])
  expect(told(recognise(rows(['1', '2', '3'])))[0]).toBe('running')
  expect(told(recognise(rows(['14', '7', '203'])))[0]).toBe('lenderNumber')
  expect(told(recognise(rows(['2031.1', '2031.2', '2031.3'])))[0]).toBe('lenderNumber')
})

test('what a person says goes before what is remembered, and that before the heading', () => {
  const rows = table([
    ['Name', 'Work', 'Number'],
    ['Salt pans', 'Ada Ruel', '7'],
  ])
  const remembered = [
    { heading: 'Name', field: 'title', unit: null, part: null },
    { heading: 'Work', field: 'note', unit: null, part: null },
  ] as const
  const shape = recognise(rows, {
    remembered,
    mapping: [
      { column: 'work', field: 'maker' },
      { column: 3, field: 'loan' },
    ],
  })
  expect(told(shape)).toEqual(['title', 'maker', 'loan'])
  expect(shape.columns.map(use => use.by)).toEqual(['remembered', 'given', 'given'])
})

test('a row that a person names holds the headings, whatever its words', () => {
  const rows = table([['A lender’s own list'], ['Sig', 'Betitelt'], ['Q 1', 'Nets']])
  expect(recognise(rows).headingRow).toBe(0)
  for (const headingRow of [1, 2]) expect(recognise(rows, { headingRow }).headingRow).toBe(headingRow)
  expect(recognise(rows, { headingRow: 2 }).columns.map(use => use.heading)).toEqual(['Sig', 'Betitelt'])
})

test('a table of other things has no headings', () => {
  expect(
    recognise(
      table([
        ['red', 'blue'],
        ['1', '2'],
      ]),
    ).headingRow,
  ).toBe(0)
})
