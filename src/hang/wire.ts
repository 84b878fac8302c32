/**
 * A taut wire between two rings of a level frame, resting on one hook or on two. The drop depends on how far apart the
 * hooks are, so a drop measured with one finger is wrong for two hooks; this says by how much.
 *
 *        ring o                      o ring        A  rings apart, d0 below the top
 *              \   e                /              L  taut length of the wire between the rings
 *               ⌒―――――――――⌒                       e  hooks apart, 0 for one hook
 *
 * Geometry and statics derived in the design (`rise = sqrt(((L − e)/2)² − ((A − e)/2)²)`); checked against a
 * least-energy computation and the published sling and picture-wire tables in the tests.
 */
import { Refusal } from '../contract/refusal.ts'
import { degrees, kilogramsForce, newtons, radians } from './physics.ts'

/** How the length of the wire is known: measured along it, or by its drop pulled taut at two points `apart`. */
export type WireMeasure =
  | { readonly by: 'length'; readonly length: number }
  | { readonly by: 'drop'; readonly drop: number; readonly apart: number }

export interface WireQuestion {
  /** Between the rings, mm. */
  readonly rings: number
  /** From the top edge down to the rings, mm. */
  readonly ringDrop: number
  readonly wire: WireMeasure
  /** Between the hooks, mm; 0 for one hook. */
  readonly hooks: number
  /** kg; without it forces are left out. */
  readonly mass?: number | null | undefined
  /** Leg angle below which the wire pulls too hard; degrees above horizontal. House rule, 30. */
  readonly leastAngle?: number | undefined
}

export interface WireForces {
  readonly tensionN: number
  readonly tensionKg: number
  /** On each ring, towards the other ring. */
  readonly ringInwardN: number
  readonly ringInwardKg: number
  /** On each ring, up. */
  readonly ringUpN: number
  readonly ringUpKg: number
  /** On each hook, straight down. */
  readonly hookDownN: number
  readonly hookDownKg: number
  /** On each hook, wire free to slide: leg and level run together. */
  readonly hookResultantN: number
  readonly hookResultantKg: number
  /** The resultant leans this far from straight down, towards the other hook; degrees. */
  readonly hookLean: number
  readonly hookSidewaysN: number
  readonly hookSidewaysKg: number
  /** If the wire grips and its level run goes slack, a hook carries up to this, leaning outwards. */
  readonly hookGrippedN: number
  readonly hookGrippedKg: number
}

export interface WireAnswer {
  readonly rings: number
  readonly ringDrop: number
  readonly hooks: number
  /** Taut length between the rings. */
  readonly length: number
  readonly rise: number
  /** From the top edge down to the wire on its hooks. */
  readonly drop: number
  /** Of the legs, above horizontal, degrees. */
  readonly angle: number
  /** Multiple of the work's weight that the wire pulls with: 1 / (2 sin angle). */
  readonly tensionFactor: number
  readonly forces: WireForces | null
  readonly leastAngle: number
  readonly steepEnough: boolean
  /** Hooks this far apart give just the least angle; 0 where any spacing does. */
  readonly hooksForLeastAngle: number
  /** What taking the measured drop as it is would have done: positive hangs the work too high by so much. */
  readonly plainSubtraction: { readonly drop: number; readonly apart: number; readonly tooHigh: number } | null
}

/** Length of the wire, mm, from the way it was measured. Refuses what no wire can do, naming the field. */
export function wireLength(rings: number, ringDrop: number, wire: WireMeasure): number {
  if (wire.by === 'length') {
    if (!(wire.length > rings)) {
      throw new Refusal('wire-too-short', 'The wire is not longer than its rings are apart. Measure it again, taut.', {
        field: 'wire.length',
        details: { length: wire.length, rings },
      })
    }
    return wire.length
  }
  if (!(wire.apart < rings)) {
    throw new Refusal('wire-fingers-too-wide', 'The two points it was pulled up at must be closer than the rings.', {
      field: 'wire.apart',
      details: { apart: wire.apart, rings },
    })
  }
  if (!(wire.drop < ringDrop)) {
    throw new Refusal(
      'wire-below-rings',
      'Pulled up, the wire stands above its rings: its drop must be less than theirs.',
      {
        field: 'wire.drop',
        details: { drop: wire.drop, ringDrop },
      },
    )
  }
  return wire.apart + 2 * Math.hypot(ringDrop - wire.drop, (rings - wire.apart) / 2)
}

