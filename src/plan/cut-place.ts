/** Whether a hole is in the way of a cut: it cannot be cut in two. Millimetres from the wall's left end. */
interface Hole {
  readonly kind: string
  readonly label: string
  readonly x: number
  readonly width: number
}

export interface HoleInTheWay {
  /** `the door`, `the door “store”`. */
  readonly called: string
  readonly from: number
  readonly to: number
}

export const calledHole = ({ kind, label }: Hole) => (label === '' ? `the ${kind}` : `the ${kind} “${label}”`)

export function inTheWay(openings: readonly Hole[], x: number): HoleInTheWay | null {
  const across = openings.find(each => each.x < x && x < each.x + each.width)
  return across === undefined ? null : { called: calledHole(across), from: across.x, to: across.x + across.width }
}
