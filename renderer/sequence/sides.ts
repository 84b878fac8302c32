/** Two hangs held against each other, wall by wall: which works are on another wall, which stand elsewhere on theirs. */
import { centreOnFace } from '../../src/model/centre-on-face.ts'
import { desk } from '../host/desk.svelte.ts'
import type { Proposal, SequenceWall } from './sequence.svelte.ts'

export interface Hung {
  readonly entry: string
  readonly x: number
  readonly y: number
  /** Held, hung or drilled. */
  readonly stays: boolean
  /** How it differs from the other side: on another wall there, on none, or elsewhere on this one (mm, to the right). */
  readonly differs: { readonly kind: 'wall' | 'none' } | { readonly kind: 'shift'; readonly by: number } | null
  /** The same in words; empty where it does not differ. */
  readonly words: string
}

export type Side = ReadonlyMap<string, readonly Hung[]>

/** What hangs today, or would by a proposal; nothing is held against anything yet. */
export function sideOf(
  walls: readonly SequenceWall[],
  proposal: Proposal | null,
  heightOf: (entry: string) => number,
): Side {
  const so = new Map((proposal?.faces ?? []).map(({ face, works }) => [face, works]))
  return new Map(
    walls.map(wall => {
      const alike = { differs: null, words: '' }
      const today = wall.works.map(({ entry, x, y, stays }) => ({ entry, x, y, stays, ...alike }))
      if (proposal === null) return [wall.face, today]
      const come = (so.get(wall.face) ?? []).map(({ entry, x, y }) => {
        const middle = y ?? centreOnFace({ rule: 'face', y: null, x }, wall, heightOf(entry))
        return { entry, x, y: middle, stays: false, ...alike }
      })
      return [wall.face, [...today.filter(one => one.stays), ...come]]
    }),
  )
}

/** Less than this is the same place. */
const apart = 1

/** The first side with what differs from the second; `way` says whether works came from there or go there. */
export function held(one: Side, other: Side, way: 'from' | 'to', nameOf: (face: string) => string): Side {
  const there = new Map(
    [...other].flatMap(([face, works]) => works.map(work => [work.entry, { face, x: work.x }] as const)),
  )
  return new Map(
    [...one].map(([face, works]) => [
      face,
      works.map((work): Hung => {
        const place = there.get(work.entry)
        if (place === undefined)
          return {
            ...work,
            differs: { kind: 'none' },
            words: way === 'from' ? 'comes onto a wall' : 'comes off the wall',
          }
        if (place.face !== face)
          return {
            ...work,
            differs: { kind: 'wall' },
            words: way === 'from' ? `comes from ${nameOf(place.face)}` : `goes to ${nameOf(place.face)}`,
          }
        const by = way === 'from' ? work.x - place.x : place.x - work.x
        if (Math.abs(by) < apart) return work
        const words = `${desk.lengthWithUnit(Math.abs(by))} to the ${by > 0 ? 'right' : 'left'}`
        return { ...work, differs: { kind: 'shift', by }, words }
      }),
    ]),
  )
}
