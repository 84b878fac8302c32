/** Stacks and grids of a show: what its sections ask, the units that are planned with, and those of a hang. */
import { labelSize } from '../../../src/layout/label-size.ts'
import type { LabelRules } from '../../../src/layout/labels-shape.ts'
import { at, type Problem } from '../../../src/sequence/problem.ts'
import type { SectionHang } from '../../../src/sequence/section-hang.ts'
import type { Stretch } from '../../../src/sequence/stretches.ts'
import { mayHangOn, middleOn, unitServedOn } from '../../../src/sequence/unit-on.ts'
import { type Group, united } from '../../../src/sequence/united.ts'
import {
  type HangOfSection,
  type HungWork,
  type ShowUnit,
  unitsAsHung,
  unitsOfShow,
  type WorkOfSection,
} from '../../../src/sequence/units-of-show.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'
import type { AskedWork, Known, Question } from './question.ts'
import type { RulesRead } from './ruling.ts'

interface StoredHang extends Omit<SectionHang, 'lowest' | 'highest'> {
  readonly id: string
  readonly title: string
  readonly lowest: number | null
  readonly highest: number | null
}

export interface SectionAsked extends HangOfSection {
  readonly title: string
  /** As they are stored: null where the house rule holds. */
  readonly own: { readonly lowest: number | null; readonly highest: number | null }
}

/** Sections in their order, each with how it hangs; heights that it leaves open are the house's. */
export function sectionsOf(
  db: ReadHandle,
  exhibition: string,
  house: { readonly lowest: number; readonly highest: number },
): SectionAsked[] {
  return rows<StoredHang>(
    db,
    `SELECT id, title, hang, rows, columns, align, gap_down AS gapDown, gap_across AS gapAcross, alike, lowest, highest
     FROM section WHERE exhibition = :exhibition ORDER BY position, id`,
    { exhibition },
  ).map(({ id, title, lowest, highest, ...hang }) => ({
    id,
    title,
    own: { lowest, highest },
    hang: { ...hang, lowest: lowest ?? house.lowest, highest: highest ?? house.highest },
  }))
}

/** A label of four lines: number and maker, title, year, lender (from memory). */
const usualLabel = 'maker\ntitle\nyear\nlender'

/** A column of labels beside a stack or grid. */
export function labelColumn(labels: LabelRules): { readonly width: number; readonly height: number } {
  const { width, height } = labelSize(usualLabel, labels)
  return { width: width + labels.gap, height: height + labels.gap }
}

/** Rules that say of a work alone where it may hang: a stack follows the strictest of its works. */
const barring: ReadonlySet<string> = new Set(['only on', 'not on', 'light'])

/** Works that a rule puts into an order or beside others: they hang by themselves. */
function ruledWorks({ rulings }: RulesRead): ReadonlySet<number> {
  return new Set(
    rulings
      .filter(({ rule, rests, stored }) => rests === '' && stored?.inForce !== false && !barring.has(rule.kind))
      .flatMap(({ rule }) => rule.works),
  )
}

export function hangWorks(works: readonly AskedWork[], read: RulesRead): WorkOfSection[] {
  const ruled = ruledWorks(read)
  return works.flatMap(({ entry, section, width, height, stays, labelled }, index) =>
    width === null || height === null
      ? []
      : [{ entry, section, width, height, labelled, free: !stays && !ruled.has(index) }],
  )
}

/** Units of several works that a show is planned with. */
export function formedUnits({ works, sections, ...room }: Question, read: RulesRead): ShowUnit[] {
  return unitsOfShow(hangWorks(works, read), sections, room)
}

export interface FaceHung {
  readonly face: string
  readonly works: readonly { readonly entry: string; readonly x: number; readonly y?: number | null | undefined }[]
}

/** Units of a hang: today's, or one that is given. A height that is not given is the wall's line. */
export function hungUnits(
  { question, read }: Pick<Known, 'question' | 'read'>,
  faces?: readonly FaceHung[],
): ShowUnit[] {
  const works = new Map(hangWorks(question.works, read).map(work => [work.entry, work] as const))
  const walls = new Map(question.walls.map(wall => [wall.wall.face, wall] as const))
  const hung =
    faces ??
    question.walls.map(wall => ({
      face: wall.wall.face,
      works: wall.works.map(({ entry, x, centreY }) => ({ entry, x, y: centreY })),
    }))
  return hung.flatMap(({ face, works: own }) => {
    const wall = walls.get(face)
    if (wall === undefined) return []
    const placed = own.flatMap(({ entry, x, y }): HungWork[] => {
      const work = works.get(entry)
      return work === undefined ? [] : [{ ...work, x, y: y ?? middleOn(wall, work.height, x) }]
    })
    return unitsAsHung(placed, question.sections)
  })
}

/** A work in the unit that it hangs in: where its middle is from the unit's. */
export interface Member {
  readonly entry: string
  readonly dx: number
  /** Null where it hangs by itself, to the wall's own rule. */
  readonly dy: number | null
}

/** The planner's question over units. `entries` has the works of the question. */
export function overUnits(
  problem: Problem,
  entries: readonly string[],
  units: readonly ShowUnit[],
  stretches: readonly Stretch[],
  { question, usual, sight }: Pick<Known, 'question' | 'usual' | 'sight'>,
): { readonly problem: Problem; readonly members: readonly (readonly Member[])[] } {
  const places = new Map(entries.map((entry, index) => [entry, index] as const))
  const groups = units.map((unit): Group => {
    const works = unit.entries.flatMap(entry => places.get(entry) ?? [])
    const heights = works.map(work => at(problem.works, work).height)
    const { width, height } = unit
    const served = stretches.map(stretch =>
      mayHangOn(stretch, unit, unit.hang, question.margin)
        ? unitServedOn(stretch, unit, heights, { usual, sight })
        : null,
    )
    return { works, width, height, served }
  })
  const over = united(problem, groups)
  const spots = new Map(
    units.flatMap(({ entries: own, places: at }) => own.map((entry, index) => [entry, at[index]] as const)),
  )
  const members = over.members.map(own =>
    own.map((work): Member => {
      const entry = at(entries, work)
      const spot = spots.get(entry)
      return { entry, dx: spot?.dx ?? 0, dy: spot?.dy ?? null }
    }),
  )
  return { problem: over.problem, members }
}
