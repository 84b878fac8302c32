/**
 * The recommended weight limit of the 1991 lifting equation, RWL = LC · HM · VM · DM · AM · FM · CM, and the lifting
 * index LI = load / RWL. Waters, Putz-Anderson and Garg, DHHS (NIOSH) 94-110. Its metric and its US constants are no
 * exact conversions of each other, so that one lift is computed in one system from end to end. It is made for one
 * person who lifts with both hands, standing, a stable load, in a temperate room; it certifies nothing.
 */
import {
  asymmetryRows,
  type Coupling,
  couplings,
  distanceRows,
  frequencyRows,
  horizontalRows,
  type LiftingDuration,
  type MeasureSystem,
  type Rows,
  verticalRows,
} from './niosh-tables.ts'

/** `formula` as the equation is written, `table` with the two decimals of the manual's printed tables. */
export type MultipliersFrom = 'formula' | 'table'

/** One lift in the units of its system: centimetres and kilograms, or inches and pounds. */
export interface Lift {
  readonly system: MeasureSystem
  readonly from: MultipliersFrom
  /** Hands in front of the ankles, and above the floor, where the lift begins. */
  readonly origin: LiftPoint
  /** The same where it ends; the limit there counts when the load is set down with care, as a work always is. */
  readonly destination: LiftPoint
  readonly perMinute: number
  readonly duration: LiftingDuration
  readonly coupling: Coupling
}

export interface LiftPoint {
  readonly horizontal: number
  readonly vertical: number
  /** Degrees that the load is turned out of the body's middle plane. */
  readonly asymmetry: number
}

export interface Multipliers {
  readonly horizontal: number
  readonly vertical: number
  readonly distance: number
  readonly asymmetry: number
  readonly frequency: number
  readonly coupling: number
}

export interface PointLimit {
  readonly multipliers: Multipliers
  /** kg or lb; 0 where the equation allows no lift at all. */
  readonly limit: number
}

interface SystemConstants {
  /** LC: kilograms or pounds. */
  readonly load: number
  readonly leastHorizontal: number
  readonly mostHorizontal: number
  readonly knuckles: number
  readonly perVertical: number
  readonly mostVertical: number
  readonly perDistance: number
  readonly leastDistance: number
  readonly mostDistance: number
}

/** Both columns of the manual's table of multipliers. */
export const liftingConstants: Readonly<Record<MeasureSystem, SystemConstants>> = {
  metric: {
    load: 23,
    leastHorizontal: 25,
    mostHorizontal: 63,
    knuckles: 75,
    perVertical: 0.003,
    mostVertical: 175,
    perDistance: 4.5,
    leastDistance: 25,
    mostDistance: 175,
  },
  us: {
    load: 51,
    leastHorizontal: 10,
    mostHorizontal: 25,
    knuckles: 30,
    perVertical: 0.0075,
    mostVertical: 70,
    perDistance: 1.8,
    leastDistance: 10,
    mostDistance: 70,
  },
}

/** Dust of a conversion from millimetres: no row, no limit is missed by it. */
const DUST = 1e-6

/** HM; under the least H, the least. 0 farther out than the last row. */
export function horizontalMultiplier(system: MeasureSystem, from: MultipliersFrom, horizontal: number): number {
  const { leastHorizontal, mostHorizontal } = liftingConstants[system]
  if (horizontal > mostHorizontal + DUST) return 0
  const h = Math.max(horizontal, leastHorizontal)
  return written(from, horizontalRows[system], h, leastHorizontal / h)
}

/** VM; 0 above the last row. */
export function verticalMultiplier(system: MeasureSystem, from: MultipliersFrom, vertical: number): number {
  const { knuckles, perVertical, mostVertical } = liftingConstants[system]
  if (vertical > mostVertical + DUST) return 0
  return written(from, verticalRows[system], vertical, 1 - perVertical * Math.abs(vertical - knuckles))
}

