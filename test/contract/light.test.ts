/**
 * What works receive of what house and lenders allow: across shows, in sets, by the record; and that readings stay.
 * Figures by hand: April has 30 days of 8 h.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { createHost } from '../../main/hosts/host.ts'
import type { Input, Name } from '../../src/contract/contract.ts'
import { callOn, makeFixture } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

const april = { kind: 'open' as const, first: '2031-04-01', last: '2031-04-30', hours: 8 }

/** A show that was lit all April, its first wall planned at 50 lx; today is in June. */
async function lit() {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-light-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-14T08:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  const call = <N extends Name>(name: N, input: Input<N>) => callOn(host, name, input)
  await call('desk.sit', { person: known.person })
  await call('light.addHours', { exhibition: known.show, ...april })
  const plannedLux = { was: null, to: 50 }
  await call('wall.plan', { exhibition: known.show, face: known.northFace, changes: { plannedLux } })
  const read = (work: string, at: string, points: number[], uv?: number) =>
    call('light.addReading', { work, at: `${at}T09:00:00.000Z`, points, ...(uv === undefined ? {} : { uv }) })
  const lend = async (work: string, terms: readonly Omit<Input<'loan.addTerm'>, 'loan'>[]) => {
    const { id: loan } = await call('loan.add', { party: known.lender, number: 'QC 7' })
    await call('loan.addWorks', { loan, works: [work] })
    for (const term of terms) await call('loan.addTerm', { loan, ...term })
    return loan
  }
  return { host, file, known, call, read, lend }
}

test('of house and lender the stricter holds, and both are told with whose word it is', async () => {
  const { known, call, lend } = await lit()
  await call('work.update', { id: known.pans, changes: { sensitivity: { was: '', to: 'high' } } })
  const said = 'No more than ten thousand lux-hours in a year.'
  const loan = await lend(known.pans, [{ kind: 'dose', high: 10_000, said }])
  const asked = { term: expect.any(String), loan, loanNumber: 'QC 7', partyName: 'Quay Collection', said }
  const told = await call('light.ledger', { work: known.pans })
  // 400 lx h a day: 10 000 are passed on the 26th day, 15 000 on no day of the show, eight days after it.
  expect(told.budgets).toEqual([
    { luxHours: 10_000, asked, ends: '2031-04-26', endsIfLonger: '2031-04-26' },
    { luxHours: 15_000, asked: null, ends: null, endsIfLonger: '2031-05-08' },
  ])
  expect(told.most).toBe(12_000)
  await call('loan.update', { id: loan, changes: { closed: { was: '', to: '2031-06-01' } } })
  expect((await call('light.ledger', { work: known.pans })).budgets).toHaveLength(1)
})

test('a lender’s level and ultraviolet are held hour by hour, unknown where nobody read', async () => {
  const { known, call, read, lend } = await lit()
  await lend(known.pans, [
    { kind: 'light', high: 50 },
    { kind: 'uv', high: 10 },
  ])
  await read(known.pans, '2031-04-11', [47, 60], 20)
  await read(known.pans, '2031-04-21', [50], 8)
  const { levels, violets, violet } = await call('light.ledger', { work: known.pans })
  expect(levels[0]).toMatchObject({ most: 50, hours: 80, within: 160, unknownHours: 0, first: '2031-04-11' })
  expect(violets.map(({ most, hours, within, unknownHours }) => [most, hours, within, unknownHours])).toEqual([
    [10, 80, 80, 80],
    [75, 0, 160, 80],
  ])
  // 20 µW/lm × 60 lx × 80 h and 8 × 50 × 80, as mWh/m².
  expect(violet).toMatchObject({ ever: 96 + 32, hours: 160, unknownHours: 80 })
})

test('ultraviolet read on the surface is told for each lumen too', async () => {
  const { known, call } = await lit()
  await call('light.addReading', { work: known.pans, points: [50], uvArea: 3.75, at: '2031-04-11T09:00:00.000Z' })
  const { readings, spans } = await call('light.ledger', { work: known.pans })
  expect(readings[0]).toMatchObject({ uv: 75, uvArea: 3.75 })
  expect(spans.at(-1)).toMatchObject({ uv: 75, uvHours: 160, uvDose: 600 })
})

