/**
 * Planned movements on a real file: from the plan of a show in one act, fulfilled by what is recorded, open again once
 * that is struck or goes elsewhere, undone like everything else, and told what stands in their way.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { createHost } from '../../main/hosts/host.ts'
import { callOn, makeFixture } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

const today = '2031-06-01'

async function openedAt(at: string, folder: string, file: string, person = '') {
  const clock = { at, ids: 'p' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person })
  const open = async (input = {}) => (await callOn(host, 'planned.list', input)).lines
  return { host, open }
}

/** The fixture's two works on walls, both in the store since March; it is the first of June. */
async function begin() {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-planned-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const { host, open } = await openedAt(`${today}T08:00:00.000Z`, folder, file, known.person)
  const { pans = '', causeway = '', show = '', room = '', northFace = '' } = known
  const { id: store } = await callOn(host, 'location.add', { kind: 'place', name: 'Store 2' })
  await callOn(host, 'movement.add', { works: [pans, causeway], to: store, at: '2031-03-02T09:00:00Z' })
  const later = async (moment: string) => {
    await host.close()
    return openedAt(moment, folder, file, known.person)
  }
  return { host, file, pans, causeway, show, room, northFace, store, open, later }
}

test('a show is planned in one act, and what is recorded at the wall fulfils it, named or not', async () => {
  const { host, file, show, northFace, pans, causeway, open, store } = await begin()
  expect((await callOn(host, 'planned.list', { exhibition: show })).toPlan).toBe(2)
  const { plans } = await callOn(host, 'planned.fromShow', { exhibition: show, day: today, people: 'Ulla', hands: 2 })
  expect(
    (await open()).map(({ thing, words, spot, fromWords, findings }) => [thing, words, spot, fromWords, findings]),
  ).toEqual([
    [pans, 'Room 1, north', 'position 1', 'Store 2', []],
    [causeway, 'Room 1, north', 'position 2', 'Store 2', []],
  ])
  // Named, though it went elsewhere; and by its wall alone.
  const named = await callOn(host, 'movement.add', {
    works: [pans],
    to: store,
    at: `${today}T07:00:00Z`,
    plans: [plans[0]?.id ?? ''],
  })
  const hung = await callOn(host, 'movement.add', { works: [causeway], to: northFace, at: `${today}T07:30:00Z` })
  expect(await open()).toEqual([])
  const { movements } = await callOn(host, 'movement.list', { from: `${today}T00:00:00Z`, to: `${today}T23:59:59Z` })
  expect(movements.map(({ things }) => things.map(({ planned }) => planned))).toEqual([
    ['1 June 2031: to Room 1, north'],
    ['1 June 2031: to Room 1, north'],
  ])
  const done = await open({ state: 'done' })
  expect(done.map(line => [line.done?.movement, line.done?.words])).toEqual([
    [named.id, 'Store 2'],
    [hung.id, 'Room 1, north'],
  ])
  // Set right in its words, it stays fulfilled; at another place it is open again; struck, too.
  const again = await callOn(host, 'movement.correct', { movement: hung.id, why: 'with whom', people: 'Ulla Brandt' })
  expect(await open()).toEqual([])
  const moved = await callOn(host, 'movement.correct', { movement: again.id, why: 'it stayed', to: store })
  expect((await open()).map(({ thing }) => thing)).toEqual([causeway])
  const back = await callOn(host, 'movement.correct', { movement: moved.id, why: 'it did hang', to: northFace })
  expect(await open()).toEqual([])
  await callOn(host, 'movement.correct', { movement: back.id, why: 'another work', struck: true })
  await callOn(host, 'movement.correct', { movement: named.id, why: 'another work', struck: true })
  expect((await open()).map(({ thing }) => thing)).toEqual([pans, causeway])
  // One act: planned together, undone together; the record keeps the words of a plan that is gone.
  await callOn(host, 'edit.undo', {})
  expect(await open({ state: 'all' })).toEqual([])
  expect(
    (await callOn(host, 'movement.history', { kind: 'work', id: causeway })).movements.map(one => one.planned),
  ).toContain('1 June 2031: to Room 1, north')
  await callOn(host, 'edit.redo', {})
  expect((await open()).length).toBe(2)
  await host.close()
  expect(await checkCatalogue(file)).toEqual([])
})

