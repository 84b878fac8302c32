/** Files as people send them, and files that are none: every kind that is refused has its own code. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { crc32, deflateRawSync } from 'node:zlib'
import Workbook from 'exceljs/lib/doc/workbook.js'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openPastedText, openTextFile } from '../../../main/files/tables/csv.ts'
import { openTable } from '../../../main/files/tables/open.ts'
import { limits, type Table } from '../../../main/files/tables/table.ts'
import { type Cell, columnLetters, type TableRow, textOf } from '../../../src/checklist/cell.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-files-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const watch = { signal: new AbortController().signal, progress: () => undefined }

function file(name: string, bytes: string | Uint8Array): string {
  const path = join(folder, name)
  writeFileSync(path, bytes)
  return path
}

async function allRows(table: Table, sheet = 0): Promise<TableRow[]> {
  const rows: TableRow[] = []
  for await (const batch of table.rows(sheet, watch)) rows.push(...batch)
  return rows
}

const texts = (rows: readonly TableRow[]) => rows.map(row => row.cells.map(textOf))

/** Opens and reads to the end, as an import does. */
async function read(name: string, bytes: string | Uint8Array): Promise<TableRow[]> {
  return allRows(await openTable(file(name, bytes), name, watch))
}

/** Packs deflated entries; `declared` lies about the size of one. */
function zip(entries: readonly { name: string; content: Buffer; declared?: number }[]): Buffer {
  const pieces: Buffer[] = []
  const directory: Buffer[] = []
  let offset = 0
  for (const { name, content, declared } of entries) {
    const packed = deflateRawSync(content)
    const header = Buffer.alloc(30)
    header.writeUInt32LE(0x04034b50, 0)
    header.writeUInt16LE(20, 4)
    header.writeUInt16LE(8, 8)
    header.writeUInt32LE(crc32(content), 14)
    header.writeUInt32LE(packed.length, 18)
    header.writeUInt32LE(declared ?? content.length, 22)
    header.writeUInt16LE(name.length, 26)
    const central = Buffer.alloc(46)
    central.writeUInt32LE(0x02014b50, 0)
    header.copy(central, 6, 4, 30)
    central.writeUInt32LE(offset, 42)
    pieces.push(header, Buffer.from(name), packed)
    directory.push(central, Buffer.from(name))
    offset += 30 + name.length + packed.length
  }
  const central = Buffer.concat(directory)
  const end = Buffer.alloc(22)
  end.writeUInt32LE(0x06054b50, 0)
  end.writeUInt16LE(entries.length, 8)
  end.writeUInt16LE(entries.length, 10)
  end.writeUInt32LE(central.length, 12)
  end.writeUInt32LE(offset, 16)
  return Buffer.concat([...pieces, central, end])
}

const types =
  '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>'
const workbookXml = '<workbook><sheets><sheet name="List" sheetId="1" r:id="rId1"/></sheets></workbook>'
const relations =
  '<Relationships><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>'

function bareWorkbook(sheet: Buffer, declared?: number): Buffer {
  return zip([
    { name: '[Content_Types].xml', content: Buffer.from(types) },
    { name: 'xl/workbook.xml', content: Buffer.from(workbookXml) },
    { name: 'xl/_rels/workbook.xml.rels', content: Buffer.from(relations) },
    { name: 'xl/worksheets/sheet1.xml', content: sheet, ...(declared === undefined ? {} : { declared }) },
  ])
}

async function workbook(fill: (book: InstanceType<typeof Workbook>) => void): Promise<Uint8Array> {
  const book = new Workbook()
  fill(book)
  return new Uint8Array(await book.xlsx.writeBuffer())
}

