/**
 * The labels of a face: from the works on it to the question for their places, in one place, so that screen, sheet,
 * list and findings show the same. A label that nobody has written yet is as large as what it would say.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { right } from '../geometry/rect.ts'
import { levelLine } from '../hang/datum.ts'
import { calledMark } from '../hang/steps.ts'
import { layLabels } from '../layout/labels.ts'
import type { LabelledWork, LabelsAnswer, LabelsQuestion } from '../layout/labels-shape.ts'
import { stacksOn } from '../layout/stacks-on.ts'
import { calledOn } from './called.ts'
import { rectOf } from './hung-rect.ts'
import { type MarksOrWhy, type MarksStyle, wallOfMarks } from './marks-of-face.ts'

/** What a label says, or would say. */
export function labelWords({ label }: Pick<PlacedWork, 'label'>): string {
  return label.text.trim() === '' ? label.suggestion : label.text
}

/** Height of the labels of a face above the floor at x = 0; along a ramp, above the floor everywhere. mm. */
export function labelLineOf({ wall, room, rules }: Pick<Elevation, 'wall' | 'room' | 'rules'>): number {
  return levelLine(wall, wall.datumBy, room.labelLine ?? rules.labels.line).y
}

/** `marks` by placement: their plates and holes must not lie under a label. */
export function labelsQuestionOf(
  elevation: Elevation,
  marks: ReadonlyMap<string, MarksOrWhy>,
  { unit }: Pick<MarksStyle, 'unit'>,
): LabelsQuestion {
  const stacks = stacksOn(
    elevation.works.flatMap(work => rectOf(work) ?? []),
    elevation.rules.stacks,
  )
  const stackOf = new Map(
    stacks.flatMap(stack => {
      const edges = { id: stack.works[0] ?? '', left: stack.x, right: right(stack) }
      return stack.works.map(id => [id, edges] as const)
    }),
  )
  return {
    wall: wallOfMarks(elevation),
    works: elevation.works.flatMap(work => {
      const labelled = labelledWork(work, marks.get(work.placement))
      const stack = stackOf.get(work.placement)
      return labelled === null ? [] : [stack === undefined ? labelled : { ...labelled, stack }]
    }),
    rules: elevation.rules.labels,
    line: labelLineOf(elevation),
    unit,
  }
}

function labelledWork(work: PlacedWork, marks: MarksOrWhy | undefined): LabelledWork | null {
  const rect = rectOf(work)
  if (rect === undefined) return null
  const found = marks !== undefined && 'answer' in marks ? marks.answer.marks : []
  return {
    ...rect,
    side: work.labelSide === '' ? null : work.labelSide,
    text: labelWords(work),
    labelWidth: work.label.width,
    labelHeight: work.label.height,
    gap: work.label.gap,
    holes: found
      .filter(mark => mark.on === 'wall')
      .map(mark => ({ name: calledMark(mark), ...mark.hole, keeps: mark.does === 'keeps' })),
  }
}

/** Labels and what is to settle about them. A label with words and no side has no place: that is told too. */
export function labelsOfFace(
  elevation: Elevation,
  marks: ReadonlyMap<string, MarksOrWhy>,
  style: Pick<MarksStyle, 'unit'>,
): LabelsAnswer {
  const laid = layLabels(labelsQuestionOf(elevation, marks, style))
  const sideless = elevation.works
    .filter(work => work.labelSide === '' && work.label.text.trim() !== '')
    .map(work => ({
      severity: 'settle' as const,
      code: 'label-no-side',
      subject: { kind: 'placement', id: work.placement },
      text: `${calledOn(work)} has a label and no side for it yet. Choose left, right or below.`,
      figures: {},
    }))
  return { labels: laid.labels, findings: [...laid.findings, ...sideless] }
}
