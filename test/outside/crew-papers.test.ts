/**
 * The crew's papers held against other readers: pdf.js reads every cell back, poppler draws ink into every text box,
 * no text lies on another or off the paper, and ExcelJS's workbook gives the same numbers as openpyxl reads.
 */
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, describe, expect, test } from 'vitest'
import { writePdf } from '../../main/files/pdf/writer.ts'
import { writeWorkbook } from '../../main/files/workbook/write.ts'
import { openFaces } from '../../main/fonts/faces.ts'
import type { CrewHardware, CrewOrders, CrewPlanAnswer } from '../../src/contract/areas/crew-shape.ts'
import type { LockRegister } from '../../src/contract/areas/marks.ts'
import { isTick, type TableSheet } from '../../src/sheets/columns.ts'
import { orderSheets, patchSheets } from '../../src/sheets/crew-tables.ts'
import { daySheets } from '../../src/sheets/day-table.ts'
import { hardwareSheets } from '../../src/sheets/hardware-tables.ts'
import { lockSheets } from '../../src/sheets/lock-table.ts'
import { boxesMeet, type Paper, papers } from '../../src/sheets/shapes.ts'
import { cellWords, type TablePages, tablePages } from '../../src/sheets/table-pages.ts'
import { tagPages } from '../../src/sheets/tag-pages.ts'
import { readPdf } from './pdf-strokes.ts'
import { ownFolder, python, run, withProgram } from './programs.ts'

const at = '2031-03-14T16:20:00.000Z'
const folder = ownFolder()
afterAll(folder.remove)
const faces = await openFaces()

