/**
 * Shows to plan for the bench, by a fixed rule from a seed: works in sections, some of them series of one size, paper
 * with low limits, walls of 4 to 9 m planned dark or light, doorways to be seen from. Invented; about as full as shows are.
 */
import { chanceFrom, pickBelow } from '../../src/sequence/chance.ts'
import { type Bay, noRules, type Problem, type Work } from '../../src/sequence/problem.ts'
import { leastServed, type ViewerKind } from '../../src/sequence/sight.ts'

const sight = { line: -10, inner: 15, outer: 30 }

/** @param fill width of works for each mm of wall */
export function showToPlan(seed: number, works: number, walls: number, fill = 0.42): Problem {
  const chance = chanceFrom(seed)
  const between = (least: number, most: number) => least + pickBelow(chance, most - least + 1)
  const made: { width: number; height: number; limit: number | null; section: number; weight: number }[] = []
  for (let section = 0; made.length < works; section += 1) {
    const paper = chance() < 0.4
    const many = Math.min(works - made.length, between(4, 14))
    const series = chance() < 0.3 ? { width: between(300, 700), height: between(300, 800) } : null
    for (let at = 0; at < many; at += 1) {
      const long = Math.round(250 + 1400 * chance() ** 2.2)
      const wide = chance() < 0.5
      const short = Math.round(long * (0.65 + 0.3 * chance()))
      const size = series ?? { width: wide ? long : short, height: wide ? short : long }
      const limit = paper ? (chance() < 0.8 ? 50 : 100) : chance() < 0.7 ? 200 : chance() < 0.5 ? 150 : null
      const weight = ((size.width * size.height) / 1e6) * (1 + 0.8 * chance())
      made.push({ ...size, limit, section, weight })
    }
  }
  const total = made.reduce((sum, { width }) => sum + width, 0)
  const raw = Array.from({ length: walls }, () => between(4000, 9000))
  const scale = total / fill / raw.reduce((sum, length) => sum + length, 0)
  const kinds: readonly (readonly ViewerKind[])[] = [
    ['standing'],
    ['standing', 'wheelchair'],
    ['standing', 'child'],
    ['seated'],
  ]
  // Walls of one room are lit and looked at alike.
  let room = roomOf()
  function roomOf() {
    return {
      lux: chance() < 0.5 ? 50 : 150,
      distance: between(1500, 3500),
      viewers: kinds[pickBelow(chance, kinds.length)] ?? kinds[0] ?? [],
    }
  }
  const faces = raw.map((length, index) => {
    if (index % 4 === 0) room = roomOf()
    return { ...room, length: Math.round(length * scale), line: between(1400, 1560) }
  })
  const bays: Bay[] = faces.map(({ length }, index) => ({
    id: `b${index}`,
    face: `f${index}`,
    from: 0,
    to: length,
    margin: 150,
    gap: 160,
    leftOf: null,
    rightOf: null,
    axes: chance() < 0.35 ? [Math.round(length * (0.25 + 0.5 * chance()))] : [],
  }))
  return {
    bays,
    works: made.map(
      (one, rank): Work => ({
        ...one,
        id: `w${rank}`,
        rank,
        stays: null,
        served: faces.map(({ length, lux, line, distance, viewers }) =>
          one.width > length - 300 || (one.limit !== null && lux > one.limit)
            ? null
            : leastServed(viewers, { centre: line, height: one.height }, distance, sight),
        ),
      }),
    ),
    facing: [],
    rules: noRules,
    weights: { order: 1, balance: 1, evenness: 1, light: 1, sight: 1, rhythm: 1 },
    orderBy: 'section',
  }
}
