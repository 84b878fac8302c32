/**
 * Records of damage: a damaged work stays in the house however it would be carried away, until the record is closed;
 * nothing of a record can be changed or removed, through no procedure and by no statement; an altered one is found.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, describe, expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { answer } from '../../main/hosts/answer.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import type { Name } from '../../src/contract/contract.ts'
import { callOn, give, type Known, makeFixture, onePixel } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

async function opened(): Promise<{ host: Host; known: Known; file: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-damage-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-14T18:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person })
  return { host, known, file }
}

const refusal = async (host: Host, name: Name, input: unknown) => {
  const answered = await answer(host, name, input)
  return answered.ok ? null : answered.refusal
}
const on = (time: string) => `2031-06-14T${time}:00.000Z`
const foundAt = on('10:05')

/** A work in Crate 5 in Room 1, found damaged at 10:05; a van at the door and the address of its owner. */
async function damaged() {
  const all = await opened()
  const { host, known } = all
  const { id: crate } = await callOn(host, 'location.add', { kind: 'crate', name: 'Crate 5' })
  const { id: outer } = await callOn(host, 'location.add', { kind: 'crate', name: 'Crate 6' })
  const { id: van } = await callOn(host, 'location.add', { kind: 'vehicle', name: 'Van 1' })
  const { id: owner } = await callOn(host, 'location.add', { kind: 'elsewhere', name: 'Quay Collection' })
  const { id: dock } = await callOn(host, 'location.add', { kind: 'place', name: 'Their dock', parent: owner })
  const move = (what: { works?: string[]; crates?: string[] }, to: string, time: string) =>
    refusal(host, 'movement.add', { ...what, to, at: on(time) })
  expect(await move({ works: [known.pans] }, crate, '08:00')).toBeNull()
  expect(await move({ crates: [crate] }, known.room, '08:10')).toBeNull()
  const { id: damage } = await callOn(host, 'damage.add', { work: known.pans, foundAt, reference: 'D-0007' })
  return { ...all, crate, outer, van, owner, dock, move, damage }
}

async function sign(host: Host, report: string): Promise<void> {
  const note = { was: '', to: 'A joint of the frame has opened, 2 mm.' }
  await callOn(host, 'condition.update', { id: report, changes: { note } })
  const strokes = [[100, 200, 300, 100, 500, 220]]
  await callOn(host, 'condition.sign', { report, role: 'registrar', name: 'Tamsin Oake', strokes })
  await callOn(host, 'condition.sign', { report, role: 'courier', name: 'Bo Lind', strokes })
  await callOn(host, 'condition.complete', { report })
}

/** All that it lacks, and its end. */
async function close(host: Host, known: Known, damage: string): Promise<void> {
  const { id: report } = await callOn(host, 'condition.add', { work: known.pans, kind: 'check' })
  await callOn(host, 'condition.addPhoto', { report, handle: give(host, 'corner.png', onePixel) })
  await callOn(host, 'damage.say', { damage, kind: 'report', report })
  await sign(host, report)
  await callOn(host, 'damage.say', { damage, kind: 'owner told', whom: 'Ines Maro', at: on('10:35') })
  await callOn(host, 'damage.say', { damage, kind: 'action', said: 'Tape over the joint, by leave of its owner.' })
  await callOn(host, 'damage.close', { damage, why: 'its owner agrees to the journey' })
}

