/** The hardware list, right to the screw, and the plan of a show. Works and walls are invented; counts are by hand. */
import { describe, expect, test } from 'vitest'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import { type Hardware, type HardwareWork, hardwareOf, type StockedFixing } from '../../../src/crew/hardware.ts'
import { timesInForce } from '../../../src/crew/minutes.ts'
import { crewPlan, stepsLeft } from '../../../src/crew/plan.ts'
import { crewWorks, hardwareWork, holesOf } from '../../../src/crew/show.ts'
import { randomFrom } from '../database/random-edits.ts'
import { placed, six, wallOf } from '../sheets/wall.ts'
import { handlingRules } from './house.ts'

const hook: StockedFixing = {
  id: 'f1',
  name: 'nail hook',
  kind: 'hook',
  wallType: 'drywall on ply',
  inStock: 5,
  bit: '',
  tool: '',
}
const screw: StockedFixing = {
  ...hook,
  id: 'f2',
  name: 'screw 5 × 60',
  kind: 'screw',
  inStock: null,
  bit: '3 mm wood',
  tool: 'PZ2',
}
const lock: StockedFixing = {
  ...hook,
  id: 'f3',
  name: 'turned lock',
  kind: 'lock',
  inStock: 1,
  bit: '4 mm wood',
  tool: 'lock key',
}

const line = (made: Hardware, what: string) => {
  const found = made.lines.find(each => each.what === what)
  if (found === undefined) throw new Error(`no ${what} among ${made.lines.map(each => each.what).join(', ')}`)
  return found
}

const show = (elevations: readonly Elevation[]) => crewWorks({ elevations, rules: handlingRules, equipment: [] })
const cleatBack = { method: 'cleat', data: { drop: 150, length: 700 }, seenFrom: 'front' } as const

describe('hardware of six works on D-rings', () => {
  const works = show([wallOf(six.map((given, index) => placed(given, index)))])
  const made = hardwareOf(works.map(hardwareWork), [hook, screw], 0.125, 2)

  test('12 hooks and 12 pads; 2 spare each; 5 of the hooks are there', () => {
    expect(line(made, 'nail hook')).toEqual({
      what: 'nail hook',
      fixing: 'f1',
      needed: 12,
      spare: 2,
      per: 'work',
      inStock: 5,
      toGet: 9,
      bit: '',
      tool: '',
      chosen: true,
      secondCount: null,
    })
    expect(line(made, 'bottom pad')).toMatchObject({ fixing: null, needed: 12, spare: 2, inStock: null, toGet: 14 })
    expect(made.lines.length).toBe(2)
  })

  test('the wall’s box holds exactly what hangs from it', () => {
    expect(made.boxes).toEqual([
      {
        face: 'face1',
        lines: [
          { what: 'nail hook', count: 12, works: 6 },
          { what: 'bottom pad', count: 12, works: 6 },
        ],
      },
    ])
  })
})

test('a fixing that nobody chose stands in the list and is told', () => {
  const given = six[0]
  if (given === undefined) throw new Error('no work')
  const works = show([wallOf([placed(given, 0, { fixing: null })])])
  const made = hardwareOf(works.map(hardwareWork), [hook], 0, 2)
  expect(made.lines.filter(each => !each.chosen).map(each => [each.needed, each.fixing])).toEqual([[2, null]])
})

describe('plugs, anchors and bits', () => {
  const one = (wallType: HardwareWork['wallType'], more: Partial<HardwareWork['holes'][number]> = {}) => {
    const hole = { fixing: screw.name, kind: 'screw', keeps: false, onStud: null, backed: null, ...more }
    const work = {
      id: 'w',
      face: 'f',
      wallType,
      needs: [{ what: screw.name, count: 2, per: 'wall' as const }],
      fixings: [],
      locks: 0,
      holes: [hole, hole],
    }
    return hardwareOf([work], [screw], 0, 2).lines.map(each => [each.what, each.needed])
  }

  test('masonry wants a plug for every screw', () => {
    expect(one('brick')).toEqual([
      ['screw 5 × 60', 2],
      ['plug for screw 5 × 60', 2],
    ])
  })

  test('board wants an anchor only where neither stud nor backing is known', () => {
    expect(one('drywall')).toContainEqual(['hollow-wall anchor for screw 5 × 60', 2])
    expect(one('drywall', { onStud: true })).toEqual([['screw 5 × 60', 2]])
    expect(one('drywall on ply', { backed: true })).toEqual([['screw 5 × 60', 2]])
    expect(one('plywood')).toEqual([['screw 5 × 60', 2]])
  })

  test('bits are listed once, with what they are for', () => {
    const needs = [screw, lock, { ...screw, name: 'screw 5 × 80' }].map(each => ({
      what: each.name,
      count: 1,
      per: 'wall' as const,
    }))
    const made = hardwareOf(
      [{ id: 'w', face: 'f', wallType: 'plywood', needs, fixings: [], locks: 0, holes: [] }],
      [screw, lock, { ...screw, id: 'f4', name: 'screw 5 × 80' }],
      0,
      2,
    )
    expect(made.bits).toEqual([
      { bit: '3 mm wood', fixings: ['screw 5 × 60', 'screw 5 × 80'] },
      { bit: '4 mm wood', fixings: ['turned lock'] },
    ])
  })
})

