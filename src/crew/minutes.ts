/**
 * How long hanging takes: minutes of a team of two for each method and for what comes with it, and the estimate of a
 * whole show. The rule it keeps: every figure is a house value with its origin, and anyone may set his own.
 */
import { methods } from '../hang/methods.ts'

/** What is timed besides the methods themselves. */
export const extraTimes = {
  'first-on-wall': { label: 'First work on a wall: setting it out', minutes: [10, 10], source: 'from memory' },
  label: { label: 'Label of a work', minutes: [3, 5], source: 'from memory' },
  light: { label: 'Focusing the light on a work', minutes: [5, 10], source: 'from memory' },
  'not-known': { label: 'A work whose back nobody has measured', minutes: [15, 35], source: 'from memory' },
  level: { label: 'Levelling a work that hangs', minutes: [1, 3], source: 'from memory' },
  lock: { label: 'Shutting the lock of a work that hangs', minutes: [2, 4], source: 'from memory' },
  check: { label: 'A second person’s check of a work that hangs', minutes: [1, 2], source: 'from memory' },
  patch: { label: 'Filling and painting a hole', minutes: [1, 3], source: 'from memory' },
} as const satisfies Readonly<
  Record<string, { readonly label: string; readonly minutes: readonly [number, number]; readonly source: string }>
>
export type ExtraTime = keyof typeof extraTimes

/** Minutes of one team of two. */
export interface StepTime {
  readonly key: string
  readonly label: string
  /** In force: the house's own, else the middle between least and most. */
  readonly minutes: number
  readonly least: number
  readonly most: number
  readonly source: string
  /** Set by the house. */
  readonly own: boolean
}

export interface OwnTime {
  readonly minutes: number
  readonly source: string
}

/** Every time in force: methods in their order, then what comes with them. */
export function timesInForce(own: ReadonlyMap<string, OwnTime>): readonly StepTime[] {
  const given = [
    ...methods.map(({ key, name, minutes }) => ({ key, label: name, minutes, source: 'from memory' })),
    ...Object.entries(extraTimes).map(([key, { label, minutes, source }]) => ({ key, label, minutes, source })),
  ]
  return given.map(({ key, label, minutes: [least, most], source }) => {
    const set = own.get(key)
    if (set === undefined) return { key, label, minutes: (least + most) / 2, least, most, source, own: false }
    // The house's own figure has no spread.
    return { key, label, minutes: set.minutes, least: set.minutes, most: set.minutes, source: set.source, own: true }
  })
}

/** Whether something is timed under this key. */
export function isTimed(key: string): boolean {
  return Object.hasOwn(extraTimes, key) || methods.some(method => method.key === key)
}

/** The time of a method, of a work without one, or of what comes with it. */
export function timeOf(times: readonly StepTime[], key: string | null): StepTime {
  const found = times.find(time => time.key === (key ?? 'not-known')) ?? times.find(time => time.key === 'not-known')
  if (found === undefined) throw new Error('times without one for what is not known')
  return found
}

export interface EstimateQuestion {
  /** Minutes of work that one team does. */
  readonly teamMinutes: number
  /** Minutes in which all teams work together. */
  readonly allHandsMinutes: number
  readonly teams: number
  /** Part on top: 0.25 is a quarter more. */
  readonly contingency: number
  readonly hoursADay: number
}

export interface Estimate {
  /** `teamMinutes / teams + allHandsMinutes`, nothing set aside. */
  readonly plainMinutes: number
  readonly elapsedMinutes: number
  readonly days: number
}

/** Elapsed = (Σ team minutes / teams + Σ all-hands minutes) × (1 + contingency), over productive hours. */
export function estimate(question: EstimateQuestion): Estimate {
  const plainMinutes = question.teamMinutes / question.teams + question.allHandsMinutes
  const elapsedMinutes = plainMinutes * (1 + question.contingency)
  return { plainMinutes, elapsedMinutes, days: elapsedMinutes / 60 / question.hoursADay }
}
