/**
 * Works beside one another on one picture rail. Shares by hand: a work of 6 kg on two hooks puts 3 kg on each (moments
 * about the middle); the house factor is 4. The window is tried against every metre in steps of a millimetre.
 */
import { describe, expect, test } from 'vitest'
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import { faceFindings } from '../../../src/model/face-findings.ts'
import { heaviestMetre, type RailHook } from '../../../src/model/rail-load.ts'
import { wallWith, work } from './sample-wall.ts'

/** 500 × 400 mm on two upright cables 300 mm apart. */
function onRail(id: string, x: number, mass: number | null): PlacedWork {
  return {
    ...work,
    placement: `p${id}`,
    entry: id,
    work: `w${id}`,
    running: id,
    mass,
    lightLimit: null,
    size: { height: 500, width: 400, depth: 30, diameter: null, part: 'framed', kind: 'measured', at: '' },
    back: {
      method: 'picture-rail',
      seenFrom: 'front',
      data: { left: { drop: 60 }, right: { drop: 60 }, spacing: 300, way: 'upright', by: { with: 'cable' } },
    },
    fixing: null,
    x,
  }
}

function railed(ratedKg: number | null, ...works: readonly PlacedWork[]): Elevation {
  const wall = wallWith(works)
  return {
    ...wall,
    wall: {
      ...wall.wall,
      keepClears: [],
      rail: [
        [0, 3070],
        [9140, 3070],
      ],
      railKgPerMetre: ratedKg,
    },
  }
}

const together = (wall: Elevation) => faceFindings(wall).filter(found => /rail-.*(together|summed)/.test(found.code))

describe('neighbours on a rail', () => {
  // Hooks at 1 850, 2 150, 2 350, 2 650: all four on the metre from 1 850, 12 kg, × 4 = 48.
  const two = [onRail('1', 2000, 6), onRail('2', 2500, 6)]

  test('are summed on the heaviest metre, to the last kilogram', () => {
    const [holds] = together(railed(48, ...two))
    expect(holds).toMatchObject({ severity: 'fits', code: 'rail-holds-together' })
    expect(holds?.figures).toMatchObject({ from: 1850, to: 2850, kg: 12, neededKgPerMetre: 48, works: ['p1', 'p2'] })
    const [over] = together(railed(47.9, ...two))
    expect(over).toMatchObject({ severity: 'stop', code: 'rail-overloaded-together' })
    expect(over?.text).toContain('carries 12.0 kg of 1 and 2')
    // Each of them alone passes: 6 × 4 = 24.
    const alone = faceFindings(railed(47.9, ...two)).filter(found => found.code === 'rail-holds')
    expect(alone).toHaveLength(2)
  })

  test('further apart than a metre carry alone', () => {
    // Hooks at 1 850, 2 150 and 3 151, 3 451: 1 001 mm between the inner ones.
    expect(together(railed(24, onRail('1', 2000, 6), onRail('2', 3301, 6)))[0]?.severity).toBe('fits')
    // At 1 000 mm the inner two are on one metre, yet 6 kg is what each pair has anyway.
    expect(together(railed(24, onRail('1', 2000, 6), onRail('2', 3300, 6)))[0]?.severity).toBe('fits')
    // 200 mm nearer, three hooks are on one metre: 9 kg, × 4 = 36.
    expect(together(railed(35.9, onRail('1', 2000, 6), onRail('2', 3000, 6)))[0]?.figures.kg).toBe(9)
  })

  test('that nobody has weighed are no pass', () => {
    const [found] = together(railed(48, onRail('1', 2000, 6), onRail('2', 2500, null)))
    expect(found).toMatchObject({ severity: 'settle', code: 'rail-not-summed' })
    expect(found?.text).toContain('Nobody has weighed 2')
  })

  test('on a rail without a rating are told by their own findings, and one alone is no sum', () => {
    expect(together(railed(null, ...two))).toEqual([])
    expect(together(railed(48, onRail('1', 2000, 6)))).toEqual([])
  })
})

test('no metre laid anywhere carries more than the one that is found', () => {
  let state = 7
  const next = () => {
    state = (state * 1664525 + 1013904223) % 4294967296
    return state / 4294967296
  }
  for (let round = 0; round < 40; round += 1) {
    const hooks: RailHook[] = Array.from({ length: 2 + Math.floor(next() * 8) }, (_, at) => ({
      placement: `p${at}`,
      name: `${at}`,
      x: Math.round(next() * 4000),
      kg: Math.round(next() * 20),
    }))
    let most = 0
    for (let from = -1000; from <= 4000; from += 1) {
      const kg = hooks
        .filter(hook => hook.x >= from && hook.x <= from + 1000)
        .reduce((sum, hook) => sum + (hook.kg ?? 0), 0)
      most = Math.max(most, kg)
    }
    expect(heaviestMetre(hooks)?.kg).toBe(most)
  }
})
