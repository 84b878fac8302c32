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
  const carrying = marks.filter(mark => mark.name === null)
  const even = carrying.every(mark => Math.abs(mark.drop - (carrying[0]?.drop ?? 0)) < 1e-9)
  const lineBy = (mark: Mark) => (question.wall.ramp === true ? datum + mark.floorHere : datum)
  const sloping = marks.some(mark => Math.abs(mark.floorHere) > 1e-9)
  const named = (key: string, mark: Mark) => (even ? key : `${key}-${mark.side}`)
  const of = (mark: Mark) => (even || mark.side === 'middle' ? '' : `, ${mark.side}`)
  for (const mark of even ? carrying.slice(0, 1) : carrying) {
    const rule = question.height?.rule ?? 'hand'
    const terms = byRule(rule, question.height?.eyeFraction ?? 0.5, centre, work, mark.drop)
    lines.push({ key: named('bearing', mark), label: `bears at${of(mark)}`, terms, value: sumOf(terms) })
    lines.push(sum(named('from-below', mark), `from below${of(mark)}`, edges.bottom, work.height - mark.drop))
    lines.push(sum(named('from-line', mark), `from the line${of(mark)}`, mark.bearing.y, -lineBy(mark)))
  }
  for (const mark of marks.filter(mark => mark.name !== null)) {
    lines.push(
      atItsEdge(mark, edges, work.height),
      sum(`from-line-${slotOf(mark)}`, `from the line, ${mark.name}`, mark.bearing.y, -lineBy(mark)),
    )
  }
  lines.push(
    ...holes(carrying, even),
    ...holes(
      marks.filter(mark => mark.name !== null),
      false,
    ),
  )
  if (sloping) {
    for (const mark of marks) {
      lines.push(
        sum(`floor-${slotOf(mark)}`, `above the floor under the ${calledMark(mark)}`, mark.bearing.y, -mark.floorHere),
      )
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
    const [from, way] =
      first === undefined || mark === first || mark.name !== null
        ? [edges.left, mark.fromLeft]
        : [first.bearing.x, mark.fromLeft - first.fromLeft]
    lines.push(sum(`x-${slotOf(mark)}`, calledMark(mark), from, way))
  }
  return lines
}

/**
 * Marks that stand for a work on one line: what carries under no name of its own. All of them where none does, as the
 * corners of a plinth; locks and plates have lines of their own in the working.
 */
export function mainMarks<M extends Pick<Mark, 'does' | 'name'>>(marks: readonly M[]): readonly M[] {
  const unnamed = marks.filter(mark => mark.does === 'carries' && mark.name === null)
  return unnamed.length > 0 ? unnamed : marks
}

/** What a person calls a mark: `left mark`, `mark` for one alone in the middle, or its own name. */
export function calledMark(mark: Pick<Mark, 'name' | 'side'>): string {
  return mark.name ?? (mark.side === 'middle' ? 'mark' : `${mark.side} mark`)
}

/** Which of a work’s marks this is, for keys: its side, or its own name. */
export function slotOf(mark: Pick<Mark, 'name' | 'side'>): string {
  return mark.name === null ? mark.side : mark.name.replaceAll(' ', '-')
}

/** What a person calls the mark of that key. */
export function calledSlot(slot: string): string {
  return slot === 'left' || slot === 'right' || slot === 'middle' ? `${slot} mark` : slot.replaceAll('-', ' ')
}

/** A mark with a name of its own, from the edge that it was measured from. */
function atItsEdge(mark: Mark, edges: MarksAnswer['edges'], height: number): PlainStep {
  const key = `bearing-${slotOf(mark)}`
  const label = `${mark.name} at`
  return mark.from === 'bottom'
    ? sum(key, label, edges.bottom, height - mark.drop)
    : sum(key, label, edges.top, -mark.drop)
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
    .filter(mark => mark.on === 'wall' && mark.fixing.holeOffset !== 0)
    .map(mark => {
      const { holeOffset, kind } = mark.fixing
      const what = kind === 'cleat' ? 'edge of the wall part' : 'hole'
      const side = mark.name !== null ? `, ${mark.name}` : alike || mark.side === 'middle' ? '' : `, ${mark.side}`
      const label = `${what} ${holeOffset > 0 ? 'above' : 'below'} the bearing point${side}`
      return sum(alike ? 'hole' : `hole-${slotOf(mark)}`, label, mark.bearing.y, holeOffset)
    })
}
