/** A set in the crew's papers: its parts' fixings, holes, locks and minutes, each part once. Counts are by hand. */
import { expect, test } from 'vitest'
import type { PlacedWork } from '../../../src/contract/areas/walls.ts'
import { type Hardware, hardwareOf } from '../../../src/crew/hardware.ts'
import { stepsLeft } from '../../../src/crew/plan.ts'
import { crewWorks, hardwareWork, holesOfWork, orderedWork, partsOf } from '../../../src/crew/show.ts'
import { triptych } from '../model/triptych.ts'
import { placed, six, wallOf } from '../sheets/wall.ts'
import { handlingRules } from './house.ts'

const show = (works: readonly PlacedWork[]) =>
  crewWorks({ elevations: [wallOf(works)], rules: handlingRules, equipment: [] })
const needed = (made: Hardware, what: string) => made.lines.find(line => line.what === what)?.needed ?? 0

const whole = triptych()
const [first] = whole.set?.parts ?? []
if (whole.set === null || first === undefined || first.fixing === null) throw new Error('no triptych')
const usual = first.fixing

/** Part b hangs on other hooks, part c on security hangers with a lock of its own. */
const mixed = triptych({
  set: {
    ...whole.set,
    parts: whole.set.parts.map((part, index) => {
      if (index === 1) return { ...part, fixing: { ...usual, id: 'f2', name: 'large hook' } }
      if (index === 0) return part
      return {
        ...part,
        fixing: { ...usual, id: 'f3', name: 'hanger plate', kind: 'plate' as const },
        keeper: { ...usual, id: 'f4', name: 'turned lock', kind: 'lock' as const },
        lockTool: 'flat key',
        back: {
          method: 'security-hangers' as const,
          seenFrom: 'front' as const,
          data: {
            left: { drop: 70, inset: 35 },
            right: { drop: 70, inset: 35 },
            lock: { up: 26, left: 270 },
            depth: 12,
            head: 'upright',
            tool: 'hex-key',
            toolFrom: 'below',
            toolLength: 260,
          },
        },
      }
    }),
  },
})

test('three parts on two rings each need six hooks, as three works beside each other do', () => {
  const asSet = hardwareOf(show([whole]).map(hardwareWork), [], 0, 1)
  const alone = hardwareOf(
    show(six.slice(0, 3).map((given, index) => placed(given, index))).map(hardwareWork),
    [],
    0,
    1,
  )
  expect(needed(asSet, 'nail hook')).toBe(6)
  expect(asSet.lines.map(({ what, needed: count }) => [what, count])).toEqual(
    alone.lines.map(({ what, needed: count }) => [what, count]),
  )
})

test('each part by its own fixing: two hooks, two large hooks, two plates, one lock', () => {
  const [work] = show([mixed])
  if (work === undefined) throw new Error('no work')
  const made = hardwareOf([hardwareWork(work)], [], 0, 1)
  expect(['nail hook', 'large hook', 'hanger plate', 'turned lock'].map(what => needed(made, what))).toEqual([
    2, 2, 2, 1,
  ])
  expect(made.locks).toEqual({ byWorks: 1, byMarks: 1, agree: true })
  const holes = holesOfWork(work)
  // Salt pans from 3 116, Causeway from 3 615, Raking from 4 344; the lock 270 in from the left of Raking.
  expect(holes.filter(hole => hole.fixing === 'nail hook').map(hole => hole.x)).toEqual([3156, 3556])
  expect(holes.filter(hole => hole.fixing === 'large hook').map(hole => hole.x)).toEqual([3670, 4270])
  expect(holes.filter(hole => hole.keeps).map(hole => hole.x)).toEqual([4344 + 270])
})

test('it hangs part by part and in one place of the order, its tag on every back', () => {
  const [work] = show([mixed])
  if (work === undefined) throw new Error('no work')
  expect(stepsLeft(work)).toEqual(['d-rings', 'd-rings', 'security-hangers'])
  expect(partsOf(work).map(part => [part.placed.running, part.placed.work])).toEqual([
    ['12 a', 'w0'],
    ['12 b', 'w1'],
    ['12 c', 'w2'],
  ])
  // The room of the lock's tool is that of part c: under its lower edge, 1 480 − 270.
  const { tools, rect } = orderedWork(work)
  expect(tools.length).toBeGreaterThan(0)
  expect(rect).toMatchObject({ x: 4000 - 884, width: 1768 })
})

test('a set of which one part is not measured is named, and nothing of it is counted by half', () => {
  const { set } = mixed
  if (set === null) throw new Error('no set')
  const parts = set.parts.map((part, index) => (index === 1 ? { ...part, back: null } : part))
  const [work] = show([triptych({ set: { ...set, parts } })])
  if (work === undefined) throw new Error('no work')
  expect(work.problem).toMatch(/^Part b: Nobody has measured its back/)
  const made = hardwareOf([hardwareWork(work)], [], 0, 1)
  expect(made.lines).toEqual([])
  expect(made.locks).toEqual({ byWorks: 0, byMarks: 0, agree: true })
  expect(holesOfWork(work)).toEqual([])
})

test('what hangs alone has no parts', () => {
  const [given] = six
  if (given === undefined) throw new Error('no work')
  expect(show([placed(given, 0)]).map(partsOf)).toEqual([[]])
})
