/**
 * Ways out of a change that are worth trying: the changed work alone in its place, on holes that are there, every gap
 * kept and the row pushed along, every stretch of the row spaced anew. Whether they fit and what they cost is asked later.
 */
import { centreFromRule } from '../hang/height.ts'
import { type Before, type Spot, spotOf } from './cost.ts'
import { pushed } from './gaps.ts'
import type { Change, LateQuestion, LateWork } from './late-shape.ts'
import type { Placed, Row } from './row.ts'
import { spaced } from './spacing.ts'

export interface Try {
  readonly key: string
  readonly says: string
  readonly spots: ReadonlyMap<string, Spot>
}

export function isChanged(change: Change, id: string): boolean {
  if (change.kind === 'different') return change.id === id
  if (change.kind === 'replace') return change.by.id === id
  return change.kind === 'swap' && (change.one === id || change.other === id)
}

/** It leaves this wall by the change. */
export function isGone(change: Change, id: string): boolean {
  return (change.kind === 'drop' || change.kind === 'replace') && change.id === id
}

export function rectOf(work: LateWork, spot: Spot): Placed {
  return {
    id: work.id,
    x: spot.x - work.width / 2,
    y: spot.y - work.height / 2,
    width: work.width,
    height: work.height,
  }
}

export function lowered(works: readonly LateWork[], by: number): readonly Try[] {
  const down = (which: (work: LateWork) => boolean) =>
    new Map(
      works.filter(which).map(work => {
        const { x, y } = spotOf(work)
        return [work.id, { x, y: y - by }] as const
      }),
    )
  const way = by >= 0 ? 'lower' : 'raise'
  return [
    {
      key: `${way}-free`,
      says: 'Only what is not drilled yet; what is drilled or hung stays, at two heights on one wall.',
      spots: down(work => work.standing === 'free' && !work.held),
    },
    {
      key: `${way}-not-hung`,
      says: 'Everything that does not hang yet, with new holes for what is drilled.',
      spots: down(work => work.standing !== 'hung' && !work.held),
    },
    { key: `${way}-all`, says: 'The whole wall, also what hangs.', spots: down(() => true) },
  ]
}

export function inTheRow(
  question: LateQuestion,
  after: readonly LateWork[],
  was: Before,
  row: Row | null,
): readonly Try[] {
  const { change } = question
  const tries: Try[] = []
  if (change.kind === 'drop')
    tries.push({ key: 'leave-gap', says: 'Leave its place empty; nothing moves.', spots: new Map() })
  const changed = after.filter(work => isChanged(change, work.id))
  for (const work of changed) tries.push(...inPlace(question, work, changed, was))
  if (change.kind === 'swap') tries.push(...swappedEdges(question, after))
  if (row === null) return tries
  tries.push(...keepingGaps(question, after, row), ...windows(question, after, row))
  return tries
}

/** What stands nearest to a work that is dropped: the row to close up. */
export function nearestTo({ works, change }: LateQuestion, after: readonly LateWork[]): string | undefined {
  const dropped = works.find(work => change.kind === 'drop' && work.id === change.id)
  if (dropped === undefined) return undefined
  const level = spotOf(dropped).y
  return [...after].sort(
    (a, b) => Math.hypot(a.x - dropped.x, spotOf(a).y - level) - Math.hypot(b.x - dropped.x, spotOf(b).y - level),
  )[0]?.id
}

/** The changed work alone: about its centre, at an edge, or so that a hole that is there serves again. */
function inPlace(question: LateQuestion, work: LateWork, changed: readonly LateWork[], was: Before): readonly Try[] {
  const others = new Map(changed.filter(other => other.id !== work.id).map(other => [other.id, spotOf(other)]))
  const spot = spotOf(work)
  const at = (x: number, y: number) => new Map([...others, [work.id, { x, y }]])
  const old = question.works.find(each => each.id === work.id)
  const tries: Try[] = [
    { key: 'centre', says: `${work.name} about the same centre; its neighbours stay.`, spots: at(spot.x, spot.y) },
  ]
  if (question.change.kind === 'different' && old !== undefined) {
    const left = old.x - old.width / 2
    const rightEdge = old.x + old.width / 2
    tries.push(
      {
        key: 'left-edge',
        says: `${work.name} keeps its left edge; its neighbours stay.`,
        spots: at(left + work.width / 2, spot.y),
      },
      {
        key: 'right-edge',
        says: `${work.name} keeps its right edge; its neighbours stay.`,
        spots: at(rightEdge - work.width / 2, spot.y),
      },
    )
  }
  const idle = new Set(was.holes.unused)
  for (const need of work.holes) {
    for (const hole of question.drilled) {
      if (Math.abs(hole.x - spot.x) > work.width + (old?.width ?? 0)) continue
      const what = idle.has(hole.id) ? 'an old hole' : 'a hole that is there'
      tries.push({
        key: `hole-${hole.id}-${need.slot}`,
        says: `${work.name} with its ${need.slot} mark on ${what}; its neighbours stay.`,
        spots: at(hole.x - need.dx, hole.y - need.dy),
      })
    }
  }
  return tries
}

