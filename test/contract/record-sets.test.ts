/**
 * Sets in the record: a set goes as one with a movement for each part, says which part stays behind, and is found where
 * its parts are; a set that is taken apart or altered past the triggers leaves the record as it was.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { createHost } from '../../main/hosts/host.ts'
import { movementSheet } from '../../src/sheets/movement-table.ts'
import { callOn, makeFixture } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

const [came, hung, parted, joined, now] = ['02', '03', '04', '05', '06'].map(day => `2031-03-${day}T09:00:00.000Z`)

/** A diptych of the fixture's two works, and a store. */
async function diptych() {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-sets-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-01T08:00:00.000Z', ids: 's' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person ?? '' })
  const { pans = '', causeway = '', show = '', room = '', northFace = '' } = known
  const { id: set } = await callOn(host, 'set.make', {
    works: [pans, causeway],
    exhibition: show,
    title: 'Low tide',
    form: 'row',
    gapX: 30,
    gapY: 0,
  })
  const { id: store } = await callOn(host, 'location.add', { kind: 'place', name: 'Store 2' })
  const where = async (id: string, at?: string) => {
    const { lines } = await callOn(host, 'movement.where', at === undefined ? {} : { at })
    return lines.find(line => line.id === id)
  }
  return { host, file, set, store, pans, causeway, show, room, northFace, where, loose: known.loose ?? '' }
}

test('a set is moved as one: each part has its place in one movement, and the sheet names the set once', async () => {
  const { host, set, pans, causeway, room, where, show } = await diptych()
  const { notes } = await callOn(host, 'movement.add', {
    works: [set],
    to: room,
    at: came,
    condition: 'as packed',
    arrived: [{ id: causeway, condition: 'corner rubbed' }],
  })
  expect(notes).toEqual([])
  for (const id of [set, pans, causeway]) expect((await where(id))?.words).toBe('Room 1')
  const { movements } = await callOn(host, 'movement.list', { from: came ?? '', to: now ?? '' })
  expect(movements.map(({ things }) => things.map(({ id, partOf, condition }) => [id, partOf, condition]))).toEqual([
    [
      [set, null, ''],
      [pans, set, ''],
      [causeway, set, 'corner rubbed'],
    ],
  ])
  const history = await callOn(host, 'movement.history', { kind: 'work', id: causeway })
  expect(history.movements.map(each => [each.withSet, each.condition, each.ownCondition])).toEqual([
    ['Low tide', 'as packed', 'corner rubbed'],
  ])
  const sheet = movementSheet({ days: '2 March', lines: [], movements, when: at => at.slice(0, 10), way: () => '' })
  const said = sheet.rows.map(row => row.flatMap(cell => ('text' in cell && cell.text !== '' ? [cell.text] : [])))
  expect(said).toEqual([
    ['2031-03-02', 'Low tide', 'first recorded', 'Room 1', 'as packed', 'Tamsin Oake, 2031-06-01'],
    ['L-1.1', 'with it: Salt pans'],
    ['L-1.2', 'with it: Causeway', 'corner rubbed'],
  ])
  // Of the whole catalogue the parts are counted, of a show the one object that it is there.
  const all = await callOn(host, 'movement.where', {})
  expect([all.places.map(({ words, works }) => [words, works])]).toEqual([[['Room 1', 2]]])
  const shown = await callOn(host, 'movement.where', { exhibition: show })
  expect(shown.places.map(({ words, works }) => [words, works])).toEqual([['Room 1', 1]])
  expect(shown.lines.find(line => line.id === set)).toMatchObject({ parts: 2, findings: [] })
})

test('a part that stays behind is said, the set is told apart, and follows its last part', async () => {
  const { host, set, pans, causeway, room, northFace, store, where } = await diptych()
  await callOn(host, 'movement.add', { works: [set], to: store, at: came })
  const left = await callOn(host, 'movement.add', { works: [set], staying: [causeway], to: room, at: hung })
  expect(left.notes.map(({ code, text }) => [code, text])).toEqual([
    ['part-stays', 'Low tide is not whole at Room 1: Causeway stays behind at Store 2.'],
  ])
  const apart = await where(set, hung)
  expect([apart?.words, apart?.findings.map(({ text }) => text)]).toEqual([
    'Room 1',
    ['Its parts are apart: Causeway at Store 2; the other at Room 1.'],
  ])
  // The one that stayed comes after: nothing stays behind any more, and the set is whole there.
  expect((await callOn(host, 'movement.add', { works: [causeway], to: room, at: parted })).notes).toEqual([])
  expect((await where(set))?.findings).toEqual([])
  // Part by part to the wall: with the last of them the set itself is there.
  const first = await callOn(host, 'movement.add', { works: [pans], to: northFace, at: joined })
  expect(first.notes.map(({ text }) => text)).toEqual([
    'Low tide is not whole at Room 1, north: Causeway stays behind at Room 1.',
  ])
  expect((await where(set))?.words).toBe('Room 1')
  await callOn(host, 'movement.add', { works: [causeway], to: northFace, at: now })
  const whole = await where(set)
  expect([whole?.words, whole?.since, whole?.findings]).toEqual(['Room 1, north', now, []])
  // From several places at once: said, though all go.
  await callOn(host, 'movement.add', { works: [pans], to: store, at: '2031-03-07T09:00:00Z' })
  const gathered = await callOn(host, 'movement.add', { works: [set], to: room, at: '2031-03-08T09:00:00Z' })
  expect(gathered.notes.map(({ text }) => text)).toEqual([
    'The parts of Low tide come from several places: Salt pans from Store 2; Causeway from Room 1, north. All of them are recorded at Room 1.',
  ])
})

