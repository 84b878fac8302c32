/**
 * The shapes that a drawing is made of, in millimetres of the paper, x to the right and y down from the top left
 * corner. They know no host: the same shapes are written as PDF and drawn on the screen as SVG. Sizes of text are the
 * em in millimetres, its y is the baseline.
 */

/** `figure`: narrow and strong, for numbers; `narrow`: for working; `title`: italics, for titles of works. */
export type Face = 'plain' | 'strong' | 'figure' | 'narrow' | 'title'
export type Anchor = 'start' | 'middle' | 'end'

export interface LineShape {
  readonly kind: 'line'
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
  readonly width: number
  readonly colour: string
  readonly dash?: readonly [number, number]
}

export interface RectShape {
  readonly kind: 'rect'
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
  readonly stroke?: string
  readonly fill?: string
  readonly width?: number
  readonly dash?: readonly [number, number]
}

export interface PathShape {
  readonly kind: 'path'
  /** As in SVG. */
  readonly d: string
  readonly stroke?: string
  readonly fill?: string
  readonly width?: number
  readonly dash?: readonly [number, number]
}

/** A picture of the catalogue by its hash, fitted into the box. */
export interface ImageShape {
  readonly kind: 'image'
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
  readonly hash: string
}

export interface TextShape {
  readonly kind: 'text'
  readonly x: number
  readonly y: number
  readonly size: number
  readonly face: Face
  readonly text: string
  readonly anchor: Anchor
  readonly colour: string
  /** Turned a quarter about its point, to be read from the right. */
  readonly upright?: boolean
}

export type Shape = LineShape | RectShape | PathShape | ImageShape | TextShape

/** What layout asks of the faces. */
export interface TextMeasure {
  /** Millimetres that a text of this size runs. */
  readonly width: (face: Face, size: number, text: string) => number
  /** The characters that no face of the stack has. */
  readonly lacks: (face: Face, text: string) => readonly string[]
}

/** A character that no face has takes this much of the size, drawn as a box with its code point. */
export const missingWidth = 0.9

export interface Box {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** Where the ink of a text may be: from above its tallest letters to below its tails. */
export function textBox(shape: TextShape, measure: TextMeasure): Box {
  const run = measure.width(shape.face, shape.size, shape.text)
  const back = { start: 0, middle: run / 2, end: run }[shape.anchor]
  const up = shape.size * 0.74
  const down = shape.size * 0.22
  if (shape.upright === true) return { x: shape.x - up, y: shape.y - run + back, w: up + down, h: run }
  return { x: shape.x - back, y: shape.y - up, w: run, h: up + down }
}

export function boxesMeet(a: Box, b: Box): boolean {
  return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h
}

/** One side of paper. */
export interface Page {
  readonly width: number
  readonly height: number
  readonly shapes: readonly Shape[]
}

export type Paper = 'A4' | 'A3' | 'Letter' | 'Tabloid'

/** Landscape sizes: ISO 216 in millimetres; Letter 11 × 8 1/2 in and Tabloid 17 × 11 in (ANSI/ASME Y14.1 A and B). */
export const papers: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  A4: { width: 297, height: 210 },
  A3: { width: 420, height: 297 },
  Letter: { width: 279.4, height: 215.9 },
  Tabloid: { width: 431.8, height: 279.4 },
}
