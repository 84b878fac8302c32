/** What a person asks of works on a wall, each as one edit. */
import type { PlacedWork } from '../../src/contract/areas/walls.ts'
import { faceCentre, placeAt, type Spot } from '../../src/drawing/places.ts'
import type { Point } from '../../src/geometry/rect.ts'
import type { Offer } from '../../src/hang/nearest-shape.ts'
import type { WallPiece } from '../../src/layout/chains.ts'
import { calledOn } from '../../src/model/face-findings.ts'
import { ask, call } from '../host/client.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import { hasLock } from './marks-on.ts'
import type { Wall } from './wall.svelte.ts'

/** Which works give way when a gap is typed: the one beside it, or it and all beyond. */
export type GapSide = 'work' | 'rest'

/** Makes a gap as wide as typed. The work after it moves; at the wall's right end, the work before it. */
export async function moveGap(wall: Wall, piece: WallPiece, mm: number, side: GapSide): Promise<void> {
  const pieces = wall.chain.pieces
  const at = pieces.findIndex(
    each => each.kind === 'gap' && Math.abs(each.from - piece.from) < 1e-6 && Math.abs(each.to - piece.to) < 1e-6,
  )
  const after = pieces[at + 1]
  const before = pieces[at - 1]
  // Typed figures are set against what is drawn exactly, not against the rounded figure.
  const by = mm - (piece.to - piece.from)
  const ids =
    after !== undefined && after.id !== null
      ? side === 'rest'
        ? pieces.slice(at + 1).flatMap(each => (each.id === null ? [] : wall.worksIn(each.id)))
        : wall.worksIn(after.id)
      : before !== undefined && before.id !== null
        ? wall.worksIn(before.id)
        : []
  const shift = after === undefined ? -by : by
  const works = wall.movable(wall.works.filter(work => ids.includes(work.placement)))
  await wall.putSpots(new Map(works.map(work => [work.placement, wall.alongTo(work, work.x + shift)])), 'Type a gap')
}

/** Puts works of the show on the wall: where they were let fall, else to the right of what hangs, on the line. */
export async function placeEntries(wall: Wall, entries: readonly string[], at: Point | null): Promise<void> {
  const { elevation } = wall
  const face = wall.face()
  if (elevation === undefined || face === null || entries.length === 0) return
  const { minimumGap, minimumMargin } = elevation.rules
  const known = new Map((show.frieze.value?.works ?? []).map(work => [work.entry, work]))
  // Just taken off, it stays in the answer of the wall a moment longer than in the frieze's.
  const off = new Set(at === null ? entries.filter(entry => known.get(entry)?.face === null) : [])
  const hung = new Map(elevation.works.filter(({ entry }) => !off.has(entry)).map(work => [work.entry, work]))
  const news = entries.filter(entry => !hung.has(entry))
  const last = elevation.works.reduce(
    (most, work) => Math.max(most, work.x + (work.size?.width ?? 0) / 2),
    minimumMargin - minimumGap,
  )
  const widths = news.map(entry => known.get(entry)?.width ?? 0)
  let x =
    at === null ? last + minimumGap : at.x - widths.reduce((sum, width) => sum + width + minimumGap, -minimumGap) / 2
  const places = []
  for (const entry of news) {
    const was = await whereItStands(entry, known.get(entry)?.face ?? null)
    const width = known.get(entry)?.width ?? 0
    places.push({ entry, face, x: x + width / 2, rule: 'face' as const, y: null, was })
    x += width + minimumGap
  }
  if (places.length > 0) await wall.put(places)
  const moved = entries.flatMap(entry => hung.get(entry) ?? [])
  if (at !== null && moved.length === 1) {
    const [one] = wall.movable(moved)
    if (one !== undefined) await wall.putSpots(new Map([[one.placement, wall.alongTo(one, at.x)]]))
  }
}

/** Where a work stands on another wall, as the change must name it. */
async function whereItStands(entry: string, face: string | null) {
  if (face === null || show.id === null) return null
  const { works } = await ask('wall.elevation', { exhibition: show.id, face })
  const stands = works.find(work => work.entry === entry)
  return stands === undefined ? null : { face, x: stands.x, rule: stands.rule, y: stands.y }
}

export async function takeOff(wall: Wall): Promise<void> {
  const works = wall.movable(wall.selected)
  if (works.length === 0) return
  const went = await frame.attempt(() => call('placement.remove', { placements: works.map(work => work.placement) }))
  if (went)
    frame.say(
      `${works.length === 1 && works[0] ? calledOn(works[0]) : `${works.length} works`} taken off the wall; still in the show.`,
    )
}

/** One work to a new place, typed. */
export function typeSpot(wall: Wall, work: PlacedWork, spot: Partial<Spot>): Promise<boolean> | boolean {
  if (wall.movable([work]).length === 0) return false
  return wall.putSpots(new Map([[work.placement, { ...wall.alongTo(work, spot.x ?? work.x), ...spot }]]))
}

/** By which rule a work gets its height; it stays where it is unless it follows the wall. */
export function setRule(wall: Wall, work: PlacedWork, place: Pick<PlacedWork, 'x' | 'rule' | 'y'>): Promise<boolean> {
  if (wall.stays(work)) wall.movable([work])
  return wall.put([wall.request(work, place)])
}

/** Works back on the wall's own height. */
export async function toTheLine(wall: Wall, works: readonly PlacedWork[]): Promise<void> {
  const { elevation } = wall
  if (elevation === undefined) return
  const free = wall.movable(works)
  if (free.length === 0) return
  wall.try(
    new Map(
      free.map(work => [
        work.placement,
        { x: work.x, centreY: faceCentre(elevation.plan, work.size?.height ?? 0, work.x) },
      ]),
    ),
  )
  await wall.put(free.map(work => wall.request(work, { x: work.x, rule: 'face', y: null })))
}

/** Takes the nearest place that clears a work's marks, as one edit: along the wall, its hooks, or both. */
export async function takeNearest(wall: Wall, work: PlacedWork, offer: Offer): Promise<void> {
  const { elevation } = wall
  if (elevation === undefined || wall.movable([work]).length === 0) return
  const { dx, hooksApart } = offer
  const spot = wall.alongTo(work, work.x + dx)
  const stays = { x: work.x, rule: work.rule, y: work.y }
  const place = wall.request(work, dx === 0 ? stays : placeAt(work, elevation.plan, spot))
  if (dx !== 0) wall.try(new Map([[work.placement, spot]]))
  const apart = hooksApart === null ? {} : { hooksApart: { was: work.hooksApart, to: hooksApart } }
  await wall.put([{ ...place, ...apart }], dx === 0 ? 'Set hooks apart' : 'Move to the nearest place that works')
}

/** The next step of works on the wall; says so where they differ or have none left. */
export async function stepOn(wall: Wall): Promise<void> {
  const works = wall.selected
  const [first] = works
  if (first === undefined) return
  const locks = works.every(work => hasLock(wall, work.placement))
  const order: readonly PlacedWork['state'][] = [
    'planned',
    'hung',
    'level',
    ...(locks ? ['locked' as const] : []),
    'checked',
  ]
  const at = order.indexOf(first.state)
  const to = order[at + 1]
  if (works.some(work => work.state !== first.state)) {
    frame.say('These works are not equally far; say it in the tag.')
  } else if (to === undefined || at < 0) frame.say('All of it is ticked already.')
  else await frame.attempt(() => call('placement.setState', { placements: works.map(work => work.placement), to }))
}
