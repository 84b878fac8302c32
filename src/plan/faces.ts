/**
 * The faces of a network: the areas that its lines enclose. Lines that enclose nothing (dangling, or with the same face
 * on both sides) are left out first. With x to the right and y down the page each face goes clockwise, so that it lies
 * to the right of the way, as walls do.
 */
import { boxIndex } from './box-index.ts'
import type { Network } from './network.ts'
import type { Box } from './place.ts'

export interface Face {
  /** Nodes in order, the first not repeated. */
  readonly nodes: readonly number[]
  /** Square millimetres, without what lies within it. */
  readonly area: number
  /** Millimetres of its own outline and of those that lie within it. */
  readonly around: number
  /** Other parts of the drawing that lie in it by themselves, by the nodes of their outer outline. */
  readonly within: readonly (readonly number[])[]
}

interface Loop {
  readonly nodes: readonly number[]
  /** Above 0 for the inside of a face, below for the outside of a part of the drawing. */
  readonly area: number
  readonly part: number
}

export function facesOf({ x, y, edges }: Network): readonly Face[] {
  let kept = withoutDangling(edges, x.length)
  for (;;) {
    const { loops, faceOf } = traced({ x, y, edges: kept })
    const cut = kept.filter((_, edge) => faceOf[edge * 2] !== faceOf[edge * 2 + 1])
    if (cut.length === kept.length) return nested(loops, x, y)
    kept = withoutDangling(cut, x.length)
  }
}

function withoutDangling(
  edges: readonly (readonly [number, number])[],
  nodes: number,
): readonly (readonly [number, number])[] {
  const at: number[][] = Array.from({ length: nodes }, () => [])
  for (const [edge, [a, b]] of edges.entries()) {
    at[a]?.push(edge)
    at[b]?.push(edge)
  }
  const degree = at.map(all => all.length)
  const gone = new Uint8Array(edges.length)
  const loose = degree.flatMap((count, node) => (count === 1 ? [node] : []))
  for (let node = loose.pop(); node !== undefined; node = loose.pop()) {
    const edge = at[node]?.find(each => gone[each] === 0)
    if (edge === undefined) continue
    gone[edge] = 1
    for (const end of edges[edge] ?? []) {
      degree[end] = (degree[end] ?? 0) - 1
      if (degree[end] === 1) loose.push(end)
    }
  }
  return edges.filter((_, edge) => gone[edge] === 0)
}

/** Walks along every side of every edge: half edge 2e from its first node to its second, 2e + 1 back. */
function traced({ x, y, edges }: Network): { readonly loops: readonly Loop[]; readonly faceOf: Int32Array } {
  const from = (half: number) => edges[half >> 1]?.[half & 1] ?? 0
  const to = (half: number) => from(half ^ 1)
  const angle = (half: number) =>
    Math.atan2((y[to(half)] ?? 0) - (y[from(half)] ?? 0), (x[to(half)] ?? 0) - (x[from(half)] ?? 0))
  const out: number[][] = x.map(() => [])
  for (let half = 0; half < edges.length * 2; half++) out[from(half)]?.push(half)
  const next = new Int32Array(edges.length * 2)
  for (const halves of out) {
    const sorted = halves.map(half => ({ half, angle: angle(half) })).sort((a, b) => a.angle - b.angle)
    for (const [at, { half }] of sorted.entries()) {
      // Arriving by the twin of one, the way goes on by the one before it: the sharpest turn towards the face.
      next[half ^ 1] = sorted.at(at - 1)?.half ?? half
    }
  }
  const parts = partsOf(edges, x.length)
  const faceOf = new Int32Array(edges.length * 2).fill(-1)
  const loops: Loop[] = []
  for (let begin = 0; begin < faceOf.length; begin++) {
    if (faceOf[begin] !== -1) continue
    const nodes: number[] = []
    for (let half = begin; faceOf[half] === -1; half = next[half] ?? begin) {
      faceOf[half] = loops.length
      nodes.push(from(half))
    }
    loops.push({ nodes, area: signedArea(nodes, x, y), part: parts[nodes[0] ?? 0] ?? 0 })
  }
  return { loops, faceOf }
}

/** Which connected part of the drawing each node is of. */
function partsOf(edges: readonly (readonly [number, number])[], nodes: number): Int32Array {
  const parent = Int32Array.from({ length: nodes }, (_, node) => node)
  const root = (node: number): number => {
    let top = node
    while (parent[top] !== top) top = parent[top] ?? top
    for (let at = node; at !== top; ) {
      const above = parent[at] ?? top
      parent[at] = top
      at = above
    }
    return top
  }
  for (const [a, b] of edges) parent[root(a)] = root(b)
  return parent.map(root)
}

function signedArea(nodes: readonly number[], x: readonly number[], y: readonly number[]): number {
  let twice = 0
  let before = nodes.at(-1) ?? 0
  for (const node of nodes) {
    twice += (x[before] ?? 0) * (y[node] ?? 0) - (x[node] ?? 0) * (y[before] ?? 0)
    before = node
  }
  return twice / 2
}

function lengthOf(nodes: readonly number[], x: readonly number[], y: readonly number[]): number {
  return nodes.reduce((sum, node, at) => {
    const before = nodes.at(at - 1) ?? node
    return sum + Math.hypot((x[node] ?? 0) - (x[before] ?? 0), (y[node] ?? 0) - (y[before] ?? 0))
  }, 0)
}

/** Puts each part that stands by itself into the smallest face about it. */
function nested(loops: readonly Loop[], x: readonly number[], y: readonly number[]): readonly Face[] {
  const faces = loops
    .filter(loop => loop.area > 0)
    .sort((a, b) => a.area - b.area)
    .map(loop => ({
      loop,
      within: [] as (readonly number[])[],
      area: loop.area,
      around: lengthOf(loop.nodes, x, y),
    }))
  const about = boxIndex(faces.map(({ loop }) => boxAround(loop.nodes, x, y)))
  for (const outer of loops) {
    if (outer.area > 0) continue
    const [px, py] = [x[outer.nodes[0] ?? 0] ?? 0, y[outer.nodes[0] ?? 0] ?? 0]
    // In the order of their areas: the first that holds it is the smallest.
    const smallest = about(px, py).find(index => {
      const loop = faces[index]?.loop
      return (
        loop !== undefined && loop.part !== outer.part && loop.area > -outer.area && holds(loop.nodes, x, y, px, py)
      )
    })
    const face = smallest === undefined ? undefined : faces[smallest]
    if (face === undefined) continue
    face.within.push(outer.nodes)
    face.area += outer.area
    face.around += lengthOf(outer.nodes, x, y)
  }
  return faces.map(({ loop, area, around, within }) => ({ nodes: loop.nodes, area, around, within }))
}

function boxAround(nodes: readonly number[], x: readonly number[], y: readonly number[]): Box {
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity }
  for (const node of nodes) {
    const [px, py] = [x[node] ?? 0, y[node] ?? 0]
    box.left = Math.min(box.left, px)
    box.top = Math.min(box.top, py)
    box.right = Math.max(box.right, px)
    box.bottom = Math.max(box.bottom, py)
  }
  return box
}

/** A point within an outline, by how often a line from it to the right crosses. */
function holds(nodes: readonly number[], x: readonly number[], y: readonly number[], px: number, py: number): boolean {
  let inside = false
  let before = nodes.at(-1) ?? 0
  for (const node of nodes) {
    const [ax, ay, bx, by] = [x[before] ?? 0, y[before] ?? 0, x[node] ?? 0, y[node] ?? 0]
    if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) inside = !inside
    before = node
  }
  return inside
}
