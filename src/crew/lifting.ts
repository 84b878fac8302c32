/**
 * Whether people may lift a work: the lifting equation for one person, the team's factor on it, and the index that says
 * how far the load is over. The rule it keeps: what the equation does not cover is refused by name, never let through.
 */
import { Refusal } from '../contract/refusal.ts'
import { INCH, POUND } from '../hang/physics.ts'
import {
  estimatedHorizontal,
  type LiftPoint,
  liftingConstants,
  type MultipliersFrom,
  type PointLimit,
  recommendedLimits,
} from './niosh.ts'
import type { Coupling, LiftingDuration, MeasureSystem } from './niosh-tables.ts'
import { teamFactor } from './team.ts'

/** Millimetres, kilograms, degrees. */
export interface LiftingQuestion {
  readonly mass: number
  readonly origin: LiftPoint
  readonly destination: LiftPoint
  readonly perMinute: number
  readonly duration: LiftingDuration
  readonly coupling: Coupling
  readonly people: number
  /** Whose constants and tables: centimetres and kilograms, or inches and pounds. */
  readonly system: MeasureSystem
  readonly from: MultipliersFrom
}

export interface LiftingPoint extends PointLimit {
  readonly limitKg: number
}

export interface LiftingAnswer {
  readonly origin: LiftingPoint
  readonly destination: LiftingPoint
  /** The lower of both ends: a work is set down with care. kg, for one person. */
  readonly limitKg: number
  readonly teamFactor: number
  readonly teamSource: string
  /** Factor × people × limit. */
  readonly teamLimitKg: number
  /** Load over the team's limit: 1 or less is within it. */
  readonly index: number
  readonly within: boolean
  /** The fewest people whose team limit carries the load; null where four are too few. */
  readonly peopleNeeded: number | null
  readonly cautions: readonly string[]
}

/**
 * Refuses `lift-out-of-range` (its field names the measure) where the equation allows no lift, and `team-too-large`.
 */
export function liftingLimit(question: LiftingQuestion): LiftingAnswer {
  const { system, mass, people } = question
  const length = system === 'us' ? INCH : 10
  const unit = system === 'us' ? POUND : 1
  const inUnits = (point: LiftPoint): LiftPoint => ({
    horizontal: point.horizontal / length,
    vertical: point.vertical / length,
    asymmetry: point.asymmetry,
  })
  const limits = recommendedLimits({
    system,
    from: question.from,
    origin: inUnits(question.origin),
    destination: inUnits(question.destination),
    perMinute: question.perMinute,
    duration: question.duration,
    coupling: question.coupling,
  })
  refuseBeyond(limits, system)
  const team = teamFactor(people)
  const origin = { ...limits.origin, limitKg: limits.origin.limit * unit }
  const destination = { ...limits.destination, limitKg: limits.destination.limit * unit }
  const limitKg = Math.min(origin.limitKg, destination.limitKg)
  const teamLimitKg = limitKg * people * team.factor
  return {
    origin,
    destination,
    limitKg,
    teamFactor: team.factor,
    teamSource: team.source,
    teamLimitKg,
    index: mass / teamLimitKg,
    within: mass <= teamLimitKg * (1 + 1e-9),
    peopleNeeded: [1, 2, 3, 4].find(each => mass <= limitKg * each * teamFactor(each).factor * (1 + 1e-9)) ?? null,
    cautions: [
      ...(people > 1
        ? ['The equation is made for one person; a team’s part of it by the factor of team handling is a house rule.']
        : []),
      'Not for one-handed, seated or unstable lifts, nor on ladders; local codes and trained people decide.',
    ],
  }
}

export interface Hands {
  readonly horizontal?: number | undefined
  /** How far the load stands out in front of the body. */
  readonly reach?: number | undefined
  readonly vertical: number
  readonly asymmetry?: number | undefined
}

/** Where the hands are, mm: as measured, else estimated from the load's reach. Refuses `bad-input` where neither is known. */
export function handsAt(hands: Hands, end: 'origin' | 'destination', system: MeasureSystem): LiftPoint {
  const { vertical, reach, asymmetry = 0 } = hands
  const unit = system === 'us' ? INCH : 10
  const horizontal =
    hands.horizontal ??
    (reach === undefined ? undefined : estimatedHorizontal(system, reach / unit, vertical / unit) * unit)
  if (horizontal === undefined) {
    throw new Refusal(
      'bad-input',
      'Say how far the hands are in front of the ankles, or how far the load reaches out.',
      {
        field: `${end}.horizontal`,
      },
    )
  }
  return { horizontal, vertical, asymmetry }
}

const words = {
  horizontal: ['horizontal', 'The hands are too far in front of the body'],
  vertical: ['vertical', 'The hands are too high'],
  distance: ['vertical', 'The load travels too far up or down'],
  asymmetry: ['asymmetry', 'The body is turned too far'],
} as const

function refuseBeyond(
  { origin, destination }: { readonly origin: PointLimit; readonly destination: PointLimit },
  system: MeasureSystem,
): void {
  const { mostHorizontal, mostVertical, mostDistance } = liftingConstants[system]
  const most = { horizontal: mostHorizontal, vertical: mostVertical, distance: mostDistance, asymmetry: 135 }
  const unit = system === 'us' ? 'in' : 'cm'
  for (const [end, { multipliers }] of [
    ['origin', origin],
    ['destination', destination],
  ] as const) {
    for (const key of ['horizontal', 'vertical', 'distance', 'asymmetry'] as const) {
      if (multipliers[key] > 0) continue
      const [field, what] = words[key]
      throw new Refusal(
        'lift-out-of-range',
        `${what}: the equation ends at ${most[key]} ${key === 'asymmetry' ? 'degrees' : unit}. Lift in another way, or use a lift.`,
        { field: `${end}.${field}`, details: { measure: key, most: most[key] } },
      )
    }
    if (multipliers.frequency === 0) {
      throw new Refusal(
        'lift-out-of-range',
        'Nobody lifts so often for so long by the equation. Lift less often, for a shorter time, or use a lift.',
        { field: 'perMinute', details: { measure: 'frequency' } },
      )
    }
  }
}
