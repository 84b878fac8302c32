/**
 * Where time and ids come from. A host takes the machine's; a test gives a start, so that the same calls give the same
 * answers through every host and in a worker.
 */
import { newId } from '../database/ids.ts'

export interface Clock {
  readonly now: () => string
  readonly newId: () => string
}

export interface ClockStart {
  /** ISO 8601; each call of `now` is one second later. */
  readonly at: string
  /** Begins every id; figures follow. */
  readonly ids: string
}

export const machineClock: Clock = { now: () => new Date().toISOString(), newId }

export function clockFrom(start: ClockStart | undefined): Clock {
  if (start === undefined) return machineClock
  let seconds = 0
  let ids = 0
  const first = Date.parse(start.at)
  return {
    now: () => new Date(first + 1000 * seconds++).toISOString(),
    newId: () => `${start.ids}${(ids++).toString(36).padStart(6, '0')}`,
  }
}