describe('text in every encoding that spreadsheets write', () => {
  const text =
    'Künstler;Titel;Maße\r\nÉlodie Grün;Été à la mer – «soir»;49,8 × 69,2 cm\r\nJürgen Weiß;Spätsommer;½ m\r\n'
  const expected = [
    ['Künstler', 'Titel', 'Maße'],
    ['Élodie Grün', 'Été à la mer – «soir»', '49,8 × 69,2 cm'],
    ['Jürgen Weiß', 'Spätsommer', '½ m'],
  ]
  const big = Buffer.from(`\ufeff${text}`, 'utf16le').swap16()
  const encoded: readonly (readonly [string, Uint8Array])[] = [
    ['utf-8', Buffer.from(text)],
    ['utf-8', Buffer.from(`\ufeff${text}`)],
    ['utf-16le', Buffer.from(`\ufeff${text}`, 'utf16le')],
    ['utf-16le', Buffer.from(text, 'utf16le')],
    ['utf-16be', big],
    ['windows-1252', Buffer.from(text.replaceAll('–', '\u0096'), 'latin1')],
  ]
  for (const [i, [name, bytes]] of encoded.entries()) {
    test(`${name}, form ${i + 1}`, async () => {
      const table = await openTextFile(file(`e${i}.csv`, bytes), watch)
      expect([table.encoding, table.separator]).toEqual([name, ';'])
      expect(texts(await allRows(table))).toEqual(expected)
    })
  }

  /** Bytes from the Unicode consortium's mapping tables for Mac OS Roman and IBM code page 850 (from memory). */
  test('old Mac and DOS tables are told by the words they make', async () => {
    const mac = Buffer.from([
      0x54, 0x69, 0x74, 0x65, 0x6c, 0x3b, 0x4f, 0x72, 0x74, 0x0d, 0x4d, 0x8e, 0x6d, 0x6f, 0x69, 0x72, 0x65, 0x3b, 0x4d,
      0x9f, 0x6e, 0x63, 0x68, 0x65, 0x6e, 0x0d,
    ])
    const dos = Buffer.from([
      0x54, 0x69, 0x74, 0x65, 0x6c, 0x3b, 0x4f, 0x72, 0x74, 0x0d, 0x0a, 0x4d, 0x82, 0x6d, 0x6f, 0x69, 0x72, 0x65, 0x3b,
      0x4d, 0x81, 0x6e, 0x63, 0x68, 0x65, 0x6e, 0x0d, 0x0a,
    ])
    for (const [name, bytes] of [
      ['macintosh', mac],
      ['ibm850', dos],
    ] as const) {
      const table = await openTextFile(file(`${name}.csv`, bytes), watch)
      expect(table.encoding).toBe(name)
      expect(texts(await allRows(table))).toEqual([
        ['Titel', 'Ort'],
        ['Mémoire', 'München'],
      ])
    }
  })
})

describe('separators and quotes', () => {
  const rows = async (text: string) => {
    const table = await openPastedText(text, watch)
    return { separator: table.separator, rows: texts(await allRows(table)) }
  }
  test('finds the separator among decimal commas', async () => {
    expect((await rows('a;b\n1,5 x 2,5;x\n3,5 x 4,5;y\n')).separator).toBe(';')
    expect((await rows('a,b,c\n1;2,x,y\n')).separator).toBe(',')
    expect((await rows('a\tb\n1,5\t2,5\n')).separator).toBe('\t')
    expect(await rows('sep=;\na;b\n')).toMatchObject({ separator: ';', rows: [['a', 'b']] })
  })
  test('keeps inch marks, line breaks and the numbers of rows', async () => {
    expect((await rows('Title,Size\nNets,"24 1/2"" x 36"""\n\n"a\nb",24" x 36"\n')).rows).toEqual([
      ['Title', 'Size'],
      ['Nets', '24 1/2" x 36"'],
      [],
      ['a\nb', '24" x 36"'],
    ])
  })
  test('leaves control characters out and says where', async () => {
    const table = await openPastedText('Title,Maker\nNe\u0000ts,Bo\u0007 Lind\nSalt\u000bpans,x\n', watch)
    expect(texts(await allRows(table)).slice(1)).toEqual([
      ['Nets', 'Bo Lind'],
      ['Salt\npans', 'x'],
    ])
    expect(table.remarks()).toEqual(['Control characters were left out in rows 2, 3.'])
  })
  test('says where a quotation mark is never closed', async () => {
    await expect(rows('Title,Maker\nNets,"Bo Lind\nSalt pans,x\n')).rejects.toMatchObject({
      code: 'quote-not-closed',
      details: { row: 2 },
    })
  })
})

