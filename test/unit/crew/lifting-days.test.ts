/**
 * What a team lifts in a day. Masses and walls are invented; the limits are multiplied out by hand from the equation of
 * DHHS (NIOSH) 94-110: 23 kg · 25/H · (1 − .003 |V − 75|) · (.82 + 4.5/D) · CM, at both ends.
 */
import { describe, expect, test } from 'vitest'
import { type LiftingDaysQuestion, liftingDays, liftingFindings } from '../../../src/crew/lifting-days.ts'
import { peopleFor } from '../../../src/crew/plan.ts'
import { type CrewWork, crewWorks } from '../../../src/crew/show.ts'
import { placed, six, wallOf } from '../sheets/wall.ts'
import { handlingRules } from './house.ts'

const works = crewWorks({
  elevations: [wallOf(six.map((given, index) => placed(given, index)))],
  rules: handlingRules,
  equipment: [],
})
const ask = (more: Partial<LiftingDaysQuestion>) =>
  liftingDays({
    works,
    slots: works.map(({ placed: { placement } }, index) => ({
      id: placement,
      start: index * 20,
      end: index * 20 + 20,
      teams: [1 + (index % 2)],
    })),
    minutesADay: 360,
    people: peopleFor,
    system: 'metric',
    ...more,
  })

/** The work with other facts, as the wall and the hand have it. */
function as(work: CrewWork, more: Partial<CrewWork['placed']>): CrewWork {
  const placed = { ...work.placed, ...more }
  return { ...work, placed, hung: [{ placed, answer: work.answer }] }
}

test('the parts of a set are lifted one by one, in the time of the whole', () => {
  const [work] = works
  if (work === undefined) throw new Error('no work')
  const half = { placed: { ...work.placed, mass: (work.placed.mass ?? 0) / 2 }, answer: work.answer }
  const [whole] = ask({ works: [work] })
  const [parts] = ask({ works: [{ ...work, hung: [half, half] }] })
  expect(parts).toMatchObject({ lifts: 2, covered: 2, perMinute: 2 / 20 })
  expect(parts?.most?.index).toBeCloseTo((whole?.most?.index ?? 0) / 2, 1)
})

test('equipment is no lift by hand: the 31 kg work is in nobody’s day, and one that nobody has weighed is not covered', () => {
  const days = ask({})
  expect(days.map(({ day, team, lifts, covered }) => [day, team, lifts, covered])).toEqual([
    [1, 1, 3, 3],
    [1, 2, 2, 1],
  ])
})

test('one lift multiplied out: two people, from a third of the height to a third above the lower edge', () => {
  const [work] = works
  if (work?.placed.size == null || work.placed.mass === null) throw new Error('no work')
  const { size, mass, centreY } = work.placed
  const from = size.height / 30
  const to = (centreY - size.height / 6) / 10
  // The manual's own estimate of H; lower than 25 cm the body is bent and the hands are farther out.
  const hm = (v: number) => Math.min(1, 25 / ((v < 25 ? 25 : 20) + (size.depth ?? 60) / 20))
  const dm = 0.82 + 4.5 / (to - from)
  const limit = (v: number) => 23 * hm(v) * (1 - 0.003 * Math.abs(v - 75)) * dm * (v < 75 ? 0.95 : 1)
  const people = peopleFor(work)
  const index = mass / (people * (people === 1 ? 1 : 2 / 3)) / Math.min(limit(from), limit(to))
  const [day] = ask({ works: [work] })
  expect(day?.index).toBeCloseTo(index, 9)
  expect(day?.most).toEqual({ placement: work.placed.placement, index: day?.index })
  // Inches and pounds have constants of their own, which are near and not the same.
  const [us] = ask({ works: [work], system: 'us' })
  expect(Math.abs((us?.index ?? 0) / index - 1)).toBeLessThan(0.03)
  expect(us?.index).not.toBe(day?.index)
})

describe('what the equation does not cover is named', () => {
  const [work] = works
  if (work === undefined) throw new Error('no work')
  const changed = (more: Partial<typeof work.placed>) => [as(work, more)]
  test.each([
    [{ mass: null }, /weighed/],
    [{ size: null }, /size/],
    [{ centreY: 2600 }, /travels too far/],
  ] as const)('%o', (more, why) => {
    const [day] = ask({ works: changed(more) })
    expect(day).toMatchObject({ lifts: 1, covered: 0, index: null, most: null })
    expect(day?.beyond[0]?.why).toMatch(why)
  })

  test('what hangs is not lifted again', () => {
    expect(ask({ works: changed({ state: 'hung' }) })).toEqual([])
  })
})

test('a day over 1 is told, with its heaviest work', () => {
  const [work] = works
  if (work === undefined) throw new Error('no work')
  const days = ask({ works: [as(work, { mass: 60 })] })
  const [found, ...more] = liftingFindings(days, 'show', () => 'the Causeway')
  expect(more).toEqual([])
  expect(found).toMatchObject({ code: 'lifting-composite', subject: { kind: 'placement', id: work.placed.placement } })
  expect(found?.text).toContain('the Causeway alone')
  expect(liftingFindings(ask({}), 'show', id => id)).toEqual([])
})

test('tasks of the next morning are the next day’s', () => {
  const slots = works.map(({ placed: { placement } }) => ({ id: placement, start: 360, end: 380, teams: [1, 2] }))
  expect(ask({ slots }).map(({ day, team }) => [day, team])).toEqual([
    [2, 1],
    [2, 2],
  ])
})
