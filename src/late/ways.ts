/**
 * Ways out of a change that are worth trying: the changed work alone in its place, on holes that are there, every gap
 * kept and the row pushed along, every stretch of the row spaced anew. Whether they fit and what they cost is asked later.
 */
import { centreFromRule } from '../hang/height.ts'
import { type Before, type Spot, spotOf } from './cost.ts'
import { type Pushed, pushed } from './gaps.ts'
import type { Change, LateQuestion, LateWork } from './late-shape.ts'
import type { Placed, Row } from './row.ts'
import { type Spaced, spaced } from './spacing.ts'

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

export const lowerings = ['free', 'not-hung', 'all'] as const
export type Lowering = (typeof lowerings)[number]

function goesDown(which: Lowering, work: LateWork): boolean {
  if (which === 'all') return true
  return !work.held && work.standing !== 'hung' && (which === 'not-hung' || work.standing === 'free')
}

export function lowered(works: readonly LateWork[], by: number, say: (mm: number) => string): readonly Try[] {
  return lowerings.map(which => ({
    key: `${by >= 0 ? 'lower' : 'raise'}-${which}`,
    says: saysLowered(which, works, by, say),
    spots: new Map(
      works
        .filter(work => goesDown(which, work))
        .map(work => {
          const { x, y } = spotOf(work)
          return [work.id, { x, y: y - by }] as const
        }),
    ),
  }))
}

/** What goes lower and what stays, over one wall or all that are asked about. */
export function saysLowered(
  which: Lowering,
  works: readonly LateWork[],
  by: number,
  say: (mm: number) => string,
): string {
  const verb = by >= 0 ? 'Lower' : 'Raise'
  const amount = `by ${say(Math.abs(by))}`
  const stay = works.filter(work => !goesDown(which, work))
  const drilled = works.filter(work => goesDown(which, work) && work.standing === 'drilled')
  const holes = drilled.length === 0 ? '' : `, with new holes for ${listed(drilled)}`
  if (stay.length === 0) {
    const hung = works.filter(work => work.standing === 'hung')
    return `${verb} everything ${amount}${hung.length === 0 ? '' : `, also ${listed(hung)}, which ${hung.length === 1 ? 'hangs' : 'hang'}`}${holes}.`
  }
  const what = which === 'free' ? 'only what is not drilled yet' : 'everything that does not hang yet'
  return `${verb} ${what} ${amount}${holes}; ${listed(stay)} ${stay.length === 1 ? 'stays' : 'stay'}, so heights differ.`
}

