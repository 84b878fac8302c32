/**
 * A wall as it is found: its floor, its studs, its ceiling, through the catalogue to the marks. The sloping floor and its
 * figures are those of the worked scenario “sloping floor and rail” (DERIVED in the design); works and names are invented.
 */
import { beforeEach, describe, expect, test } from 'vitest'
import type { Input, Output } from '../../src/contract/contract.ts'
import { lineSaid } from '../../src/hang/datum.ts'
import { defaultSteps } from '../../src/hang/printing.ts'
import { faceFindings } from '../../src/model/face-findings.ts'
import { levelLineOf, marksOfPlaced } from '../../src/model/marks-of-face.ts'
import { nearestOfPlaced } from '../../src/model/nearest-of-face.ts'
import { newCatalogue, type Opened, openOn, ownFolder, refusalCode } from './opened.ts'

const style = { unit: 'mm', steps: defaultSteps } as const

let here: Opened
let show: string
let wall: string
let face: string
let hook: string
const place: Record<string, string> = {}

/** Title, height, width, drop, between the rings, centre. */
const works = [
  ['G', 700, 600, 90, 400, 1700],
  ['J', 500, 400, 60, 300, 5200],
] as const

beforeEach(async () => {
  const folder = ownFolder()
  here = openOn(folder, newCatalogue(folder))
  const { call } = here
  show = (await call('exhibition.add', { title: 'Low Water' })).id
  wall = (await call('room.add', { name: 'Room 1', height: 3450, walls: [{ length: 6000 }] })).walls[0] ?? ''
  face = (await call('room.list', {})).rooms[0]?.walls[0]?.face ?? ''
  await change({
    floor: {
      was: [],
      to: [
        [0, 0],
        [6000, -38],
      ],
    },
    wallType: { was: 'other', to: 'brick' },
  })
  hook = (await call('fixing.add', { name: 'hook', kind: 'hook', holeOffset: 14, ratedKg: 22.7, wallType: 'drywall' }))
    .id
  for (const [title, height, width, drop, spacing, x] of works) {
    const work = await call('work.add', { title, exhibition: show })
    await call('work.addSize', { work: work.id, part: 'framed', height, width, raw: '', kind: 'measured' })
    await call('work.addMass', { work: work.id, kg: 6, raw: '', kind: 'measured' })
    await call('work.setBack', {
      work: work.id,
      method: 'd-rings',
      seenFrom: 'front',
      data: { left: { drop }, right: { drop }, spacing },
    })
    const put = await call('placement.put', {
      exhibition: show,
      places: [{ entry: work.entry ?? '', face, x, rule: 'face', y: null, was: null }],
    })
    place[title] = put.placements[0] ?? ''
    await call('placement.update', { id: place[title] ?? '', changes: { fixing: { was: null, to: hook } } })
  }
})

function change(changes: Input<'wall.update'>['changes']) {
  return here.call('wall.update', { id: wall, changes })
}

function asked(changes: Input<'wall.update'>['changes']) {
  return here.ask('wall.update', { id: wall, changes })
}

function elevation(): Promise<Output<'wall.elevation'>> {
  return here.call('wall.elevation', { exhibition: show, face })
}

async function marksOf(title: string) {
  const facts = await elevation()
  const placed = facts.works.find(work => work.title === title)
  if (placed === undefined) throw new Error(`no ${title}`)
  const marks = marksOfPlaced(facts, placed, style)
  if ('problem' in marks) throw new Error(marks.problem)
  return { facts, placed, answer: marks.answer }
}

const said = (facts: Output<'wall.elevation'>) => lineSaid(levelLineOf(facts), mm => mm.toFixed(1))

