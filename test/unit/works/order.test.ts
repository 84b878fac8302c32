/** Lists of works: orders kept in memory say what SQLite says, at any depth, and never what stood before a write. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { createCatalogue } from '../../../main/database/catalogue.ts'
import { createHost, type Host } from '../../../main/hosts/host.ts'
import { clockFrom } from '../../../main/services/clock.ts'
import type { Input, Output } from '../../../src/contract/contract.ts'

let folder: string
let host: Host
const ids: string[] = []

async function call<N extends 'work.list' | 'work.add' | 'work.update' | 'work.addSize' | 'exhibition.add'>(
  name: N,
  input: Input<N>,
): Promise<Output<N>> {
  return (await host.run(name, input)) as Output<N> // the service of that name gave it
}

async function titles(input: Input<'work.list'>): Promise<readonly string[]> {
  return (await call('work.list', input)).works.map(work => work.title)
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-order-'))
  const file = join(folder, 'a.hangwright')
  createCatalogue(file, clockFrom(undefined)).close()
  host = createHost({ kind: 'command line', data: join(folder, 'data') })
  host.openFile(file)
  for (let at = 0; at < 230; at++) {
    const { id } = await call('work.add', {
      title: at % 23 === 0 ? '' : `Field ${String((at * 37) % 230).padStart(3, '0')}`,
      maker: ['Vorr, Ina', 'Ketil, Oda', ''][at % 3] ?? '',
      ...(at % 5 === 0 ? {} : { number: { kind: 'lender', text: `19${at % 10}.${at}` } }),
    })
    ids.push(id)
  }
})

afterAll(async () => {
  await host.close()
  rmSync(folder, { recursive: true, force: true })
})

test('pages join to the whole, and what lacks the title stands at the end both ways', async () => {
  const whole = await titles({ sort: 'title', limit: 500 })
  expect(whole).toHaveLength(230)
  expect(whole.slice(0, 220)).toEqual([...whole.slice(0, 220)].sort())
  expect(whole.slice(220).every(title => title === '')).toBe(true)
  const pages = await Promise.all([0, 100, 200].map(offset => titles({ sort: 'title', offset, limit: 100 })))
  expect(pages.flat()).toEqual(whole)
  const down = await titles({ sort: 'title', descending: true, limit: 500 })
  expect(down).toEqual([...whole.slice(0, 220).reverse(), ...whole.slice(220)])
  expect(await titles({ sort: 'title', offset: 230 })).toEqual([])
})

test('each sort holds every work once, up and down', async () => {
  for (const sort of ['order', 'number', 'title', 'maker', 'date', 'size', 'mass', 'limit', 'where'] as const) {
    for (const descending of [false, true]) {
      const { works, total } = await call('work.list', { sort, descending, limit: 500 })
      expect([sort, total, new Set(works.map(work => work.id)).size]).toEqual([sort, 230, 230])
    }
  }
})

test('a number is found by its beginning, in any spelling', async () => {
  const numbers = async (search: string) =>
    (await call('work.list', { search, sort: 'number', limit: 500 })).works.map(work => work.number)
  const beginning = ids.flatMap((_, at) => (at % 10 === 1 && String(at).startsWith('1') ? [`191.${at}`] : []))
  expect(beginning).toHaveLength(12)
  expect(await numbers('191.1')).toEqual(expect.arrayContaining(beginning))
  expect(await numbers('no. 193 . 3')).toEqual(['193.3', '193.33'])
  expect((await numbers('194')).filter(number => number.startsWith('194.'))).toHaveLength(23)
})

test('a write is seen by the next list, whatever was kept', async () => {
  const [first = ''] = ids.slice(7)
  const before = await call('work.list', { search: 'kelp', sort: 'title' })
  expect(before.total).toBe(0)
  const was = (await call('work.list', { sort: 'order', offset: 7, limit: 1 })).works[0]?.title ?? ''
  await call('work.update', { id: first, changes: { title: { was, to: 'A kelp bed' } } })
  expect(await titles({ search: 'kelp', sort: 'title' })).toEqual(['A kelp bed'])
  expect((await titles({ sort: 'title', limit: 1 }))[0]).toBe('A kelp bed')
})

test('what differs from its list is found, and a show leaves out what stands in it', async () => {
  const { id: exhibition } = await call('exhibition.add', { title: 'Kelp' })
  const { id } = await call('work.add', { title: 'Wrack', exhibition })
  for (const [kind, width] of [
    ['listed', 900],
    ['measured', 952],
  ] as const) {
    await call('work.addSize', { work: id, part: 'framed', height: 640, width, raw: '', kind })
  }
  expect(await titles({ settle: 'differs' })).toEqual(['Wrack'])
  expect(await titles({ exhibition })).toEqual(['Wrack'])
  expect((await call('work.list', { exhibition, outside: true })).total).toBe(230)
  expect(await titles({ exhibition, settle: 'unplaced', sort: 'size', descending: true })).toEqual(['Wrack'])
  expect(await titles({ exhibition, outside: true, search: 'wrack' })).toEqual([])
})
