/**
 * The record of loggers' files: no SQL on the open catalogue changes or adds a reading; what was altered with the
 * triggers taken away is found by its file; undo leaves it; each file joins the one before.
 */
import Database from 'better-sqlite3'
import { describe, expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { createHost } from '../../main/hosts/host.ts'
import { callOn, give, makeFixture } from './fixture.ts'
import { ownFolder } from './opened.ts'

const log = (day: string) =>
  new TextEncoder().encode(`Time,Temp °C,RH %\n${day}T11:00:00Z,20,50\n${day}T11:05:00Z,20.5,62\n`)

async function recorded() {
  const folder = ownFolder()
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-01T08:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: folder, clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person })
  const take = (name: string, day: string) =>
    callOn(host, 'climate.takeFile', { handle: give(host, name, log(day)), room: known.room, logger: 'L7' })
  const { id } = await take('east.csv', '2031-03-10')
  await callOn(host, 'climate.withdrawFile', { file: id, why: 'of the west room' })
  await take('west.csv', '2031-03-11')
  return { host, known, file }
}

describe('a logger’s file on record', () => {
  test.each([
    ['changed', `UPDATE climate_day SET humidity = '5000 100'`],
    ['changed in its words', `UPDATE climate_file SET logger = 'L8'`],
    ['removed', 'DELETE FROM climate_day'],
    ['forgotten', 'DELETE FROM climate_file'],
    [
      'replaced',
      `INSERT OR REPLACE INTO climate_day SELECT id, file, day, seconds, celsius, '5000 100', count FROM climate_day`,
    ],
    [
      'rewritten on the way',
      `INSERT INTO climate_file SELECT * FROM climate_file WHERE true ON CONFLICT (id) DO UPDATE SET hash = 'x'`,
    ],
  ])('cannot be %s, even inside an edit, by SQL on the open catalogue', async (_, sql) => {
    const { file } = await recorded()
    const db = new Database(file)
    onTestFinished(() => void db.close())
    db.exec('BEGIN; UPDATE edit_now SET edit = 1')
    expect(() => db.exec(sql)).toThrow('is only added to')
  })

  test.each([
    ['a reading', `UPDATE climate_day SET humidity = '5000 100' WHERE day = 22348`, 'east.csv'],
    [
      'a day that is added',
      `INSERT INTO climate_day SELECT 'n', file, day, seconds, celsius, '5000 1', count FROM climate_day WHERE day = 22349`,
      'west.csv',
    ],
    ['why it was withdrawn', `UPDATE climate_file SET note = 'of no room' WHERE withdraws IS NOT NULL`, 'east.csv'],
    ['a file that is gone', `DELETE FROM climate_file WHERE withdraws IS NOT NULL`, 'west.csv'],
    ['who brought it', `UPDATE climate_file SET recorded_by = 'Somebody Else' WHERE name = 'west.csv'`, 'west.csv'],
  ])('altered with the triggers taken away is found by its name: %s', async (_, sql, name) => {
    const { host, file } = await recorded()
    await host.close()
    expect(await checkCatalogue(file)).toEqual([])
    const db = new Database(file)
    const kept = db
      .prepare<[], { name: string; sql: string }>(
        "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name LIKE 'climate\\_%' ESCAPE '\\'",
      )
      .all()
    for (const each of kept) db.exec(`DROP TRIGGER ${each.name}`)
    db.exec(sql)
    for (const each of kept) db.exec(each.sql)
    db.close()
    const found = await checkCatalogue(file)
    expect(found.map(({ code }) => code)).toEqual(['record-chain'])
    expect(found[0]?.text).toContain(`${name} of Room 1`)
  })

  test('stays through every undo', async () => {
    const { host, known } = await recorded()
    await expect(callOn(host, 'edit.undo', {})).rejects.toThrow('edit.undo:')
    const { files } = await callOn(host, 'climate.room', { room: known.room })
    expect(files.map(({ name, withdrawn }) => [name, withdrawn?.why])).toEqual([
      ['west.csv', undefined],
      ['east.csv', 'of the west room'],
    ])
  })
})
