/**
 * Tags for the backs of works, in hanging order, to be cut apart: the number large enough to be read across a room,
 * which work, which wall; each part of a set has its own. The rule it keeps: a tag says who it is for even when it is found on the floor.
 */
import type { CrewOrders } from '../contract/areas/crew-shape.ts'
import { ink } from './ink.ts'
import { firstLines, sizeWithin } from './lines.ts'
import { type Paper, papers, type TextMeasure } from './shapes.ts'
import { newSketch, type Sketch } from './sketch.ts'
import type { TablePages } from './table-pages.ts'

const margin = 10
/** A tag is at least as large; the rest of the paper is shared out. */
const least = { width: 85, height: 45 } as const

export function tagPages(
  { exhibitionTitle, hanging }: { readonly exhibitionTitle: string; readonly hanging: CrewOrders['hanging'] },
  paper: Paper,
  measure: TextMeasure,
): TablePages {
  const size = papers[paper]
  const columns = Math.floor((size.width - 2 * margin) / least.width)
  const rows = Math.floor((size.height - 2 * margin) / least.height)
  const width = (size.width - 2 * margin) / columns
  const height = (size.height - 2 * margin) / rows
  const onPage = columns * rows
  const sketches: Sketch[] = []
  const tags = hanging.flatMap(work =>
    work.parts.length === 0 ? [work] : work.parts.map(part => ({ ...work, ...part })),
  )
  for (let from = 0; from < tags.length; from += onPage) {
    const sketch = newSketch(measure)
    sketches.push(sketch)
    tags.slice(from, from + onPage).forEach((work, index) => {
      const x = margin + (index % columns) * width
      const y = margin + Math.floor(index / columns) * height
      const dash = [1.5, 1.5] as const
      sketch.add({ kind: 'rect', x, y, w: width, h: height, stroke: ink.ink3, width: 0.15, dash })
      drawTag(sketch, work, exhibitionTitle, x + 4, y + 4, width - 8, height - 8)
    })
  }
  return {
    pages: sketches.map(({ shapes }) => ({ ...size, shapes })),
    boxes: sketches.map(({ boxes }) => boxes),
  }
}

function drawTag(
  sketch: Sketch,
  work: CrewOrders['hanging'][number],
  exhibitionTitle: string,
  x: number,
  y: number,
  w: number,
  h: number,
): void {
  const { measure } = sketch
  const name = `tag ${work.tag}`
  const tag = String(work.tag)
  const tagWidth = sketch.text(name, x, y + 19, sizeWithin(tag, 'strong', 26, w * 0.45, measure), 'strong', tag)
  const room = w - tagWidth - 4
  const right = x + w
  const called = [work.running === '' ? '' : `No. ${work.running}`, work.number].filter(each => each !== '').join(' · ')
  sketch.text(`${name} called`, right, y + 5, sizeWithin(called, 'strong', 4, room, measure), 'strong', called, {
    anchor: 'end',
  })
  sketch.text(
    `${name} wall`,
    right,
    y + 10.5,
    sizeWithin(work.faceName, 'plain', 3.6, room, measure),
    'plain',
    work.faceName,
    { anchor: 'end' },
  )
  const lift = [
    work.people === 1 ? 'one person' : `${work.people} people`,
    ...(work.equipment === '' ? [] : [work.equipment]),
    ...(work.after.length === 0 ? [] : [`after ${work.after.join(', ')}`]),
  ].join(' · ')
  sketch.text(`${name} lift`, right, y + 15.5, sizeWithin(lift, 'plain', 3.2, room, measure), 'plain', lift, {
    anchor: 'end',
  })
  firstLines(work.title, 2, 'title', 4, w, measure).forEach((line, index) => {
    sketch.text(`${name} title ${index}`, x, y + 28 + index * 4.8, 4, 'title', line)
  })
  const foot = sizeWithin(exhibitionTitle, 'plain', 2.6, w, measure)
  sketch.text(`${name} show`, x, y + h, foot, 'plain', exhibitionTitle, { colour: ink.ink2 })
}