describe('a damaged work stays in the house', () => {
  test('by itself, in its crate, in a crate around that, and by a word that comes late', async () => {
    const { host, known, file, crate, outer, van, owner, dock, move, damage } = await damaged()
    const works = [known.pans]
    for (const to of [van, owner, dock]) {
      expect(await move({ works }, to, '11:00')).toMatchObject({
        code: 'damage-open',
        field: 'works.0',
        details: { damage, reference: 'D-0007' },
      })
    }
    expect(await move({ crates: [crate] }, van, '11:00')).toMatchObject({ code: 'damage-open', field: 'crates.0' })
    const asked = await refusal(host, 'movement.check', { crates: [crate], to: van })
    expect(asked?.message).toContain('D-0007')
    expect(asked?.message).toContain('Crate 5')
    // Others may go, and so may an empty crate; it does not follow them.
    expect(await move({ works: [known.causeway] }, van, '11:10')).toBeNull()
    expect(await move({ crates: [outer] }, van, '11:20')).toBeNull()
    expect(await move({ works }, outer, '11:30')).toMatchObject({ code: 'damage-open' })
    expect(await move({ crates: [crate] }, outer, '11:30')).toMatchObject({ code: 'damage-open' })
    // Put into it before it went: then it would have gone with it.
    expect(await move({ works }, outer, '11:15')).toMatchObject({ code: 'damage-open' })
    // Within the house it goes where it is safe.
    expect(await move({ works }, known.northFace, '11:40')).toBeNull()
    expect(await move({ crates: [crate] }, van, '11:50')).toBeNull()
    // Before it was found it was nobody's damage, and where it is already nothing holds it back.
    expect(await move({ works: [known.raking] }, van, '09:00')).toBeNull()
    await callOn(host, 'damage.add', { work: known.raking, foundAt })
    expect(await move({ works: [known.raking] }, crate, '12:00')).toBeNull()
    expect(await move({ crates: [crate] }, owner, '12:10')).toMatchObject({ code: 'damage-open' })
    expect(await checkCatalogue(file)).toEqual([])
  })

  test('with the set that it is a part of, and with each part of a damaged set', async () => {
    const { host, known, van, move } = await damaged()
    const pair = {
      works: [known.causeway, known.raking],
      exhibition: known.show,
      form: 'row',
      gapX: 30,
      gapY: 0,
    } as const
    const { id: set } = await callOn(host, 'set.make', { ...pair, works: [...pair.works] })
    await callOn(host, 'damage.add', { work: known.causeway, foundAt })
    expect(await move({ works: [known.raking] }, van, '11:00')).toBeNull()
    expect(await move({ works: [set] }, van, '11:05')).toMatchObject({ code: 'damage-open' })
    await callOn(host, 'damage.add', { work: set, foundAt: on('12:00') })
    expect(await move({ works: [known.raking] }, known.room, '12:10')).toBeNull()
    expect(await move({ works: [known.raking] }, van, '12:20')).toMatchObject({ code: 'damage-open' })
  })

  test('also where a movement is set right', async () => {
    const { host, known, van, move } = await damaged()
    expect(await move({ works: [known.pans] }, known.northFace, '11:00')).toBeNull()
    const { movements } = await callOn(host, 'movement.history', { kind: 'work', id: known.pans })
    const wrong = { movement: movements.at(-1)?.movement ?? '', to: van, why: 'it was the van' }
    expect(await refusal(host, 'movement.correct', wrong)).toMatchObject({ code: 'damage-open' })
  })

  test('also where the movement that brought it in is struck, by itself or in its crate', async () => {
    const { host, known, crate, van, move, damage } = await damaged()
    const strike = async (kind: 'work' | 'crate', id: string) => {
      const { movements } = await callOn(host, 'movement.history', { kind, id })
      const last = movements.filter(each => !each.struck && each.correctedBy === null).at(-1)
      const asked = { movement: last?.movement ?? '', struck: true as const, why: 'it never came' }
      return refusal(host, 'movement.correct', asked)
    }
    // It came in the van before it was found damaged, and was taken out of it after.
    expect(await move({ works: [known.raking] }, van, '09:00')).toBeNull()
    expect(await move({ works: [known.raking] }, known.northFace, '09:30')).toBeNull()
    const { id: other } = await callOn(host, 'damage.add', { work: known.raking, foundAt })
    const held = await strike('work', known.raking)
    expect(held).toMatchObject({ code: 'damage-open', field: 'struck', details: { damage: other } })
    expect(held?.message).toContain('Set the movement right instead of striking it')
    // A movement within the house says nothing of that.
    expect(await move({ works: [known.raking] }, known.room, '11:00')).toBeNull()
    expect(await strike('work', known.raking)).toBeNull()
    // In its crate: packed into the van, and out of it again, before the damage was found.
    expect(await move({ crates: [crate] }, van, '08:20')).toBeNull()
    expect(await move({ crates: [crate] }, known.room, '09:40')).toBeNull()
    expect(await strike('crate', crate)).toMatchObject({ code: 'damage-open', details: { damage } })
    await close(host, known, damage)
    expect(await strike('crate', crate)).toBeNull()
  })

  test('until it is closed, and again once it is opened', async () => {
    const { host, known, crate, van, move, damage } = await damaged()
    expect(await refusal(host, 'damage.close', { damage, why: 'in haste' })).toMatchObject({ code: 'incomplete' })
    await close(host, known, damage)
    expect((await callOn(host, 'damage.list', {})).lines).toMatchObject([{ reference: 'D-0007', lacks: [] }])
    await callOn(host, 'damage.reopen', { damage, why: 'the joint opens further' })
    expect(await move({ crates: [crate] }, van, '13:00')).toMatchObject({ code: 'damage-open' })
    await callOn(host, 'damage.close', { damage, why: 'it is held' })
    expect(await move({ crates: [crate] }, van, '13:00')).toBeNull()
  })

  test('and the list of the end says so, with its reference', async () => {
    const { host, known, damage } = await damaged()
    const of = async () =>
      (await callOn(host, 'leaving.list', { exhibition: known.show })).lines.find(({ id }) => id === known.pans)
    expect(await of()).toMatchObject({
      damage: [{ id: damage, reference: 'D-0007' }],
      lacks: [{ code: 'damage', stops: true, text: 'Damage D-0007 is not closed: it stays until it is.' }, {}],
    })
    await close(host, known, damage)
    expect((await of())?.lacks.map(({ code }) => code)).toEqual(['no-report'])
  })
})

