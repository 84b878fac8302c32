/** The end of a show: steps, what is next, what stands in the way, and crates reckoned. */
import { describe, expect, test } from 'vitest'
import { cratesReckoned, type LeavingFacts, leavingOf, leavingSteps } from '../../../src/record/leaving.ts'
import { randomFrom } from '../database/random-edits.ts'

const came = '2031-03-02T09:10:00.000Z'
const went = '2031-06-14T10:00:00.000Z'

/** A lender's work on its wall on the last day, that came with a report in a crate. */
const onWall: LeavingFacts = {
  lent: true,
  hangs: true,
  locked: false,
  cameAt: came,
  outgoing: null,
  found: null,
  damage: [],
  settled: [],
  cameIn: 'c5',
  liesIn: null,
  place: 'here',
  acknowledged: false,
}
const codes = (facts: LeavingFacts) => leavingOf(facts).lacks.map(({ code }) => code)

describe('a work on its way out', () => {
  test('goes through the steps one by one', () => {
    const days: readonly (readonly [LeavingFacts, string | null])[] = [
      [onWall, 'off its wall'],
      [{ ...onWall, hangs: false }, 'looked at'],
      [{ ...onWall, hangs: false, outgoing: { at: went, complete: false } }, 'looked at'],
      [{ ...onWall, hangs: false, outgoing: { at: went, complete: true } }, 'packed'],
      [{ ...onWall, hangs: false, outgoing: { at: went, complete: true }, liesIn: 'c5' }, 'gone'],
      [
        { ...onWall, hangs: false, outgoing: { at: went, complete: true }, liesIn: 'c5', place: 'outside' },
        'receipt back',
      ],
    ]
    for (const [facts, next] of days) expect(leavingOf(facts).next).toBe(next)
    const back = { ...(days.at(-1)?.[0] ?? onWall), acknowledged: true }
    expect(leavingOf(back)).toMatchObject({ next: null, lacks: [] })
  })

  test('of the house is taken down and looked at, and no more', () => {
    const { steps, next } = leavingOf({ ...onWall, lent: false, hangs: false, outgoing: { at: went, complete: true } })
    expect(steps.map(({ step }) => step)).toEqual(['off its wall', 'looked at'])
    expect(next).toBeNull()
  })

  test('an outgoing report of an earlier stay counts for nothing', () => {
    const facts = { ...onWall, hangs: false, outgoing: { at: '2030-01-01T00:00:00.000Z', complete: true } }
    expect(leavingOf(facts).next).toBe('looked at')
    expect(codes(facts)).toContain('no-report')
  })

  test('what is found new or grown holds it here until the damage is on record, and then until that is closed', () => {
    const changed = { ...onWall, hangs: false, outgoing: { at: went, complete: true }, found: { new: 1, grown: 2 } }
    expect(leavingOf(changed).lacks).toEqual([
      {
        code: 'changed',
        stops: true,
        text: '1 new and 2 grown since it came: keep it here, record the damage and tell its owner.',
      },
    ])
    expect(codes({ ...changed, damage: ['D-0007'] })).toEqual(['damage'])
    expect(leavingOf({ ...changed, damage: ['D-0007'] }).lacks[0]?.text).toContain('D-0007')
    // What is closed is told and stops nothing; another that is open does.
    const settled = leavingOf({ ...changed, settled: ['D-0007'] }).lacks
    expect(settled).toEqual([
      {
        code: 'changed',
        stops: false,
        text: '1 new and 2 grown since it came: damage D-0007 is on record and closed.',
      },
    ])
    expect(codes({ ...changed, damage: ['D-0008'], settled: ['D-0007'] })).toEqual(['damage'])
  })

  test('another crate, a lock, a place that nobody knows, a way out without a report are told', () => {
    expect(codes({ ...onWall, locked: true })).toEqual(['locked'])
    expect(codes({ ...onWall, hangs: false, outgoing: { at: went, complete: true }, liesIn: 'c6' })).toEqual([
      'other-crate',
    ])
    expect(codes({ ...onWall, hangs: false, place: 'nowhere' })).toEqual(['nowhere'])
    expect(codes({ ...onWall, hangs: false, place: 'on the way' })).toEqual(['left-without-report', 'no-receipt'])
  })

  test('whatever is said, a step that is done never comes next, and what stops is told first', () => {
    const chance = randomFrom(11)
    const one = <T>(of: readonly T[]): T => of[Math.floor(chance() * of.length)] as T // the list is not empty
    for (let at = 0; at < 2000; at += 1) {
      const facts: LeavingFacts = {
        lent: one([true, false]),
        hangs: one([true, false]),
        locked: one([true, false]),
        cameAt: one([null, came]),
        outgoing: one([null, { at: went, complete: false }, { at: went, complete: true }]),
        found: one([null, { new: 0, grown: 0 }, { new: 1, grown: 0 }]),
        damage: one([[], ['D-1']]),
        settled: one([[], ['D-2']]),
        cameIn: one([null, 'a', 'b']),
        liesIn: one([null, 'a', 'b']),
        place: one(['nowhere', 'here', 'on the way', 'outside']),
        acknowledged: one([true, false]),
      }
      const { steps, next, lacks } = leavingOf(facts)
      expect(steps.find(({ step }) => step === next)?.done ?? false).toBe(false)
      expect(next === null).toBe(steps.every(({ done }) => done))
      const order = steps.map(({ step }) => leavingSteps.indexOf(step))
      expect(order).toEqual([...order].sort((a, b) => a - b))
      const stops = lacks.map(lack => lack.stops)
      expect(stops).toEqual([...stops].sort((a, b) => Number(b) - Number(a)))
    }
  })
})

test('crates: what came in each is in it or missing, what else lies in it is strange; nothing is told twice', () => {
  const chance = randomFrom(3)
  const crates = [null, 'a', 'b', 'c'] as const
  const pick = () => crates[Math.floor(chance() * crates.length)] ?? null
  const works = Array.from({ length: 200 }, (_, at) => ({ work: `w${at}`, cameIn: pick(), liesIn: pick() }))
  const reckoned = cratesReckoned(works)
  const all = (of: 'inIt' | 'missing' | 'strange') => reckoned.flatMap(each => each[of])
  expect(all('inIt')).toHaveLength(works.filter(each => each.liesIn !== null).length)
  expect(all('missing')).toHaveLength(works.filter(each => each.cameIn !== null && each.cameIn !== each.liesIn).length)
  for (const { inIt, missing, strange } of reckoned) {
    expect(inIt.filter(work => missing.includes(work))).toEqual([])
    expect(strange.filter(work => !inIt.includes(work))).toEqual([])
  }
})
