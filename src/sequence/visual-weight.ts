/**
 * How heavy a work looks on its wall: its area, more where it differs from the wall in lightness and colour and where
 * it is restless, and a hand's factor over all. `m = hand × Σ area × (1 + a dL/100 + b dC/100 + c detail)`, summed over
 * the cells of its picture and the frame round it. What is compared is common practice; the figures a, b, c are house
 * rules and nobody's measurement. Compared cell by cell, since a picture half black and half white is no grey one.
 */
import type { Lab } from './colour.ts'
import { colourApart, lightnessApart } from './colour.ts'
import { cellsAcross, type Tone } from './tones.ts'

/** How much a difference counts against area. 0: not at all. */
export interface WeightRules {
  readonly lightness: number
  readonly colour: number
  readonly detail: number
}

export interface Weighed {
  /** mm. */
  readonly width: number
  readonly height: number
  /** Frame seen round the picture, mm; 0 where the picture fills it. */
  readonly band: number
  /** Cells of its picture; null where there is none, or none that can be read. */
  readonly tones: readonly Tone[] | null
  /** Colour of its frame; null where nobody has said. */
  readonly frame: Lab | null
  /** A hand's factor; 1 where nobody has said. */
  readonly hand: number
}

export interface VisualWeight {
  /** m². */
  readonly area: number
  /** What lightness, colour and detail each add to every square metre, as a share of it. */
  readonly lightness: number
  readonly colour: number
  readonly detail: number
  readonly hand: number
  /** Square metres that it looks like: `area × (1 + lightness + colour + detail) × hand`. */
  readonly weight: number
  /** Where its weight sits from its own middle, mm, right and up. */
  readonly right: number
  readonly up: number
  /** Whether a picture was weighed, or its area alone. */
  readonly from: 'picture' | 'area'
}

/** Weight of one piece of a work: a rectangle from its own middle, mm, y up. */
export interface Piece {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  readonly lightness: number
  readonly colour: number
  readonly detail: number
}

/** What a square metre of such a tone adds on such a wall, as a share of it. */
function adds(tone: Lab & { readonly detail?: number }, wall: Lab, rules: WeightRules) {
  return {
    lightness: (rules.lightness * lightnessApart(tone, wall)) / 100,
    colour: (rules.colour * colourApart(tone, wall)) / 100,
    detail: rules.detail * (tone.detail ?? 0),
  }
}

const nothing = { lightness: 0, colour: 0, detail: 0 }

/** The work in pieces: four of its frame, and the cells of its picture, or one where it has none. */
export function piecesOf(work: Weighed, wall: Lab, rules: WeightRules): readonly Piece[] {
  const { width, height, tones } = work
  const band = Math.min(work.band, width / 2, height / 2)
  const inner = { width: width - 2 * band, height: height - 2 * band }
  const pieces: Piece[] = []
  if (band > 0) {
    const frame = work.frame === null ? nothing : adds(work.frame, wall, rules)
    const level = { x: 0, width, height: band, ...frame }
    const upright = { y: 0, width: band, height: inner.height, ...frame }
    pieces.push({ ...level, y: (height - band) / 2 }, { ...level, y: (band - height) / 2 })
    pieces.push({ ...upright, x: (band - width) / 2 }, { ...upright, x: (width - band) / 2 })
  }
  if (tones === null) return [...pieces, { x: 0, y: 0, ...inner, ...nothing }]
  const cell = { width: inner.width / cellsAcross, height: inner.height / cellsAcross }
  tones.forEach((tone, index) => {
    const across = (index % cellsAcross) + 0.5
    const down = Math.floor(index / cellsAcross) + 0.5
    const x = across * cell.width - inner.width / 2
    const y = inner.height / 2 - down * cell.height
    pieces.push({ x, y, ...cell, ...adds(tone, wall, rules) })
  })
  return pieces
}

/** Weight of a work on a wall of this colour. Lengths mm, weights m². */
export function visualWeight(work: Weighed, wall: Lab, rules: WeightRules): VisualWeight {
  const sum = { area: 0, lightness: 0, colour: 0, detail: 0, weight: 0, right: 0, up: 0 }
  for (const piece of piecesOf(work, wall, rules)) {
    const area = (piece.width * piece.height) / 1e6
    const weight = area * (1 + piece.lightness + piece.colour + piece.detail)
    sum.area += area
    sum.lightness += area * piece.lightness
    sum.colour += area * piece.colour
    sum.detail += area * piece.detail
    sum.weight += weight
    sum.right += weight * piece.x
    sum.up += weight * piece.y
  }
  const share = (of: number) => (sum.area > 0 ? of / sum.area : 0)
  const from = sum.weight > 0 ? sum.weight : 1
  return {
    area: sum.area,
    lightness: share(sum.lightness),
    colour: share(sum.colour),
    detail: share(sum.detail),
    hand: work.hand,
    weight: sum.weight * work.hand,
    right: sum.right / from,
    up: sum.up / from,
    from: work.tones === null ? 'area' : 'picture',
  }
}

/** Several works laid as one, each from the middle of the whole, mm. A hand's factor on the whole goes over theirs. */
export function weightOfSet(
  parts: readonly { readonly x: number; readonly y: number; readonly own: VisualWeight }[],
  hand: number,
): VisualWeight {
  const total = (of: (part: (typeof parts)[number]) => number) => parts.reduce((sum, part) => sum + of(part), 0)
  const area = total(part => part.own.area)
  const weight = total(part => part.own.weight)
  const share = (of: (own: VisualWeight) => number) =>
    area > 0 ? total(part => part.own.area * of(part.own)) / area : 0
  const from = weight > 0 ? weight : 1
  const plain = total(part => part.own.weight / part.own.hand)
  return {
    area,
    lightness: share(own => own.lightness),
    colour: share(own => own.colour),
    detail: share(own => own.detail),
    hand: plain > 0 ? (hand * weight) / plain : hand,
    weight: weight * hand,
    right: total(part => part.own.weight * (part.x + part.own.right)) / from,
    up: total(part => part.own.weight * (part.y + part.own.up)) / from,
    from: parts.some(part => part.own.from === 'picture') ? 'picture' : 'area',
  }
}