test('it was moved first also where the crate that it lay in was', async () => {
  const { host, known, crate, outer, move, damage } = await damaged()
  const movedFirst = async () => (await callOn(host, 'damage.get', { id: damage })).movedFirst
  expect(await move({ crates: [outer] }, known.room, '10:20')).toBeNull()
  expect(await movedFirst()).toBeNull()
  expect(await move({ crates: [crate] }, outer, '10:30')).toBeNull()
  expect(await movedFirst()).toBe(on('10:30'))
  const { movements } = await callOn(host, 'movement.history', { kind: 'crate', id: crate })
  const wrong = { movement: movements.at(-1)?.movement ?? '', struck: true as const, why: 'it stayed' }
  await callOn(host, 'movement.correct', wrong)
  expect(await movedFirst()).toBeNull()
  // Two crates deep, then by itself when it is out of both.
  expect(await move({ crates: [crate] }, outer, '10:40')).toBeNull()
  expect(await move({ crates: [outer] }, known.room, '10:50')).toBeNull()
  expect(await movedFirst()).toBe(on('10:40'))
})

test('closed late and opened again late it is right on earlier days, and its chain holds', async () => {
  const { host, known, file, damage } = await damaged()
  const later = { at: '2031-06-20T09:00:00.000Z', ids: 'z' }
  const { id: report } = await callOn(host, 'condition.add', { work: known.pans, kind: 'check' })
  await callOn(host, 'condition.addPhoto', { report, handle: give(host, 'corner.png', onePixel) })
  await callOn(host, 'damage.say', { damage, kind: 'report', report })
  await sign(host, report)
  await host.close()
  const next = createHost({ kind: 'command line', data: `${file}-data`, clock: later, checksOutput: true })
  onTestFinished(() => next.close())
  next.openFile(file)
  await callOn(next, 'desk.sit', { person: known.person })
  const told = { damage, kind: 'owner told', whom: 'Ines Maro', at: on('10:35') } as const
  await callOn(next, 'damage.say', told)
  await callOn(next, 'damage.say', { damage, kind: 'action', said: 'held', at: '2031-06-15T09:00:00.000Z' })
  const close = (at: string) => refusal(next, 'damage.close', { damage, why: 'its owner agrees', at })
  expect(await close('2031-06-15T08:00:00.000Z')).toMatchObject({
    code: 'dates-reversed',
    field: 'at',
    message: expect.stringContaining('the entry “What was done” is on'),
  })
  expect(await close('2031-06-21T08:00:00.000Z')).toMatchObject({ code: 'in-the-future', field: 'at' })
  expect(await close('2031-06-16T12:00:00.000Z')).toBeNull()
  const openOn = async (day: string) =>
    (await callOn(next, 'work.onDay', { work: known.pans, day })).damage.map(({ reference }) => reference)
  expect(await openOn('2031-06-14')).toEqual(['D-0007'])
  expect(await openOn('2031-06-15')).toEqual(['D-0007'])
  expect(await openOn('2031-06-16')).toEqual([])
  const reopen = (at: string) => refusal(next, 'damage.reopen', { damage, why: 'it opens further', at })
  expect(await reopen('2031-06-16T11:00:00.000Z')).toMatchObject({ code: 'dates-reversed', field: 'at' })
  expect(await reopen('2031-06-18T08:00:00.000Z')).toBeNull()
  expect(await openOn('2031-06-17')).toEqual([])
  expect(await openOn('2031-06-18')).toEqual(['D-0007'])
  const [line] = (await callOn(next, 'damage.list', {})).lines
  expect(line).toMatchObject({ closedAt: null, clock: { waited: 0.5, late: 0 } })
  expect(await checkCatalogue(file)).toEqual([])
})

