/**
 * Lines of a drawing made into a network: ends that lie within the joining distance become one node, lines are cut where
 * another ends on them or crosses them, and what is drawn twice counts once. Millimetres.
 */
import { lineGrid } from './line-grid.ts'

export interface Network {
  readonly x: readonly number[]
  readonly y: readonly number[]
  /** Node numbers, two an edge; no edge twice, none from a node to itself. */
  readonly edges: readonly (readonly [number, number])[]
}

/** The network would be too dense to be a plan: hatching or a terrain among the lines. */
export class TooDense extends Error {}

/** Pairs of lines that are compared before it is given up: about two seconds. */
const mostPairs = 60_000_000

interface Nodes {
  readonly x: number[]
  readonly y: number[]
  /** The node within `join` of a point, a new one where there is none. */
  readonly at: (x: number, y: number) => number
  readonly near: (x: number, y: number) => number
}

function nodesWithin(join: number): Nodes {
  const cell = Math.max(join, 1e-3)
  const cells = new Map<string, number[]>()
  const [xs, ys]: [number[], number[]] = [[], []]
  function near(x: number, y: number): number {
    let best = -1
    let least = join
    const [cx, cy] = [Math.floor(x / cell), Math.floor(y / cell)]
    for (let i = cx - 1; i <= cx + 1; i++) {
      for (let j = cy - 1; j <= cy + 1; j++) {
        for (const node of cells.get(`${i} ${j}`) ?? []) {
          const far = Math.hypot((xs[node] ?? 0) - x, (ys[node] ?? 0) - y)
          if (far <= least) {
            least = far
            best = node
          }
        }
      }
    }
    return best
  }
  return {
    x: xs,
    y: ys,
    near,
    at(x, y) {
      const known = near(x, y)
      if (known !== -1) return known
      const node = xs.length
      xs.push(x)
      ys.push(y)
      const key = `${Math.floor(x / cell)} ${Math.floor(y / cell)}`
      const there = cells.get(key)
      if (there === undefined) cells.set(key, [node])
      else there.push(node)
      return node
    },
  }
}

/**
 * @param lines x1, y1, x2, y2 of each, millimetres
 * @param join millimetres; ends closer than this are one point
 * @throws TooDense
 */
export function networkOf(lines: ArrayLike<number>, join: number): Network {
  const nodes = nodesWithin(join)
  const ends: (readonly [number, number])[] = []
  const seen = new Set<number>()
  for (let at = 0; at + 3 < lines.length; at += 4) {
    const from = nodes.at(lines[at] ?? 0, lines[at + 1] ?? 0)
    const to = nodes.at(lines[at + 2] ?? 0, lines[at + 3] ?? 0)
    const key = keyOf(from, to)
    if (from === to || seen.has(key)) continue
    seen.add(key)
    ends.push([from, to])
  }
  const cuts = cutsOf(ends, nodes, join)
  const edges: (readonly [number, number])[] = []
  const drawn = new Set<number>()
  for (const [line, [from, to]] of ends.entries()) {
    const stops = [...(cuts[line] ?? [])].sort((a, b) => a.t - b.t).map(cut => cut.node)
    let before = from
    for (const node of [...stops, to]) {
      const key = keyOf(before, node)
      if (node !== before && !drawn.has(key)) {
        drawn.add(key)
        edges.push([before, node])
      }
      before = node
    }
  }
  return { x: nodes.x, y: nodes.y, edges }
}

/** One number for a pair of nodes, whichever comes first; there are fewer than 2²⁶. */
function keyOf(a: number, b: number): number {
  return a < b ? a * 67_108_864 + b : b * 67_108_864 + a
}

interface Cut {
  readonly t: number
  readonly node: number
}

/** Where each line is cut: at nodes that lie on it, and where another crosses it. */
function cutsOf(ends: readonly (readonly [number, number])[], nodes: Nodes, join: number): (Cut[] | undefined)[] {
  const cuts: (Cut[] | undefined)[] = []
  const cut = (line: number, t: number, node: number) => {
    const there = cuts[line]
    if (there === undefined) cuts[line] = [{ t, node }]
    else if (!there.some(each => each.node === node)) there.push({ t, node })
  }
  const grid = lineGrid(Math.max(1500, join * 8), join)
  const at = (node: number): readonly [number, number] => [nodes.x[node] ?? 0, nodes.y[node] ?? 0]
  for (const [line, [from, to]] of ends.entries()) grid.add(line, ...at(from), ...at(to))
  const ofEnds = nodes.x.length
  for (let node = 0; node < ofEnds; node++) {
    const [x, y] = at(node)
    for (const line of grid.near(x, y)) {
      const [from, to] = ends[line] ?? [node, node]
      if (from === node || to === node) continue
      const foot = footOn(at(from), at(to), x, y)
      if (foot.far <= join && foot.t > 0 && foot.t < 1) cut(line, foot.t, node)
    }
  }
  let pairs = 0
  for (const cell of grid.cells()) {
    pairs += (cell.length * cell.length) / 2
    if (pairs > mostPairs) throw new TooDense()
    for (let i = 0; i < cell.length; i++) {
      for (let j = i + 1; j < cell.length; j++) {
        const [a, b] = [cell[i] ?? 0, cell[j] ?? 0]
        const [one, two] = [ends[a], ends[b]]
        if (one === undefined || two === undefined || a === b) continue
        if (one[0] === two[0] || one[0] === two[1] || one[1] === two[0] || one[1] === two[1]) continue
        const crossing = crossingOf(at(one[0]), at(one[1]), at(two[0]), at(two[1]))
        if (crossing === null) continue
        const node = nodes.at(crossing.x, crossing.y)
        if (node !== one[0] && node !== one[1]) cut(a, crossing.t, node)
        if (node !== two[0] && node !== two[1]) cut(b, crossing.u, node)
      }
    }
  }
  return cuts
}

type Spot = readonly [number, number]

/** The foot of the perpendicular from a point onto a line: where along it, 0 to 1, and how far the point is. */
export function footOn(
  [x1, y1]: Spot,
  [x2, y2]: Spot,
  x: number,
  y: number,
): { readonly t: number; readonly far: number } {
  const [dx, dy] = [x2 - x1, y2 - y1]
  const run = dx * dx + dy * dy
  const t = run === 0 ? 0 : ((x - x1) * dx + (y - y1) * dy) / run
  const held = Math.min(1, Math.max(0, t))
  return { t, far: Math.hypot(x1 + held * dx - x, y1 + held * dy - y) }
}

/** Where two lines cross, as shares of both; null where they don't or run along one another. */
export function crossingOf(
  [ax, ay]: Spot,
  [bx, by]: Spot,
  [cx, cy]: Spot,
  [dx, dy]: Spot,
): { readonly x: number; readonly y: number; readonly t: number; readonly u: number } | null {
  const [rx, ry, sx, sy] = [bx - ax, by - ay, dx - cx, dy - cy]
  const cross = rx * sy - ry * sx
  if (Math.abs(cross) < 1e-9 * Math.hypot(rx, ry) * Math.hypot(sx, sy)) return null
  const t = ((cx - ax) * sy - (cy - ay) * sx) / cross
  const u = ((cx - ax) * ry - (cy - ay) * rx) / cross
  return t < 0 || t > 1 || u < 0 || u > 1 ? null : { x: ax + t * rx, y: ay + t * ry, t, u }
}