/** DM; under the least D, 1. 0 beyond the last row. */
export function distanceMultiplier(system: MeasureSystem, from: MultipliersFrom, distance: number): number {
  const { perDistance, leastDistance, mostDistance } = liftingConstants[system]
  if (distance > mostDistance + DUST) return 0
  const d = Math.max(distance, leastDistance)
  return written(from, distanceRows[system], d, Math.min(1, 0.82 + perDistance / d))
}

/** AM; 0 beyond 135 degrees. */
export function asymmetryMultiplier(from: MultipliersFrom, degrees: number): number {
  if (degrees > 135 + DUST) return 0
  return written(from, asymmetryRows, degrees, 1 - 0.0032 * degrees)
}

/**
 * FM by V at the origin; there is only the table. Between two rows it is read by a straight line, but never between a
 * figure and .00: there the table has ended.
 */
export function frequencyMultiplier(
  system: MeasureSystem,
  perMinute: number,
  duration: LiftingDuration,
  verticalAtOrigin: number,
): number {
  const column = verticalAtOrigin < liftingConstants[system].knuckles - DUST ? 0 : 1
  let before: readonly [number, number] | null = null
  for (const row of frequencyRows) {
    const value = row[duration][column]
    if (perMinute <= row.perMinute + DUST) {
      if (before === null || Math.abs(perMinute - row.perMinute) <= DUST) return value
      if (value === 0) return 0
      const along = (perMinute - before[0]) / (row.perMinute - before[0])
      return before[1] + (value - before[1]) * along
    }
    before = [row.perMinute, value]
  }
  return 0
}

/**
 * H where nobody can measure it: from how far the load reaches out in front of the body (W) and the height of the
 * hands, in the system's units. The manual's own estimate: 20 + W/2 cm (8 + W/2 in), lower than 25 cm (10 in) 25 + W/2
 * (10 + W/2).
 */
export function estimatedHorizontal(system: MeasureSystem, reach: number, vertical: number): number {
  const { leastHorizontal } = liftingConstants[system]
  const offset = vertical >= leastHorizontal ? { metric: 20, us: 8 }[system] : leastHorizontal
  return offset + reach / 2
}

/** CM by V at the point that is looked at. */
export function couplingMultiplier(system: MeasureSystem, coupling: Coupling, vertical: number): number {
  return couplings[coupling][vertical < liftingConstants[system].knuckles - DUST ? 0 : 1]
}

/** Limits at both ends of a lift, kg or lb as its system has it. */
export function recommendedLimits(lift: Lift): { readonly origin: PointLimit; readonly destination: PointLimit } {
  const distance = Math.abs(lift.destination.vertical - lift.origin.vertical)
  return { origin: at(lift, lift.origin, distance), destination: at(lift, lift.destination, distance) }
}

function at(lift: Lift, point: LiftPoint, distance: number): PointLimit {
  const { system, from } = lift
  const multipliers: Multipliers = {
    horizontal: horizontalMultiplier(system, from, point.horizontal),
    vertical: verticalMultiplier(system, from, point.vertical),
    distance: distanceMultiplier(system, from, distance),
    asymmetry: asymmetryMultiplier(from, point.asymmetry),
    frequency: frequencyMultiplier(system, lift.perMinute, lift.duration, lift.origin.vertical),
    coupling: couplingMultiplier(system, lift.coupling, point.vertical),
  }
  const limit = Object.values(multipliers).reduce((product, each) => product * each, liftingConstants[system].load)
  return { multipliers, limit }
}

/**
 * With the tables: a printed row as it is printed; between two rows the formula in two decimals, as the manual's own
 * worked examples multiply (example 4: V 59 in is .78, D 37 in is .87).
 */
function written(from: MultipliersFrom, rows: Rows, measure: number, formula: number): number {
  if (from === 'formula') return formula
  const row = rows.find(([at]) => Math.abs(at - measure) <= DUST)
  return row === undefined ? Math.round(formula * 100 + DUST) / 100 : row[1]
}