describe('a record of damage', () => {
  test.each([
    ['changed', `UPDATE damage SET reporter = 'X'`],
    ['removed', 'DELETE FROM damage_word; DELETE FROM damage'],
    ['closed by another hand', `UPDATE damage_word SET kind = 'closed'`],
    ['replaced by its key', 'INSERT OR REPLACE INTO damage SELECT * FROM damage'],
    [
      'replaced by its reference',
      `INSERT OR REPLACE INTO damage(id, reference, work, found_at, reported_at, reporter, recorded_at, recorded_by, hash)
       SELECT 'other', 'd-0007', work, found_at, reported_at, 'X', recorded_at, recorded_by, hash FROM damage`,
    ],
    [
      'replaced by its row',
      `INSERT OR REPLACE INTO damage_word(rowid, id, damage, kind, at, recorded_at, recorded_by, hash)
       SELECT rowid, 'other', damage, 'note', at, recorded_at, recorded_by, hash FROM damage_word`,
    ],
    [
      'rewritten on the way',
      `INSERT INTO damage SELECT * FROM damage WHERE true ON CONFLICT (id) DO UPDATE SET reporter = 'X'`,
    ],
    ['parted from its work', 'DELETE FROM work WHERE id = (SELECT work FROM damage)'],
  ])('cannot be %s, even inside an edit, by SQL on the open catalogue', async (_, sql) => {
    const { host, file, damage } = await damaged()
    await callOn(host, 'damage.say', { damage, kind: 'note', said: 'a joint of the frame, 2 mm' })
    const db = new Database(file)
    onTestFinished(() => void db.close())
    db.pragma('foreign_keys = ON')
    const all = () => JSON.stringify(['damage', 'damage_word'].map(table => db.prepare(`SELECT * FROM ${table}`).all()))
    const before = all()
    expect(() =>
      db.transaction(() => {
        db.exec(`UPDATE edit_now SET edit = 1; ${sql}; UPDATE edit_now SET edit = NULL`)
      })(),
    ).toThrow(/only added to|FOREIGN KEY/)
    expect(all()).toBe(before)
    expect(() => db.exec(`INSERT INTO damage_word SELECT * FROM damage_word WHERE false`)).not.toThrow()
    expect(() =>
      db.exec(
        `INSERT INTO damage_word(id, damage, kind, at, recorded_at, recorded_by, hash)
         SELECT 'n', id, 'closed', found_at, found_at, 'X', '' FROM damage`,
      ),
    ).toThrow('outside an edit')
  })

  test.each([
    ['in its words', `DROP TRIGGER only_added_damage_update; UPDATE damage SET reporter = 'Somebody Else'`],
    [
      'in an entry',
      `DROP TRIGGER only_added_damage_word_update; UPDATE damage_word SET at = '2031-06-14T10:06:00.000Z'`,
    ],
    [
      'by an entry taken out',
      `DROP TRIGGER only_added_damage_word_delete; DELETE FROM damage_word WHERE kind = 'note'`,
    ],
  ])('that was altered %s with the triggers taken away is found, by its reference', async (_, sql) => {
    const { host, file, damage } = await damaged()
    await callOn(host, 'damage.say', { damage, kind: 'note', said: 'a joint of the frame, 2 mm' })
    await callOn(host, 'damage.say', { damage, kind: 'owner told', whom: 'Ines Maro' })
    await host.close()
    const db = new Database(file)
    db.exec(sql)
    db.close()
    const found = (await checkCatalogue(file)).find(({ code }) => code === 'record-chain')
    expect(found?.text).toContain('D-0007')
  })

  test('stays through every undo, and what it names cannot be removed or taken back', async () => {
    const { host, file } = await opened()
    const { id: work } = await callOn(host, 'work.add', { title: 'Groyne' })
    await callOn(host, 'work.addSize', { work, part: 'framed', height: 500, width: 700, raw: '', kind: 'measured' })
    const { id: report } = await callOn(host, 'condition.add', { work, kind: 'check' })
    const { id } = await callOn(host, 'damage.add', { work, foundAt, report })
    expect((await refusal(host, 'edit.undo', {}))?.code).toBe('undo-blocked')
    expect((await refusal(host, 'condition.remove', { id: report }))?.code).toBe('recorded')
    expect((await refusal(host, 'work.remove', { id: work }))?.code).toBe('recorded')
    const told = await callOn(host, 'damage.get', { id })
    expect(told).toMatchObject({ reference: 'D-0001', lent: false, clock: null, reports: [{ id: report }] })
    expect(told.lacks.map(({ code }) => code)).toEqual(['no-photograph', 'no-action'])
    expect(await checkCatalogue(file)).toEqual([])
  })
})
