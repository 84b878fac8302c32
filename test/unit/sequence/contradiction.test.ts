/**
 * Rules that can't hold together, against trying everything: every hang of the works that are named, with every way of
 * putting others between them, judged by what a rule says of a hang (`stateOf`) and by nothing of the search.
 */
import { describe, expect, test } from 'vitest'
import { canHold } from '../../../src/sequence/can-hold.ts'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { contradictionAmong } from '../../../src/sequence/contradiction.ts'
import type { RuledShow } from '../../../src/sequence/given-rules.ts'
import { type Extent, type HangRule, ruleKinds, withins } from '../../../src/sequence/hang-rule.ts'
import { type Spot, stateOf } from '../../../src/sequence/rule-holds.ts'
import { cuts, permutations } from './random-problem.ts'

interface Small {
  readonly show: RuledShow
  readonly rules: readonly HangRule[]
}

const margin = 100
const gap = 50

/** Two or three walls of one or two bays, a work or none that stays between two bays, two to five that don't. */
function smallShow(seed: number): Small {
  const chance = chanceFrom(seed)
  const pick = (below: number) => pickBelow(chance, below)
  const faces = ['n', 'e', 's'].slice(0, 2 + pick(2))
  const free = 2 + pick(4)
  const fixed = pick(3) === 0 ? 1 : 0
  const total = free + fixed
  const lengths = faces.map(() => 1200 + 100 * pick(25))
  const bays: RuledShow['bays'][number][] = []
  const runs: RuledShow['runs'][number][] = []
  let stays: { before: number; face: string; from: number; to: number } | null = null
  const bay = (face: string, from: number, to: number, leftOf: number | null, rightOf: number | null) =>
    bays.push({ face, from, to, margin, gap, leftOf, rightOf }) - 1
  for (const [index, face] of faces.entries()) {
    const length = lengths[index] ?? 0
    if (index === 0 && fixed === 1) {
      const middle = length / 2
      const left = bay(face, 0, middle - 200, null, free)
      stays = { before: left + 1, face, from: middle - 200, to: middle + 200 }
      runs.push([{ bay: left }, { work: free }, { bay: bay(face, middle + 200, length, free, null) }])
    } else if (index === 1 && pick(2) === 0) {
      // Parted by a doorway.
      runs.push([{ bay: bay(face, 0, length / 2 - 100, null, null) }])
      runs.push([{ bay: bay(face, length / 2 + 100, length, null, null) }])
    } else runs.push([{ bay: bay(face, 0, length, null, null) }])
  }
  const works: RuledShow['works'] = Array.from({ length: total }, (_, work) => ({
    width: 200 + 100 * pick(8),
    section: pick(2),
    could: bays.map(() => work < free && pick(8) > 0),
    stays: work === free && stays !== null ? { ...stays, order: 0 } : null,
  }))
  const opposite = (a: Extent, b: Extent) =>
    [a.face, b.face].sort().join('') === 'ns' || (faces.length === 2 && a.face !== b.face)
  const someOf = (count: number) => {
    const left = [...works.keys()]
    return Array.from({ length: Math.min(count, total) }, () => left.splice(pick(left.length), 1)[0] ?? 0)
  }
  const rules = Array.from({ length: 2 + pick(4) }, (_, index): HangRule => {
    const kind = ruleKinds[pick(ruleKinds.length)] ?? 'stays'
    const alone = kind === 'first' || kind === 'last' || kind === 'axis'
    const many = kind === 'only on' || kind === 'not on' || kind === 'stays' ? 1 + pick(2) : 2 + pick(2)
    const face = faces[pick(faces.length)] ?? ''
    return {
      id: `r${index}`,
      kind,
      works: someOf(alone ? 1 : many),
      faces: [face],
      within: withins[pick(withins.length)] ?? 'show',
      axes: [{ face, x: pick(lengths[faces.indexOf(face)] ?? 1) }],
    }
  })
  return { show: { works, bays, runs, faces: opposite }, rules }
}

/** A work that nobody names, standing between. */
const other = -1

