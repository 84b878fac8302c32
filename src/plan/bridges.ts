/**
 * Gaps that doors and passages leave in the lines of walls, bridged, so that a room's outline closes: between two ends
 * that look at one another along one line, with nothing between them. An end is one where the line simply stops, or
 * where a wall's end is drawn across it, no longer than a wall is thick.
 */
import { lineGrid } from './line-grid.ts'
import { crossingOf, type Network } from './network.ts'

export interface BridgeRules {
  /** The widest opening, mm. */
  readonly widest: number
  /** The thickest wall, mm. */
  readonly thickest: number
  /** How far off the line its other end may lie, mm. */
  readonly join: number
}

/** Two lines run along one another within 2° (from memory: plans are drawn square or turned by more). */
const ALONG = Math.cos((2 * Math.PI) / 180)
/** A wall's end is drawn across the wall, within 45° of square. */
const ACROSS = Math.cos((45 * Math.PI) / 180)

interface LineEnd {
  readonly node: number
  /** The way on from the line's end, of length 1. */
  readonly dx: number
  readonly dy: number
}

/** Pairs of nodes to be joined; each end has one bridge at most. */
export function bridgesOf(network: Network, rules: BridgeRules): readonly (readonly [number, number])[] {
  const { x, y, edges } = network
  const ends = lineEnds(network, rules.thickest)
  const cell = Math.max(rules.widest / 2, 100)
  const byCell = new Map<string, LineEnd[]>()
  for (const end of ends) {
    const key = `${Math.floor((x[end.node] ?? 0) / cell)} ${Math.floor((y[end.node] ?? 0) / cell)}`
    byCell.set(key, [...(byCell.get(key) ?? []), end])
  }
  const grid = lineGrid(1500, 1)
  for (const [line, [a, b]] of edges.entries()) grid.add(line, x[a] ?? 0, y[a] ?? 0, x[b] ?? 0, y[b] ?? 0)

  function free(a: number, b: number): boolean {
    const [from, to] = [[x[a] ?? 0, y[a] ?? 0] as const, [x[b] ?? 0, y[b] ?? 0] as const]
    let clear = true
    grid.along(...from, ...to, line => {
      const [c, d] = edges[line] ?? [a, a]
      if (!clear || c === a || d === a || c === b || d === b) return
      if (crossingOf(from, to, [x[c] ?? 0, y[c] ?? 0], [x[d] ?? 0, y[d] ?? 0]) !== null) clear = false
    })
    return clear
  }

  const found: { readonly from: LineEnd; readonly to: LineEnd; readonly run: number }[] = []
  for (const from of ends) {
    const [fx, fy] = [x[from.node] ?? 0, y[from.node] ?? 0]
    const [cx, cy] = [Math.floor(fx / cell), Math.floor(fy / cell)]
    for (let i = cx - 3; i <= cx + 3; i++) {
      for (let j = cy - 3; j <= cy + 3; j++) {
        for (const to of byCell.get(`${i} ${j}`) ?? []) {
          if (to.node <= from.node) continue
          const [ox, oy] = [(x[to.node] ?? 0) - fx, (y[to.node] ?? 0) - fy]
          const run = ox * from.dx + oy * from.dy
          const aside = Math.abs(ox * from.dy - oy * from.dx)
          if (run <= rules.join || run > rules.widest || aside > rules.join) continue
          if (-(from.dx * to.dx + from.dy * to.dy) < ALONG) continue
          found.push({ from, to, run })
        }
      }
    }
  }
  // The shortest first: what lies beyond the next end is another opening.
  found.sort((a, b) => a.run - b.run)
  const used = new Set<LineEnd>()
  const bridges: (readonly [number, number])[] = []
  for (const { from, to } of found) {
    if (used.has(from) || used.has(to) || !free(from.node, to.node)) continue
    used.add(from)
    used.add(to)
    bridges.push([from.node, to.node])
  }
  return bridges
}

function lineEnds({ x, y, edges }: Network, thickest: number): LineEnd[] {
  const outOf: { readonly dx: number; readonly dy: number; readonly run: number }[][] = x.map(() => [])
  for (const [a, b] of edges) {
    const [ox, oy] = [(x[b] ?? 0) - (x[a] ?? 0), (y[b] ?? 0) - (y[a] ?? 0)]
    const run = Math.hypot(ox, oy) || 1
    outOf[a]?.push({ dx: ox / run, dy: oy / run, run })
    outOf[b]?.push({ dx: -ox / run, dy: -oy / run, run })
  }
  return outOf.flatMap((lines, node) =>
    lines.flatMap(own => {
      const others = lines.filter(line => line !== own)
      const stops = others.every(
        ({ dx, dy, run }) => run <= thickest * 1.05 && Math.abs(dx * own.dx + dy * own.dy) <= ACROSS,
      )
      return stops ? [{ node, dx: -own.dx, dy: -own.dy }] : []
    }),
  )
}