describe('workbooks', () => {
  const cell = (rows: readonly TableRow[], row: number, column: number): Cell | undefined =>
    rows.find(one => one.row === row)?.cells[column]

  test('merged titles, kept results of formulas, dates that were fractions, units of formats, rich text, hidden sheets', async () => {
    const bytes = await workbook(book => {
      const cover = book.addWorksheet('Cover')
      cover.getCell('A1').value = 'Checklist'
      const sheet = book.addWorksheet('Works', { state: 'hidden' })
      sheet.mergeCells('A1:D1')
      sheet.getCell('A1').value = 'Low Water'
      sheet.getRow(2).values = ['Title', 'Maker', 'Size', 'Weight']
      sheet.getRow(3).values = [
        'Nets',
        { richText: [{ text: 'Bo ' }, { text: 'Lind' }] },
        new Date(Date.UTC(2026, 0, 2)),
        2.5,
      ]
      sheet.getCell('C3').numFmt = 'd-mmm'
      sheet.getCell('D3').numFmt = '0.0 "kg"'
      sheet.getRow(4).values = ['Salt pans', 'Ada Ruel', { formula: 'A1&B1', result: '30 x 40 cm' }, { formula: '1+1' }]
      sheet.mergeCells('B5:B6')
      sheet.getCell('B5').value = 'Ada Ruel'
      sheet.getCell('A5').value = 'One'
      sheet.getCell('A6').value = 'Two'
    })
    const table = await openTable(file('list.xlsx', bytes), 'list.xlsx', watch)
    expect(table.sheets.map(sheet => [sheet.name, sheet.hidden])).toEqual([
      ['Cover', false],
      ['Works', true],
    ])
    const rows = await allRows(table, 1)
    expect(rows[0]).toEqual({ row: 1, cells: ['Low Water'], merged: [[0, 3]] })
    expect(rows.find(row => row.row === 3)?.cells).toEqual([
      'Nets',
      'Bo Lind',
      { kind: 'date', text: '2-Jan', day: '2026-01-02' },
      { kind: 'number', text: '2.5 kg', number: 2.5 },
    ])
    expect(cell(rows, 4, 2)).toBe('30 x 40 cm')
    expect(cell(rows, 4, 3)).toEqual({ kind: 'fault', text: '=1+1' })
    expect(cell(rows, 6, 1)).toBe('Ada Ruel')
    expect(table.remarks()[0]).toContain('formulas')
  })
})