function possible({ works, bays, runs, faces }: RuledShow, given: readonly HangRule[]): boolean {
  const free = [...works.keys()].filter(work => works[work]?.stays === null)
  const fits = free.filter(work => works[work]?.could.some(Boolean))
  const rules = given.map(rule => ({
    ...rule,
    works: rule.works.filter(work => fits.includes(work) || !free.includes(work)),
  }))
  const named = fits.filter(work => rules.some(rule => rule.works.includes(work)))
  const others = fits.filter(work => !named.includes(work))
  const width = (work: number) =>
    work === other ? Math.min(...others.map(each => works[each]?.width ?? 0)) : (works[work]?.width ?? 0)
  const sections = works.map(work => work.section)
  const runOf = new Map(
    runs.flatMap((run, index) => run.flatMap(item => ('bay' in item ? [[item.bay, index] as const] : []))),
  )
  const runOfStaying = new Map(
    runs.flatMap((run, index) => run.flatMap(item => ('work' in item ? [[item.work, index] as const] : []))),
  )
  const room = (bay: number) => (bays[bay]?.to ?? 0) - (bays[bay]?.from ?? 0) - 2 * margin + gap
  const wants = (list: readonly number[]) => list.reduce((sum, work) => sum + width(work) + gap, 0)

  const spotsOf = (rows: readonly (readonly number[])[]): Spot[] => [
    ...rows.flatMap((row, bay) => {
      const staying = [...works.entries()].flatMap(([work, { stays }]) =>
        stays?.before === bay ? [{ work, stays }] : [],
      )
      return [
        ...staying.map(({ work, stays }) => ({
          work,
          run: String(runOfStaying.get(work)),
          face: stays.face,
          from: stays.from,
          to: stays.to,
        })),
        ...row.map(work => ({
          work,
          run: String(runOf.get(bay)),
          face: bays[bay]?.face ?? '',
          from: bays[bay]?.from ?? 0,
          to: bays[bay]?.to ?? 0,
        })),
      ]
    }),
  ]
  const keeps = (rows: readonly (readonly number[])[], which: readonly HangRule[]) => {
    const hung = { spots: spotsOf(rows), sections, faces }
    return which.every(rule => stateOf(rule, hung) !== 'broken')
  }
  const place = rules.filter(rule => rule.kind !== 'axis' || rule.works.some(work => works[work]?.stays !== null))
  const axes = rules.filter(rule => rule.kind === 'axis' && rule.works.some(work => works[work]?.stays === null))
  /** Leftmost place of each, one after the other; a work on an axis no further left than reaches it. */
  const fitsOn = (bay: number, row: readonly number[]): boolean => {
    let x = (bays[bay]?.from ?? 0) + margin
    for (const work of row) {
      for (const rule of axes.filter(each => each.works[0] === work)) {
        const [axis] = rule.axes
        const inside =
          axis !== undefined &&
          axis.face === bays[bay]?.face &&
          axis.x >= (bays[bay]?.from ?? 0) &&
          axis.x <= (bays[bay]?.to ?? 0)
        if (!inside || axis.x < x) return false
        x = Math.max(x, axis.x - width(work))
      }
      x += width(work) + gap
    }
    return row.length === 0 || x - gap <= (bays[bay]?.to ?? 0) - margin + 1e-6
  }
  /** Each row with others put between in every way. */
  const filled = (row: readonly number[]): number[][] =>
    row.reduceRight<number[][]>(
      (tails, work) =>
        tails.flatMap(tail => [
          [work, ...tail],
          [other, work, ...tail],
        ]),
      [[], [other]],
    )
  const total = bays.reduce((sum, _, bay) => sum + room(bay), 0)
  const bulk = wants(others) + wants(named) > total ? 0 : wants(others)

  /** Others alone: each has a wall left where no rule bars it by what stays. */
  const othersCan = others.every(work =>
    bays.some((_, bay) => {
      if (works[work]?.could[bay] !== true) return false
      const rows = bays.map((__, index) => (index === bay ? [work] : []))
      return keeps(
        rows,
        rules
          .filter(rule => rule.works.some(each => works[each]?.stays !== null))
          .map(rule => ({
            ...rule,
            works: ['side by side', 'in this order'].includes(rule.kind)
              ? rule.works.filter(each => works[each]?.stays !== null)
              : rule.works,
          })),
      )
    }),
  )
  if (!othersCan) return false
  for (const order of permutations(named)) {
    for (const rows of cuts(order, bays.length)) {
      if (rows.some((row, bay) => row.some(work => works[work]?.could[bay] !== true))) continue
      const ways = rows.map((row, bay) =>
        (row.length === 0 ? [[]] : others.length === 0 ? [[...row]] : filled(row)).filter(way => fitsOn(bay, way)),
      )
      const tried = (bay: number, so: number[][]): boolean => {
        if (bay < rows.length) return (ways[bay] ?? []).some(way => tried(bay + 1, [...so, way]))
        if (so.flat().filter(work => work === other).length > others.length || !keeps(so, place)) return false
        const left = so.reduce((sum, row, index) => {
          const open = [...row.keys(), row.length].some(at =>
            keeps(
              so.map((each, here) => (here === index ? [...each.slice(0, at), other, ...each.slice(at)] : each)),
              place.filter(rule => rule.kind !== 'not beside'),
            ),
          )
          return open ? sum + room(index) - wants(rows[index] ?? []) : sum
        }, 0)
        return bulk <= left + 1e-6
      }
      if (tried(0, [])) return true
    }
  }
  return false
}