const titles = [
  'Łódź, evening',
  'Salt pans',
  'A long title about the tide that comes in twice and leaves the flats bare',
  '',
]
const work = (index: number) => ({
  placement: `p${index}`,
  entry: `e${index}`,
  work: `w${index}`,
  running: String(index + 1),
  number: `L-2031.7.${index + 1}`,
  title: titles[index % titles.length] ?? '',
  face: `f${index % 3}`,
  faceName: `Room ${(index % 3) + 1}, the long wall by the stairs`,
  tag: index + 1,
  people: 1 + (index % 4),
})
const patch = { made: 3, planned: 14, filled: 1, count: 17, fillerMl: 33.66, paintM2: 0.3825, minutes: 34 }
const panels = ['a', 'b'].map(letter => ({
  work: `p${letter}`,
  running: `8 ${letter}`,
  number: `L-2031.9${letter}`,
  title: `Shore, ${letter}`,
}))
const orders: CrewOrders = {
  hanging: Array.from({ length: 40 }, (_, index) => ({
    ...work(index),
    parts: index === 7 ? panels : [],
    class: index % 4 === 3 ? 'stacker lift' : 'by hand',
    equipment: index % 4 === 3 ? 'stacker lift, 150 kg' : '',
    access: 'platform',
    after: index === 9 ? [3, 4] : [],
    state: index === 5 ? 'hung' : 'planned',
  })),
  down: Array.from({ length: 40 }, (_, index) => ({
    ...work(39 - index),
    parts: [],
    equipment: '',
    after: [],
    method: index % 2 === 0 ? 'D-rings' : 'Security hangers',
    locks: index % 2,
    tool: index % 2 === 0 ? '' : 'flat key',
    steps: ['Two people: one lifts, one looks behind.', 'Draw the fixings, fill the holes.'],
  })),
  patches: [0, 1, 2].map(index => ({ face: `f${index}`, faceName: work(index).faceName, ...patch })),
  total: { ...patch, count: 51 },
  findings: [],
}
const hardware: CrewHardware = {
  spare: 0.125,
  lines: [
    {
      what: 'turned lock',
      fixing: 'f1',
      needed: 12,
      spare: 2,
      per: 'work',
      inStock: 5,
      toGet: 9,
      bit: '4 mm wood',
      tool: 'flat key',
      chosen: true,
      secondCount: 12,
    },
    {
      what: 'a hook that is not chosen yet',
      fixing: null,
      needed: 1204,
      spare: 151,
      per: 'work',
      inStock: null,
      toGet: 1355,
      bit: '',
      tool: '',
      chosen: false,
      secondCount: null,
    },
    {
      what: 'bottom pad',
      fixing: null,
      needed: 24,
      spare: 3,
      per: 'work',
      inStock: null,
      toGet: 27,
      bit: '',
      tool: '',
      chosen: true,
      secondCount: null,
    },
    {
      what: 'flat key',
      fixing: null,
      needed: 2,
      spare: 0,
      per: 'team',
      inStock: null,
      toGet: 2,
      bit: '',
      tool: '',
      chosen: true,
      secondCount: null,
    },
  ],
  boxes: [{ face: 'f0', faceName: work(0).faceName, lines: [{ what: 'turned lock', count: 12, works: 12 }] }],
  bits: [{ bit: '4 mm wood', fixings: ['turned lock'] }],
  locks: { byWorks: 12, byMarks: 12, agree: true },
  unknown: [
    { ...work(2), why: 'Nobody has measured its back yet. Turn it over: how does it hang, and what are the drops?' },
  ],
  findings: [],
}
const register: LockRegister = {
  locks: ['lock', 'lower left plate', 'lower right plate'].map((called, index) => ({
    placement: 'p1',
    entry: 'e1',
    name: '2',
    running: '2',
    number: 'L-2031.7.2',
    title: 'Salt pans',
    room: 'Room 1',
    wall: 'the long wall by the stairs',
    called,
    x: 3600.4 + index,
    y: 946.2,
    fixing: index === 0 ? 'turned lock' : '',
    tool: index === 2 ? '' : 'flat key',
    locked: index === 0 ? { at, by: 'Tamsin Oake' } : null,
  })),
}
const task = (kind: CrewPlanAnswer['tasks'][number]['kind'], placement: string | null, start: number, end: number) => ({
  kind,
  face: 'f0',
  faceName: work(0).faceName,
  placement,
  minutes: end - start,
  start,
  end,
  teams: kind === 'hang' ? [1, 2] : [1],
})
const days = {
  crew: { teams: 2, hours: 6, contingency: 0.25 },
  works: [{ ...work(1), people: 3 }],
  tasks: [task('set out', null, 0, 10), task('hang', 'p1', 10, 37.5), task('light', null, 367, 400)],
} as unknown as CrewPlanAnswer // what the table reads of it
const steps = { mm: 1, fraction: 16 } as const
const time = (moment: string) => moment.slice(0, 10)
const head = { exhibitionTitle: 'Salt & Thread', lines: ['40 works · 14 March 2031, 16:20 · Tamsin Oake'] }
const cases: readonly { readonly name: string; readonly sheets: readonly TableSheet[]; readonly paper: Paper }[] = [
  { name: 'hardware', sheets: hardwareSheets(head, hardware), paper: 'A4' },
  { name: 'orders', sheets: orderSheets(head, orders), paper: 'A4' },
  { name: 'orders-Tabloid', sheets: orderSheets(head, orders), paper: 'Tabloid' },
  { name: 'days', sheets: daySheets(head, days), paper: 'A4' },
  { name: 'locks', sheets: lockSheets(head, register, { unit: 'mm', steps, time }), paper: 'A4' },
  { name: 'locks-in', sheets: lockSheets(head, register, { unit: 'in', steps, time }), paper: 'Letter' },
  { name: 'patches', sheets: patchSheets(head, orders, 'in'), paper: 'Letter' },
]

/** Readers write spaces as they like. */
const bare = (text: string) => text.replace(/\s/gu, '')
const file = (name: string) => join(folder.path, `${name}.pdf`)

async function write(name: string, pages: TablePages): Promise<void> {
  await writePdf(file(name), { title: name, language: 'en', at, pages: pages.pages, picture: () => null }, faces)
}

