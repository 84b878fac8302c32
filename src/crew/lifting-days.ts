/**
 * What each team lifts by hand in a day, as one composite index. A plan knows no hands, so that their places are taken:
 * a work stands on its pads on the floor, is gripped a third of its height above its lower edge, close to the body, and
 * lifted once, to where it hangs. The rule it keeps: a lift that the equation does not cover is named, never let through.
 */
import type { PlacedWork } from '../contract/areas/walls.ts'
import { Refusal } from '../contract/refusal.ts'
import type { Finding } from '../contract/shared.ts'
import { INCH, POUND } from '../hang/physics.ts'
import { compositeIndex, type JobLift } from './composite.ts'
import { needsEquipment } from './handling.ts'
import { handsAt, liftingLimit } from './lifting.ts'
import type { LiftingDuration, MeasureSystem } from './niosh-tables.ts'
import type { Slot } from './schedule.ts'
import type { CrewWork } from './show.ts'

/** How high a work is gripped, of its height; from memory. */
const grip = 1 / 3
/** How deep a work is taken to be where nobody has measured it, mm; from memory. */
const usualDepth = 60
/** So seldom lifted, what is between two lifts is rest enough for the short duration: 94-110, p. 15. */
const seldom = 0.1

export interface LiftingDay {
  /** From 1. */
  readonly day: number
  readonly team: number
  /** What it lifts by hand, a set part by part, and how many of them the index covers. */
  readonly lifts: number
  readonly covered: number
  readonly perMinute: number
  readonly duration: LiftingDuration
  /** Composite index; null where nothing is covered. */
  readonly index: number | null
  /** The most stressing lift by itself. */
  readonly most: { readonly placement: string; readonly index: number } | null
  /** Not covered, and why. */
  readonly beyond: readonly { readonly placement: string; readonly why: string }[]
}

export interface LiftingDaysQuestion {
  readonly works: readonly CrewWork[]
  readonly slots: readonly Slot[]
  readonly minutesADay: number
  /** People who lift a work. */
  readonly people: (work: CrewWork) => number
  readonly system: MeasureSystem
}

/** Every day of every team on which it lifts something by hand, in the order of the days. */
export function liftingDays({ works, slots, minutesADay, people, system }: LiftingDaysQuestion): readonly LiftingDay[] {
  const slotOf = new Map(slots.map(slot => [slot.id, slot]))
  const lifted = works.flatMap(work => {
    const slot = slotOf.get(work.placed.placement)
    if (slot === undefined || work.placed.state !== 'planned' || needsEquipment(work.handling)) return []
    const day = Math.floor(slot.start / minutesADay + 1e-9) + 1
    // The parts of a set are lifted one after the other.
    const minutes = (slot.end - slot.start) / work.hung.length
    return slot.teams.flatMap(team => work.hung.map(({ placed }) => ({ day, team, work, placed, minutes })))
  })
  return [...Map.groupBy(lifted, ({ day, team }) => `${day} ${team}`).values()]
    .map((all): LiftingDay => {
      const { day = 0, team = 0 } = all[0] ?? {}
      const minutes = all.reduce((sum, one) => sum + one.minutes, 0)
      const each = minutes === 0 ? 0 : 1 / minutes
      const read = all.map(({ work, placed }) => ({ work, ...jobLift(placed, people(work), each, system) }))
      const covered = read.flatMap(one => (one.lift === null ? [] : [{ work: one.work, lift: one.lift }]))
      const perMinute = each * covered.length
      const duration = perMinute < seldom ? 'short' : 'long'
      const { lifts, index } = compositeIndex(
        covered.map(({ lift }) => lift),
        duration,
        system,
      )
      const [first] = lifts
      const most = first === undefined ? undefined : covered[first.at]
      return {
        day,
        team,
        lifts: all.length,
        covered: covered.length,
        perMinute,
        duration,
        index,
        most:
          first === undefined || most === undefined
            ? null
            : { placement: most.work.placed.placement, index: first.ownIndex },
        beyond: read.flatMap(({ work, why }) => (why === null ? [] : [{ placement: work.placed.placement, why }])),
      }
    })
    .sort((a, b) => a.day - b.day || a.team - b.team)
}

/** Days on which a team lifts more than the equation recommends. */
export function liftingFindings(
  days: readonly LiftingDay[],
  exhibition: string,
  called: (placement: string) => string,
): readonly Finding[] {
  return days.flatMap(({ day, team, index, most }): Finding[] => {
    if (index === null || index <= 1) return []
    return [
      {
        severity: 'settle',
        code: 'lifting-composite',
        subject: most === null ? { kind: 'exhibition', id: exhibition } : { kind: 'placement', id: most.placement },
        text: `Day ${day}, team ${team}: what is lifted by hand comes to a lifting index of ${index.toFixed(2)}, ${most === null ? '' : `${called(most.placement)} alone to ${most.index.toFixed(2)}; `}1 is the aim. Take more people or equipment, or part the lifts over the teams.`,
        figures: { index, day, team },
      },
    ]
  })
}

/** One person's part of a lift: the load over the team's factor, so that its index is the team's. */
function jobLift(
  { mass, size, centreY }: PlacedWork,
  people: number,
  perMinute: number,
  system: MeasureSystem,
): { readonly lift: JobLift; readonly why: null } | { readonly lift: null; readonly why: string } {
  if (mass === null) return { lift: null, why: 'nobody has weighed it' }
  if (size === null) return { lift: null, why: 'its size is not known' }
  const hands = size.height * grip
  const reach = size.depth ?? usualDepth
  try {
    // Frequency 0 and the short duration: FM is 1.
    const answer = liftingLimit({
      mass,
      origin: handsAt({ reach, vertical: hands }, 'origin', system),
      destination: handsAt({ reach, vertical: Math.max(0, centreY - size.height / 2 + hands) }, 'destination', system),
      perMinute: 0,
      duration: 'short',
      coupling: 'fair',
      people,
      system,
      from: 'formula',
    })
    const unit = system === 'us' ? POUND : 1
    const load = mass / (people * answer.teamFactor) / unit
    const verticalAtOrigin = hands / (system === 'us' ? INCH : 10)
    return { lift: { load, limit: answer.limitKg / unit, perMinute, verticalAtOrigin }, why: null }
  } catch (error) {
    if (error instanceof Refusal) return { lift: null, why: error.message }
    throw error
  }
}
