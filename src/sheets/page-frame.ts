/** What stands above and below on every page of a paper about one thing: its number and name, what it is, which page, who made it. */
import { ink } from './ink.ts'
import { sizeWithin } from './lines.ts'
import type { Sketch } from './sketch.ts'

/** mm. */
export const margin = 10
/** From the edge of the paper: under the head, above the foot, mm. */
export const headHeight = 26
export const footHeight = 15

export interface Frame {
  readonly number: string
  /** A work's title, set in italics; or the name of another thing. */
  readonly named: { readonly title: string } | { readonly name: string }
  readonly about: string
  readonly page: string
  readonly made: string
  readonly hash: string
}

export function drawFrame(
  sketch: Sketch,
  { width, height }: { readonly width: number; readonly height: number },
  { number, named, about, page, made, hash }: Frame,
): void {
  const [left, right] = [margin, width - margin]
  const { measure } = sketch
  const taken = sketch.text('page', right, margin + 4.6, 3, 'plain', page, { anchor: 'end' })
  const room = right - left - taken - 6
  const size = sizeWithin(number, 'figure', 6, room / 2, measure)
  const run = sketch.text('number', left, margin + 4.6, size, 'figure', number)
  const begin = left + (run === 0 ? 0 : run + 4)
  const [face, name] =
    'title' in named
      ? (['title', named.title === '' ? 'Untitled' : named.title] as const)
      : (['strong', named.name] as const)
  sketch.text('title', begin, margin + 4.6, sizeWithin(name, face, 5, left + room - begin, measure), face, name)
  const said = sizeWithin(about, 'plain', 3.1, right - left, measure)
  sketch.text('about', left, margin + 10, said, 'plain', about, { colour: ink.ink2 })
  sketch.line(left, margin + 12, right, margin + 12, 0.4)
  const foot = height - margin + 1
  const end = sketch.text('hash', right, foot, 2.6, 'narrow', hash, { anchor: 'end', colour: ink.ink3 })
  const most = right - left - end - 6
  sketch.text('made', left, foot, sizeWithin(made, 'narrow', 2.6, most, measure), 'narrow', made, { colour: ink.ink3 })
}
