/** A house rule that is set reaches what rests on it: marks on the elevation, findings, and is taken back by undo. */
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { createHost } from '../../main/hosts/host.ts'
import { marksOfFace } from '../../src/model/marks-of-face.ts'
import { callClock, callOn, makeFixture } from './fixture.ts'
import { ownFolder } from './opened.ts'

async function opened() {
  const folder = ownFolder()
  const { file, known } = await makeFixture(folder)
  const host = createHost({ kind: 'loopback', data: join(folder, 'data'), clock: callClock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person })
  /** Findings of the marks of Causeway, by code, and how far in its nails or hooks stand. */
  async function marks() {
    const elevation = await callOn(host, 'wall.elevation', { exhibition: known.show, face: known.northFace })
    const found = marksOfFace(elevation, { unit: 'mm', steps: { mm: 1, fraction: 16 } }).get(known.causewayPlace)
    if (found === undefined || !('answer' in found)) throw new Error(`no marks: ${JSON.stringify(found)}`)
    return {
      codes: found.answer.findings.map(finding => finding.code),
      fromLeft: found.answer.marks.map(mark => mark.fromLeft),
    }
  }
  async function counted() {
    const { findings } = await callOn(host, 'finding.list', { exhibition: known.show, face: known.northFace })
    return findings.map(finding => finding.code)
  }
  return { host, known, marks, counted }
}

test('the marks of a wall and its findings follow the house’s rules, and undo takes them back', async () => {
  const { host, known, marks, counted } = await opened()
  const left = { drop: 140, inset: 55 }
  const back = { work: known.causeway, method: 'd-rings', seenFrom: 'front' } as const
  // 710 − 55 − 52 is 603 between the rings, and 600 was measured; the drops are 4 apart.
  const data = { left, right: { drop: 144, inset: 52 }, spacing: 600 }
  await callOn(host, 'work.setBack', { ...back, data })
  expect((await marks()).codes).toEqual(expect.arrayContaining(['spacing-differs', 'drops-differ', 'load-holds']))
  expect(await counted()).toEqual(expect.arrayContaining(['spacing-differs', 'drops-differ']))

  await callOn(host, 'rule.set', { key: 'measureTolerance', was: 1, to: 3, source: 'old frames' })
  await callOn(host, 'rule.set', { key: 'dropTolerance', was: 2, to: 4, source: 'old frames' })
  await callOn(host, 'rule.set', { key: 'houseFactor', was: 4, to: 6, source: 'plaster of 1790' })
  const { codes } = await marks()
  expect(codes).toContain('load-exceeds')
  for (const gone of ['spacing-differs', 'drops-differ']) {
    expect(codes).not.toContain(gone)
    expect(await counted()).not.toContain(gone)
  }
  for (let taken = 0; taken < 3; taken++) await callOn(host, 'edit.undo', {})
  expect((await marks()).codes).toEqual(expect.arrayContaining(['spacing-differs', 'drops-differ', 'load-holds']))

  await callOn(host, 'work.setBack', {
    ...back,
    method: 'stretcher-bar',
    data: { left: { bar: 19 }, right: { bar: 19 } },
  })
  expect((await marks()).fromLeft[0]).toBeCloseTo(710 / 3, 9)
  await callOn(host, 'rule.set', { key: 'nailsIn', was: 1 / 3, to: 1 / 4, source: 'long bars' })
  expect((await marks()).fromLeft).toEqual([710 / 4, (710 * 3) / 4])
  const { edits } = await callOn(host, 'edit.list', {})
  expect(edits[0]?.label).toContain('→ 1/4 of its width')
})

test('the program’s own value stays known when the house sets another, with who, when and why', async () => {
  const { host } = await opened()
  await callOn(host, 'rule.set', { key: 'leastWireAngle', was: 30, to: 40, source: 'heavy frames' })
  const { rules } = await callOn(host, 'rule.list', {})
  const rule = rules.find(one => one.key === 'leastWireAngle')
  expect(rule).toMatchObject({ value: 40, default: 30, changed: true, source: 'heavy frames', least: 1, most: 89 })
  expect(rule?.by).not.toBe('')
  expect(rule?.since).not.toBe('')
})