test('what was set right keeps what was carried, in which set, and how it arrived', async () => {
  const { host, file, set, pans, causeway, room, store } = await diptych()
  const { id } = await callOn(host, 'movement.add', {
    works: [set],
    to: room,
    at: came,
    arrived: [
      { id: pans, condition: 'sound' },
      { id: causeway, condition: 'sound' },
    ],
  })
  const arrived = [{ id: causeway, condition: 'a scratch' }]
  await callOn(host, 'movement.correct', { movement: id, why: 'it was the store', to: store, arrived })
  const { movements } = await callOn(host, 'movement.list', { from: came ?? '', to: now ?? '' })
  expect(movements.at(-1)?.things.map(({ id: of, partOf, condition }) => [of, partOf, condition])).toEqual([
    [set, null, ''],
    [pans, set, 'sound'],
    [causeway, set, 'a scratch'],
  ])
  await callOn(host, 'edit.undo', {}).catch(() => undefined)
  await host.close()
  expect(await checkCatalogue(file)).toEqual([])
  const db = new Database(file)
  db.exec(`DROP TRIGGER only_added_moved_update; UPDATE moved SET condition = 'sound' WHERE condition = 'a scratch'`)
  db.close()
  expect((await checkCatalogue(file)).map(({ code }) => code)).toContain('record-chain')
})

test('what hangs as a set is taken into the record with its parts, but for one that went since', async () => {
  const { host, set, pans, causeway, store, show, northFace, where } = await diptych()
  await callOn(host, 'movement.add', { works: [set], to: store, at: came })
  const { works } = await callOn(host, 'wall.elevation', { exhibition: show, face: northFace })
  const placement = works.find(({ work }) => work === set)?.placement ?? ''
  await callOn(host, 'placement.setState', { placements: [placement], to: 'hung' })
  await callOn(host, 'movement.add', { works: [causeway], to: store })
  expect(await callOn(host, 'movement.takeHung', { exhibition: show })).toEqual({ recorded: 1 })
  expect((await where(set))?.words).toBe('Room 1, north')
  expect((await where(pans))?.words).toBe('Room 1, north')
  expect((await where(causeway))?.words).toBe('Store 2')
})

test('a set made of works that are together is where they are, and numbers with letters belong together', async () => {
  const { host, pans, causeway, loose, room, store, where, set, show } = await diptych()
  await callOn(host, 'set.takeApart', { id: set })
  await callOn(host, 'movement.add', { works: [pans, causeway], to: room, at: came })
  const { id: later } = await callOn(host, 'set.make', {
    works: [pans, causeway],
    exhibition: show,
    form: 'row',
    gapX: 30,
    gapY: 0,
  })
  const line = await where(later)
  expect([line?.words, line?.movement, line?.since]).toEqual(['Room 1', null, came])
  const { id: other } = await callOn(host, 'work.add', { title: 'Groyne, right' })
  await callOn(host, 'work.addNumber', { work: loose, kind: 'permanent', text: '2031.7.4a' })
  await callOn(host, 'work.addNumber', { work: other, kind: 'permanent', text: '2031.7.4 B' })
  const { wholes } = await callOn(host, 'movement.wholes', { works: [loose] })
  expect(wholes.map(({ set: of, name, parts }) => [of, name, parts.map(({ work }) => work)])).toEqual([
    [null, '2031.7.4 a, b', [loose, other]],
  ])
  const { notes } = await callOn(host, 'movement.add', { works: [loose], to: store, at: came })
  expect(notes.map(({ text }) => text)).toEqual([
    '2031.7.4 a, b is not whole at Store 2: Groyne, right stays behind, in no place on record.',
  ])
})
