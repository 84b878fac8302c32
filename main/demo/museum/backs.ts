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
  'keyhole plates',
  'strap plates on rings',
  'security hangers',
  'transit plates',
  'rail, cables',
  'rail, chain',
  'sheet on magnets',
  'shelf',
  'plinth',
  'case',
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
    case 'keyhole plates':
      return { method: 'keyhole-plates', seenFrom, data: keyholes(height, width) }
    case 'strap plates on rings':
      return { method: 'strap-plates', seenFrom, data: straps(height, width) }
    case 'security hangers':
      return { method: 'security-hangers', seenFrom, data: secured(height, width) }
    case 'transit plates':
      return { method: 'transit-plates', seenFrom, data: turnedOut(height, width) }
    case 'rail, cables':
      return { method: 'picture-rail', seenFrom, data: railed(height, width, { with: 'cable', hook: 18 }) }
    case 'rail, chain': {
      const by = { with: 'chain', hook: 18, pitch: 24, adjuster: 'both', reach: 30 }
      return { method: 'picture-rail', seenFrom, data: railed(height, width, by) }
    }
    case 'sheet on magnets':
      return { method: 'sheet', seenFrom, data: sheet }
    case 'shelf':
      return { method: 'shelf', seenFrom, data: shelfFor(height, width) }
    case 'plinth':
      return { method: 'plinth', seenFrom, data: plinthFor(height, width) }
    case 'case':
      return { method: 'case', seenFrom, data: caseFor(height, width) }
    default:
      return { method: 'wire', seenFrom, data: wired(way, height, width) }
  }
}

/** From the floor up to where an object of this size stands; null for what hangs. */
export function baseHeight(way: Way, height: number, width: number): number | null {
  if (way === 'plinth') return plinthFor(height, width).base.height
  return way === 'case' ? caseFor(height, width).base.height : null
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

/** Plates let into the back, their slots for a 5 mm shank with a 9.5 mm head. */
function keyholes(height: number, width: number) {
  return { ...rings(height, width), slot: 6, entry: 11, slide: 12, thickness: 1.5, recess: 12 }
}

/** Rings carry; two plates low at the sides keep, a block behind each. */
function straps(height: number, width: number) {
  const lower = { out: 16, up: Math.round(height * 0.18) }
  return { carry: { by: 'rings', ...rings(height, width) }, left: { lower }, right: { lower }, block: 12, thickness: 2 }
}

function secured(height: number, width: number) {
  return {
    ...rings(height, width),
    lock: { up: 26, left: Math.round(width / 2) },
    depth: 12,
    head: 'upright',
    tool: 'hex-key',
    toolFrom: 'below',
    toolLength: 260,
  }
}

/** The version for hanging, the lower plates as high up as the upper ones are down. */
function turnedOut(height: number, width: number) {
  const drop = Math.round(height * 0.2)
  const one = { drop, out: 18, lower: { out: 18, up: drop } }
  return { version: 'hanging', left: one, right: one, spacing: width + 36, thickness: 3 }
}

function railed(height: number, width: number, by: Back['data'][string]) {
  return { ...rings(height, width), way: 'upright', by }
}

/** Stout poster paper, its margins free to touch; the pull by a spring balance through the sheet. */
const sheet: Back['data'] = { hold: 'magnets', inset: 22, paper: 240, pull: 9, touch: 'margins' }

/** A board longer than its object by a hand on either side. */
function shelfFor(height: number, width: number) {
  const long = width + 180
  const inset = Math.round(long / 5)
  return {
    width: long,
    depth: 280,
    thickness: 20,
    mass: 4.2,
    left: { inset },
    right: { inset },
    spacing: long - 2 * inset,
    screw: 34,
    apart: 140,
    off: 20,
    massUp: Math.round(height * 0.4),
  }
}

function plinthFor(height: number, width: number) {
  const side = width + 120
  return {
    base: { height: 940, width: side, depth: side, mass: 26 },
    massUp: Math.round(height * 0.45),
    ballast: 20,
    floor: 400,
    off: 120,
  }
}

function caseFor(height: number, width: number) {
  return {
    base: { height: 900, width: width + 240, depth: 620, mass: 48 },
    massUp: Math.round(height / 2),
    floor: 400,
    off: 150,
    bonnet: { height: height + 140, width: width + 200, depth: 540, mass: 14 },
  }
}