test('parts of a set receive light where it hangs, and the set what its fullest part does', async () => {
  const { known, call, read } = await lit()
  const { id: set } = await call('set.make', {
    works: [known.pans, known.causeway],
    exhibition: known.show,
    form: 'row',
    gapX: 40,
    gapY: 40,
  })
  await read(set, '2031-04-11', [60])
  await read(known.causeway, '2031-04-21', [100])
  const most = async (work: string) => (await call('light.ledger', { work })).most
  expect(await most(known.pans)).toBe(10 * 8 * 50 + 20 * 8 * 60)
  expect(await most(known.causeway)).toBe(10 * 8 * 50 + 10 * 8 * 60 + 10 * 8 * 100)
  expect(await most(set)).toBe(await most(known.causeway))
  await call('work.update', { id: known.causeway, changes: { sensitivity: { was: '', to: 'high' } } })
  expect((await call('light.ledger', { work: set })).sensitivity).toBe('high')
})

test('a work that the record has on a wall of a lit show is lit, though it is on no checklist of it', async () => {
  const { known, call } = await lit()
  const { id: stray } = await call('work.add', { title: 'Groyne' })
  expect((await call('light.ledger', { work: stray })).spans).toEqual([])
  await call('movement.add', { works: [stray], to: known.northFace, at: '2031-04-21T07:00:00.000Z' })
  const { spans } = await call('light.ledger', { work: stray })
  expect(spans).toMatchObject([{ first: '2031-04-21', last: '2031-04-30', title: 'Low Water', luxHours: 4000 }])
})

test('all shows of a work are one ledger, and the list of all of them is sorted by column', async () => {
  const { known, call, read } = await lit()
  await call('entry.add', { exhibition: known.other, works: [known.pans] })
  await call('light.addHours', { exhibition: known.other, ...april, first: '2031-05-01', last: '2031-05-10', lux: 200 })
  await call('movement.add', { works: [known.pans], to: known.eastFace, at: '2031-05-01T07:00:00.000Z' })
  await call('work.update', { id: known.causeway, changes: { sensitivity: { was: '', to: 'medium' } } })
  await call('work.update', { id: known.pans, changes: { sensitivity: { was: '', to: 'high' } } })
  await read(known.causeway, '2031-04-01', [50], 10)
  const listed = async (more: Partial<Input<'light.list'>>) => {
    const { lines } = await call('light.list', more)
    return lines.map(({ title, shows, most }) => `${title}: ${shows.join(' + ')} ${most}`)
  }
  const pans = 'Salt pans: Low Water + High Water 28000'
  const [causeway, raking] = ['Causeway: Low Water 12000', 'Raking:  0']
  expect(await listed({})).toEqual([pans, causeway, raking])
  expect(await listed({ sort: 'title' })).toEqual([causeway, raking, pans])
  expect(await listed({ sort: 'title', turned: true })).toEqual([pans, raking, causeway])
  // Whose budget is not known stands last, either way round.
  expect(await listed({ turned: true })).toEqual([causeway, pans, raking])
  expect(await listed({ sort: 'sensitivity' })).toEqual([pans, causeway, raking])
  expect(await listed({ sort: 'uv' })).toEqual([causeway, pans, raking])
  expect(await listed({ sort: 'ends' })).toEqual([pans, causeway, raking])
  expect(await listed({ words: 'high' })).toEqual([pans])
  expect(await listed({ exhibition: known.other })).toEqual([pans])
})

test.each([
  "UPDATE light_reading SET lux = 40 WHERE note = 'first'",
  "UPDATE light_reading SET uv_area = 1 WHERE note = 'first'",
  "UPDATE light_reading SET hash = '' WHERE note = 'second'",
  "DELETE FROM light_reading WHERE note = 'first'",
])('who drops the triggers is found: %s', async sql => {
  const { known, call, host, file } = await lit()
  for (const note of ['first', 'second', 'third'])
    await call('light.addReading', { work: known.pans, points: [50], note })
  await host.close()
  expect(await checkCatalogue(file)).toEqual([])
  past(file, sql)
  const found = await checkCatalogue(file)
  expect(found.map(({ code }) => code)).toEqual(['record-chain'])
  expect(found[0]?.text).toContain('at Salt pans')
})

/** As somebody with SQL would, who puts the triggers back. */
function past(file: string, sql: string): void {
  const db = new Database(file)
  const kept = db
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'light_reading'",
    )
    .all()
  for (const { name } of kept) db.exec(`DROP TRIGGER ${name}`)
  db.exec(sql)
  for (const each of kept) db.exec(each.sql)
  db.close()
}
