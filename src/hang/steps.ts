/**
 * Which lines of working a work's marks have: its height by its rule and from below, from the line, the hole, the floor
 * where it slopes, and along the wall. Exact figures; `working.ts` writes them out.
 */
import type { Point } from '../geometry/rect.ts'
import type { HeightRuleName } from './height.ts'
import type { Mark, MarksAnswer, MarksQuestion } from './marks-shape.ts'
import type { MethodAnswer, PlainStep, WorkFacts } from './method.ts'
import { sumOf } from './working.ts'

export function stepsOf(
  question: MarksQuestion,
  answer: MethodAnswer,
  marks: readonly Mark[],
  edges: MarksAnswer['edges'],
  datum: number,
): readonly PlainStep[] {
  const { work, centre } = question
  const lines: PlainStep[] = [...answer.steps]
  const even = marks.every(mark => Math.abs(mark.drop - (marks[0]?.drop ?? 0)) < 1e-9)
  const sloping = marks.some(mark => Math.abs(mark.floorHere) > 1e-9)
  const named = (key: string, mark: Mark) => (even ? key : `${key}-${mark.side}`)
  const of = (mark: Mark) => (even || mark.side === 'middle' ? '' : `, ${mark.side}`)
  for (const mark of even ? marks.slice(0, 1) : marks) {
    const rule = question.height?.rule ?? 'hand'
    const terms = byRule(rule, question.height?.eyeFraction ?? 0.5, centre, work, mark.drop)
    lines.push({ key: named('bearing', mark), label: `bears at${of(mark)}`, terms, value: sumOf(terms) })
    lines.push({
      key: named('from-below', mark),
      label: `from below${of(mark)}`,
      terms: [
        { op: '+', mm: edges.bottom },
        { op: '+', mm: work.height - mark.drop },
      ],
      value: edges.bottom + (work.height - mark.drop),
    })
    lines.push(sum(named('from-line', mark), `from the line${of(mark)}`, mark.bearing.y, -datum))
  }
  lines.push(...holes(marks, even))
  if (sloping) {
    for (const mark of marks) {
      const at = mark.side === 'middle' ? 'the' : `the ${mark.side}`
      lines.push(sum(`floor-${mark.side}`, `above the floor under ${at} mark`, mark.bearing.y, -mark.floorHere))
    }
  }
  lines.push({
    key: 'left-edge',
    label: 'left edge',
    terms: [
      { op: '+', mm: centre.x },
      { op: '−', mm: work.width, over: 2 },
    ],
    value: edges.left,
  })
  const first = marks[0]
  for (const mark of marks) {
    if (first === undefined || mark === first) {
      lines.push(
        sum(`x-${mark.side}`, mark.side === 'middle' ? 'mark' : `${mark.side} mark`, edges.left, mark.fromLeft),
      )
    } else {
      lines.push(sum(`x-${mark.side}`, `${mark.side} mark`, first.bearing.x, mark.fromLeft - first.fromLeft))
    }
  }
  return lines
}

function sum(key: string, label: string, a: number, b: number): PlainStep {
  return {
    key,
    label,
    terms: [
      { op: '+', mm: a },
      { op: b < 0 ? '−' : '+', mm: Math.abs(b) },
    ],
    value: a + b,
  }
}

function byRule(rule: HeightRuleName, f: number, centre: Point, work: WorkFacts, drop: number): PlainStep['terms'] {
  const { height } = work
  const less = { op: '−', mm: drop } as const
  switch (rule) {
    case 'top':
      return [{ op: '+', mm: centre.y + height / 2 }, less]
    case 'bottom':
      return [{ op: '+', mm: centre.y - height / 2 }, { op: '+', mm: height }, less]
    case 'eye':
      return [{ op: '+', mm: centre.y - (f - 0.5) * height }, { op: '+', mm: height, times: f }, less]
    default:
      return [{ op: '+', mm: centre.y }, { op: '+', mm: height, over: 2 }, less]
  }
}

/** From bearing point to hole: once where all marks agree, else for each side with its own fixing. */
function holes(marks: readonly Mark[], even: boolean): readonly PlainStep[] {
  const alike = even && marks.every(mark => mark.fixing.holeOffset === marks[0]?.fixing.holeOffset)
  return (alike ? marks.slice(0, 1) : marks)
    .filter(mark => mark.fixing.holeOffset !== 0)
    .map(mark => {
      const { holeOffset, kind } = mark.fixing
      const what = kind === 'cleat' ? 'edge of the wall part' : 'hole'
      const side = alike || mark.side === 'middle' ? '' : `, ${mark.side}`
      const label = `${what} ${holeOffset > 0 ? 'above' : 'below'} the bearing point${side}`
      return sum(alike ? 'hole' : `hole-${mark.side}`, label, mark.bearing.y, holeOffset)
    })
}
