/** A page being drawn: shapes in order, and the boxes of its texts by name, which a test finds ink in. */
import { ink } from './ink.ts'
import { type Anchor, type Box, type Face, type Shape, type TextMeasure, textBox } from './shapes.ts'

export interface NamedBox extends Box {
  readonly name: string
  readonly text: string
}

interface TextOptions {
  readonly anchor?: Anchor
  readonly colour?: string
  readonly upright?: boolean
}

export interface Sketch {
  readonly shapes: readonly Shape[]
  readonly boxes: readonly NamedBox[]
  readonly measure: TextMeasure
  readonly add: (...shapes: readonly Shape[]) => void
  readonly line: (x1: number, y1: number, x2: number, y2: number, width: number, colour?: string) => void
  /** Draws a text and answers how wide it runs. */
  readonly text: (
    name: string,
    x: number,
    y: number,
    size: number,
    face: Face,
    text: string,
    options?: TextOptions,
  ) => number
}

export function newSketch(measure: TextMeasure): Sketch {
  const shapes: Shape[] = []
  const boxes: NamedBox[] = []
  return {
    shapes,
    boxes,
    measure,
    add: (...more) => {
      shapes.push(...more)
    },
    line: (x1, y1, x2, y2, width, colour = ink.ink) => {
      shapes.push({ kind: 'line', x1, y1, x2, y2, width, colour })
    },
    text: (name, x, y, size, face, text, options = {}) => {
      if (text.trim() === '') return 0
      const shape = {
        kind: 'text',
        x,
        y,
        size,
        face,
        text,
        anchor: options.anchor ?? 'start',
        colour: options.colour ?? ink.ink,
        ...(options.upright === true ? { upright: true } : {}),
      } as const
      shapes.push(shape)
      boxes.push({ name, text, ...textBox(shape, measure) })
      return measure.width(face, size, text)
    },
  }
}

/** ● fits, ▲ to settle, ■ stop, as drawn shapes about a middle: no face need have them. */
export function sign(severity: 'fits' | 'settle' | 'stop', x: number, y: number, size: number): Shape {
  const r = size / 2
  if (severity === 'fits') {
    return {
      kind: 'path',
      d: `M ${x - r} ${y} A ${r} ${r} 0 1 0 ${x + r} ${y} A ${r} ${r} 0 1 0 ${x - r} ${y} Z`,
      fill: ink.fits,
    }
  }
  if (severity === 'settle') {
    return { kind: 'path', d: `M ${x - r} ${y + r} L ${x + r} ${y + r} L ${x} ${y - r} Z`, fill: ink.settle }
  }
  return { kind: 'rect', x: x - r, y: y - r, w: size, h: size, fill: ink.ink }
}
