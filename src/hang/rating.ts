/**
 * Which rating of a fixing counts on a wall: the one for that wall's own type, else one that its packet gives for any
 * wall (no type written down), else none. The rule it keeps: a rating for another wall never passes a load.
 */
export interface Ratings {
  readonly ratedKg: number | null
  /** Wall type that `ratedKg` was said for; empty for any. */
  readonly wallType?: string | undefined
  /** Further ratings, one a wall type, each as a packet says. */
  readonly ratings?:
    | readonly { readonly wallType: string; readonly ratedKg: number | null; readonly source: string }[]
    | undefined
}

export interface RatingHere {
  readonly ratedKg: number | null
  /** What the rating was said for; where none counts here, another wall type that one is known for, else empty. */
  readonly wallType: string
}

/** kg on a wall of this type; null is unknown, never a pass. */
export function ratingOn({ ratedKg, wallType = '', ratings = [] }: Ratings, wall: string): RatingHere {
  const own = ratings.find(rating => rating.wallType === wall)
  if (own !== undefined) return { ratedKg: own.ratedKg, wallType: wall }
  if (wallType === '' || wallType === wall) {
    if (ratedKg !== null) return { ratedKg, wallType }
  } else if (ratedKg !== null) return { ratedKg: null, wallType }
  return { ratedKg: null, wallType: ratings.find(rating => rating.ratedKg !== null)?.wallType ?? '' }
}

/**
 * The one rating to ask for marks with: what counts here, else what is known for another wall, named as that, so that
 * a finding can say so. `ratingOn` still finds that it doesn't count. kg.
 */
export function ratingToAsk(fixing: Ratings, wall: string): RatingHere {
  const here = ratingOn(fixing, wall)
  if (here.ratedKg !== null || here.wallType === '' || here.wallType === wall) return here
  return { ratedKg: ratingOn(fixing, here.wallType).ratedKg, wallType: here.wallType }
}
