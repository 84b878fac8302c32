import { describe, expect, test } from 'vitest'
import { INCH, newtons, POUND } from '../../../src/hang/physics.ts'
import { nailWithdrawal, withdrawalSays } from '../../../src/hang/withdrawal.ts'

/** lb for each inch in the wood. */
const perInch = (gravity: number, inches: number) =>
  nailWithdrawal({ gravity, diameter: inches * INCH, into: INCH }).allowableKg / POUND

describe('a nail drawn from wood', () => {
  test('G 0.45, 20d of 0.203 in: 38.05 lb/in', () => {
    // W = 1380 G^(5/2) D; engineeringtoolbox.com/nails-spikes-withdrawal-load-d_1814.html prints 38.
    expect(perInch(0.45, 0.203)).toBeCloseTo(38.05, 2)
  })

  test('G 0.50, 0.131 in: 32 lb/in', () => {
    // NDS withdrawal table, common 8d nail (from memory: it prints 32).
    expect(Math.round(perInch(0.5, 0.131))).toBe(32)
  })

  test('the allowable is a fifth of the ultimate 6 900 G^(5/2) D', () => {
    // USDA FPL-093 (1965), docslib.org/doc/2677380.
    const { allowableN, ultimateN } = nailWithdrawal({ gravity: 0.45, diameter: 0.203 * INCH, into: INCH })
    expect(ultimateN).toBeCloseTo(newtons(6900 * 0.45 ** 2.5 * 0.203 * POUND), 6)
    expect(ultimateN / allowableN).toBeCloseTo(5, 12)
  })

  test('the allowable lies far below the most that nails stood in tests', () => {
    // Wood Handbook, p = 7 850 G² D L (lb, in), printed as 54.12 G² D L (N, mm); engineersedge.com, calculator 15386.
    const nail = { gravity: 0.5, diameter: 3.33, into: 38 }
    const most = newtons(7850 * 0.5 ** 2 * (3.33 / INCH) * (38 / INCH) * POUND)
    expect((54.12 * 0.5 ** 2 * 3.33 * 38) / most).toBeCloseTo(1, 3)
    const { allowableN, ultimateN } = nailWithdrawal(nail)
    expect(most / allowableN).toBeGreaterThan(5)
    // Two fits to the tests of two decades: at this density they differ by the root of it, 7 850 / (6 900 √G).
    expect(most / ultimateN).toBeCloseTo(7850 / (6900 * Math.sqrt(0.5)), 9)
  })

  test('it grows with depth and is called information', () => {
    const one = nailWithdrawal({ gravity: 0.5, diameter: 3, into: 20 })
    expect(nailWithdrawal({ gravity: 0.5, diameter: 3, into: 40 }).allowableN).toBeCloseTo(2 * one.allowableN, 9)
    expect(one.says).toBe(withdrawalSays)
    expect(one.says).toContain('not a rating')
  })
})
