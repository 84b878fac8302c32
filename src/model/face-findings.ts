/**
 * Everything the planning checks say about one face in one show: the wall's checks, each work's marks, and what the
 * works want of the wall's light. Screen, sheet, key plan and command line all ask here.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { Finding } from '../contract/shared.ts'
import { sayIn } from '../hang/marks.ts'
import { methodOf } from '../hang/methods.ts'
import { defaultSteps } from '../hang/printing.ts'
import { wallFindings } from '../layout/findings.ts'
import { toolFindings } from '../layout/tool-room.ts'
import { calledOn } from './called.ts'
import { datumFindings } from './datum-mixed.ts'
import { deepRectOf } from './hung-rect.ts'
import { labelsOfFace } from './labels-of-face.ts'
import { type MarksOrWhy, type MarksStyle, marksOfFace } from './marks-of-face.ts'
import { answersOf } from './marks-of-set.ts'
import { hungOf, placementOfKey } from './parts-of-set.ts'
import { railFindings } from './rail-load.ts'
import { stackFindings } from './stack-findings.ts'
import { toolWorkOf } from './tools-of-work.ts'

export { calledOn } from './called.ts'

const plain: MarksStyle = { unit: 'mm', steps: defaultSteps }

/**
 * Every finding of a face, worst first within a work; `fits` included, since a sheet shows what was found good too.
 * `all` are the face's marks where they were asked for already.
 */
export function faceFindings(
  elevation: Elevation,
  style: MarksStyle = plain,
  all: ReadonlyMap<string, MarksOrWhy> = marksOfFace(elevation, style),
): Finding[] {
  const rects = elevation.works.flatMap(work => deepRectOf(work) ?? [])
  const wall = wallFindings(elevation.wall, rects, elevation.rules, style.unit).map(finding =>
    finding.subject.kind === 'wall' ? { ...finding, subject: { kind: 'wall', id: elevation.wall.id } } : finding,
  )
  const works = elevation.works.flatMap(work => {
    const subject = { kind: 'placement', id: work.placement }
    const marks: MarksOrWhy = all.get(work.placement) ?? { problem: 'Nobody asked for its marks.' }
    const found: Finding[] =
      'problem' in marks
        ? [{ severity: 'settle', code: 'no-marks', subject, text: `${calledOn(work)}: ${marks.problem}`, figures: {} }]
        : marks.answer.findings.map(finding => ({ ...finding, subject }))
    return [
      ...found,
      ...fixingFindings(work),
      ...datumFindings(work, elevation, style),
      ...lightFindings(work, elevation),
    ]
  })
  return [
    ...wall,
    ...stackFindings(elevation, style),
    ...toolsOf(elevation, all, style),
    ...railFindings(elevation, all, style),
    ...works,
    ...labelsOfFace(elevation, all, style).findings,
  ]
}

function toolsOf(elevation: Elevation, all: ReadonlyMap<string, MarksOrWhy>, style: MarksStyle): readonly Finding[] {
  const works = elevation.works.flatMap(work =>
    toolWorkOf(answersOf(work, all.get(work.placement)), elevation.rules.tools),
  )
  return toolFindings(works, elevation.wall, sayIn(style.unit, style.steps)).map(found => ({
    ...found,
    subject: { ...found.subject, id: placementOfKey(found.subject.id) },
  }))
}

/** Where it bears is known without a fixing; where the hole goes is not. What stands on the floor needs none. */
function fixingFindings(work: PlacedWork): Finding[] {
  const lacking = hungOf(work).filter(
    ({ back, fixing }) => back !== null && fixing === null && methodOf(back.method).fixings.length > 0,
  )
  if (lacking.length === 0) return []
  const text =
    work.set === null
      ? `${calledOn(work)}: choose what it hangs on. Its bearing points are known, its holes are not.`
      : `${lacking.map(calledOn).join(', ')}: choose what ${lacking.length === 1 ? 'it hangs' : 'they hang'} on. Bearing points are known, holes are not.`
  return [
    { severity: 'settle', code: 'no-fixing', subject: { kind: 'placement', id: work.placement }, text, figures: {} },
  ]
}

function lightFindings(work: PlacedWork, { plan }: Elevation): Finding[] {
  if (plan.plannedLux === null || work.lightLimit === null || plan.plannedLux <= work.lightLimit) return []
  const over = plan.plannedLux - work.lightLimit
  return [
    {
      severity: 'stop',
      code: 'light-over-limit',
      subject: { kind: 'placement', id: work.placement },
      text: `${calledOn(work)} may receive ${work.lightLimit} lux; this wall is planned at ${plan.plannedLux} lux. Hang it elsewhere, or lower the level.`,
      figures: { limit: work.lightLimit, planned: plan.plannedLux, over },
    },
  ]
}

interface Settlement {
  readonly code: string
  readonly subject: string
  readonly figures: string
}

/** Tells of a finding whether it is settled: a settlement holds while the figures are those it was made for. */
export function settledBy(settled: readonly Settlement[]): (finding: Finding) => boolean {
  const known = new Set(settled.map(({ code, subject, figures }) => `${code}\n${subject}\n${figures}`))
  return ({ code, subject, figures }) => known.has(`${code}\n${subject.id}\n${JSON.stringify(figures)}`)
}

export function unsettled(findings: readonly Finding[], settled: readonly Settlement[]): Finding[] {
  const isSettled = settledBy(settled)
  return findings.filter(finding => !isSettled(finding))
}