/** No text on another, none off the paper. */
function standsFree({ boxes }: TablePages, paper: Paper): void {
  const size = papers[paper]
  for (const [index, page] of boxes.entries()) {
    for (const [at, box] of page.entries()) {
      expect(
        box.x >= 0 && box.y >= 0 && box.x + box.w <= size.width && box.y + box.h <= size.height,
        `${box.text}`,
      ).toBe(true)
      for (const other of page.slice(at + 1)) {
        expect(boxesMeet(box, other), `page ${index + 1}: “${box.text}” on “${other.text}”`).toBe(false)
      }
    }
  }
}

async function inkless(name: string, { boxes, pages }: TablePages): Promise<readonly string[]> {
  run('pdftoppm', ['-r', '110', '-png', file(name), join(folder.path, name)])
  const digits = String(pages.length).length
  const empty: string[] = []
  for (const [index, page] of boxes.entries()) {
    const picture = join(folder.path, `${name}-${String(index + 1).padStart(digits, '0')}.png`)
    const { data, info } = await sharp(picture).greyscale().raw().toBuffer({ resolveWithObject: true })
    const scale = info.width / (pages[index]?.width ?? 1)
    for (const box of page) {
      let darkest = 255
      for (let y = Math.floor(box.y * scale); y <= Math.min((box.y + box.h) * scale, info.height - 1); y++) {
        for (let x = Math.floor(box.x * scale); x <= Math.min((box.x + box.w) * scale, info.width - 1); x++) {
          darkest = Math.min(darkest, data[y * info.width + x] ?? 255)
        }
      }
      if (darkest > 180) empty.push(`page ${index + 1}: ${box.name} “${box.text}”`)
    }
  }
  return empty
}

describe.each(cases)('$name', ({ name, sheets, paper }) => {
  const pages = tablePages(sheets, paper, faces)

  test('stands free on its paper', () => standsFree(pages, paper))

  test('pdf.js reads every cell', async () => {
    await write(name, pages)
    const read = await readPdf(file(name))
    expect(read.length).toBe(pages.pages.length)
    const text = bare(read.map(page => page.text).join(''))
    for (const sheet of sheets) {
      for (const column of sheet.columns) {
        // No word of a heading is broken.
        const [word = ''] = column.heading.split(' ')
        if (column.workbookOnly !== true) expect(text).toContain(word)
      }
      for (const row of sheet.rows) {
        row.forEach((cell, index) => {
          const column = sheet.columns[index]
          // What is done has a tick in its box, no word.
          if (column === undefined || isTick(column) || column.workbookOnly === true) return
          // A cell that breaks into lines is mixed with its neighbours' lines; its first word stands.
          const [word = ''] = cellWords(cell, column).split(/\s/)
          expect(text).toContain(bare(word))
        })
      }
    }
  })
})

test('tags say number, work and wall, twelve to an A4; each part of a set has its own', async () => {
  const tags = tagPages({ exhibitionTitle: 'Salt & Thread', hanging: orders.hanging }, 'A4', faces)
  standsFree(tags, 'A4')
  expect(tags.pages.length).toBe(4)
  await write('tags', tags)
  const read = await readPdf(file('tags'))
  const text = bare(read.map(page => page.text).join(''))
  for (const each of orders.hanging) {
    for (const { number } of each.parts.length === 0 ? [each] : each.parts) expect(text).toContain(number)
    expect(text).toContain(bare(each.faceName))
  }
  expect(text).toContain('after3,4')
  expect(text).toContain('No.8a')
  expect(text).toContain('No.8b')
})

const headings = (sheets: readonly TableSheet[]) => sheets.map(sheet => sheet.columns.map(column => column.heading))