describe('the sloping floor', () => {
  test('to the tenth, the line through the high point', async () => {
    await change({ datumBy: { was: '', to: 'high' } })
    const g = await marksOf('G')
    expect(said(g.facts)).toBe('The line is level, 1480.0 above the floor at its highest point, 0.0 from the left end.')
    expect(g.answer.marks[0]?.bearing.x).toBe(1500)
    expect(g.answer.marks[0]?.fromLine).toBe(260)
    expect(g.answer.marks[0]?.fromFloor.toFixed(1)).toBe('1749.5')
    const { answer } = await marksOf('J')
    expect(answer.marks.map(mark => mark.fromLine)).toEqual([190, 190])
    expect(answer.marks.map(mark => mark.fromFloor.toFixed(1))).toEqual(['1702.0', '1703.9'])
    expect((1670 - answer.floorAtCentre).toFixed(1)).toBe('1702.9')
    expect(answer.findings.find(found => found.code === 'floor-slopes')?.text).toContain('33 mm low')
  })

  test('through the middle everything hangs 19 lower, the offsets are the same', async () => {
    const before = await marksOf('J')
    await change({ datumBy: { was: '', to: 'middle' } })
    const { facts, placed, answer } = await marksOf('J')
    expect(facts.plan).toMatchObject({ centreLine: 1461, centreLineSet: 1480 })
    expect(said(facts)).toContain('At the left end that is 1461.0 above the floor.')
    expect(placed.centreY).toBe(1461)
    expect(answer.marks.map(mark => mark.fromLine)).toEqual([190, 190])
    expect(answer.marks.map((mark, index) => (before.answer.marks[index]?.bearing.y ?? 0) - mark.bearing.y)).toEqual([
      19, 19,
    ])
  })

  test('a line of its own height is above the same floor', async () => {
    await change({ datumBy: { was: '', to: 'middle' }, datum: { was: null, to: 1500 } })
    const { answer } = await marksOf('J')
    expect(answer.datum).toBe(1481)
    expect(answer.marks.map(mark => mark.fromLine)).toEqual([170, 170])
  })

  test('along the ramp each work hangs by its own floor; undo brings the level line back', async () => {
    await change({ datumBy: { was: '', to: 'ramp' } })
    const { placed, answer } = await marksOf('J')
    expect(placed.centreY.toFixed(1)).toBe('1447.1')
    expect(answer.marks.map(mark => mark.fromFloor.toFixed(2))).toEqual(['1669.05', '1670.95'])
    await here.call('edit.undo', {})
    expect((await marksOf('J')).placed.centreY).toBe(1480)
  })

  test('a height of its own from another floor is found: one sheet, one datum', async () => {
    await here.call('placement.put', {
      exhibition: show,
      places: [
        {
          entry: (await marksOf('J')).placed.entry,
          face,
          x: 5200,
          rule: 'bottom',
          y: 1200,
          was: { face, x: 5200, rule: 'face', y: null },
        },
      ],
    })
    const mixed = async () => faceFindings(await elevation()).filter(found => found.code === 'datum-mixed')
    expect(await mixed()).toEqual([])
    await change({ datumBy: { was: '', to: 'middle' } })
    const [found, ...more] = await mixed()
    expect(more).toEqual([])
    expect(found?.subject.id).toBe(place.J)
    expect(found?.figures).toEqual({ own: 1200, floorThere: -19, line: 1461, by: 'middle' })
    await change({ datumBy: { was: 'middle', to: 'ramp' } })
    expect((await mixed())[0]?.figures.floorThere).toBeCloseTo((-38 * 5200) / 6000, 9)
    // Neither printed nor drawn, and nothing is recorded.
    const printed = await here.ask('sheet.wall', { exhibition: show, faces: [face] })
    expect(refusalCode(printed)).toBe('datum-mixed')
    expect(JSON.stringify(printed)).toMatch(/mixes two datums, so its sheet is not printed: J has a height of its own/)
    expect(refusalCode(await here.ask('sheet.preview', { exhibition: show, face }))).toBe('datum-mixed')
    expect((await here.call('sheet.state', { exhibition: show })).faces.every(one => one.printed === null)).toBe(true)
    // By hand at the height where it is, the sheet has one datum again.
    const { centreY } = (await marksOf('J')).placed
    const was = { face, x: 5200, rule: 'bottom' as const, y: 1200 }
    const entryOfJ = (await marksOf('J')).placed.entry
    const byHand = { entry: entryOfJ, face, x: 5200, rule: 'hand' as const, y: centreY, was }
    await here.call('placement.put', { exhibition: show, places: [byHand] })
    expect(await mixed()).toEqual([])
    expect((await here.call('sheet.wall', { exhibition: show, faces: [face] })).files).toHaveLength(1)
  })
})