test('a cleat’s holes are its screws, each counted', () => {
  const given = six[3]
  if (given === undefined) throw new Error('no work')
  const usual = placed(given, 3).fixing
  if (usual === null) throw new Error('no fixing')
  const fixing = { ...usual, name: 'Z bar pair', kind: 'cleat' as const, holeOffset: 12 }
  const wall = wallOf([placed(given, 3, { back: cleatBack, fixing })], 9140, { studFirst: 200, studSpacing: 406.4 })
  const works = show([wall])
  const answer = works[0]?.answer ?? null
  const screws = answer?.cleat?.screws.length ?? 0
  expect(screws).toBeGreaterThan(0)
  expect(holesOf(answer).length).toBe(screws)
  const made = hardwareOf(works.map(hardwareWork), [], 0, 2)
  expect(line(made, 'screw for the wall part').needed).toBe(screws)
  expect(line(made, 'Z bar pair')).toMatchObject({ needed: 1, chosen: false })
  // A method's own screws are nobody's choice.
  expect(line(made, 'screw for the wall part').chosen).toBe(true)
})

test('locks are counted twice, by the works and by the marks, and the list must say the same', () => {
  const hole = { fixing: lock.name, kind: 'lock', keeps: true, onStud: null, backed: true }
  const work = (id: string, needed: number) => ({
    id,
    face: 'f',
    wallType: 'plywood',
    needs: [{ what: lock.name, count: needed, per: 'wall' as const }],
    fixings: [lock.name],
    locks: 1,
    holes: [hole],
  })
  const good = hardwareOf([work('a', 1), work('b', 1)], [lock], 0.125, 2)
  expect(good.locks).toEqual({ byWorks: 2, byMarks: 2, agree: true })
  expect(line(good, lock.name)).toMatchObject({ needed: 2, spare: 1, inStock: 1, toGet: 2, secondCount: 2 })
  expect(hardwareOf([work('a', 1), work('b', 2)], [lock], 0.125, 2).locks).toEqual({
    byWorks: 2,
    byMarks: 2,
    agree: false,
  })
})

test('tools go once with each team, not with each work, and into no wall’s box', () => {
  const work = (id: string) => ({
    id,
    face: 'f',
    wallType: 'plywood',
    needs: [
      { what: 'lock', count: 1, per: 'wall' as const },
      { what: 'lock key', count: 1, per: 'team' as const },
    ],
    fixings: [],
    locks: 0,
    holes: [],
  })
  const made = hardwareOf([work('a'), work('b'), work('c')], [], 0, 2)
  expect(made.lines.map(each => [each.what, each.needed])).toEqual([
    ['lock', 3],
    ['lock key', 2],
  ])
  // A half of each again, but of no tool.
  const spared = hardwareOf([work('a'), work('b'), work('c')], [], 0.5, 2)
  expect(spared.lines.map(each => [each.per, each.spare, each.toGet])).toEqual([
    ['work', 2, 5],
    ['team', 0, 2],
  ])
  expect(made.boxes[0]?.lines).toEqual([{ what: 'lock', count: 3, works: 3 }])
})

test('300 random shows: boxes add up to the list, nothing is got that is there, spare is the least whole number', () => {
  const random = randomFrom(13)
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  for (let round = 0; round < 300; round++) {
    const spare = whole(0, 8) / 16
    const stock = [hook, screw, lock].map(each => ({ ...each, inStock: random() < 0.5 ? null : whole(0, 40) }))
    const works = Array.from({ length: whole(0, 30) }, (_, index) => ({
      id: `w${index}`,
      face: `f${whole(0, 3)}`,
      wallType: 'plywood',
      needs: [hook, screw, lock].map(each => ({ what: each.name, count: whole(0, 4), per: 'wall' as const })),
      fixings: [],
      locks: 0,
      holes: [],
    }))
    const made = hardwareOf(works, stock, spare, 2)
    for (const each of made.lines) {
      const asked = works.flatMap(work => work.needs).filter(need => need.what === each.what)
      expect(each.needed).toBe(asked.reduce((sum, { count }) => sum + count, 0))
      const boxed = made.boxes.flatMap(box => box.lines).filter(box => box.what === each.what)
      expect(boxed.reduce((sum, { count }) => sum + count, 0)).toBe(each.needed)
      expect(each.spare - each.needed * spare).toBeGreaterThanOrEqual(0)
      expect(each.spare - each.needed * spare).toBeLessThan(1)
      expect(each.toGet).toBe(Math.max(0, each.needed + each.spare - (each.inStock ?? 0)))
    }
  }
})