/** Two works swapped so that the outer edges of the pair stay, or each takes the other’s left or right edge. */
function swappedEdges({ works, change }: LateQuestion, after: readonly LateWork[]): readonly Try[] {
  if (change.kind !== 'swap') return []
  const pair = works.filter(work => isChanged(change, work.id)).sort((a, b) => a.x - b.x)
  const [leftWas, rightWas] = pair
  if (leftWas === undefined || rightWas === undefined) return []
  const nowLeft = after.find(work => work.id === rightWas.id)
  const nowRight = after.find(work => work.id === leftWas.id)
  if (nowLeft === undefined || nowRight === undefined) return []
  const y = (work: LateWork) => centreFromRule(work.stands, work.height)
  const edges = (leftEdge: number, otherX: number) =>
    new Map([
      [nowLeft.id, { x: leftEdge + nowLeft.width / 2, y: y(nowLeft) }],
      [nowRight.id, { x: otherX, y: y(nowRight) }],
    ])
  const outer = rightWas.x + rightWas.width / 2 - nowRight.width / 2
  return [
    {
      key: 'outer-edges',
      says: 'The pair keeps its outer edges; what lies between takes up the difference.',
      spots: edges(leftWas.x - leftWas.width / 2, outer),
    },
  ]
}

const saysPush = {
  'push-right': 'Keep every gap; what stands to the right moves along.',
  'push-left': 'Keep every gap; what stands to the left moves along.',
  'push-both': 'Keep every gap; both sides move half each.',
} as const

function keepingGaps(question: LateQuestion, after: readonly LateWork[], row: Row): readonly Try[] {
  return pushed(question, after, row).map(({ key, spots }) => ({ key, says: saysPush[key], spots }))
}

/** Every stretch of the row that holds the change, spaced anew between what stays. */
function windows(question: LateQuestion, after: readonly LateWork[], row: Row): readonly Try[] {
  const { change } = question
  const by = new Map(after.map(work => [work.id, work]))
  const items = row.ids.flatMap(id => by.get(id) ?? [])
  const inside = items.flatMap((work, index) => (isChanged(change, work.id) ? [index] : []))
  const [first, last] = [inside[0] ?? seam(question, items), inside.at(-1) ?? seam(question, items) - 1]
  const outer = outerEdges(question, row)
  const tries: Try[] = []
  for (let i = Math.min(first, items.length - 1); i >= 0; i -= 1) {
    for (let j = Math.max(last, i); j < items.length; j += 1) {
      for (const keep of ['drilled', 'hung', 'nothing'] as const) {
        const found = spaced({ items, i, j, row, keep, change, outer, leastGap: question.leastGap })
        if (found === null) continue
        const names = `${items[i]?.name ?? ''} to ${items[j]?.name ?? ''}`
        tries.push({
          key: `${found.ends}-${keep}-${items[i]?.id ?? ''}-${items[j]?.id ?? ''}`,
          says: `Space ${i === j ? (items[i]?.name ?? '') : `from ${names}`} anew with equal gaps${saysKeep[keep]}.`,
          spots: found.spots,
        })
      }
    }
  }
  return tries
}

/** Outermost edges of the row as it was, the dropped work included. */
export function outerEdges(
  { works, change }: LateQuestion,
  row: Row,
): { readonly left: number; readonly right: number } {
  const were = works.filter(work => row.ids.includes(work.id) || isGone(change, work.id))
  return {
    left: Math.min(...were.map(work => work.x - work.width / 2)),
    right: Math.max(...were.map(work => work.x + work.width / 2)),
  }
}

const saysKeep = {
  drilled: '; what is drilled or hung stays',
  hung: '; drilled works move, what hangs stays',
  nothing: ', moving what hangs too',
} as const

/** Where a dropped work stood: the index of the first work right of it. */
function seam({ works, change }: LateQuestion, items: readonly LateWork[]): number {
  const dropped = works.find(work => change.kind === 'drop' && work.id === change.id)
  const found = items.findIndex(work => work.x > (dropped?.x ?? 0))
  return found === -1 ? items.length : found
}
