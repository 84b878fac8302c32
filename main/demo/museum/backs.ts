/**
 * What was measured on the backs of the demo's works, in every hanging method there is. The figures are plausible for the
 * size of the work and whole millimetres, as a tape gives them.
 */
import type { Input } from '../../../src/contract/contract.ts'

export type Back = Omit<Input<'work.setBack'>, 'work'>

/** The ways a work of the demo hangs; `wire, one finger` and so on say how its wire was measured. */
export const ways = [
  'wire, its length',
  'wire, one finger',
  'wire, two fingers',
  'd-rings on hooks',
  'd-rings on screws',
  'stretcher bar',
  'cleat',
] as const
export type Way = (typeof ways)[number]

/** The back of a framed work of this size. `seenFrom` the back turns left and right round. */
export function backOf(way: Way, height: number, width: number, seenFrom: 'front' | 'back' = 'back'): Back {
  switch (way) {
    case 'd-rings on hooks':
    case 'd-rings on screws':
      return { method: 'd-rings', seenFrom, data: rings(height, width) }
    case 'stretcher bar':
      return { method: 'stretcher-bar', seenFrom, data: bar(width) }
    case 'cleat':
      return { method: 'cleat', seenFrom, data: rail(height, width) }
    default:
      return { method: 'wire', seenFrom, data: wired(way, height, width) }
  }
}

/** Rings about a fifth down, a few centimetres in; the right one a millimetre off, as rings are. */
function rings(height: number, width: number) {
  const drop = Math.max(70, Math.round(height * 0.16))
  const inset = Math.max(28, Math.round(width * 0.07))
  return {
    left: { drop, inset },
    right: { drop: drop + 1, inset: inset + 2 },
    spacing: width - inset - (inset + 2),
  }
}

function wired(way: Way, height: number, width: number) {
  const inset = Math.max(26, Math.round(width * 0.1))
  const apart = width - 2 * inset
  const hooks = Math.round(apart / 20) * 10
  // Legs at about 35 degrees on hooks half the rings' distance apart.
  const rise = Math.round(0.7 * ((apart - hooks) / 2))
  const length = hooks + 2 * Math.hypot(rise, (apart - hooks) / 2)
  const oneFinger = Math.sqrt((length / 2) ** 2 - (apart / 2) ** 2)
  const drop = Math.round(Math.max(height * 0.2, oneFinger + 30, rise + 62))
  const sides = { left: { drop, inset }, right: { drop, inset }, spacing: apart }
  if (way === 'wire, its length') return { ...sides, wire: { by: 'length', length: Math.round(length) } }
  if (way === 'wire, one finger')
    return { ...sides, wire: { by: 'drop', drop: Math.round(drop - oneFinger), apart: 0 } }
  return { ...sides, wire: { by: 'drop', drop: drop - rise, apart: hooks } }
}

/** A stretcher with one upright brace in the middle and keys in the corners. */
function bar(width: number) {
  const brace = Math.round(width / 2)
  return {
    left: { bar: 46 },
    right: { bar: 46 },
    ranges: [
      { from: 0, to: 60 },
      { from: brace - 25, to: brace + 25 },
      { from: width - 60, to: width },
    ],
  }
}

function rail(height: number, width: number) {
  const inset = Math.round(width * 0.12)
  const length = width - 2 * inset
  return {
    drop: Math.max(40, Math.round(height * 0.05)),
    length,
    left: { inset },
    right: { inset },
    wallLength: length - 20,
    depth: 18,
  }
}
