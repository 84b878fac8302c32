/**
 * What several people lift together. The rule it keeps: a team never lifts the sum of what its people lift alone, and
 * more than four are no team at one work.
 */
import { Refusal } from '../contract/refusal.ts'

export interface TeamFactor {
  readonly factor: number
  readonly source: string
}

const hse = 'Manual handling operations, guidance on regulations, L23 (HSE)'

/**
 * Part of the summed capabilities of its people that a team lifts. Refuses `team-too-large` over four and `bad-input`
 * for anything that is no team. Source: HSE L23, two 2/3, three 1/2; for four no factor is published, at most that of
 * three is a house rule.
 */
export function teamFactor(people: number): TeamFactor {
  switch (people) {
    case 1:
      return { factor: 1, source: 'one person lifts what one person lifts' }
    case 2:
      return { factor: 2 / 3, source: hse }
    case 3:
      return { factor: 1 / 2, source: hse }
    case 4:
      return { factor: 1 / 2, source: 'house rule: at most that of three; no factor is published for four' }
  }
  if (Number.isInteger(people) && people > 4) {
    throw new Refusal(
      'team-too-large',
      'More than four people are unlikely to lift together. Use a lift, or take the load apart.',
      { field: 'people', details: { people, most: 4 } },
    )
  }
  throw new Refusal('bad-input', 'One to four people lift a work.', { field: 'people' })
}
