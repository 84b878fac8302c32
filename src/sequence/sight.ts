/**
 * Whom a work serves at the height where it hangs: the share of a group of viewers whose eyes are neither too high nor
 * too low for it. An eye is served when the middle of the work lies within an inner cone about the line of sight and all
 * of it within an outer one. Eye heights are normal distributions; the measures are of people without shoes.
 * mm above the floor; degrees, up is positive.
 */

export interface EyeHeights {
  readonly mean: number
  readonly sd: number
  readonly share: number
}

export type ViewerKind = 'standing' | 'seated' | 'wheelchair' | 'child'

/**
 * Standing and seated adults: ANSUR II (2012, NATICK/TR-15/007), men and women in equal parts; standing is stature less
 * sitting height plus eye height sitting, seated is popliteal height plus eye height sitting. Wheelchair: 1,090 to
 * 1,295 mm (FAA HFDS 2003, exhibit 14.6.6), taken as the 5th to the 95th percentile. Child: of about eight years; from
 * memory.
 */
export const eyes: Readonly<Record<ViewerKind, readonly EyeHeights[]>> = {
  standing: [
    { mean: 1642.44, sd: 66.54, share: 0.5 },
    { mean: 1519.53, sd: 61.74, share: 0.5 },
  ],
  seated: [
    { mean: 1234.32, sd: 48.95, share: 0.5 },
    { mean: 1135.89, sd: 44.64, share: 0.5 },
  ],
  wheelchair: [{ mean: 1192.5, sd: 62.3, share: 1 }],
  child: [{ mean: 1170, sd: 60, share: 1 }],
}

export interface Sight {
  /** Of the line of sight; a little below level for most. */
  readonly line: number
  /** Half of the cone that the middle of a work shall lie in, and of the one that all of it shall. */
  readonly inner: number
  readonly outer: number
}

const tangent = (degrees: number) => Math.tan((Math.max(-89.9, Math.min(89.9, degrees)) * Math.PI) / 180)

/** From which eye height to which a work is served; none where `from` is above `to`. */
export function servedEyes(
  work: { readonly centre: number; readonly height: number },
  distance: number,
  { line, inner, outer }: Sight,
): { readonly from: number; readonly to: number } {
  const [top, bottom] = [work.centre + work.height / 2, work.centre - work.height / 2]
  return {
    from: Math.max(work.centre - distance * tangent(line + inner), top - distance * tangent(line + outer)),
    to: Math.min(work.centre - distance * tangent(line - inner), bottom - distance * tangent(line - outer)),
  }
}

/** Share of a group whose eyes lie there, 0 to 1. */
export function coverage(
  group: readonly EyeHeights[],
  { from, to }: { readonly from: number; readonly to: number },
): number {
  if (from > to) return 0
  return group.reduce(
    (sum, { mean, sd, share }) => sum + share * (below((to - mean) / sd) - below((from - mean) / sd)),
    0,
  )
}

/** The least served of several groups. 1 for none. */
export function leastServed(
  kinds: readonly ViewerKind[],
  work: { readonly centre: number; readonly height: number },
  distance: number,
  sight: Sight,
): number {
  const served = servedEyes(work, distance, sight)
  return Math.min(1, ...kinds.map(kind => coverage(eyes[kind], served)))
}

/**
 * Φ, the share of a normal distribution below z. To 1.5e-7, by the error function of Abramowitz and Stegun, Handbook of
 * Mathematical Functions, 7.1.26.
 */
export function below(z: number): number {
  const x = Math.abs(z) / Math.SQRT2
  const t = 1 / (1 + 0.3275911 * x)
  const poly = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t
  const erf = 1 - poly * Math.exp(-x * x)
  return z < 0 ? (1 - erf) / 2 : (1 + erf) / 2
}
