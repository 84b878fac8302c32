/**
 * A condition report on paper: the work as it is drawn on, to scale, with what was found beside it; then the rest of
 * the findings and the signatures, then the photographs. The work's number and the page of how many stand on each.
 */
import { titles } from '../record/condition/say.ts'
import type { Side } from '../record/condition/shape.ts'
import { sideSeen } from '../record/condition/sides.ts'
import { factBlocks, findingBlocks, signatureBlocks } from './condition-blocks.ts'
import { drawFace, faceScale, scaleSaid } from './condition-face.ts'
import { photoPages } from './condition-photos.ts'
import { drawnSide, hashShort, type ReportQuestion, sidesOf } from './condition-question.ts'
import { type Column, flow } from './flow.ts'
import { headed, heading } from './flow-words.ts'
import { ink } from './ink.ts'
import { sizeWithin } from './lines.ts'
import { drawFrame, footHeight, headHeight, margin } from './page-frame.ts'
import { type Page, papers, type TextMeasure } from './shapes.ts'
import { type NamedBox, newSketch, type Sketch } from './sketch.ts'

export interface ConditionPages {
  readonly pages: readonly Page[]
  readonly boxes: readonly (readonly NamedBox[])[]
}

/** Between two columns, mm. */
const gap = 6

export function conditionPaper(question: ReportQuestion, measure: TextMeasure): ConditionPages {
  const { report } = question
  const size = papers[question.paper]
  const width = (size.width - 2 * margin - 2 * gap) / 3
  const bottom = size.height - footHeight
  const column = (at: number, top = headHeight): Column => ({ x: margin + at * (width + gap), top, bottom })
  const drawn = sidesOf(report)
  const columnsOf = (page: number) => (page < drawn.length ? [column(2)] : [column(0), column(1), column(2)])
  const found = findingBlocks(question, width, measure)
  const count = found.length === 1 ? 'One finding' : `${found.length} findings`
  const placed = flow(
    [
      ...factBlocks(question, width, measure),
      ...headed(heading('found', found.length === 0 ? 'No finding' : count, width, measure), found),
      ...headed(heading('signed', 'Signatures', width, measure), signatureBlocks(question, width, measure)),
    ],
    columnsOf,
  )
  const sketches = Array.from({ length: Math.max(drawn.length, placed.length) }, (_, page) => {
    const sketch = newSketch(measure)
    const side = drawn[page]
    if (side !== undefined) drawWork(sketch, question, side, { x: margin, w: 2 * width + gap, bottom })
    for (const { line, x, y } of placed[page] ?? []) line.draw(sketch, x, y)
    return sketch
  })
  sketches.push(...photoPages(question, { width: size.width - 2 * margin, top: headHeight, bottom }, measure))
  const standing =
    report.completeAt === null ? 'draft, not complete' : `complete since ${question.when(report.completeAt)}`
  const about = `${titles[report.kind]}, examined on ${question.when(report.examinedAt)}; ${standing}`
  for (const [page, sketch] of sketches.entries()) {
    drawFrame(sketch, size, {
      number: report.workNumber,
      named: { title: report.workTitle },
      about,
      page: `page ${page + 1} of ${sketches.length}`,
      made: question.made,
      hash: `contents ${hashShort(report.content)}`,
    })
  }
  return {
    pages: sketches.map(({ shapes }) => ({ width: size.width, height: size.height, shapes })),
    boxes: sketches.map(({ boxes }) => boxes),
  }
}

function drawWork(
  sketch: Sketch,
  { report, units, shown }: ReportQuestion,
  side: Side,
  { x, w, bottom }: { readonly x: number; readonly w: number; readonly bottom: number },
): void {
  const face = drawnSide(report, side, shown)
  const room = { x, y: headHeight - 1, w, h: bottom - headHeight - 5 }
  const scale = faceScale(face, room)
  const drawn = drawFace(sketch, face, room, scale, units.unit)
  const unit = { mm: 'Millimetres', cm: 'Centimetres', in: 'Inches' }[units.unit]
  const bare =
    face.picture !== null
      ? ''
      : face.behind !== null
        ? ' The back as it is measured now.'
        : side === 'front' || side === 'back'
          ? ' There is no picture of it.'
          : ''
  const seen = sideSeen[side] === '' ? '' : `${sideSeen[side]}. `
  const words = `${seen}${unit} from the left and the top edge, drawn ${scaleSaid(scale)}. Bold: new. Broken line: old or new unsure.${bare}`
  const size = sizeWithin(words, 'plain', 2.7, w, sketch.measure)
  sketch.text('scale', x, drawn.y + drawn.h + 6, size, 'plain', words, { colour: ink.ink2 })
}