test('a column that no row fills is left out, in each table for itself; what is ticked stays', () => {
  expect(headings(hardwareSheets(head, hardware)).slice(0, 2)).toEqual([
    ['What', 'Needed', 'Spare', 'In stock', 'To get', 'Drill bit', 'Tool', 'Counted', 'Counted again', 'Note'],
    ['What', 'Needed', 'Spare', 'To get', 'Counted', 'Counted again', 'Note'],
  ])
  const nothing = hardwareSheets(head, { ...hardware, lines: [] })[0]
  expect(nothing?.columns.length).toBe(10)
})

test('locks stand as numbers of their unit: 3600.4 mm is 3600, and 141 3/4 in by the tape (25.4 mm an inch)', () => {
  const rows = (unit: 'mm' | 'in') => {
    const [sheet] = lockSheets(head, register, { unit, steps, time })
    return sheet?.rows[0]?.slice(5, unit === 'mm' ? 7 : 9)
  }
  expect(rows('mm')).toEqual([
    { kind: 'number', value: 3600 },
    { kind: 'number', value: 946 },
  ])
  expect(rows('in')).toEqual([
    { kind: 'number', value: 141.75 },
    { kind: 'text', text: '141 3/4' },
    { kind: 'number', value: 37.25 },
    { kind: 'text', text: '37 1/4' },
  ])
})

test('a task stands on the day it begins, by hours and minutes of that day, with each team that does it', () => {
  const [sheet] = daySheets(head, days)
  const words = sheet?.rows.map(row => row.slice(0, 4).map((cell, index) => cellWords(cell, sheet.columns[index])))
  expect(words).toEqual([
    ['Day 1, team 1', '0:00', '10', 'set the wall out'],
    ['Day 1, team 1', '0:10', '28', 'hang'],
    ['Day 1, team 2', '0:10', '28', 'hang'],
    // Six hours are 360 minutes.
    ['Day 2, team 1', '0:07', '33', 'light on the wall'],
  ])
})

test('what is hung or shut has its tick', () => {
  const ticked = (sheets: readonly TableSheet[]) => {
    const [sheet] = sheets
    const column = sheet?.columns.findIndex(isTick) ?? -1
    return sheet?.rows.flatMap((row, index) => (row[column]?.kind === 'empty' ? [] : [index]))
  }
  expect(ticked(orderSheets(head, orders))).toEqual([5])
  expect(ticked(lockSheets(head, register, { unit: 'mm', steps, time }))).toEqual([0])
})

test('patches in inches are fluid ounces and square feet: 33.66 ml is 1.14, 0.3825 m² is 4.12 (NIST SP 811, from memory)', () => {
  const [sheet] = patchSheets(head, orders, 'in')
  const words = sheet?.rows[0]?.map((cell, index) => cellWords(cell, sheet.columns[index]))
  expect(words).toEqual([work(0).faceName, '3', '14', '1', '17', '1.14', '4.12', '34', ''])
})

withProgram('poppler (pdftoppm)', 'draws ink into every text box', () => {
  test.each(cases.filter(each => each.name !== 'orders-Tabloid'))('$name', async ({ name, sheets, paper }) => {
    const pages = tablePages(sheets, paper, faces)
    await write(name, pages)
    expect(await inkless(name, pages)).toEqual([])
  })
})

withProgram('openpyxl', 'reads the numbers of the hardware list', () => {
  test('needed, spare, in stock, to get', async () => {
    const path = join(folder.path, 'hardware.xlsx')
    const sheets = hardwareSheets(head, hardware)
    await writeWorkbook(path, { sheets, at, by: 'Tamsin Oake', paper: 'A4', thumbnail: () => null })
    const script = `import openpyxl,json,sys
sheet=openpyxl.load_workbook(sys.argv[1])['In total']
print(json.dumps([[c.value for c in row[:5]] for row in sheet.iter_rows()][-2:]))`
    expect(JSON.parse(run(python ?? 'python3', ['-c', script, path]))).toEqual([
      ['turned lock', 12, 2, 5, 9],
      ['a hook that is not chosen yet', 1204, 151, null, 1355],
    ])
  })
})
