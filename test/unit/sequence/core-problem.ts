/**
 * The core of planning, without positions, as a mixed-integer program for a general solver: which work hangs on which
 * bay, within its room, as even as can be, as few pairs out of order as can be, each work where it is seen best.
 */
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { noRules, type Problem } from '../../../src/sequence/problem.ts'
import { quality, type Scale, termsOfSums } from '../../../src/sequence/terms.ts'

/** Works of one section in the order of the checklist on bays that are filled to six tenths or so. */
export function coreProblem(seed: number, works: number, bays: number): Problem {
  const chance = chanceFrom(seed)
  const widths = Array.from({ length: works }, () => 200 + pickBelow(chance, 1200))
  const raw = Array.from({ length: bays }, () => 0.5 + chance())
  const room = (widths.reduce((sum, width) => sum + width + 100, 0) / 0.7 + 300 * bays) / raw.reduce((a, b) => a + b, 0)
  return {
    bays: raw.map((share, index) => ({
      id: `b${index}`,
      face: `f${index}`,
      from: 0,
      to: Math.round(share * room) + 300,
      margin: 150,
      gap: 100,
      leftOf: null,
      rightOf: null,
      axes: [],
    })),
    works: widths.map((width, rank) => ({
      id: `w${rank}`,
      width,
      height: 500,
      weight: 1,
      limit: null,
      section: 0,
      rank,
      served: raw.map(() => Math.round(100 * chance()) / 100),
      stays: null,
    })),
    facing: [],
    rules: noRules,
    weights: { order: 1, balance: 0, evenness: 1, light: 0, sight: 0.5 + chance(), rhythm: 0 },
    orderBy: 'work',
  }
}

/** In the format of CPLEX LP files. Its objective, to be least, is what the best hang lacks to the quality 1. */
export function asProgram({ bays, works, weights }: Problem, scale: Scale): string {
  const all = weights.order + weights.evenness + weights.sight
  const x = (work: number, bay: number) => `x${work}_${bay}`
  const perTurned = weights.order / all / 2 / scale.ordered
  const perUneven = weights.evenness / all / (2 * scale.width)
  const perServed = weights.sight / all / scale.free
  const objective = [
    ...works.flatMap((work, index) =>
      bays.map((_, bay) => `${perServed * (1 - (work.served[bay] ?? 0))} ${x(index, bay)}`),
    ),
    ...bays.map((_, bay) => `${perUneven} e${bay}`),
  ]
  const rows: string[] = []
  for (const work of works.keys()) rows.push(`${bays.map((_, bay) => x(work, bay)).join(' + ')} = 1`)
  for (const [bay, { from, to, margin, gap }] of bays.entries()) {
    const widths = works.map(({ width }, work) => `${width} ${x(work, bay)}`).join(' + ')
    const share = scale.fill * (to - from)
    rows.push(
      `${works.map(({ width }, work) => `${width + gap} ${x(work, bay)}`).join(' + ')} <= ${to - from - 2 * margin + gap}`,
    )
    rows.push(`e${bay} - ${widths.replaceAll(' + ', ' - ')} >= ${-share}`)
    rows.push(`e${bay} + ${widths} >= ${share}`)
  }
  for (let one = 0; one < works.length; one += 1) {
    for (let other = one + 1; other < works.length; other += 1) {
      objective.push(`${perTurned} t${one}_${other}`)
      // The later work hangs by this bay, the earlier does not.
      for (let bay = 0; bay + 1 < bays.length; bay += 1) {
        const by = Array.from({ length: bay + 1 }, (_, index) => `${x(one, index)} - ${x(other, index)}`)
        rows.push(`t${one}_${other} + ${by.join(' + ')} >= 0`)
      }
    }
  }
  const binary = works.flatMap((_, work) => bays.map((_bay, bay) => x(work, bay)))
  return [
    'Minimize',
    ` lacks: ${objective.join('\n + ')}`,
    'Subject To',
    ...rows.map((row, index) => ` r${index}: ${row}`),
    'Binary',
    ...binary.map(name => ` ${name}`),
    'End',
  ].join('\n')
}

/** Quality of a hang that lacks so much. */
export function qualityOfLack(lack: number, { weights }: Problem, scale: Scale): number {
  const perfect = termsOfSums({ balance: 0, uneven: 0, light: 0, rhythm: 0, served: scale.free, focal: 0 }, scale)
  return quality({ order: 1, ...perfect }, weights) - lack
}