/** Rise of the wire above its rings on hooks `hooks` apart, mm. */
export function wireRise(rings: number, length: number, hooks: number): number {
  // (a² − b²) as (a + b)(a − b): a nearly straight wire keeps its digits.
  const sum = (length + rings - 2 * hooks) / 2
  const difference = (length - rings) / 2
  return Math.sqrt(sum * difference)
}

/** Hooks so far apart give legs at `angle`; 0 where one hook already gives a steeper angle. */
export function hooksForAngle(rings: number, length: number, angle: number): number {
  const cos = Math.cos(radians(angle))
  return Math.max(0, (rings - length * cos) / (1 - cos))
}

/**
 * Drop, angle and forces of a wire. mm, kg, degrees. Refuses: `wire-too-short`, `wire-fingers-too-wide`,
 * `wire-below-rings`, `wire-hooks-too-wide`, `wire-above-top`.
 */
export function solveWire(question: WireQuestion): WireAnswer {
  const { rings, ringDrop, wire, hooks } = question
  const leastAngle = question.leastAngle ?? 30
  if (!(rings > 0)) {
    throw new Refusal('wire-rings', 'The rings must be some way apart.', { field: 'rings' })
  }
  if (hooks < 0 || !(hooks < rings)) {
    throw new Refusal(
      'wire-hooks-too-wide',
      'The hooks must be closer together than the rings. Choose a smaller spacing.',
      {
        field: 'hooks',
        details: { hooks, rings },
      },
    )
  }
  const length = wireLength(rings, ringDrop, wire)
  const rise = wireRise(rings, length, hooks)
  const drop = ringDrop - rise
  if (!(drop > 0)) {
    const most = ringDrop > 0 ? hooksForRise(rings, length, ringDrop) : null
    throw new Refusal(
      'wire-above-top',
      'On these hooks the wire would stand above the top edge. Shorten the wire or set the hooks wider apart.',
      { field: 'hooks', details: { rise, ringDrop, hooksAtTopEdge: most } },
    )
  }
  const run = (rings - hooks) / 2
  const leg = Math.atan2(rise, run)
  const mass = question.mass ?? null
  return {
    rings,
    ringDrop,
    hooks,
    length,
    rise,
    drop,
    angle: degrees(leg),
    tensionFactor: 1 / (2 * Math.sin(leg)),
    forces: mass === null ? null : wireForces(mass, leg, hooks === 0),
    leastAngle,
    steepEnough: degrees(leg) >= leastAngle - 1e-9,
    hooksForLeastAngle: hooksForAngle(rings, length, leastAngle),
    plainSubtraction: wire.by === 'drop' ? { drop: wire.drop, apart: wire.apart, tooHigh: drop - wire.drop } : null,
  }
}

/** Hooks so far apart give just this rise of the wire above its rings, mm. Null where no spacing does. */
export function hooksForRise(rings: number, length: number, rise: number): number | null {
  const hooks = (length + rings) / 2 - (2 * rise * rise) / (length - rings)
  return hooks >= 0 && hooks < rings ? hooks : null
}

/** Forces with legs at `leg` radians above horizontal. With one hook both legs pull on it. */
export function wireForces(mass: number, leg: number, oneHook: boolean): WireForces {
  const half = newtons(mass) / 2
  const tension = half / Math.sin(leg)
  const down = oneHook ? 2 * half : half
  const sideways = oneHook ? 0 : half * Math.tan(leg / 2)
  const resultant = Math.hypot(down, sideways)
  const gripped = oneHook ? down : tension
  return {
    tensionN: tension,
    tensionKg: kilogramsForce(tension),
    ringInwardN: tension * Math.cos(leg),
    ringInwardKg: kilogramsForce(tension * Math.cos(leg)),
    ringUpN: half,
    ringUpKg: kilogramsForce(half),
    hookDownN: down,
    hookDownKg: kilogramsForce(down),
    hookResultantN: resultant,
    hookResultantKg: kilogramsForce(resultant),
    hookLean: oneHook ? 0 : degrees(leg / 2),
    hookSidewaysN: sideways,
    hookSidewaysKg: kilogramsForce(sideways),
    hookGrippedN: gripped,
    hookGrippedKg: kilogramsForce(gripped),
  }
}
