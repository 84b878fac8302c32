/**
 * A work through its stay, to the receipt: in a crate, on its wall, looked at, packed, gone; and one that is found
 * changed. What the list says on each day, and that the crate is reckoned.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, onTestFinished, test } from 'vitest'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { callOn, makeFixture } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

const strokes = [[100, 200, 300, 100, 500, 220]]

/** A complete report with marks at so many places. */
async function report(host: Host, work: string, kind: 'incoming' | 'outgoing', examinedAt: string, marks: number) {
  const { id } = await callOn(host, 'condition.add', { work, kind, examinedAt, examiner: 'Tamsin Oake' })
  for (let at = 0; at < marks; at += 1) {
    const mark = { form: 'mark' as const, points: [{ x: 40 + 150 * at, y: 60 }], term: 'paper.tear' }
    await callOn(host, 'condition.addFinding', { report: id, ...mark, age: 'old', severity: 'slight' })
  }
  await callOn(host, 'condition.sign', { report: id, role: 'registrar', name: 'Tamsin Oake', strokes })
  await callOn(host, 'condition.sign', { report: id, role: 'courier', name: 'Bo Lind', strokes })
  await callOn(host, 'condition.complete', { report: id })
  return id
}

test('each day says what is done and what is next; what is found changed stays', { timeout: 60_000 }, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-leaving-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-14T08:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person })
  const exhibition = known.show
  const crate = await callOn(host, 'location.add', { kind: 'crate', name: 'Crate 5' })
  const owner = await callOn(host, 'location.add', { kind: 'elsewhere', name: 'Quay Collection' })
  const both = [known.pans, known.causeway]
  const move = (what: { works?: string[]; crates?: string[] }, to: string, at: string) =>
    callOn(host, 'movement.add', { ...what, to, at: `2031-${at}:00.000Z` })
  const list = () => callOn(host, 'leaving.list', { exhibition })
  const of = async (work: string) => (await list()).lines.find(({ id }) => id === work)
  const codes = async (work: string) => (await of(work))?.lacks.map(({ code }) => code)

  await move({ works: both }, crate.id, '03-01T09:00')
  await move({ crates: [crate.id] }, known.room, '03-02T09:00')
  for (const work of both) await report(host, work, 'incoming', '2031-03-03T10:00:00.000Z', 1)
  await move({ works: both }, known.northFace, '03-05T10:00')
  expect(await of(known.pans)).toMatchObject({ cameIn: 'Crate 5', next: 'looked at' })
  expect((await list()).crates).toMatchObject([{ name: 'Crate 5', inIt: [], missing: [{}, {}], strange: [] }])

  await report(host, known.pans, 'outgoing', '2031-06-12T10:00:00.000Z', 1)
  await report(host, known.causeway, 'outgoing', '2031-06-12T11:00:00.000Z', 2)
  expect(await of(known.pans)).toMatchObject({ next: 'packed', lacks: [] })
  expect(await of(known.causeway)).toMatchObject({ lacks: [{ code: 'changed', stops: true }] })

  await move({ works: [known.pans] }, crate.id, '06-13T09:00')
  expect(await of(known.pans)).toMatchObject({ next: 'gone', where: 'Crate 5, at Room 1' })
  const [packed] = (await list()).crates
  expect([packed?.inIt, packed?.missing].map(works => works?.map(({ title }) => title))).toEqual([
    ['Salt pans'],
    ['Causeway'],
  ])
  await move({ crates: [crate.id] }, owner.id, '06-13T15:00')
  expect(await of(known.pans)).toMatchObject({ next: 'receipt back' })
  expect(await codes(known.pans)).toEqual(['no-receipt'])

  // The receipt itself says that it is back, once the loan is known that it came by.
  const { id: loan } = await callOn(host, 'loan.add', { party: known.lender, number: 'QC 2031/7' })
  await callOn(host, 'loan.addWorks', { loan, works: both })
  const sign = (kind: 'received' | 'sent' | 'acknowledged', day: string) =>
    callOn(host, 'receipt.add', { loan, kind, day, works: [{ work: known.pans }] })
  await sign('received', '2031-03-02')
  await sign('sent', '2031-06-13')
  expect(await codes(known.pans)).toEqual(['no-receipt'])
  await sign('acknowledged', '2031-06-14')
  expect(await of(known.pans)).toMatchObject({ next: null, lacks: [] })
})