describe('rules that can’t hold together', () => {
  test('whether they can, as trying everything has it, on 3,000 small shows', { timeout: 120_000 }, () => {
    let [yes, no] = [0, 0]
    for (let seed = 1; seed <= 3000; seed += 1) {
      const { show, rules } = smallShow(seed)
      const answer = possible(show, rules) ? 'yes' : 'no'
      expect(canHold(show, rules), `seed ${seed}`).toBe(answer)
      if (answer === 'yes') yes += 1
      else no += 1
    }
    expect(yes).toBeGreaterThan(500)
    expect(no).toBeGreaterThan(500)
  })

  test('what is named can’t hold, and does without any one of it; nothing possible is accused', {
    timeout: 120_000,
  }, () => {
    let [named, most] = [0, 0]
    for (let seed = 3001; seed <= 6000; seed += 1) {
      const { show, rules } = smallShow(seed)
      const { contradiction, answered } = contradictionAmong(show, rules)
      expect(answered, `seed ${seed}`).toBe(true)
      if (contradiction === null) {
        expect(possible(show, rules), `seed ${seed}`).toBe(true)
        continue
      }
      const set = rules.filter(rule => contradiction.rules.includes(rule.id))
      expect(contradiction.minimal, `seed ${seed}`).toBe(true)
      expect(possible(show, set), `seed ${seed}`).toBe(false)
      for (const rule of set)
        expect(
          possible(
            show,
            set.filter(each => each !== rule),
          ),
          `seed ${seed} without ${rule.id}`,
        ).toBe(true)
      named += 1
      most = Math.max(most, set.length)
    }
    expect(named).toBeGreaterThan(500)
    expect(most).toBeGreaterThan(2)
  })

  test('in a large show two that contradict are named among many that don’t, soon', () => {
    const bays = Array.from({ length: 60 }, (_, bay) => ({
      ...{ face: `f${bay}`, from: 0, to: 6000, margin, gap, leftOf: null, rightOf: null },
    }))
    const works = Array.from({ length: 300 }, () => ({
      ...{ width: 600, section: 0, could: bays.map(() => true), stays: null },
    }))
    const rule = (id: string, kind: HangRule['kind'], named: number[], more: Partial<HangRule> = {}): HangRule => ({
      ...{ id, kind, works: named, faces: [], within: null, axes: [] },
      ...more,
    })
    const pairs = Array.from({ length: 30 }, (_, index) =>
      rule(`p${index}`, 'side by side', [2 * index, 2 * index + 1]),
    )
    const show = { works, bays, runs: bays.map((_, bay) => [{ bay }]), faces: () => false }
    expect(contradictionAmong(show, pairs)).toEqual({ contradiction: null, answered: true })
    const both = [
      ...pairs,
      rule('first', 'first', [8], { within: 'show' }),
      rule('end', 'only on', [9], { faces: ['f59'] }),
    ]
    const before = performance.now()
    // No 8 is met first and stands beside No 9, which is on the last wall; the other 298 have no room behind them.
    expect(contradictionAmong(show, both)).toEqual({
      contradiction: { rules: ['p4', 'first', 'end'], minimal: true },
      answered: true,
    })
    expect(performance.now() - before).toBeLessThan(5000)
  })
})