test('a new house takes the usual fixings in as one edit, and none of them passes before its packet is read', async () => {
  const before = (await here.call('fixing.list', {})).fixings.length
  const { added } = await here.call('fixing.addUsual', {})
  const { fixings } = await here.call('fixing.list', {})
  expect(fixings).toHaveLength(before + added)
  const usual = fixings.filter(fixing => fixing.source === 'sizes: common practice, no source')
  expect(usual).toHaveLength(added)
  expect(usual.every(fixing => fixing.ratedKg === null && fixing.ratings.length === 0)).toBe(true)
  const chosen = usual.find(fixing => fixing.name === 'hook, two nails')?.id ?? ''
  await here.call('placement.update', { id: place.J ?? '', changes: { fixing: { was: hook, to: chosen } } })
  const { answer } = await marksOf('J')
  expect(answer.loads?.holds).toBeNull()
  expect(answer.findings.map(found => found.code)).toContain('rating-unknown')
  expect(answer.findings.map(found => found.code)).not.toContain('load-holds')
  await here.call('edit.undo', {})
  expect((await here.call('edit.undo', {})).undone).toContain('usual fixings')
  expect((await here.call('fixing.list', {})).fixings).toHaveLength(before)
})

describe('ratings by wall type', () => {
  const loads = async () => {
    const { answer } = await marksOf('J')
    return { holds: answer.loads?.holds, codes: answer.findings.map(found => found.code) }
  }

  test('a hook rated for drywall is unknown in brick until a packet says it; what it says counts', async () => {
    expect((await loads()).holds).toBeNull()
    expect((await loads()).codes).toContain('rating-other-wall')
    await here.call('fixing.rate', { id: hook, wallType: 'brick', ratedKg: 12, source: 'the packet' })
    expect((await loads()).holds).toBe(true)
    expect((await loads()).codes).not.toContain('rating-other-wall')
    // 3 kg each, with the house factor 4.
    await here.call('fixing.rate', { id: hook, wallType: 'brick', ratedKg: 11.9, source: 'a second packet' })
    expect((await loads()).holds).toBe(false)
    await here.call('fixing.rate', { id: hook, wallType: 'brick', ratedKg: null, source: 'packet: not in brick' })
    expect((await loads()).holds).toBeNull()
    await here.call('fixing.unrate', { id: hook, wallType: 'brick' })
    expect((await here.call('fixing.list', {})).fixings[0]?.ratings).toEqual([])
    await change({ wallType: { was: 'brick', to: 'drywall' } })
    expect((await loads()).holds).toBe(true)
  })
})

describe('what is behind', () => {
  test('measured studs and joints reach the marks, and the nearest move clears them', async () => {
    await change({
      studs: { was: [], to: [4000, 5090, 5390] },
      joints: { was: [], to: [5070] },
      ceiling: { was: [], to: [[0, 3400]] },
    })
    const { facts, placed, answer } = await marksOf('J')
    expect(answer.marks.map(mark => mark.toStud)).toEqual([40, 40])
    expect(
      answer.findings.filter(found => found.code === 'mark-near-joint').map(found => found.figures.toJoint),
    ).toEqual([20])
    const offers = nearestOfPlaced(facts, placed, style)
    if ('problem' in offers) throw new Error(offers.problem)
    // On studs from 20.95 to 59.05; off the joint at 45 at least.
    expect(offers.offers.map(offer => Number(offer.dx.toFixed(6)))).toEqual([45])
    expect(offers.conflicts).toEqual(['mark-near-joint', 'mark-off-backing'])
  })

  test('a figure that is wrong leaves the wall as it was', async () => {
    const before = await here.call('room.list', {})
    expect(refusalCode(await asked({ studs: { was: [], to: [100, 6000.5] }, skirting: { was: null, to: 120 } }))).toBe(
      'off-the-wall',
    )
    expect(refusalCode(await asked({ ceiling: { was: [], to: [[6000, -40]] } }))).toBe('height-wrong')
    expect(
      refusalCode(
        await asked({
          rail: {
            was: [],
            to: [
              [10, 2000],
              [10, 2000],
            ],
          },
        }),
      ),
    ).toBe('not-in-order')
    expect(await here.call('room.list', {})).toEqual(before)
  })
})