/** Works by name, shortened where nobody would read them all. */
function listed(works: readonly LateWork[]): string {
  const names = works.map(work => work.name)
  if (names.length > 6) return `${names.length} works`
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
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
    { key: 'centre', says: `Keep ${work.name} about the same centre; its neighbours stay.`, spots: at(spot.x, spot.y) },
  ]
  if (question.change.kind === 'different' && old !== undefined) {
    const left = old.x - old.width / 2
    const rightEdge = old.x + old.width / 2
    tries.push(
      {
        key: 'left-edge',
        says: `Keep the left edge of ${work.name} where it is; its neighbours stay.`,
        spots: at(left + work.width / 2, spot.y),
      },
      {
        key: 'right-edge',
        says: `Keep the right edge of ${work.name} where it is; its neighbours stay.`,
        spots: at(rightEdge - work.width / 2, spot.y),
      },
    )
  }
  const idle = new Set(was.holes.unused)
  for (const need of work.holes) {
    for (const hole of question.drilled) {
      if (Math.abs(hole.x - spot.x) > work.width + (old?.width ?? 0)) continue
      const what = idle.has(hole.id) ? 'an old hole' : 'a hole that is there'
      const [x, y] = [hole.x - need.dx, hole.y - need.dy]
      tries.push({
        key: `hole-${hole.id}-${need.slot}`,
        says: `Hang ${work.name}${shifted(x - spot.x, y - spot.y, question.say)}, with its ${need.slot} mark on ${what}; its neighbours stay.`,
        spots: at(x, y),
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

/** ` further left by 26 mm`, as it stands in a sentence; empty where it stays. */
function shifted(dx: number, dy: number, say: (mm: number) => string): string {
  const along = Math.abs(dx) < 0.05 ? '' : ` further ${dx > 0 ? 'right' : 'left'} by ${say(Math.abs(dx))}`
  const up = Math.abs(dy) < 0.05 ? '' : ` ${dy > 0 ? 'higher' : 'lower'} by ${say(Math.abs(dy))}`
  return along === '' || up === '' ? along + up : `${along} and${up}`
}

function keepingGaps(question: LateQuestion, after: readonly LateWork[], row: Row): readonly Try[] {
  return pushed(question, after, row).map(({ key, spots }) => ({ key, says: saysPush(key, question, spots), spots }))
}

function saysPush(key: Pushed['key'], { works, say }: LateQuestion, spots: ReadonlyMap<string, Spot>): string {
  const moves = works.flatMap(work => {
    const spot = spots.get(work.id)
    return spot === undefined || Math.abs(spot.x - work.x) < 0.05 ? [] : [{ work, by: spot.x - work.x }]
  })
  const most = moves.reduce((far, { by }) => Math.max(far, Math.abs(by)), 0)
  const side =
    key === 'push-both'
      ? 'both sides move'
      : key === 'push-right'
        ? 'from its left end the row moves'
        : 'from its right end the row moves'
  if (moves.length === 0) return 'Keep every gap; nothing else moves.'
  return `Keep every gap; ${side}, by ${say(most)} at most.`
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
        tries.push({
          key: `${found.ends}-${keep}-${items[i]?.id ?? ''}-${items[j]?.id ?? ''}`,
          says: saysSpaced(items.slice(i, j + 1), found, question),
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

function saysSpaced(within: readonly LateWork[], { gaps, stayed, spots }: Spaced, question: LateQuestion): string {
  const [first, last] = [within[0]?.name ?? '', within.at(-1)?.name ?? '']
  const least = Math.min(...gaps)
  const even = gaps.length > 0 && Math.max(...gaps) - least < 0.5
  const figure = gaps.length === 0 ? '' : even ? `, gaps of ${question.say(least)}` : ', each part with equal gaps'
  const clauses = [
    ...(stayed.length === 0 ? [] : [`${listed(stayed)} ${stayed.length === 1 ? 'stays' : 'stay'}`]),
    ...carried(within, spots, 'drilled', 'though drilled', question.change),
    ...carried(within, spots, 'hung', 'though it hangs', question.change),
  ]
  const what = within.length === 1 ? `Space ${first} evenly between its neighbours` : `Space ${first} to ${last} anew`
  return `${what}${figure}${clauses.map(clause => `; ${clause}`).join('')}.`
}

/** Works that move though something speaks against it. */
function carried(
  within: readonly LateWork[],
  spots: ReadonlyMap<string, Spot>,
  standing: LateWork['standing'],
  why: string,
  change: Change,
): readonly string[] {
  const some = within.filter(
    work =>
      work.standing === standing &&
      !isChanged(change, work.id) &&
      Math.abs((spots.get(work.id)?.x ?? work.x) - work.x) > 0.05,
  )
  if (some.length === 0) return []
  return [
    `${listed(some)} ${some.length === 1 ? 'moves' : 'move'}, ${some.length === 1 ? why : why.replace('it hangs', 'they hang')}`,
  ]
}

/** Where a dropped work stood: the index of the first work right of it. */
function seam({ works, change }: LateQuestion, items: readonly LateWork[]): number {
  const dropped = works.find(work => change.kind === 'drop' && work.id === change.id)
  const found = items.findIndex(work => work.x > (dropped?.x ?? 0))
  return found === -1 ? items.length : found
}
