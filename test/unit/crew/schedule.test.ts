/**
 * The crew's day: no team and no lift twice at once, nothing before what it waits for, Graham's bound for list
 * scheduling (R. L. Graham, "Bounds on multiprocessing anomalies", SIAM J. Appl. Math. 17, 1969), and the estimate.
 */
import { describe, expect, test } from 'vitest'
import { estimate, extraTimes, timeOf, timesInForce } from '../../../src/crew/minutes.ts'
import { type Schedule, schedule, type Task } from '../../../src/crew/schedule.ts'
import { methods } from '../../../src/hang/methods.ts'
import { randomFrom } from '../database/random-edits.ts'

const task = (id: string, minutes: number, more: Partial<Task> = {}): Task => ({
  id,
  minutes,
  teams: 1,
  after: [],
  equipment: null,
  ...more,
})

/** Everything that must hold of any schedule. */
function holds(tasks: readonly Task[], teams: number, counts: ReadonlyMap<string, number>, made: Schedule): void {
  const slots = new Map(made.slots.map(slot => [slot.id, slot]))
  expect(slots.size).toBe(tasks.length)
  for (const each of tasks) {
    const slot = slots.get(each.id)
    if (slot === undefined) throw new Error(`no slot for ${each.id}`)
    expect(slot.end - slot.start).toBeCloseTo(each.minutes, 9)
    expect(slot.teams.length).toBe(Math.min(each.teams, teams))
    for (const id of each.after) expect(slots.get(id)?.end ?? 0).toBeLessThanOrEqual(slot.start + 1e-9)
  }
  for (const slot of made.slots) {
    const together = made.slots.filter(each => each.start < slot.start + 1e-9 && each.end > slot.start + 1e-9)
    const used = together.flatMap(each => each.teams)
    expect(new Set(used).size).toBe(used.length)
    for (const [equipment, count] of counts) {
      const inUse = together.filter(each => tasks.find(one => one.id === each.id)?.equipment === equipment)
      expect(inUse.length).toBeLessThanOrEqual(count)
    }
  }
  const effort = tasks.reduce((sum, each) => sum + each.minutes * Math.min(each.teams, teams), 0)
  expect(made.idle).toBeCloseTo(made.makespan * teams - effort, 6)
  expect(made.makespan).toBeGreaterThanOrEqual(effort / teams - 1e-9)
}

describe('the schedule', () => {
  test('two teams, six works: by hand', () => {
    const tasks = [60, 30, 30, 20, 20, 20].map((minutes, index) => task(`w${index}`, minutes))
    const made = schedule(tasks, 2, new Map())
    expect(made.slots.map(slot => [slot.id, slot.start, slot.teams[0]])).toEqual([
      ['w0', 0, 1],
      ['w1', 0, 2],
      ['w2', 30, 2],
      ['w3', 60, 1],
      ['w4', 60, 2],
      ['w5', 80, 1],
    ])
    expect([made.makespan, made.idle]).toEqual([100, 20])
    expect(made.idleByTeam).toEqual([0, 20])
  })

  test('a lift is shared: works that need it hang one after the other', () => {
    const tasks = [task('a', 90, { equipment: 'lift' }), task('b', 60, { equipment: 'lift' }), task('c', 20)]
    expect(schedule(tasks, 2, new Map([['lift', 1]])).slots.find(slot => slot.id === 'b')?.start).toBe(90)
    expect(schedule(tasks, 2, new Map([['lift', 2]])).slots.find(slot => slot.id === 'b')?.start).toBe(0)
  })

  test('a heavy work that lacks a team keeps the free one, so that it is not put off for ever', () => {
    const tasks = [
      task('out', 10),
      task('heavy', 60, { teams: 2, after: ['out'] }),
      ...[15, 15, 15, 15].map((minutes, index) => task(`w${index}`, minutes)),
    ]
    const made = schedule(tasks, 2, new Map())
    expect(made.slots.find(slot => slot.id === 'heavy')?.start).toBe(15)
  })

  test('a ring is told, not waited for', () => {
    const made = schedule(
      [task('a', 10, { after: ['b'] }), task('b', 10, { after: ['a'] }), task('c', 5)],
      2,
      new Map(),
    )
    expect(made.rings).toEqual(['a', 'b'])
    expect(made.slots.length).toBe(3)
  })

  test('nothing to do takes no time', () => {
    expect(schedule([], 3, new Map())).toMatchObject({ slots: [], makespan: 0, idle: 0, rings: [] })
  })

  test('300 random shows keep every rule', () => {
    const random = randomFrom(7)
    const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
    for (let round = 0; round < 300; round++) {
      const teams = whole(1, 4)
      const counts = new Map([['lift', whole(1, 2)]])
      const tasks = Array.from({ length: whole(1, 25) }, (_, index) =>
        task(`t${index}`, whole(0, 12) * 5, {
          teams: random() < 0.2 ? whole(1, 5) : 1,
          equipment: random() < 0.2 ? 'lift' : null,
          after: index > 0 && random() < 0.4 ? [`t${whole(0, index - 1)}`] : [],
        }),
      )
      holds(tasks, teams, counts, schedule(tasks, teams, counts))
    }
  })

  test('Graham: with one team a task and nothing to wait for, never over effort/teams + (1 − 1/teams) × the longest', () => {
    const random = randomFrom(11)
    for (let round = 0; round < 200; round++) {
      const teams = 1 + Math.floor(random() * 5)
      const tasks = Array.from({ length: 1 + Math.floor(random() * 30) }, (_, index) =>
        task(`t${index}`, random() * 90),
      )
      const effort = tasks.reduce((sum, each) => sum + each.minutes, 0)
      const longest = Math.max(...tasks.map(each => each.minutes))
      expect(schedule(tasks, teams, new Map()).makespan).toBeLessThanOrEqual(
        effort / teams + (1 - 1 / teams) * longest + 1e-9,
      )
    }
  })
})

describe('minutes', () => {
  test('house values for two technicians (from memory): D-ring 15 to 20, wire 12 to 18, heavy cleat 60 to 120', () => {
    const times = timesInForce(new Map())
    const spread = (key: string) => [timeOf(times, key).least, timeOf(times, key).most]
    expect(spread('d-rings')).toEqual([15, 20])
    expect(spread('wire')).toEqual([12, 18])
    expect(spread('cleat')).toEqual([60, 120])
    expect(spread('first-on-wall')).toEqual([10, 10])
    expect(spread('label')).toEqual([3, 5])
    expect(spread('light')).toEqual([5, 10])
    expect(times.length).toBe(methods.length + Object.keys(extraTimes).length)
  })

  test('the house’s own time stands in its place, with its origin', () => {
    const times = timesInForce(new Map([['d-rings', { minutes: 22, source: 'timed in March' }]]))
    expect(timeOf(times, 'd-rings')).toMatchObject({
      minutes: 22,
      least: 22,
      most: 22,
      source: 'timed in March',
      own: true,
    })
    expect(timeOf(times, 'wire')).toMatchObject({ minutes: 15, own: false })
    expect(timeOf(times, null).key).toBe('not-known')
  })

  test('elapsed = (Σ team / teams + Σ all hands) × (1 + contingency) over 6 productive hours: by hand', () => {
    // 12 D-rings of 17.5 and 3 walls of 10 by two teams, a heavy work of 90 by all.
    const made = estimate({ teamMinutes: 240, allHandsMinutes: 90, teams: 2, contingency: 0.25, hoursADay: 6 })
    expect(made.plainMinutes).toBe(210)
    expect(made.elapsedMinutes).toBe(262.5)
    expect(made.days).toBeCloseTo(0.7292, 4)
  })
})
