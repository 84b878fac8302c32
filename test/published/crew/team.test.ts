/** Team handling: Health and Safety Executive (UK), L23, "Manual handling": two 2/3, three 1/2 of the summed capabilities. */
import { describe, expect, test } from 'vitest'
import { teamFactor } from '../../../src/crew/team.ts'

/** What a team lifts by what each of its people lifts alone, kg: the sum, times its factor. */
function teamCapacity(alone: readonly number[]): number {
  return teamFactor(alone.length).factor * alone.reduce((sum, each) => sum + each, 0)
}

describe('team handling (HSE L23)', () => {
  test('two who lift 20 kg each lift 26.6 kg (Network Rail, "Lifting and handling in teams"; exact 26.67)', () => {
    expect(teamCapacity([20, 20])).toBeCloseTo(26.667, 3)
  })

  test('two of 50 kg lift 66, three of 50 kg lift 75 (First Safety Training Services)', () => {
    expect(Math.floor(teamCapacity([50, 50]))).toBe(66)
    expect(teamCapacity([50, 50, 50])).toBe(75)
  })

  test('four lift at most one half: house rule, no published factor', () => {
    expect(teamFactor(4).factor).toBe(0.5)
    expect(teamFactor(4).source).toContain('house rule')
  })

  test('people who lift differently are summed', () => {
    expect(teamCapacity([25, 15])).toBeCloseTo((40 * 2) / 3, 12)
  })

  test('more than four are refused (L23: unlikely to work), nobody and halves too', () => {
    expect(() => teamFactor(5)).toThrow(expect.objectContaining({ code: 'team-too-large', field: 'people' }))
    for (const none of [0, -1, 1.5, Number.NaN]) {
      expect(() => teamFactor(none)).toThrow(expect.objectContaining({ code: 'bad-input', field: 'people' }))
    }
  })
})
