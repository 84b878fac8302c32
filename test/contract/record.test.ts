/**
 * The record of movements: nothing of it can be changed, removed or replaced, by SQL past every procedure; it answers as
 * a plain reading of all movements does; undo never touches it; an altered one is found.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, describe, expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { answer } from '../../main/hosts/answer.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { worksStanding } from '../../main/services/record/standing.ts'
import { randomFrom } from '../unit/database/random-edits.ts'
import { callOn, type Known, makeFixture } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

async function opened(): Promise<{ host: Host; known: Known; file: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-record-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-01T08:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person ?? '' })
  return { host, known, file }
}

const refusal = async (host: Host, name: string, input: unknown) => {
  const answered = await answer(host, name, input)
  return answered.ok ? null : answered.refusal
}

async function recorded() {
  const all = await opened()
  const { pans = '', room = '' } = all.known
  const { id } = await callOn(all.host, 'movement.add', { works: [pans], to: room, at: '2031-03-02T09:10:00Z' })
  return { ...all, id }
}

test('a work is found in the record by any of its numbers, and called by the first of them alone', async () => {
  const { host, known } = await recorded()
  const { pans = '', show = '' } = known
  await callOn(host, 'work.addNumber', { work: pans, kind: 'former', text: 'Inv. 61/04' })
  for (const words of ['61/4', 'inv. 61/04', 'l-1.1']) {
    for (const scope of [{}, { exhibition: show }]) {
      const { lines } = await callOn(host, 'movement.where', { words, ...scope })
      expect(lines.map(({ id, number }) => [id, number])).toEqual([[pans, 'L-1.1']])
    }
  }
})

describe('a record', () => {
  test.each([
    ['changed', `UPDATE movement SET place_words = 'elsewhere'`],
    ['changed in what it carried', `UPDATE moved SET at = '2030-01-01T00:00:00.000Z'`],
    ['removed', 'DELETE FROM movement'],
    ['emptied', 'DELETE FROM moved'],
    [
      'replaced by its key',
      `INSERT OR REPLACE INTO moved SELECT id, movement, work, crate, at, 'x', '', '', NULL, '', '', '' FROM moved`,
    ],
    [
      'replaced by its row',
      `INSERT OR REPLACE INTO moved(rowid, id, movement, work, at, place) SELECT rowid, 'other', movement, work, at, 'x' FROM moved`,
    ],
    [
      'rewritten on the way',
      `INSERT INTO moved SELECT * FROM moved WHERE true ON CONFLICT (id) DO UPDATE SET place = 'x'`,
    ],
    ['parted from its work', `DELETE FROM work WHERE id = (SELECT work FROM moved)`],
  ])('cannot be %s, even inside an edit, by SQL on the open catalogue', async (_, sql) => {
    const { file } = await recorded()
    const db = new Database(file)
    onTestFinished(() => void db.close())
    db.pragma('foreign_keys = ON')
    const all = () =>
      JSON.stringify([db.prepare('SELECT * FROM movement').all(), db.prepare('SELECT * FROM moved').all()])
    const before = all()
    expect(() =>
      db.transaction(() => {
        db.exec(`UPDATE edit_now SET edit = 1; ${sql}; UPDATE edit_now SET edit = NULL`)
      })(),
    ).toThrow(/only added to|FOREIGN KEY/)
    expect(all()).toBe(before)
  })

  test('is not added outside an edit', async () => {
    const { file } = await recorded()
    const db = new Database(file)
    onTestFinished(() => void db.close())
    expect(() =>
      db.exec(`INSERT INTO moved SELECT 'n', movement, work, crate, at, place, '', '', NULL, '', '', '' FROM moved`),
    ).toThrow('outside an edit')
  })

  test('stays through every undo; what it speaks of cannot be removed or taken back', async () => {
    const { host, known, file } = await opened()
    const { id: work } = await callOn(host, 'work.add', { title: 'Groyne' })
    const { id: store } = await callOn(host, 'location.add', { kind: 'place', name: 'Store 2' })
    await callOn(host, 'movement.add', { works: [work], to: store })
    expect((await refusal(host, 'edit.undo', {}))?.code).toBe('undo-blocked')
    expect((await refusal(host, 'work.remove', { id: work }))?.code).toBe('recorded')
    expect((await refusal(host, 'location.remove', { id: store }))?.code).toBe('recorded')
    const { movements } = await callOn(host, 'movement.history', { kind: 'work', id: work })
    expect(movements.map(each => [each.words, each.recordedBy])).toEqual([['Store 2', 'Tamsin Oake']])
    expect(known.person).not.toBe('')
    expect(await checkCatalogue(file)).toEqual([])
  })

  test('that was altered with the triggers taken away is found', async () => {
    const { host, file } = await recorded()
    await host.close()
    const db = new Database(file)
    db.exec(`DROP TRIGGER only_added_movement_update; UPDATE movement SET recorded_by = 'Somebody Else'`)
    db.close()
    expect((await checkCatalogue(file)).map(({ code }) => code)).toContain('record-chain')
  })

  test('is set right by another that refers to it, once', async () => {
    const { host, known, id } = await recorded()
    const right = await callOn(host, 'movement.correct', {
      movement: id,
      why: 'it was the wall',
      to: known.northFace ?? '',
    })
    expect((await refusal(host, 'movement.correct', { movement: id, why: 'again', struck: true }))?.code).toBe(
      'corrected-already',
    )
    const told = await callOn(host, 'movement.history', { kind: 'work', id: known.pans ?? '' })
    expect(told.movements.map(each => [each.movement, each.corrects, each.correctedBy])).toEqual([
      [id, null, right.id],
      [right.id, id, null],
    ])
    const now = await callOn(host, 'movement.where', { words: 'salt pans' })
    expect(now.lines[0]?.words).toBe('Room 1, north')
    await callOn(host, 'movement.correct', { movement: right.id, why: 'another work', struck: true })
    expect((await callOn(host, 'movement.where', { words: 'salt pans' })).lines[0]?.place).toBeNull()
  })
})

test('scenario 11, the places: crate 5, the room’s floor, its wall, the hold, on every day, with names', async () => {
  const { host, known } = await opened()
  const { pans = '', room = '', northFace = '', show = '' } = known
  const crate = (
    await callOn(host, 'location.add', {
      kind: 'crate',
      name: 'Crate 5',
      holdHours: 24,
      width: 900,
      height: 900,
      depth: 300,
    })
  ).id
  const hold = (await callOn(host, 'location.add', { kind: 'place', name: 'Hold' })).id
  const lender = (await callOn(host, 'location.add', { kind: 'elsewhere', name: 'Quay Collection', address: 'Quay 4' }))
    .id
  const add = (things: { works?: string[]; crates?: string[] }, to: string, at: string, people: string) =>
    callOn(host, 'movement.add', { ...things, to, at, people })
  await add({ crates: [crate] }, lender, '2031-03-01T08:00:00Z', 'Quay')
  await add({ works: [pans] }, crate, '2031-03-01T09:00:00Z', 'Quay')
  await add({ crates: [crate] }, room, '2031-03-02T09:10:00Z', 'Oake, Lind')
  // Opened after 10 of its 24 hours: told, with both moments.
  const early = await add({ works: [pans] }, room, '2031-03-02T19:10:00Z', 'Oake')
  expect(early.notes.map(({ code, figures }) => [code, figures.holdHours, figures.opens])).toEqual([
    ['opened-early', 24, '2031-03-03T09:10:00.000Z'],
  ])
  await callOn(host, 'movement.add', {
    works: [pans],
    to: northFace,
    spot: 'position 4',
    at: '2031-03-04T10:00:00Z',
    people: 'Oake',
  })
  await add({ works: [pans] }, hold, '2031-05-20T15:00:00Z', 'Lind')
  const on = async (at: string) => {
    const { lines } = await callOn(host, 'movement.where', { at, exhibition: show, words: 'salt pans' })
    return `${lines[0]?.words}${lines[0]?.spot === '' ? '' : `, ${lines[0]?.spot}`}`
  }
  expect([
    await on('2031-03-01T12:00:00Z'),
    await on('2031-03-02T12:00:00Z'),
    await on('2031-03-03T12:00:00Z'),
    await on('2031-04-01T12:00:00Z'),
    await on('2031-05-21T12:00:00Z'),
  ]).toEqual(['Crate 5, at Quay Collection', 'Crate 5, at Room 1', 'Room 1', 'Room 1, north, position 4', 'Hold'])
  const { movements } = await callOn(host, 'movement.history', { kind: 'work', id: pans })
  expect(movements.map(each => [each.words, each.within, each.people, each.recordedBy])).toEqual([
    ['Crate 5', '', 'Quay', 'Tamsin Oake'],
    ['Room 1', 'Crate 5', 'Oake, Lind', 'Tamsin Oake'],
    ['Room 1', '', 'Oake', 'Tamsin Oake'],
    ['Room 1, north', '', 'Oake', 'Tamsin Oake'],
    ['Hold', '', 'Lind', 'Tamsin Oake'],
  ])
  // Said to hang while the record has it in the hold: two places, and the tick is the older word.
  const van = (await callOn(host, 'location.add', { kind: 'vehicle', name: 'Van 1' })).id
  await callOn(host, 'movement.add', { crates: [crate], to: van })
  expect((await refusal(host, 'movement.add', { crates: [van], to: crate }))?.code).toBe('inside-itself')
  await callOn(host, 'placement.setState', { placements: [known.pansPlace ?? ''], to: 'hung' })
  const twice = await callOn(host, 'movement.where', { exhibition: show })
  expect([twice.twice, twice.unrecorded, twice.without]).toEqual([1, 1, 2])
  expect(await callOn(host, 'movement.takeHung', { exhibition: show })).toEqual({ recorded: 1 })
  const after = await callOn(host, 'movement.where', { exhibition: show })
  expect([after.twice, after.unrecorded]).toEqual([0, 0])
})

test.each([1, 2, 3])('where on any day is what a plain reading of all movements says (seed %i)', async seed => {
  const { host, known } = await opened()
  const random = randomFrom(seed * 7919)
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T // from holds something
  const works = [known.pans ?? '', known.causeway ?? '', known.raking ?? '', known.loose ?? '']
  const crates: string[] = []
  for (const name of ['Crate 1', 'Crate 2', 'Crate 3'])
    crates.push((await callOn(host, 'location.add', { kind: 'crate', name })).id)
  const places = [known.room ?? '', known.northFace ?? '', known.eastFace ?? '', ...crates]
  interface One {
    id: string
    at: string
    things: string[]
    to: string
  }
  let log: One[] = []
  let refused = 0
  for (let step = 0; step < 90; step++) {
    const at = new Date(Date.UTC(2031, 2, 1) + Math.floor(random() * 60) * 86_400_000 + step * 1000).toISOString()
    if (log.length > 5 && random() < 0.15) {
      const wrong = pick(log)
      const struck = random() < 0.5
      const to = pick(places)
      const answered = await answer(host, 'movement.correct', {
        movement: wrong.id,
        why: 'x',
        ...(struck ? { struck } : { to }),
      })
      if (answered.ok) {
        const id = (answered.value as { id: string }).id // a correction answers with its id
        log = log.filter(each => each !== wrong)
        if (!struck) log.push({ ...wrong, id, to })
      } else refused++
      continue
    }
    const things = random() < 0.3 ? [pick(crates)] : [...new Set([pick(works), pick(works)])]
    const isCrate = crates.includes(things[0] ?? '')
    const to = pick(places)
    const answered = await answer(host, 'movement.add', {
      ...(isCrate ? { crates: things } : { works: things }),
      to,
      at,
    })
    if (answered.ok)
      log.push({ id: (answered.value as { id: string }).id, at, things, to }) // as above
    else refused++
  }
  expect(log.length).toBeGreaterThan(15)
  expect(refused).toBeGreaterThan(3)
  for (let day = 0; day < 62; day += 3) {
    const at = new Date(Date.UTC(2031, 2, 1, 12) + day * 86_400_000).toISOString()
    const { lines } = await callOn(host, 'movement.where', { at })
    for (const thing of [...works, ...crates]) {
      const own = log.filter(each => each.things.includes(thing) && each.at <= at)
      const last = own.reduce<One | null>(
        (best, each) =>
          best === null || each.at > best.at || (each.at === best.at && each.id > best.id) ? each : best,
        null,
      )
      expect(lines.find(line => line.id === thing)?.place ?? null, `${thing} at ${at}`).toBe(last?.to ?? null)
    }
  }
})

test('where on day t and one history are steps down an index, never a reading of the whole record', async () => {
  const { file } = await recorded()
  const db = new Database(file)
  onTestFinished(() => void db.close())
  const plan = (sql: string) =>
    (db.prepare(`EXPLAIN QUERY PLAN ${sql}`).all({ at: '', id: '' }) as { detail: string }[]).map(
      ({ detail }) => detail,
    )
  const where = plan(worksStanding)
  expect(where.filter(detail => /SCAN (moved|movement|last)\b/.test(detail))).toEqual([])
  expect(where.join('\n')).toMatch(/SEARCH moved USING (COVERING )?INDEX moved_work \(work=\? AND at<\?\)/)
  expect(where.join('\n')).toMatch(/INDEX movement_corrects/)
  const history = plan('SELECT * FROM moved JOIN movement ON movement.id = moved.movement WHERE moved.work = :id')
  expect(history.join('\n')).toMatch(/INDEX moved_work \(work=\?\)/)
})
