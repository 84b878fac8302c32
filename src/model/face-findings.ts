/**
 * Everything the planning checks say about one face in one show: the wall's checks, each work's marks, and what the
 * works want of the wall's light. Screen, sheet, key plan and command line all ask here.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { Finding } from '../contract/shared.ts'
import { defaultSteps } from '../hang/printing.ts'
import { type HungRect, wallFindings } from '../layout/findings.ts'
import { type MarksStyle, marksOfPlaced } from './marks-of-face.ts'

const plain: MarksStyle = { unit: 'mm', steps: defaultSteps }

/** What people call a work on a drawing: its running number, else its number, else its title. */
export function calledOn(work: Pick<PlacedWork, 'running' | 'number' | 'title'>): string {
  return [work.running, work.number, work.title].find(text => text !== '') ?? 'A work'
}

/** The rectangle of a placed work; undefined while its size is not known. mm. */
export function rectOf(work: PlacedWork): HungRect | undefined {
  if (work.size === null) return undefined
  const { height, width } = work.size
  return {
    id: work.placement,
    name: calledOn(work),
    x: work.x - width / 2,
    y: work.centreY - height / 2,
    width,
    height,
  }
}

/** Every finding of a face, worst first within a work; `fits` included, since a sheet shows what was found good too. */
export function faceFindings(elevation: Elevation, style: MarksStyle = plain): Finding[] {
  const rects = elevation.works.flatMap(work => rectOf(work) ?? [])
  const wall = wallFindings(elevation.wall, rects, elevation.rules, style.unit).map(finding =>
    finding.subject.kind === 'wall' ? { ...finding, subject: { kind: 'wall', id: elevation.wall.id } } : finding,
  )
  const works = elevation.works.flatMap(work => {
    const subject = { kind: 'placement', id: work.placement }
    const marks = marksOfPlaced(elevation, work, style)
    const found: Finding[] =
      'problem' in marks
        ? [{ severity: 'settle', code: 'no-marks', subject, text: `${calledOn(work)}: ${marks.problem}`, figures: {} }]
        : marks.answer.findings.map(finding => ({ ...finding, subject }))
    return [...found, ...fixingFindings(work), ...lightFindings(work, elevation)]
  })
  return [...wall, ...works]
}

/** Where it bears is known without a fixing; where the hole goes is not. */
function fixingFindings(work: PlacedWork): Finding[] {
  if (work.back === null || work.fixing !== null) return []
  const text = `${calledOn(work)}: choose what it hangs on. Its bearing points are known, its holes are not.`
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

/** A settlement holds while the figures are those it was made for. */
export function unsettled(
  findings: readonly Finding[],
  settled: readonly { readonly code: string; readonly subject: string; readonly figures: string }[],
): Finding[] {
  const known = new Set(settled.map(({ code, subject, figures }) => `${code}\n${subject}\n${figures}`))
  return findings.filter(
    ({ code, subject, figures }) => !known.has(`${code}\n${subject.id}\n${JSON.stringify(figures)}`),
  )
}
