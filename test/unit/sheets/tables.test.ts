/** Checklist and hang list as tables: which columns, which cells, and that our own headings are known again. */
import { describe, expect, test } from 'vitest'
import { defaultSteps } from '../../../src/hang/printing.ts'
import { type ChecklistWork, checklistSheet } from '../../../src/sheets/checklist.ts'
import { checklistColumns, columnParts, ownHeading, sides } from '../../../src/sheets/checklist-columns.ts'
import { hangListSheets } from '../../../src/sheets/hang-list.ts'
import { nothing } from './unknown-work.ts'
import { placed, six, wallOf } from './wall.ts'

const work: ChecklistWork = {
  texts: {
    ...nothing,
    running: '12',
    lenderNumber: '0012',
    title: '=Tide',
    maker: 'Ines Harrowgate',
    note: '+1 mount',
  },
  picture: null,
  lightLimit: 50,
  uvLimit: null,
  mass: 9.5,
  sizes: {
    framed: { height: 622.3, width: 933.45, depth: 38, diameter: null },
    sheet: { height: 500, width: 700, depth: null, diameter: null },
  },
}

const made = (unit: 'mm' | 'in') =>
  checklistSheet({ title: 'Low Water', lines: ['1 work'], works: [work], unit, fraction: 16, withValues: true })
function cell(sheet: ReturnType<typeof made>, heading: string) {
  const index = sheet.columns.findIndex(column => column.heading === heading)
  return sheet.rows[0]?.[index]
}

describe('the checklist', () => {
  test('has lengths as numbers with their unit in the heading', () => {
    const sheet = made('mm')
    expect(cell(sheet, 'Framed height (mm)')).toEqual({ kind: 'number', value: 622.3 })
    expect(cell(sheet, 'Sheet width (mm)')).toEqual({ kind: 'number', value: 700 })
    expect(cell(sheet, 'Weight (kg)')).toEqual({ kind: 'number', value: 9.5 })
    expect(cell(sheet, 'No.')).toEqual({ kind: 'number', value: 12 })
  })

  test('has inches as decimals and as the tape says them', () => {
    const sheet = made('in')
    expect(cell(sheet, 'Framed height (in)')).toEqual({ kind: 'number', value: 24.5 })
    expect(cell(sheet, 'Framed height, by the tape (in)')).toEqual({ kind: 'text', text: '24 1/2' })
    expect(cell(sheet, 'Framed width, by the tape (in)')).toEqual({ kind: 'text', text: '36 3/4' })
    // 9.5 kg / 0.45359237 (NIST SP 811, from memory)
    expect(cell(sheet, 'Weight (lb)')).toEqual({ kind: 'number', value: 20.9439149076 })
  })

  test('keeps numbers of works as text, and leaves columns out that are empty throughout', () => {
    const sheet = made('mm')
    expect(cell(sheet, 'Lender’s number')).toEqual({ kind: 'text', text: '0012' })
    expect(cell(sheet, 'Title')).toEqual({ kind: 'title', text: '=Tide' })
    expect(sheet.columns.map(column => column.heading)).not.toContain('Loan number')
    expect(sheet.columns.map(column => column.heading)).toContain('Credit line')
  })

  test('knows every heading of its own again, each a different one', () => {
    const every = columnParts.flatMap(part => sides.map(side => ({ part, side })))
    for (const unit of ['mm', 'in'] as const) {
      const columns = checklistColumns(unit, every)
      expect(new Set(columns.map(column => column.heading)).size).toBe(columns.length)
      for (const { heading, field, part, unit: stated } of columns)
        expect(ownHeading(heading)).toEqual({ field, part, unit: stated })
    }
    expect(ownHeading('Height of the room')).toBeNull()
  })
})

describe('the hang list', () => {
  const elevation = wallOf(six.map((given, index) => placed(given, index)))
  const list = (unit: 'mm' | 'in') =>
    hangListSheets({ exhibitionTitle: 'Low Water', lines: [], elevations: [elevation], unit, steps: defaultSteps })

  test('says the numbers of the wall sheet, from left to right', () => {
    const [sheet] = list('mm')
    const column = (heading: string) => {
      const index = sheet?.columns.findIndex(each => each.heading === heading) ?? -1
      return sheet?.rows.map(row => {
        const found = row[index]
        return found?.kind === 'number' ? found.value : null
      })
    }
    expect(column('From the floor (mm)')).toEqual([1695, 1795, 1680, 1880, 1695, 1730])
    expect(column('Left mark (mm)')).toEqual([940, 2067, 3389, 4586, 6158, 7280])
    expect(column('Right mark (mm)')).toEqual([1340, 2667, 3859, 5426, 6558, 8190])
    expect(column('Place')).toEqual([1, 2, 3, 4, 5, 6])
  })

  test('says inches by the tape beside the decimals', () => {
    const [sheet] = list('in')
    const index = sheet?.columns.findIndex(each => each.heading === 'From the floor (in)') ?? -1
    expect(sheet?.rows[1]?.slice(index, index + 2)).toEqual([
      { kind: 'number', value: 70.6875 },
      { kind: 'text', text: '70 11/16' },
    ])
  })

  test('is a table with one sentence where nothing is placed', () => {
    const [sheet] = hangListSheets({
      exhibitionTitle: 'Low Water',
      lines: [],
      elevations: [],
      unit: 'mm',
      steps: defaultSteps,
    })
    expect(sheet?.lines).toContain('Nothing is placed yet.')
  })
})
