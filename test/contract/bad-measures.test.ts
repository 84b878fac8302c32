/**
 * Bad measures at the door of the catalogue: each is refused with what is wrong and what to measure again, names its
 * field and leaves nothing behind; what can only be found is found, and never passes. Works and figures are invented.
 */
import { beforeEach, describe, expect, test } from 'vitest'
import type { Input, Name } from '../../src/contract/contract.ts'
import { newCatalogue, type Opened, openOn, ownFolder } from './opened.ts'

let here: Opened
let show: string
let face: string
let work: string
let place: string
const rings = { left: { drop: 150, inset: 105 }, right: { drop: 150, inset: 105 } }

/** A work of 910 × 710 mm on a wall of 6 m, its rings measured. */
beforeEach(async () => {
  const folder = ownFolder()
  here = openOn(folder, newCatalogue(folder))
  const { call } = here
  show = (await call('exhibition.add', { title: 'Low Water' })).id
  await call('room.add', { name: 'Room 1', height: 3450, walls: [{ length: 6000 }] })
  face = (await call('room.list', {})).rooms[0]?.walls[0]?.face ?? ''
  const added = await call('work.add', { title: 'Causeway', exhibition: show })
  work = added.id
  await call('work.addSize', { work, part: 'framed', height: 910, width: 710, raw: '', kind: 'measured' })
  await call('work.addMass', { work, kg: 9.5, raw: '', kind: 'measured' })
  await call('work.setBack', {
    work,
    method: 'wire',
    seenFrom: 'front',
    data: { ...rings, wire: { by: 'length', length: 540 } },
  })
  const put = await call('placement.put', {
    exhibition: show,
    places: [{ entry: added.entry ?? '', face, x: 2000, rule: 'face', y: null, was: null }],
  })
  place = put.placements[0] ?? ''
}, 60_000)

const back = (data: object, method: Input<'work.setBack'>['method'] = 'd-rings') =>
  ['work.setBack', { work, method, seenFrom: 'front', data }] as const

/** What is asked, and the sentence: what is wrong, and what to do about it. */
interface Row {
  readonly what: string
  readonly ask: () => readonly [Name, unknown]
  readonly says: RegExp
  readonly field?: string
}

/** Inputs are of their procedures; a table of several cannot say so to the compiler. */
const asked = ([name, input]: readonly [Name, unknown]) => here.ask(name, input as Input<Name>)

describe('refused where it is wrong by itself, and nothing of it is kept', () => {
  const rows: readonly Row[] = [
    {
      what: 'a negative inset',
      ask: () => back({ left: { drop: 150, inset: 10 }, right: { drop: 150, inset: -5 } }),
      says: /^Inset of the right ring: it can’t be less than 0\. Measure it again/,
      field: 'back.data.right.inset',
    },
    {
      what: 'no mass',
      ask: () => ['work.addMass', { work, kg: 0, raw: '0 kg', kind: 'measured' }],
      says: /it must be more than 0\. Weigh it again/,
      field: 'kg',
    },
    {
      what: 'a size of nothing',
      ask: () => ['work.addSize', { work, part: 'framed', height: 0, width: 710, raw: '', kind: 'measured' }],
      says: /it must be more than 0\. Measure it again/,
      field: 'height',
    },
  ]
  test.each(rows)('$what', async ({ ask, says, field }) => {
    const before = here.state()
    const answer = await asked(ask())
    if (answer.ok) throw new Error('it was not refused')
    expect(answer.refusal.field).toBe(field)
    expect(answer.refusal.message).toMatch(says)
    expect(here.state()).toBe(before)
  })
})

describe('found where it is wrong beside another measure: no marks, no pass, and which to measure again', () => {
  const rows: readonly Row[] = [
    {
      what: 'rings wider apart than the frame',
      ask: () => back({ left: { drop: 150 }, right: { drop: 150 }, spacing: 800 }),
      says: /Check insets, spacing and width/,
    },
    {
      what: 'a wire shorter than its rings are apart',
      ask: () => back({ ...rings, wire: { by: 'length', length: 480 } }, 'wire'),
      says: /not longer than its rings are apart\. Measure it again/,
    },
    {
      what: 'hooks wider apart than the rings',
      ask: () => ['placement.update', { id: place, changes: { hooksApart: { was: null, to: 600 } } }],
      says: /smaller spacing/,
    },
    {
      what: 'a drop longer than the work is high',
      ask: () => back({ left: { drop: 950, inset: 10 }, right: { drop: 150, inset: 10 } }),
      says: /longer than the work is high\. Measure from the top edge/,
    },
  ]
  test.each(rows)('$what', async ({ ask, says }) => {
    expect((await asked(ask())).ok).toBe(true)
    const { findings } = await here.call('finding.list', { exhibition: show, face })
    const found = findings.find(one => one.code === 'no-marks')
    expect(found?.text).toMatch(says)
    expect(found).toMatchObject({ severity: 'settle', subject: { id: place } })
    expect(findings.map(one => one.code)).not.toContain('load-holds')
    // One edit, gone with one undo.
    await here.call('edit.undo', {})
    const after = (await here.call('finding.list', { exhibition: show, face })).findings
    expect(after.map(one => one.code)).not.toContain('no-marks')
  })
})

describe('found, and never passed', () => {
  const findings = async () => (await here.call('finding.list', { exhibition: show, face })).findings

  test('a mark off the wall', async () => {
    const { works } = await here.call('wall.elevation', { exhibition: show, face })
    const was = { face, x: 2000, rule: 'face' as const, y: null }
    const to = { entry: works[0]?.entry ?? '', ...was, x: 60, was }
    await here.call('placement.put', { exhibition: show, places: [to] })
    const off = (await findings()).find(found => found.code === 'mark-off-wall')
    expect(off).toMatchObject({ severity: 'stop' })
    expect(off?.text).toMatch(/is not on the wall/)
  })

  test('a rating that nobody knows', async () => {
    const { id } = await here.call('fixing.add', { name: 'old hook', kind: 'hook', holeOffset: 14, ratedKg: null })
    await here.call('placement.update', { id: place, changes: { fixing: { was: null, to: id } } })
    const all = await findings()
    expect(all.find(found => found.code === 'rating-unknown')?.text).toMatch(/look at its packet/)
    expect(all.map(found => found.code)).not.toContain('load-holds')
  })
})
