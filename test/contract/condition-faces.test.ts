/** The frame and the other sides of a work in a condition report: measured each by itself, paired within themselves, signed. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { answer } from '../../main/hosts/answer.ts'
import { createHost } from '../../main/hosts/host.ts'
import { callOn, makeFixture } from './fixture.ts'

async function opened() {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-faces-'))
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-14T18:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(async () => {
    await host.close()
    rmSync(folder, { recursive: true, force: true })
  })
  await callOn(host, 'desk.sit', { person: known.person })
  const { id: work } = await callOn(host, 'work.add', { title: 'Sluice keeper' })
  const size = (part: 'framed' | 'sight', height: number, width: number, depth?: number) =>
    callOn(host, 'work.addSize', {
      ...{ work, part, height, width, raw: '', kind: 'measured' },
      ...(depth === undefined ? {} : { depth }),
    })
  await size('framed', 800, 600)
  return { host, file, work, size }
}

const spot = (x: number, y: number) => ({ form: 'mark' as const, points: [{ x, y }], across: 4 })
const said = { term: 'frame.chip', age: 'old', severity: 'slight' } as const
const strokes = [[100, 200, 300, 100, 500, 220]]

test('a side is as large as the work is there; without a depth there are none but front, frame and back', async () => {
  const { host, work, size } = await opened()
  const { id: report } = await callOn(host, 'condition.add', { work, kind: 'incoming' })
  const mark = (side: 'frame' | 'left' | 'top', x: number, y: number) =>
    answer(host, 'condition.addFinding', { report, side, ...spot(x, y), ...said })
  expect(await mark('left', 10, 700)).toMatchObject({
    refusal: { code: 'no-depth', field: 'side', message: expect.stringContaining('how deep Sluice keeper is') },
  })
  expect(await mark('frame', 590, 790)).toMatchObject({ ok: true })
  // Measured once the report was begun: the draft learns it.
  await size('framed', 800, 600, 90)
  expect((await callOn(host, 'condition.get', { id: report })).depth).toBe(90)
  expect(await mark('left', 85, 700)).toMatchObject({ ok: true })
  expect(await mark('left', 95, 700)).toMatchObject({ refusal: { code: 'bad-input', field: 'points' } })
  expect(await mark('top', 590, 85)).toMatchObject({ ok: true })
  // As it was when the first was laid on a side: a depth that is measured again moves nothing.
  await size('framed', 800, 600, 40)
  const { findings, depth, opening, lacks } = await callOn(host, 'condition.get', { id: report })
  expect([depth, opening]).toEqual([90, null])
  expect(lacks.map(({ code }) => code)).toEqual(['signatures'])
  expect(findings.map(({ side, third }) => [side, third])).toEqual([
    ['frame', 'lower right'],
    ['left', 'lower right'],
    ['top', 'lower right'],
  ])
  // By hand: a sight of 560 × 400 in a frame of 800 × 600 stands 120 from the top and 100 from the left.
  await size('sight', 560, 400)
  const after = await callOn(host, 'condition.get', { id: report })
  expect(after.opening).toEqual({ left: 100, top: 120, width: 400, height: 560 })
})

test('what lies on one side is held against that side alone', async () => {
  const { host, work, size } = await opened()
  await size('framed', 800, 600, 90)
  const laid = async (kind: 'incoming' | 'outgoing', sides: readonly ('front' | 'frame' | 'back' | 'left')[]) => {
    const { id } = await callOn(host, 'condition.add', { work, kind })
    for (const side of sides) await callOn(host, 'condition.addFinding', { report: id, side, ...spot(40, 40), ...said })
    return id
  }
  const before = await laid('incoming', ['front', 'frame', 'left'])
  const after = await laid('outgoing', ['frame', 'back', 'left'])
  const { lines, counts } = await callOn(host, 'condition.compare', { before, after })
  expect(counts).toEqual({ same: 2, grown: 0, new: 1, notSeen: 1 })
  const texts = lines.map(({ outcome, text }) => `${outcome}: ${text.split(',')[0]?.split(':')[0]}`)
  expect(texts.sort()).toEqual([
    'new: chip on the back',
    'not seen: chip',
    'same: chip on the frame',
    'same: chip on the left side',
  ])
})

test('signed with its sides; altered past the triggers it is found', async () => {
  const { host, file, work, size } = await opened()
  await size('framed', 800, 600, 90)
  const { id: report } = await callOn(host, 'condition.add', { work, kind: 'incoming' })
  const { id } = await callOn(host, 'condition.addFinding', { report, ...spot(40, 40), ...said })
  const front = (await callOn(host, 'condition.get', { id: report })).content
  await callOn(host, 'condition.removeFinding', { id })
  await callOn(host, 'condition.addFinding', { report, side: 'frame', ...spot(40, 40), ...said })
  expect((await callOn(host, 'condition.get', { id: report })).content).not.toBe(front)
  await callOn(host, 'condition.sign', { report, role: 'registrar', name: 'Tamsin Oake', strokes })
  await callOn(host, 'condition.sign', { report, role: 'courier', name: 'Bo Lind', strokes })
  await callOn(host, 'condition.complete', { report })
  const { id: corrected } = await callOn(host, 'condition.correct', { report, why: 'it is a fold' })
  expect((await callOn(host, 'condition.get', { id: corrected })).findings).toMatchObject([{ side: 'frame' }])
  expect(await checkCatalogue(file)).toEqual([])
  await host.close()
  const db = new Database(file)
  const triggers = db.prepare(
    `SELECT name FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'condition_finding'`,
  )
  for (const name of triggers.pluck().all()) db.exec(`DROP TRIGGER "${String(name)}"`)
  db.exec(`UPDATE condition_finding SET face = '' WHERE report = '${report}'`)
  db.close()
  expect((await checkCatalogue(file)).map(({ code }) => code)).toContain('record-chain')
})
