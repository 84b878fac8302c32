/** Archives written entry after entry: what is in them, and that nothing is left of one that failed or was cancelled. */
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type Cell, writeArchive } from '../../../main/files/archive/write.ts'
import { limits } from '../../../main/files/tables/table.ts'
import { openZip } from '../../../main/files/tables/zip.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-archive-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const never = new AbortController().signal
const at = new Date('2031-03-14T16:20:00Z')

async function read(path: string, name: string): Promise<string> {
  const zip = await openZip(path, limits)
  try {
    return (await zip.read(name, never))?.toString('utf8') ?? 'not there'
  } finally {
    zip.close()
  }
}

test('texts, tables and files, each as it was given', async () => {
  const path = join(folder, 'all.zip')
  const beside = join(folder, 'beside.bin')
  writeFileSync(beside, 'as it is')
  const rows: Cell[][] = [
    ['plain', 1.5, null],
    ['', -2, 'a "quoted", text\r\nof two lines'],
  ]
  await writeArchive(
    path,
    [
      { name: 'read.txt', text: 'Ж and 🜁' },
      { name: 'table.csv', headings: ['text', 'figure', 'nothing'], rows },
      { name: 'files/beside.bin', path: beside },
    ],
    { at, signal: never },
  )
  expect(await read(path, 'read.txt')).toBe('Ж and 🜁')
  // RFC 4180: quotes are doubled, lines end with CR LF; what is empty is told from a text of nothing.
  expect(await read(path, 'table.csv')).toBe(
    '\uFEFFtext,figure,nothing\r\nplain,1.5,\r\n"",-2,"a ""quoted"", text\r\nof two lines"\r\n',
  )
  expect(await read(path, 'files/beside.bin')).toBe('as it is')
})

test('a table is never whole in memory: its rows are asked for as they are written', async () => {
  const path = join(folder, 'long.zip')
  let asked = 0
  function* rows(): Generator<Cell[]> {
    for (let row = 0; row < 60_000; row += 1) {
      asked += 1
      yield [row, 'x'.repeat(100)]
    }
  }
  await writeArchive(path, [{ name: 'long.csv', headings: ['row', 'text'], rows: rows() }], { at, signal: never })
  expect(asked).toBe(60_000)
  expect((await read(path, 'long.csv')).split('\r\n')).toHaveLength(60_002)
})

test('cancelled in the middle of a table, it says why and leaves no file', async () => {
  const path = join(folder, 'cancelled.zip')
  const cancel = new AbortController()
  function* rows(): Generator<Cell[]> {
    for (let row = 0; row < 200_000; row += 1) {
      if (row === 1000) cancel.abort(new Error('nobody wants it any more'))
      yield [row]
    }
  }
  const written = writeArchive(path, [{ name: 'long.csv', headings: ['row'], rows: rows() }], {
    at,
    signal: cancel.signal,
  })
  await expect(written).rejects.toThrow('nobody wants it any more')
  expect(existsSync(path)).toBe(false)
})

test('a row that cannot be read fails the whole, and leaves no file', async () => {
  const path = join(folder, 'failed.zip')
  function* rows(): Generator<Cell[]> {
    yield [1]
    throw new Error('the disk gave up')
  }
  const written = writeArchive(path, [{ name: 'bad.csv', headings: ['row'], rows: rows() }], { at, signal: never })
  await expect(written).rejects.toThrow('the disk gave up')
  expect(existsSync(path)).toBe(false)
})

test('a file that is not there fails the whole, and leaves no file', async () => {
  const path = join(folder, 'missing.zip')
  const written = writeArchive(path, [{ name: 'gone.jpg', path: join(folder, 'gone.jpg') }], { at, signal: never })
  await expect(written).rejects.toThrow(/ENOENT/)
  expect(existsSync(path)).toBe(false)
})
