/**
 * Everything the planning checks say about one face in one show: the wall's checks, each work's marks, and what the
 * works want of the wall's light. Screen, sheet, key plan and command line all ask here.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { Refusal } from '../contract/refusal.ts'
import type { Finding } from '../contract/shared.ts'
import { marksFor } from '../hang/marks.ts'
import type { LengthUnit, MarksAnswer, MarksQuestion } from '../hang/marks-shape.ts'
import { methodOf } from '../hang/methods.ts'
import { type HungRect, wallFindings } from '../layout/findings.ts'

/** What people call a work on a drawing: its running number, else its number, else its title. */
export function calledOn(work: Pick<PlacedWork, 'running' | 'number' | 'title'>): string {
  return [work.running, work.number, work.title].find(text => text !== '') ?? 'A work'
}

/** The rectangle of a placed work; undefined while its size is not known. mm. */
export function rectOf(work: PlacedWork): HungRect | undefined {
  if (work.size === null) return undefined
  const { height, width } = work.size
  return { id: work.placement, name: calledOn(work), x: work.x - width / 2, y: work.centreY - height / 2, width, height }
}

/** Kinds of fixing stand in where nobody has chosen one: they carry no rating, so that nothing passes by them. */
function standIn(method: string): MarksQuestion['fixings'][number] {
  const kind = methodOf(method).fixings[0] ?? 'hook'
  return { name: `a ${kind} that is not chosen yet`, kind, holeOffset: 0, ratedKg: null }
}

/** What `marksFor` is asked for a placed work; undefined while its size or its back is not known. */
export function marksQuestionOf(work: PlacedWork, elevation: Elevation, unit: LengthUnit = 'mm'): MarksQuestion | undefined {
  if (work.size === null || work.back === null) return undefined
  const { plan, rules, wall } = elevation
  const rule = work.rule === 'face' ? plan.rule : work.rule
  return {
    subject: { kind: 'placement', id: work.placement },
    work: { height: work.size.height, width: work.size.width, depth: work.size.depth, mass: work.mass },
    back: work.back,
    centre: { x: work.x, y: work.centreY },
    height: { rule, eyeFraction: plan.eyeFraction },
    wall: {
      length: wall.length,
      height: wall.height,
      wallType: wall.wallType,
      datum: wall.datum,
      floor: wall.floor,
      skirting: wall.skirting,
      studFirst: wall.studFirst,
      studSpacing: wall.studSpacing,
      backingFrom: wall.backingFrom,
      backingTo: wall.backingTo,
      openings: wall.openings,
      keepClears: wall.keepClears,
    },
    // Where the wall has no level line of its own, marks are offsets from the line its works hang to.
    datum: plan.centreLine,
    hooksApart: work.hooksApart,
    fixings: [work.fixing === null ? standIn(work.back.method) : fixingOf(work.fixing)],
    rules: { houseFactor: rules.houseFactor, markFromEnd: rules.markFromEnd },
    unit,
  }
}

function fixingOf(fixing: NonNullable<PlacedWork['fixing']>): MarksQuestion['fixings'][number] {
  const { name, kind, holeOffset, ratedKg, wallType, shank, length } = fixing
  return { name, kind, holeOffset, ratedKg, wallType, shank, length }
}

/** The marks of a placed work, or the reason why there are none. */
export type PlacedMarks =
  | { readonly marks: MarksAnswer; readonly why: null }
  | { readonly marks: null; readonly why: Finding }

export function marksOf(work: PlacedWork, elevation: Elevation, unit: LengthUnit = 'mm'): PlacedMarks {
  const because = (code: string, text: string): PlacedMarks => ({
    marks: null,
    why: { severity: 'settle', code, subject: { kind: 'placement', id: work.placement }, text, figures: {} },
  })
  const name = calledOn(work)
  if (work.size === null) return because('not-measured', `${name} has no size yet, so it has no marks. Measure it.`)
  const question = marksQuestionOf(work, elevation, unit)
  if (question === undefined) {
    return because('no-back', `${name}: nobody has measured its back yet, so it has no marks. Turn it over and measure it.`)
  }
  try {
    return { marks: marksFor(question), why: null }
  } catch (error) {
    if (error instanceof Refusal) return because(error.code, `${name}: ${error.message}`)
    throw error
  }
}

/** Every finding of a face, worst first within a work; `fits` included, since a sheet shows what was found good too. */
export function faceFindings(elevation: Elevation, unit: LengthUnit = 'mm'): Finding[] {
  const rects = elevation.works.flatMap(work => rectOf(work) ?? [])
  const wall = wallFindings(elevation.wall, rects, elevation.rules, unit).map(finding =>
    finding.subject.kind === 'wall' ? { ...finding, subject: { kind: 'wall', id: elevation.wall.id } } : finding,
  )
  const works = elevation.works.flatMap(work => {
    const { marks, why } = marksOf(work, elevation, unit)
    return [...(why === null ? marks.findings : [why]), ...lightFindings(work, elevation)]
  })
  return [...wall, ...works]
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
  return findings.filter(({ code, subject, figures }) => !known.has(`${code}\n${subject.id}\n${JSON.stringify(figures)}`))
}
