/** A machine that stops at any moment: every edit that was answered is there afterwards, and the file is sound. */
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { createCatalogue, openCatalogue } from '../../main/database/catalogue.ts'
import { checkCatalogue } from '../../main/database/check.ts'
import { ann, checkText, look, testClock, testFolder } from '../unit/database/fixture.ts'
import { randomFrom } from '../unit/database/random-edits.ts'
import { startWriter } from './child.ts'

const kills = 200

test('200 times killed while writing, no answered edit is lost', { timeout: 170_000 }, async () => {
  const file = join(testFolder(), 'a.hangwright')
  createCatalogue(file, testClock()).close()
  const random = randomFrom(20260301)
  const answered = new Set<string>()
  let killedInWork = 0
  async function round(turn: number): Promise<void> {
    const child = startWriter([file, `k${turn}x`])
    await child.firstLine
    await sleep(random() * 60)
    child.process.kill('SIGKILL')
    await child.ended
    const [open, ...ids] = child.lines()
    expect(open, child.errors()).toBe('open')
    for (const id of ids) answered.add(id)
    if (ids.length > 0) killedInWork++
  }
  // Two at a time, on one catalogue: starting a process takes longer than what is tested.
  for (let turn = 0; turn < kills; turn += 2) {
    await Promise.all([round(turn), round(turn + 1)])
    if (turn % 50 === 0) {
      look(file, db => {
        expect(db.pragma('integrity_check', { simple: true })).toBe('ok')
        checkText(db)
      })
    }
  }
  expect(killedInWork).toBeGreaterThan(kills / 4)
  look(file, db => {
    const there = new Set(db.prepare<[], string>('SELECT id FROM work').pluck().all())
    const numbers = new Set(db.prepare<[], string>('SELECT work FROM work_number').pluck().all())
    expect([...answered].filter(id => !there.has(id) || !numbers.has(id))).toEqual([])
    // What was not answered may be there, but only whole.
    expect([...there].filter(id => !numbers.has(id))).toEqual([])
    expect(db.prepare('SELECT count(*) FROM edit').pluck().get()).toBe(there.size)
  })
  expect(await checkCatalogue(file)).toEqual([])
  const catalogue = openCatalogue(file, testClock())
  const { edit } = await catalogue.edit({ procedure: 'test', person: ann, label: 'After' }, ({ db }) =>
    db.prepare(`INSERT INTO work(id) VALUES ('after')`).run(),
  )
  expect(edit).not.toBeNull()
  catalogue.close()
})

test('two processes write at once and lose nothing', { timeout: 60_000 }, async () => {
  const file = join(testFolder(), 'a.hangwright')
  createCatalogue(file, testClock()).close()
  const children = ['a', 'b'].map(prefix => startWriter([file, prefix, '150']))
  await Promise.all(children.map(child => child.ended))
  for (const child of children) expect(child.lines().length, child.errors()).toBe(151)
  look(file, db => {
    expect(db.prepare('SELECT count(*) FROM work').pluck().get()).toBe(300)
    expect(db.prepare('SELECT count(*) FROM edit').pluck().get()).toBe(300)
    expect(db.prepare('SELECT max(seq) FROM journal').pluck().get()).toBe(600)
  })
  expect(await checkCatalogue(file)).toEqual([])
})
