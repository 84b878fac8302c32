/**
 * Two reports of a work held against one another on paper: both as they are drawn, at one scale, then every finding of
 * either in one line of a table: same, grown, new or not seen, with the figures of both.
 */
import type { ConditionFindingTold, ConditionLine, Report } from '../contract/areas/condition-shape.ts'
import type { Output } from '../contract/contract.ts'
import { sizeSaid, thirdSaid, titles } from '../record/condition/say.ts'
import { type Side, sides } from '../record/condition/shape.ts'
import { sideSeen, sideTitles } from '../record/condition/sides.ts'
import { type Cell, EMPTY, numberCell, type TableSheet, textCell } from './columns.ts'
import { drawFace, faceScale, scaleSaid } from './condition-face.ts'
import type { ConditionPages } from './condition-paper.ts'
import { drawnSide, hashShort, lengthIn, type ReportQuestion, sidesOf } from './condition-question.ts'
import { number, text } from './crew-columns.ts'
import { ink } from './ink.ts'
import { sizeWithin } from './lines.ts'
import { drawFrame, footHeight, headHeight, margin } from './page-frame.ts'
import { papers, type TextMeasure } from './shapes.ts'
import { newSketch } from './sketch.ts'
import { tablePages } from './table-pages.ts'

export interface ComparedQuestion extends Pick<ReportQuestion, 'shown' | 'units' | 'paper' | 'when' | 'made'> {
  readonly before: Report
  readonly after: Report
  readonly compared: Output<'condition.compare'>
}

/** Between the two faces, mm. */
const gap = 8

const called = ({ workNumber, workTitle }: Report) =>
  [workNumber, workTitle === '' ? 'Untitled' : workTitle].filter(part => part !== '').join(' ')

export function comparedPaper(question: ComparedQuestion, measure: TextMeasure): ConditionPages {
  const { before, after, paper, when, made } = question
  const size = papers[paper]
  const drawn = sides.filter(side => [before, after].some(report => sidesOf(report).includes(side)))
  const table = tablePages([comparedTable(question)], paper, measure, {
    flowing: false,
    running: '',
    before: drawn.length,
  })
  const sketches = drawn.map((side, at) => {
    const sketch = drawBoth(question, side, measure)
    drawFrame(sketch, size, {
      number: after.workNumber,
      named: { title: after.workTitle },
      about: `${titles[before.kind]} of ${when(before.examinedAt)} against ${titles[after.kind].toLowerCase()} of ${when(after.examinedAt)}${side === 'front' ? '' : `: ${sideTitles[side]}`}`,
      page: `sheet ${at + 1} of ${drawn.length + table.pages.length}`,
      made,
      hash: `contents ${hashShort(before.content)} against ${hashShort(after.content)}`,
    })
    return sketch
  })
  return {
    pages: [...sketches.map(({ shapes }) => ({ ...size, shapes })), ...table.pages],
    boxes: [...sketches.map(({ boxes }) => boxes), ...table.boxes],
  }
}

function drawBoth({ before, after, paper, shown, units, when }: ComparedQuestion, side: Side, measure: TextMeasure) {
  const size = papers[paper]
  const sketch = newSketch(measure)
  const w = (size.width - 2 * margin - gap) / 2
  const room = { w, h: size.height - headHeight - footHeight - 10 }
  // One scale for both, so that an eye can go from one to the other.
  const faces = [before, after].map(report => drawnSide(report, side, shown))
  const scale = Math.max(...faces.map(face => faceScale(face, room)))
  let under = 0
  for (const [at, report] of [before, after].entries()) {
    const x = margin + at * (w + gap)
    const face = drawnSide(report, side, shown)
    const standing = report.completeAt === null ? 'draft, not complete' : 'complete'
    const findings = face.findings.length === 1 ? 'one finding' : `${face.findings.length} findings`
    sketch.text(`side ${at}`, x, headHeight + 1, 3.3, 'strong', titles[report.kind])
    const words = `${when(report.examinedAt)}, ${report.examiner}; ${findings}; ${standing}`
    const small = sizeWithin(words, 'plain', 2.9, w, measure)
    sketch.text(`side ${at} words`, x, headHeight + 5.4, small, 'plain', words, { colour: ink.ink2 })
    const { y, h } = drawFace(sketch, face, { x, y: headHeight + 6, ...room }, scale, units.unit)
    under = Math.max(under, y + h + 6)
  }
  const seen = sideSeen[side] === '' ? '' : `${sideSeen[side]}. `
  const words = `${seen}Both drawn ${scaleSaid(scale)}. Bold: new. Broken line: old or new unsure.`
  sketch.text('scale', margin, under, 2.7, 'plain', words, { colour: ink.ink2 })
  return sketch
}

/** Every finding of either report in one line. */
export function comparedTable({ before, after, compared, units, when, made }: ComparedQuestion): TableSheet {
  const length = lengthIn(units)
  const of = (report: Report, id: string | null) => report.findings.find(each => each.id === id) ?? null
  const size = (one: ConditionFindingTold | null) =>
    one === null ? EMPTY : textCell(sizeSaid(one, length) || 'no size taken')
  const row = (line: ConditionLine): Cell[] => {
    const [was, now] = [of(before, line.before), of(after, line.after)]
    const one = now ?? was
    return [
      numberCell(was?.number ?? null),
      numberCell(now?.number ?? null),
      textCell(line.outcome),
      textCell(one?.word ?? ''),
      size(was),
      size(now),
      textCell(one === null ? '' : thirdSaid(one)),
      textCell(`${line.text}${line.by === 'said' ? ' Said to be the same.' : ''}`),
    ]
  }
  const { same, grown, new: fresh, notSeen } = compared.counts
  const rule = `Two findings are one where somebody said so, or where they have the same word and lie within ${length(compared.near)} of one another; larger by more than ${length(compared.grown)} is grown.`
  return {
    name: 'Compared',
    title: called(after),
    lines: [
      `${titles[before.kind]} of ${when(before.examinedAt)} against ${titles[after.kind].toLowerCase()} of ${when(after.examinedAt)}`,
      `${same} same, ${grown} grown, ${fresh} new, ${notSeen} not seen. ${rule}`,
      made,
    ],
    columns: [
      number('before', 'Before', 7),
      number('after', 'Now', 6),
      text('outcome', 'How it is', 10),
      text('word', 'Finding', 16),
      text('sizeBefore', 'Size before', 20),
      text('sizeAfter', 'Size now', 20),
      text('where', 'Where', 13),
      text('says', 'What is told', 42),
    ],
    rows: compared.lines.map(row),
  }
}
