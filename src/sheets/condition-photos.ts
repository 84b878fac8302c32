/** The photographs of a report, six a page on A4, each with what it shows, of which findings, and when it was taken. */
import type { ReportPhoto } from '../contract/areas/condition-shape.ts'
import { fileSaid } from '../record/condition/photographs.ts'
import { takenSaid } from '../record/condition/say.ts'
import type { ReportQuestion } from './condition-question.ts'
import { type Block, type Line, wordLines } from './flow.ts'
import { ink } from './ink.ts'
import { margin } from './page-frame.ts'
import type { TextMeasure } from './shapes.ts'
import { newSketch, type Sketch } from './sketch.ts'

const across = 3
const gap = 6
/** Of a picture, mm. */
const pictureHeight = 56
/** Between two rows, mm. */
const rowGap = 4

interface Room {
  readonly width: number
  readonly top: number
  readonly bottom: number
}

/** One row after the other; words that are taller than a page go on beside nothing on the next. */
export function photoPages(question: ReportQuestion, room: Room, measure: TextMeasure): readonly Sketch[] {
  const { photos } = question.report
  const width = (room.width - (across - 1) * gap) / across
  const sketches: Sketch[] = []
  let y = room.bottom
  for (let first = 0; first < photos.length; first += across) {
    const cells = photos
      .slice(first, first + across)
      .map((photo, at) => cellOf(question, photo, first + at + 1, width, measure))
    const tall = Math.max(...cells.map(cell => cell.reduce((sum, { height }) => sum + height, 0)))
    const sketch = sketches.at(-1)
    if (sketch === undefined || y + tall > room.bottom) {
      sketches.push(newSketch(measure))
      y = room.top
    }
    const ends = cells.map((cell, at) => drawCell(sketches, cell, margin + at * (width + gap), y, room, measure))
    y = Math.max(...ends) + rowGap
  }
  const clock =
    'Times by the clock of the machine that printed this; a camera that says no zone was read by the one that took it in.'
  for (const sketch of sketches) {
    sketch.text('clock', margin, room.bottom + 2.8, 2.5, 'narrow', clock, { colour: ink.ink2 })
  }
  return sketches
}

/** Draws on the last page and, where the words do not end there, on new ones; answers where they end on the last. */
function drawCell(sketches: Sketch[], cell: Block, x: number, top: number, room: Room, measure: TextMeasure): number {
  let page = sketches.length - 1
  let y = top
  for (const line of cell) {
    if (y + line.height > room.bottom && y > room.top) {
      page += 1
      if (page === sketches.length) sketches.push(newSketch(measure))
      y = room.top
    }
    const sketch = sketches[page]
    if (sketch !== undefined) line.draw(sketch, x, y)
    y += line.height
  }
  return page === sketches.length - 1 ? y : room.bottom
}

function cellOf(
  { report, shown, when }: ReportQuestion,
  photo: ReportPhoto,
  number: number,
  width: number,
  measure: TextMeasure,
): Block {
  const name = `photograph ${number}`
  const picture: Line = {
    height: pictureHeight + 2,
    draw: (sketch, x, y) => {
      sketch.add({ kind: 'rect', x, y, w: width, h: pictureHeight, stroke: ink.line, width: 0.15 })
      if (shown(photo.hash)) sketch.add({ kind: 'image', x, y, w: width, h: pictureHeight, hash: photo.hash })
      else
        sketch.text(`${name} gone`, x + 3, y + 6, 2.9, 'plain', 'This picture cannot be shown here.', {
          colour: ink.ink2,
        })
    },
  }
  const of = report.findings
    .filter(({ id }) => photo.findings.includes(id))
    .map(finding => `${finding.number} ${finding.word}`.trim())
  const taken = takenSaid(photo, when)
  const by = photo.takenBy === '' ? '' : `; by ${photo.takenBy}`
  const quiet = { size: 2.7, colour: ink.ink2 }
  return [
    picture,
    ...wordLines(name, `${number}${photo.shows === '' ? '' : `  ${photo.shows}`}`, width, measure, {
      face: 'strong',
      size: 2.9,
    }),
    ...wordLines(`${name} of`, of.length === 0 ? '' : `of ${of.join(', ')}`, width, measure, { size: 2.9 }),
    ...wordLines(`${name} taken`, `${taken}${by}`, width, measure, quiet),
    ...wordLines(`${name} file`, fileSaid(photo), width, measure, quiet),
  ]
}
