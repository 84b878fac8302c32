/** What the screens of damage say: how a record stands, and how long its owner waits. */
import type { DamageHead } from '../../src/contract/areas/damage.ts'
import { type OwnerClock, waitOf } from '../../src/record/damage/damage.ts'
import { clockSaid } from '../../src/record/damage/say.ts'

type Clocked = Pick<DamageHead, 'foundAt' | 'clock'>

/** The owner's clock as it stands at `now`: a catalogue says it as of when it was asked. */
export function clockAt({ foundAt, clock }: Clocked, now: string): OwnerClock | null {
  return clock === null ? null : waitOf(foundAt, clock.toldAt, clock.within, now)
}

/** The clock in words; empty for a work of the house. */
export function waiting(record: Clocked, now: string): string {
  const clock = clockAt(record, now)
  return clock === null || record.clock === null ? '' : clockSaid(clock, record.clock.within)
}

/** Where a new record of a damage of this work is begun. */
export const begun = 'of-'
export const beginFor = (work: string) => `${begun}${work}`