test('ticks of a hanging that are taken into the record fulfil what was planned', async () => {
  const { host, show, northFace, open } = await begin()
  await callOn(host, 'planned.fromShow', { exhibition: show, day: today })
  const { works } = await callOn(host, 'wall.elevation', { exhibition: show, face: northFace })
  await callOn(host, 'placement.setState', { placements: works.map(({ placement }) => placement), to: 'hung' })
  expect(await callOn(host, 'movement.takeHung', { exhibition: show })).toEqual({ recorded: 2 })
  expect(await open()).toEqual([])
})

test('what is overdue comes first, and may be put on another day with all others', async () => {
  const { host: before, pans, causeway, room, store, later } = await begin()
  await callOn(before, 'planned.add', { works: [pans], to: room, day: '2031-06-20' })
  const { plans } = await callOn(before, 'planned.add', {
    works: [causeway],
    to: room,
    day: '2031-06-03',
    hour: '10:00',
  })
  const { host, open } = await later('2031-06-05T09:00:00.000Z')
  const { lines, overdue } = await callOn(host, 'planned.list', {})
  expect([overdue, lines.map(line => [line.thing, line.overdue, line.findings.map(({ text }) => text)])]).toEqual([
    1,
    [
      [causeway, true, ['Planned for 3 June 2031, 10:00, and not done. Record it, or plan another day.']],
      [pans, false, []],
    ],
  ])
  // The paper of a day to come has it too; that of a day gone by has what was planned then.
  const of = async (day: string) => (await open({ from: day, to: day })).map(({ thing }) => thing)
  expect([await of('2031-06-20'), await of('2031-06-03'), await of('2031-06-04')]).toEqual([
    [causeway, pans],
    [causeway],
    [],
  ])
  await callOn(host, 'planned.setDay', { ids: plans.map(({ id }) => id), day: '2031-06-21', hour: '' })
  expect((await open()).map(({ thing, day, hour }) => [thing, day, hour])).toEqual([
    [pans, '2031-06-20', ''],
    [causeway, '2031-06-21', ''],
  ])
  // One after the other: it leaves from where the plan before it takes it.
  await callOn(host, 'planned.add', { works: [pans], to: store, day: '2031-06-22' })
  expect((await open({ thing: pans, order: 'day' })).map(({ fromWords, words }) => [fromWords, words])).toEqual([
    ['Store 2', 'Room 1'],
    ['Room 1', 'Store 2'],
  ])
})

test('told at the plan: a damaged work that would leave, a case that does not pass, a set and its part', async () => {
  const { host, pans, causeway, show, room, store, open } = await begin()
  const told = async () => (await open()).map(({ findings }) => findings.map(({ code }) => code))
  const { id: away } = await callOn(host, 'location.add', { kind: 'elsewhere', name: 'Harrow Point House' })
  await callOn(host, 'damage.add', {
    work: pans,
    foundAt: '2031-05-30T09:00:00Z',
  })
  await callOn(host, 'planned.add', { works: [pans], to: away, day: '2031-06-02' })
  expect(await told()).toEqual([['damage-open']])
  const { id: crate } = await callOn(host, 'location.add', {
    kind: 'crate',
    name: 'Crate 9',
    width: 1600,
    height: 2300,
    depth: 1050,
  })
  await callOn(host, 'movement.add', { crates: [crate], to: store })
  await callOn(host, 'planned.add', { crates: [crate], to: room, day: '2031-06-03' })
  expect(await told()).toEqual([['damage-open'], ['does-not-pass']])
  expect((await open())[1]?.way).toBe('does not pass by the plan: by the doorway out of Room 1, 50 mm too large')
  const { id: set } = await callOn(host, 'set.make', {
    works: [pans, causeway],
    exhibition: show,
    title: 'Low tide',
    form: 'row',
    gapX: 30,
    gapY: 0,
  })
  await callOn(host, 'planned.add', { works: [set], to: room, day: '2031-06-02' })
  expect((await open({ thing: set }))[0]?.findings.map(({ text }) => text)).toEqual([
    'Low tide is planned to go to Room 1, and that day Salt pans to Harrow Point House: no hour says which comes first. Give both their hours, or take one off.',
    'The parts of Low tide come from several places: Salt pans from Harrow Point House; Causeway from Store 2. All of them are recorded at Room 1.',
  ])
  // A place with something planned to go there stays.
  await expect(callOn(host, 'location.remove', { id: away })).rejects.toThrow('Take that off the plan first')
})
