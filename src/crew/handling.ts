/**
 * How a work is got onto its wall: by whom and with what, by its mass and size, and from what its fixings are reached.
 * The rule it keeps: what is not weighed is never taken for light, and what no class takes needs a lifting plan.
 */
import type { Finding } from '../contract/shared.ts'
import type { HouseRuleKey } from '../model/house-rules.ts'

export const handlingClasses = ['alone', 'by hand', 'stacker lift', 'hoist', 'lifting plan'] as const
export type HandlingClass = (typeof handlingClasses)[number]

export const accessKinds = ['floor', 'steps', 'platform', 'lift'] as const
export type Access = (typeof accessKinds)[number]

export type HandlingRules = Readonly<
  Record<
    Extract<
      HouseRuleKey,
      | 'aloneKg'
      | 'aloneSide'
      | 'onePersonKg'
      | 'onePersonSize'
      | 'liftKg'
      | 'liftLongSide'
      | 'liftShortSide'
      | 'hoistKg'
      | 'stepsReach'
      | 'platformReach'
    >,
    number
  >
>

/** Lengths and masses in the reader's units, for sentences. */
export interface Say {
  readonly length: (mm: number) => string
  readonly mass: (kg: number) => string
}

export const sayMetric: Say = {
  length: mm => `${Math.round(mm / 10) / 100} m`,
  mass: kg => `${Math.round(kg * 10) / 10} kg`,
}

export interface HandledWork {
  /** kg; null where nobody has weighed it. */
  readonly mass: number | null
  /** Hanging size; null while it is not known. mm. */
  readonly height: number | null
  readonly width: number | null
}

export interface Handling {
  readonly class: HandlingClass
  /** The fewest people. */
  readonly people: number
  /** What made it so, in words: `heavier than 30 kg`. */
  readonly why: readonly string[]
}

/** A row of the catalogue's equipment can be passed as it is. */
export interface Equipment {
  readonly id: string
  readonly name: string
  /** kg; null where nobody has said, and then it is not counted on. */
  readonly carriesKg: number | null
  /** mm; null where nobody has said. */
  readonly reaches: number | null
  readonly count: number
  readonly people: number
}

/**
 * Who lifts it and with what. Source: three classes in use at a national gallery (by hand to about 30 kg and 1.5 m
 * square, stacker lift and three people to 150 kg and about 3.5 × 3 m, hoist to 400 kg); common practice, no source.
 * Four people at a hoist are from memory.
 */
export function handlingOf(work: HandledWork, rules: HandlingRules, say: Say = sayMetric): Handling {
  const { mass } = work
  const long = Math.max(work.height ?? 0, work.width ?? 0)
  const short = Math.min(work.height ?? 0, work.width ?? 0)
  const sized = work.height !== null && work.width !== null
  const over = (limitKg: number, longSide: number, shortSide: number) => [
    ...(mass !== null && mass > limitKg ? [`heavier than ${say.mass(limitKg)}`] : []),
    ...(long > longSide || short > shortSide ? [`larger than ${sides(longSide, shortSide, say)}`] : []),
  ]
  const alone = [
    ...(mass === null ? ['not weighed yet'] : []),
    ...(sized ? [] : ['not measured yet']),
    ...over(rules.aloneKg, rules.aloneSide, rules.aloneSide),
  ]
  if (alone.length === 0) return { class: 'alone', people: 1, why: [] }
  const byHand = over(rules.onePersonKg, rules.onePersonSize, rules.onePersonSize)
  if (byHand.length === 0) return { class: 'by hand', people: 2, why: alone }
  const lift = over(rules.liftKg, rules.liftLongSide, rules.liftShortSide)
  if (lift.length === 0) return { class: 'stacker lift', people: 3, why: byHand }
  if (mass === null || mass <= rules.hoistKg) return { class: 'hoist', people: 4, why: lift }
  return { class: 'lifting plan', people: 4, why: [`heavier than ${say.mass(rules.hoistKg)}`] }
}

function sides(long: number, short: number, say: Say): string {
  return long === short ? say.length(long) : `${say.length(long)} × ${say.length(short)}`
}

/** From what fixings at this height above the floor are reached; null where no mark is known. mm. */
export function accessTo(highest: number | null, rules: HandlingRules): Access | null {
  if (highest === null) return null
  // What an adult drills standing: from memory.
  if (highest <= 1800) return 'floor'
  if (highest <= rules.stepsReach) return 'steps'
  return highest <= rules.platformReach ? 'platform' : 'lift'
}

/** Whether a class is lifted by more than hands. */
export function needsEquipment(handling: Handling): boolean {
  return handling.class === 'stacker lift' || handling.class === 'hoist' || handling.class === 'lifting plan'
}

/**
 * The smallest equipment that is said to carry the work and to reach its top; null where none does or the work is not
 * weighed.
 */
export function equipmentFor(
  mass: number | null,
  topAt: number | null,
  equipment: readonly Equipment[],
): Equipment | null {
  if (mass === null) return null
  const fit = equipment.filter(
    ({ carriesKg, reaches, count }) =>
      count > 0 && carriesKg !== null && carriesKg >= mass && (reaches === null || topAt === null || reaches >= topAt),
  )
  return (
    fit.sort((a, b) => (a.carriesKg ?? 0) - (b.carriesKg ?? 0) || a.people - b.people || (a.id < b.id ? -1 : 1))[0] ??
    null
  )
}

/** What speaks against lifting it so: not weighed, nothing on the list that carries it, too heavy for any class. */
export function handlingFindings(
  work: HandledWork & { readonly called: string },
  subject: Finding['subject'],
  handling: Handling,
  equipment: Equipment | null,
  say: Say = sayMetric,
): readonly Finding[] {
  const { mass, called } = work
  const found: Finding[] = []
  if (mass === null) {
    found.push({
      severity: 'settle',
      code: 'not-weighed',
      subject,
      text: `${called} is not weighed. Weigh it with its frame before anybody plans to lift it.`,
      figures: {},
    })
  }
  if (handling.class === 'lifting plan') {
    found.push({
      severity: 'stop',
      code: 'lifting-plan',
      subject,
      text: `${called} is ${handling.why.join(' and ')}: a competent person makes its lifting plan.`,
      figures: { massKg: mass },
    })
  } else if (needsEquipment(handling) && mass !== null && equipment === null) {
    found.push({
      severity: 'settle',
      code: 'no-equipment',
      subject,
      text: `${called} is ${handling.why.join(' and ')} and needs a ${handling.class}: none on the list is said to carry ${say.mass(mass)} to its height. Add one, or book one.`,
      figures: { massKg: mass, class: handling.class },
    })
  }
  return found
}