describe('the plan of a show', () => {
  const elevation = wallOf(six.map((given, index) => placed(given, index)))
  const question = (teams: number) => ({
    works: show([elevation]),
    times: timesInForce(new Map()),
    teams,
    hoursADay: 6,
    contingency: 0.25,
    liftOn: 25,
    counts: new Map<string, number>(),
  })
  const plan = (teams: number) => crewPlan(question(teams))

  test('the 31 kg work hangs first; sums by hand: 10 + 5 × 17.5 + 2 × 17.5 + 6 × 4 + 6 × 7.5', () => {
    const made = plan(2)
    expect(made.order).toEqual(['p3', 'p0', 'p1', 'p2', 'p4', 'p5'])
    // Three people for it are two teams: all hands.
    expect(made.allHandsMinutes).toBe(17.5)
    expect(made.teamMinutes).toBe(10 + 5 * 17.5 + 6 * 4 + 6 * 7.5)
    expect(made.estimate.plainMinutes).toBeCloseTo(166.5 / 2 + 17.5, 9)
    expect(made.estimate.elapsedMinutes).toBeCloseTo(1.25 * (166.5 / 2 + 17.5), 9)
    expect(made.leastMinutes).toBeCloseTo((10 + 5 * 15 + 6 * 3 + 6 * 5) / 2 + 15, 9)
    expect(made.mostMinutes).toBeCloseTo((10 + 5 * 20 + 6 * 5 + 6 * 10) / 2 + 20, 9)
  })

  test('what hangs takes what is left of it: 2 to level, 1.5 to check; 3.5 + 3 × 17.5 + 6 × 4 + 6 × 7.5 by hand', () => {
    const states = { p0: 'hung', p1: 'checked' } as const
    const works = six.map((given, index) => {
      const work = placed(given, index)
      return { ...work, state: states[work.placement as keyof typeof states] ?? work.state }
    })
    const made = crewPlan({ ...question(2), works: show([wallOf(works)]) })
    expect(made.order).toEqual(['p3', 'p0', 'p1', 'p2', 'p4', 'p5'])
    // Something hangs, so that the wall is set out; who is checked is no task any more.
    expect(made.tasks.map(task => [task.id, task.kind]).slice(0, 6)).toEqual([
      ['p3', 'hang'],
      ['p0', 'finish'],
      ['p2', 'hang'],
      ['p4', 'hang'],
      ['p5', 'hang'],
      ['labels face1', 'labels'],
    ])
    expect(made.teamMinutes).toBe(3.5 + 3 * 17.5 + 6 * 4 + 6 * 7.5)
    expect(made.allHandsMinutes).toBe(17.5)
    expect(made.leastMinutes).toBeCloseTo((2 + 3 * 15 + 6 * 3 + 6 * 5) / 2 + 15, 9)
    expect(made.mostMinutes).toBeCloseTo((5 + 3 * 20 + 6 * 5 + 6 * 10) / 2 + 20, 9)
  })

  test('a lock is shut after the level and before the check; a work without one has no such step', () => {
    const [work] = show([elevation])
    if (work?.answer == null) throw new Error('no marks')
    const answer = { ...work.answer, marks: work.answer.marks.map(mark => ({ ...mark, does: 'keeps' as const })) }
    const locked = { ...work, answer, hung: [{ placed: work.placed, answer }] }
    const left = (of: typeof work, state: typeof work.placed.state) =>
      stepsLeft({ ...of, placed: { ...of.placed, state } })
    expect(left(work, 'planned')).toEqual(['d-rings'])
    expect(left(locked, 'hung')).toEqual(['level', 'lock', 'check'])
    expect(left(locked, 'level')).toEqual(['lock', 'check'])
    expect(left(locked, 'locked')).toEqual(['check'])
    expect(left(locked, 'checked')).toEqual([])
    expect(left(work, 'hung')).toEqual(['level', 'check'])
    expect(left(work, 'level')).toEqual(['check'])
  })

  test('setting out comes first, then the works, labels, light; no day is shorter than the estimate', () => {
    const made = plan(2)
    const at = (id: string) => made.schedule.slots.find(slot => slot.id === id)
    expect(at('set out face1')?.start).toBe(0)
    expect(at('p3')).toMatchObject({ start: 10, teams: [1, 2] })
    expect(at('labels face1')?.start).toBe(Math.max(...made.order.map(id => at(id)?.end ?? 0)))
    expect(at('light face1')?.start).toBe(at('labels face1')?.end)
    expect(made.schedule.makespan).toBeGreaterThanOrEqual(made.estimate.plainMinutes - 1e-9)
  })

  test('says what is not weighed, what has no lift, and what the crew is too small for', () => {
    const codes = (teams: number) => plan(teams).findings.map(each => [each.code, each.subject.id])
    expect(codes(2)).toEqual([
      ['no-equipment', 'p3'],
      ['not-weighed', 'p5'],
    ])
    expect(codes(1)).toContainEqual(['too-few-people', 'p3'])
  })

  test('more teams never make the estimate longer', () => {
    const days = [1, 2, 3, 4].map(teams => plan(teams).estimate.elapsedMinutes)
    for (const [index, each] of days.entries()) if (index > 0) expect(each).toBeLessThanOrEqual(days[index - 1] ?? 0)
  })
})
