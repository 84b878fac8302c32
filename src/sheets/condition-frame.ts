/** What stands above and below on every page of condition: the work, what the paper is, which page, who made it. */
import { ink } from './ink.ts'
import { sizeWithin } from './lines.ts'
import type { Sketch } from './sketch.ts'

/** mm. */
export const margin = 10
/** From the edge of the paper: under the head, above the foot, mm. */
export const headHeight = 26
export const footHeight = 15

export interface Frame {
  readonly work: { readonly workNumber: string; readonly workTitle: string }
  readonly about: string
  readonly page: string
  readonly made: string
  readonly hash: string
}

export function drawFrame(
  sketch: Sketch,
  { width, height }: { readonly width: number; readonly height: number },
  { work, about, page, made, hash }: Frame,
): void {
  const [left, right] = [margin, width - margin]
  const { measure } = sketch
  const taken = sketch.text('page', right, margin + 4.6, 3, 'plain', page, { anchor: 'end' })
  const room = right - left - taken - 6
  const number = sizeWithin(work.workNumber, 'figure', 6, room / 2, measure)
  const run = sketch.text('number', left, margin + 4.6, number, 'figure', work.workNumber)
  const begin = left + (run === 0 ? 0 : run + 4)
  const title = work.workTitle === '' ? 'Untitled' : work.workTitle
  sketch.text('title', begin, margin + 4.6, sizeWithin(title, 'title', 5, left + room - begin, measure), 'title', title)
  const said = sizeWithin(about, 'plain', 3.1, right - left, measure)
  sketch.text('about', left, margin + 10, said, 'plain', about, { colour: ink.ink2 })
  sketch.line(left, margin + 12, right, margin + 12, 0.4)
  const foot = height - margin + 1
  const end = sketch.text('hash', right, foot, 2.6, 'narrow', hash, { anchor: 'end', colour: ink.ink3 })
  const most = right - left - end - 6
  sketch.text('made', left, foot, sizeWithin(made, 'narrow', 2.6, most, measure), 'narrow', made, { colour: ink.ink3 })
}
