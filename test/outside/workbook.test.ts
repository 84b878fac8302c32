/** Checklist and hang list as workbooks, read by other programs: every number as a number, every text as it was. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import readWorkbook from 'read-excel-file/node'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { writeWorkbook } from '../../main/files/workbook/write.ts'
import { defaultSteps } from '../../src/hang/printing.ts'
import { type ChecklistWork, checklistSheet } from '../../src/sheets/checklist.ts'
import type { TableSheet } from '../../src/sheets/columns.ts'
import { hangListSheets } from '../../src/sheets/hang-list.ts'
import { nothing } from '../unit/sheets/unknown-work.ts'
import { placed, six, wallOf } from '../unit/sheets/wall.ts'
import { convert, ownFolder, python, run, withProgram } from './programs.ts'

const folder = ownFolder()
afterAll(folder.remove)
const picture = 'a'.repeat(64)

function work(index: number, more: Partial<ChecklistWork['texts']> = {}): ChecklistWork {
  return {
    texts: {
      ...nothing,
      running: String(index + 1),
      permanent: `00${index}`,
      lenderNumber: `L-2031.7.${index}`,
      maker: 'Ines Harrowgate',
      title: `Łódź, study ${index}`,
      date: '1/2',
      medium: 'oil on canvas',
      method: 'd-rings',
      lender: 'Quay Collection',
      kind: 'painting',
      place: 'Room 2, east',
      status: 'wanted',
      ...more,
    },
    picture: index === 0 ? picture : null,
    lightLimit: 50 + index,
    uvLimit: null,
    mass: 3.25 + index,
    sizes: { framed: { height: 622.3 + index, width: 933.45, depth: index === 1 ? null : 38.1, diameter: null } },
  }
}

const works = [
  work(0, { note: '=1+1' }),
  work(1, { note: '+1 mount', handling: 'two\nlines' }),
  work(2, { note: '-keep dry' }),
  work(3, { note: '@home' }),
  work(4, { note: 'bell\u0007 and half \ud83d of a letter' }),
]
const checklist = checklistSheet({
  title: 'Low Water: checklist',
  lines: ['5 works'],
  works,
  unit: 'in',
  fraction: 16,
  withValues: true,
})
const hang = hangListSheets({
  exhibitionTitle: 'Low Water',
  lines: ['lengths in millimetres'],
  elevations: [wallOf(six.map((given, index) => placed(given, index)))],
  unit: 'mm',
  steps: defaultSteps,
})
const files = { checklist: join(folder.path, 'checklist.xlsx'), hang: join(folder.path, 'hang.xlsx') }
const tables: readonly (readonly [keyof typeof files, TableSheet | undefined])[] = [
  ['checklist', checklist],
  ['hang', hang[0]],
]

beforeAll(async () => {
  const bytes = await sharp({ create: { width: 120, height: 80, channels: 3, background: '#2E6E4E' } })
    .jpeg()
    .toBuffer()
  const thumbnail = (hash: string) =>
    hash === picture ? ({ bytes, extension: 'jpeg', width: 120, height: 80 } as const) : null
  const rest = { at: '2031-03-14T16:20:00.000Z', by: 'Tamsin Oake', paper: 'A4', thumbnail } as const
  await writeWorkbook(files.checklist, { sheets: [checklist], ...rest })
  await writeWorkbook(files.hang, { sheets: hang, ...rest })
})

/** What a cell must hold: a number, a text without what no cell may hold, or nothing. */
function expected(sheet: TableSheet): (string | number | null)[][] {
  return sheet.rows.map(row =>
    row.map(cell => {
      if (cell.kind === 'number') return cell.value
      if (cell.kind !== 'text' && cell.kind !== 'title') return null
      return cell.text.replaceAll('\u0007', '').replaceAll('\ud83d', '\ufffd')
    }),
  )
}

function tableOf(sheet: TableSheet | undefined): TableSheet {
  if (sheet === undefined) throw new Error('no table')
  return sheet
}

describe('read-excel-file', () => {
  test.each(tables)('reads every cell of the %s back', async (name, sheet) => {
    const table = tableOf(sheet)
    const [first] = await readWorkbook(readFileSync(files[name]), { trim: false })
    const rows = first?.data ?? []
    const heading = table.lines.length + 1
    expect(rows[heading]).toEqual(table.columns.map(column => column.heading))
    expect(rows.slice(heading + 1)).toEqual(expected(table))
  })
})

const dump = `
import json, sys, openpyxl
book = openpyxl.load_workbook(sys.argv[1])
out = []
for sheet in book.worksheets:
    rows = [[[cell.value, cell.data_type, cell.number_format, bool(cell.font.i)] for cell in row] for row in sheet.iter_rows()]
    setup = sheet.page_setup
    out.append(dict(name=sheet.title, rows=rows, freeze=sheet.freeze_panes, titles=sheet.print_title_rows, orientation=setup.orientation,
        paper=setup.paperSize, wide=setup.fitToWidth, high=setup.fitToHeight, fit=sheet.sheet_properties.pageSetUpPr.fitToPage,
        footer=sheet.oddFooter.right.text))
print(json.dumps(out))
`