describe('hostile and mistaken files', () => {
  const refused = async (name: string, bytes: string | Uint8Array) =>
    read(name, bytes).then(
      () => 'taken',
      (error: { code?: string }) => error.code,
    )

  test('each has its own refusal', async () => {
    const book = await workbook(each => each.addWorksheet('List').addRow(['Title', 'Maker']))
    const ole = Buffer.concat([Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]), Buffer.alloc(600)])
    const locked = Buffer.concat([ole, Buffer.from('EncryptedPackage', 'utf16le')])
    expect(await refused('a.xlsx', locked)).toBe('password-protected')
    expect(await refused('a.xls', ole)).toBe('old-workbook')
    expect(await refused('a.xlsx', '%PDF-1.7\n%âã')).toBe('pdf-file')
    expect(await refused('a.xls', '<html><table><tr><td>Title</td></tr></table></html>')).toBe('web-page')
    expect(await refused('a.csv', book)).toBe('wrong-ending')
    expect(await refused('a.xlsx', 'Title,Maker\nNets,Bo\n')).toBe('wrong-ending')
    expect(await refused('a.xlsx', zip([{ name: 'photo.jpg', content: Buffer.from('x') }]))).toBe('not-a-workbook')
    expect(await refused('a.xlsx', book.subarray(0, Math.floor(book.length * 0.6)))).toBe('damaged-file')
    expect(await refused('a.csv', '')).toBe('empty-file')
    expect(await refused('a.csv', Buffer.from(Array.from({ length: 4000 }, (_, i) => (i * 7) % 31)))).toBe(
      'not-a-table',
    )
  })

  test('16,384 columns, in text and in a workbook', async () => {
    const wide = Array.from({ length: 16_384 }, (_, i) => `c${i}`).join(',')
    expect(await refused('wide.csv', `${wide}\n${wide}\n`)).toBe('too-many-columns')
    const book = await workbook(each => {
      each.addWorksheet('List').getCell('XFD3').value = 'far out'
    })
    expect(await refused('wide.xlsx', book)).toBe('too-many-columns')
  })

  test('a cell that never ends', async () => {
    expect(await refused('long.csv', `Title,Note\nNets,"${'x'.repeat(200_000)}"\n`)).toBe('cell-too-long')
  })

  test('an entry that lies about its size', async () => {
    const sheet = Buffer.from('<worksheet><sheetData></sheetData></worksheet>'.padEnd(3e6))
    expect(await refused('lie.xlsx', bareWorkbook(sheet, 100))).toBe('damaged-file')
  })

  test('a bomb: a small file of a gigabyte is refused before it is unpacked, in little memory', async () => {
    const bytes = bareWorkbook(Buffer.alloc(300e6, 0x20))
    expect(bytes.length).toBeLessThan(1e6)
    const path = file('bomb.xlsx', bytes)
    const open = new URL('../../../main/files/tables/open.ts', import.meta.url).href
    // A worker with 64 MB: unpacking the sheet into text would end it.
    const code = `import(${JSON.stringify(open)}).then(({ openTable }) => openTable(${JSON.stringify(path)}, 'bomb.xlsx', { signal: new AbortController().signal, progress() {} }))
      .then(() => 'taken', error => error.code).then(said => require('node:worker_threads').parentPort.postMessage(said))`
    const said = await new Promise((resolve, reject) => {
      const worker = new Worker(code, { eval: true, resourceLimits: { maxOldGenerationSizeMb: 64 } })
      worker.once('message', resolve)
      worker.once('error', reject)
    })
    expect(said).toBe('too-large-inside')
  })

  test('more filled cells than a checklist has', async () => {
    const row = (n: number) =>
      `<row r="${n}">${Array.from({ length: 400 }, (_, i) => `<c r="${columnLetters(i)}${n}"><v>1</v></c>`).join('')}</row>`
    const cells = Array.from({ length: 60 }, (_, i) => row(i + 1)).join('')
    const sheet = Buffer.from(`<worksheet><sheetData>${cells}</sheetData></worksheet>`)
    const few = { ...limits, cells: 20_000 }
    const path = file('many.xlsx', bareWorkbook(sheet))
    await expect(
      openTable(path, 'many.xlsx', watch, { limits: few }).then(table => allRows(table)),
    ).rejects.toMatchObject({ code: 'too-many-cells' })
  })

  test('cancelling stops the reading', async () => {
    const stop = new AbortController()
    const table = await openTextFile(file('long-list.csv', 'Title,Maker\n'.repeat(50_000)), watch)
    const reading = async () => {
      for await (const _batch of table.rows(0, { signal: stop.signal, progress: () => stop.abort() }));
    }
    await expect(reading()).rejects.toMatchObject({ code: 'cancelled' })
  })
})
