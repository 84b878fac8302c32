/**
 * Straight pieces of a drawing, kept as plain numbers: a large drawing has millions, and an object for each would not
 * fit the memory. Coordinates are the drawing's own, x to the right and y up.
 */
export interface Pieces {
  /** x1, y1, x2, y2 of each piece. */
  readonly xy: Float64Array
  /** Which layer each is on, by its place in the list of layers. */
  readonly layer: Uint16Array
  readonly count: number
}

export interface Gathering {
  readonly add: (x1: number, y1: number, x2: number, y2: number, layer: number) => void
  readonly count: () => number
  readonly all: () => Pieces
}

/** Gathers pieces one by one; those that are no numbers or have no length are left out. */
export function gatherPieces(room = 1024): Gathering {
  let xy = new Float64Array(room * 4)
  let layers = new Uint16Array(room)
  let count = 0
  return {
    add(x1, y1, x2, y2, layer) {
      if (!Number.isFinite(x1 + y1 + x2 + y2) || (x1 === x2 && y1 === y2)) return
      if (count === layers.length) {
        const wider = new Float64Array(xy.length * 2)
        wider.set(xy)
        xy = wider
        const more = new Uint16Array(layers.length * 2)
        more.set(layers)
        layers = more
      }
      const at = count * 4
      xy[at] = x1
      xy[at + 1] = y1
      xy[at + 2] = x2
      xy[at + 3] = y2
      layers[count] = layer
      count += 1
    },
    count: () => count,
    all: () => ({ xy: xy.subarray(0, count * 4), layer: layers.subarray(0, count), count }),
  }
}

/** Degrees that one chord of a curve turns by at most: 11 mm off the curve at a radius of 3 m. */
export const chordDegrees = 10

/** Chords of an arc, counterclockwise with y up, angles in radians. */
export function chordsOfArc(
  cx: number,
  cy: number,
  radius: number,
  from: number,
  sweep: number,
  put: (x1: number, y1: number, x2: number, y2: number) => void,
): void {
  const steps = Math.max(1, Math.ceil(Math.abs(sweep) / ((chordDegrees * Math.PI) / 180) - 1e-9))
  let x = cx + radius * Math.cos(from)
  let y = cy + radius * Math.sin(from)
  for (let step = 1; step <= steps; step++) {
    const angle = from + (sweep * step) / steps
    const [nextX, nextY] = [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)]
    put(x, y, nextX, nextY)
    x = nextX
    y = nextY
  }
}

/**
 * Chords of a bulged side of a polyline: the bulge is the tangent of a quarter of the angle of its arc, above 0 where
 * the arc goes counterclockwise from the first point to the second (DXF reference, LWPOLYLINE). Ends are met exactly.
 */
export function chordsOfBulge(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  bulge: number,
  put: (x1: number, y1: number, x2: number, y2: number) => void,
): void {
  const run = Math.hypot(x2 - x1, y2 - y1)
  if (bulge === 0 || !Number.isFinite(bulge) || run === 0) {
    put(x1, y1, x2, y2)
    return
  }
  const sweep = 4 * Math.atan(bulge)
  // From the middle of the chord to the centre, to the left of the way.
  const off = (run * (1 - bulge * bulge)) / (4 * bulge)
  const cx = (x1 + x2) / 2 - ((y2 - y1) / run) * off
  const cy = (y1 + y2) / 2 + ((x2 - x1) / run) * off
  const from = Math.atan2(y1 - cy, x1 - cx)
  const radius = Math.hypot(x1 - cx, y1 - cy)
  const ends: number[] = []
  chordsOfArc(cx, cy, radius, from, sweep, (_ax, _ay, bx, by) => ends.push(bx, by))
  let [x, y] = [x1, y1]
  for (let at = 0; at < ends.length; at += 2) {
    const last = at + 2 >= ends.length
    const [nextX, nextY] = last ? [x2, y2] : [ends[at] ?? x2, ends[at + 1] ?? y2]
    put(x, y, nextX, nextY)
    x = nextX
    y = nextY
  }
}