type Dumped = readonly [string | number | null, string, string, boolean]
interface DumpedSheet {
  readonly rows: readonly (readonly Dumped[])[]
  readonly [key: string]: unknown
}

withProgram('openpyxl', 'reads the workbooks', () => {
  function read(name: keyof typeof files): DumpedSheet {
    const script = join(folder.path, 'dump.py')
    writeFileSync(script, dump)
    const [sheet] = JSON.parse(run(python ?? 'python3', [script, files[name]])) as DumpedSheet[] // as the script writes it
    if (sheet === undefined) throw new Error('no worksheet')
    return sheet
  }

  test.each(tables)('every cell of the %s: value, kind, format', (name, sheet) => {
    const table = tableOf(sheet)
    const { rows } = read(name)
    const heading = table.lines.length + 1
    expect(rows.slice(heading + 1).map(row => row.map(([value]) => value))).toEqual(expected(table))
    table.rows.forEach((row, at) => {
      row.forEach((cell, column) => {
        const [, kind, format, italic] = rows[heading + 1 + at]?.[column] ?? []
        if (cell.kind === 'number') expect([kind, format]).toEqual(['n', table.columns[column]?.format ?? 'General'])
        if (cell.kind === 'text') expect(kind).toBe('s')
        if (cell.kind === 'title') expect([kind, italic]).toEqual(['s', true])
      })
    })
  })

  test('headings stay in sight and come again on every page, one page wide', () => {
    expect(read('checklist')).toMatchObject({
      freeze: 'A4',
      titles: '$3:$3',
      orientation: 'landscape',
      paper: 9,
      fit: true,
      wide: 1,
      high: 0,
      footer: '&P / &N',
    })
  })
})

withProgram('LibreOffice', 'opens the workbooks', () => {
  test('every number of the hang list as it stands there', () => {
    convert(files.hang, 'csv:Text - txt - csv (StarCalc):9,34,76,1,,0,false,false', folder.path)
    const lines = readFileSync(join(folder.path, 'hang.csv'), 'utf8').trim().split('\n')
    const table = tableOf(hang[0])
    const read = lines
      .slice(table.lines.length + 2)
      .map(line => line.split('\t').map(cell => cell.replace(/^"|"$/g, '')))
    expect(read).toHaveLength(table.rows.length)
    table.rows.forEach((row, at) => {
      row.forEach((cell, column) => {
        if (cell.kind === 'number') expect(Number(read[at]?.[column]?.replaceAll(',', ''))).toBe(cell.value)
        if (cell.kind === 'text' || cell.kind === 'title') expect(read[at]?.[column]).toBe(cell.text)
      })
    })
  })

  test('a text that begins like a sum stays a text; the picture is there', () => {
    convert(files.checklist, 'fods', folder.path)
    const xml = readFileSync(join(folder.path, 'checklist.fods'), 'utf8')
    expect(xml.match(/<draw:image /g)).toHaveLength(1)
    expect(xml).not.toContain('table:formula')
    for (const text of ['=1+1', '+1 mount', '-keep dry', '@home', 'bell and half']) expect(xml).toContain(text)
  })

  test('a broken text stands whole above the next row', async () => {
    const column = {
      key: 'note',
      heading: 'Note',
      field: 'ignore',
      part: null,
      unit: null,
      width: 14,
      format: null,
    } as const
    const words = 'one two three four five six seven eight nine ten eleven twelve'
    const rows = [words, 'first\nsecond\nthird', 'NEXT'].map(text => [{ kind: 'text' as const, text }])
    const sheet: TableSheet = { name: 'Rows', title: 'Rows', lines: [], columns: [column], rows }
    const path = join(folder.path, 'rows.xlsx')
    await writeWorkbook(path, {
      sheets: [sheet],
      at: '2031-03-14T16:20:00.000Z',
      by: '',
      paper: 'A4',
      thumbnail: () => null,
    })
    convert(path, 'pdf', folder.path)
    const html = run('pdftotext', ['-bbox', join(folder.path, 'rows.pdf'), '-'])
    const box = (word: string) => {
      const found = new RegExp(`yMin="([\\d.]+)"[^>]*yMax="([\\d.]+)">${word}<`).exec(html)
      if (found === null) throw new Error(`no ${word}`)
      return { top: Number(found[1]), bottom: Number(found[2]) }
    }
    expect(box('twelve').top).toBeGreaterThan(box('one').bottom)
    expect(box('first').top).toBeGreaterThan(box('twelve').bottom - 1)
    expect(box('NEXT').top).toBeGreaterThan(box('third').bottom - 1)
  })
})
