/**
 * Who lifts a work and with what. Classes: by hand to about 30 kg and 1.5 m square, stacker lift and at least three
 * people to 150 kg and about 3.5 × 3 m, hoist to 400 kg; common practice, no source.
 */
import { describe, expect, test } from 'vitest'
import { accessTo, type Equipment, equipmentFor, handlingFindings, handlingOf } from '../../../src/crew/handling.ts'
import { handlingRules as rules } from './house.ts'

describe('class by mass and size', () => {
  test.each([
    [4.2, 620, 480, 'alone', 1],
    [7, 1000, 1000, 'alone', 1],
    [7.1, 620, 480, 'by hand', 2],
    [4, 620, 1001, 'by hand', 2],
    [30, 1500, 1500, 'by hand', 2],
    [30.1, 900, 900, 'stacker lift', 3],
    [12, 1501, 900, 'stacker lift', 3],
    [150, 3000, 3500, 'stacker lift', 3],
    [150, 3100, 3500, 'hoist', 4],
    [20, 3600, 900, 'hoist', 4],
    [150.5, 900, 900, 'hoist', 4],
    [400, 2000, 2000, 'hoist', 4],
    [400.1, 2000, 2000, 'lifting plan', 4],
  ] as const)('%s kg, %s × %s mm: %s, %s people', (mass, height, width, kind, people) => {
    expect(handlingOf({ mass, height, width }, rules)).toMatchObject({ class: kind, people })
    expect(handlingOf({ mass, height: width, width: height }, rules).class).toBe(kind)
  })

  test('what is not weighed or not measured is never taken for light', () => {
    expect(handlingOf({ mass: null, height: 300, width: 200 }, rules)).toEqual({
      class: 'by hand',
      people: 2,
      why: ['not weighed yet'],
    })
    expect(handlingOf({ mass: 2, height: null, width: null }, rules).people).toBe(2)
  })

  test('says why, in the reader’s units', () => {
    expect(handlingOf({ mass: 86, height: 1800, width: 1200 }, rules).why).toEqual([
      'heavier than 30 kg',
      'larger than 1.5 m',
    ])
    const inches = { length: (mm: number) => `${Math.round(mm / 25.4)} in`, mass: (kg: number) => `${kg} kgs` }
    expect(handlingOf({ mass: 160, height: 4000, width: 1200 }, rules, inches).why).toEqual([
      'heavier than 150 kgs',
      'larger than 138 in × 118 in',
    ])
  })

  test('more mass or size never needs fewer people', () => {
    let last = 0
    for (const mass of [1, 7, 8, 30, 31, 150, 151, 400, 500]) {
      const { people } = handlingOf({ mass, height: 500, width: 500 }, rules)
      expect(people).toBeGreaterThanOrEqual(last)
      last = people
    }
  })
})

test('what fixings are reached from: steps to 2 m, platform to 3.5 m, lift above (from memory)', () => {
  expect([1700, 1900, 2000, 2001, 3500, 3501].map(height => accessTo(height, rules))).toEqual([
    'floor',
    'steps',
    'steps',
    'platform',
    'platform',
    'lift',
  ])
  expect(accessTo(null, rules)).toBeNull()
})

describe('equipment', () => {
  const make = (id: string, carriesKg: number | null, reaches: number | null, count = 1): Equipment => ({
    id,
    name: id,
    carriesKg,
    reaches,
    count,
    people: 1,
  })
  const list = [
    make('big', 300, 4000),
    make('small', 100, 2500),
    make('unknown', null, null),
    make('gone', 90, 3000, 0),
  ]

  test('the smallest that carries it and reaches its top', () => {
    expect(equipmentFor(86, 2400, list)?.id).toBe('small')
    expect(equipmentFor(86, 2600, list)?.id).toBe('big')
    expect(equipmentFor(120, 2400, list)?.id).toBe('big')
    expect(equipmentFor(301, 2400, list)).toBeNull()
    expect(equipmentFor(86, 4100, list)).toBeNull()
    expect(equipmentFor(null, 2000, list)).toBeNull()
  })

  test('is missed by name', () => {
    const handling = handlingOf({ mass: 86, height: 1800, width: 1200 }, rules)
    const work = { mass: 86, height: 1800, width: 1200, called: '4' }
    const found = handlingFindings(work, { kind: 'placement', id: 'p' }, handling, null)
    expect(found.map(each => [each.severity, each.code])).toEqual([['settle', 'no-equipment']])
    expect(found[0]?.text).toContain('stacker lift')
    expect(handlingFindings(work, { kind: 'placement', id: 'p' }, handling, list[0] ?? null)).toEqual([])
  })

  test('too heavy for any class is a stop', () => {
    const work = { mass: 500, height: 1800, width: 1200, called: '4' }
    const found = handlingFindings(work, { kind: 'placement', id: 'p' }, handlingOf(work, rules), null)
    expect(found.map(each => [each.severity, each.code])).toEqual([['stop', 'lifting-plan']])
  })
})
