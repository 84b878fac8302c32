/** A show as the planner is asked about it: its works in order, the free stretches of its walls, who looks there. */
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import { labelSize } from '../../../src/layout/label-size.ts'
import { axesOfFace } from '../../../src/sequence/axes-of-face.ts'
import { looksIn } from '../../../src/sequence/looks-in-room.ts'
import { type Bay, noRules, type Problem, type TermWeights, type Work } from '../../../src/sequence/problem.ts'
import { servedOn } from '../../../src/sequence/served-on.ts'
import type { Sight } from '../../../src/sequence/sight.ts'
import { firstAfter, neighbourAt, type Stretch, staysOn, stretchesIn } from '../../../src/sequence/stretches.ts'
import type { ShowUnit } from '../../../src/sequence/units-of-show.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { plan } from '../plan/get.ts'
import { labelRulesOf, rulesOf } from '../rules.ts'
import type { Reading } from '../service.ts'
import { row, rows } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'
import { weightOnWhite } from '../walls/weights.ts'
import { type Grounds, type RulesRead, rulingsOf } from './ruling.ts'
import { underRules } from './under-rules.ts'
import { formedUnits, labelColumn, type Member, overUnits, type SectionAsked, sectionsOf } from './units.ts'

export interface AskedWork {
  readonly entry: string
  readonly work: string
  readonly running: string
  readonly title: string
  readonly section: string | null
  readonly width: number | null
  readonly height: number | null
  readonly limit: number | null
  /** Height of the plinth or the base of the case that it stands on; null for what hangs. */
  readonly base: number | null
  readonly labelled: boolean
  /** Held, hung or with holes made: it takes wall of its own and is not planned with. */
  readonly stays: boolean
}

export interface Question {
  readonly works: readonly AskedWork[]
  readonly sections: readonly SectionAsked[]
  readonly walls: readonly Elevation[]
  readonly stretches: readonly Stretch[]
  readonly margin: number
  readonly gap: number
  readonly panel: number
  /** Of one label in a column beside a stack or grid. */
  readonly label: { readonly width: number; readonly height: number }
  /** Height of the band in which labels can be read. */
  readonly band: number
}

/** Works of a show in the order of its checklist. */
function worksOf(db: ReadHandle, exhibition: string, staying: ReadonlySet<string>): AskedWork[] {
  return rows<Omit<AskedWork, 'labelled' | 'stays'> & { labelled: number }>(
    db,
    `SELECT entry.id AS entry, work.id AS work, entry.running, work.title, entry.section, work.hang_width AS width,
       work.hang_height AS height,
       (SELECT min(light_limit) FROM work AS one WHERE one.id = work.id OR one.parent = work.id) AS "limit",
       (SELECT CASE WHEN method IN ('plinth', 'case') THEN json_extract(data, '$.base.height') END FROM work_back
         WHERE work_back.work = work.id ORDER BY at DESC, id DESC LIMIT 1) AS base,
       entry.label_text <> '' OR work.title <> '' AS labelled
     FROM entry JOIN work ON work.id = entry.work LEFT JOIN section ON section.id = entry.section
     WHERE entry.exhibition = :exhibition
     ORDER BY section.position IS NULL, section.position, section.id, entry.position, entry.id`,
    { exhibition },
  ).map(work => ({ ...work, labelled: work.labelled === 1, stays: staying.has(work.entry) }))
}

/** Faces on the visitor's way, then others that works hang on; all of them where nobody has said which way that is. */
export function wallsOf(db: ReadHandle, exhibition: string): Elevation[] {
  if (row(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined)
    throw notFound('exhibition', 'exhibition')
  const faces = rows<{ face: string; at: number | null; hung: number }>(
    db,
    `SELECT face.id AS face, face_plan.visitor_order AS at,
       EXISTS (SELECT 1 FROM placement WHERE placement.face = face.id AND placement.exhibition = :exhibition) AS hung
     FROM face JOIN wall ON wall.id = face.wall
     JOIN room ON room.id = wall.room
     LEFT JOIN face_plan ON face_plan.face = face.id AND face_plan.exhibition = :exhibition
     WHERE wall.exhibition IS NULL OR wall.exhibition = :exhibition
     ORDER BY face_plan.visitor_order IS NULL, face_plan.visitor_order, room.position, room.id, wall.position, wall.id, face.side`,
    { exhibition },
  )
  const ordered = faces.some(({ at }) => at !== null)
  return faces
    .filter(({ at, hung }) => !ordered || at !== null || hung === 1)
    .map(({ face }) => elevationOf(db, exhibition, face))
}

export function questionOf({ db }: Reading, exhibition: string): Question {
  const rule = rulesOf(db)
  const labels = labelRulesOf(rule)
  const walls = wallsOf(db, exhibition)
  const staying = new Set(walls.flatMap(wall => staysOn(wall).map(work => work.entry)))
  const works = worksOf(db, exhibition, staying)
  // Beside each work its label, which the last of a wall has before the wall's end.
  const label = works.some(work => work.labelled) ? labels.gap + labelSize('', labels).width : 0
  const gap = Math.max(Number(rule('minimumGap')), label === 0 ? 0 : label + labels.clear)
  return {
    works,
    sections: sectionsOf(db, exhibition, {
      lowest: Number(rule('stackLowest')),
      highest: Number(rule('stackHighest')),
    }),
    walls,
    stretches: stretchesIn(works, walls),
    margin: Math.max(Number(rule('minimumMargin')), label),
    gap,
    panel: Number(rule('sectionPanel')),
    label: labelColumn(labels),
    band: labels.highest - labels.lowest,
  }
}

/** All that a planner's question is made of; asked again with a wall or a room changed, it tells what that would give. */
export interface Known {
  readonly question: Question
  readonly rooms: readonly PlanRoomRow[]
  /** Visual weights, by the work. */
  readonly weighs: ReadonlyMap<string, number>
  readonly sight: Sight
  /** Viewing distance where a wall names none. */
  readonly usual: number
  readonly read: RulesRead
  /** Stacks and grids that works are formed into where a hang is looked for. */
  readonly formed: readonly ShowUnit[]
}

export interface Asked {
  /** Over units: works that hang by themselves, and stacks and grids as one work each. */
  readonly problem: Problem
  /** Of each unit its first work. */
  readonly entries: readonly string[]
  /** Of each unit its works. */
  readonly members: readonly (readonly Member[])[]
  readonly stretches: readonly Stretch[]
  readonly unsized: readonly string[]
}

/** The walls and works of a show, and where they are in the building. */
export function groundsOf(reading: Reading, exhibition: string): Grounds {
  return { question: questionOf(reading, exhibition), rooms: plan(reading, { exhibition }).rooms }
}

/** What the catalogue knows that a planner asks. */
export function knownOf(reading: Reading, exhibition: string): Known {
  const { db } = reading
  const rule = rulesOf(db)
  const grounds = groundsOf(reading, exhibition)
  const { question } = grounds
  const read = rulingsOf(db, exhibition, grounds)
  return {
    ...grounds,
    read,
    formed: formedUnits(question, read),
    weighs: new Map(question.works.map(({ work }) => [work, weightOnWhite(db, work)])),
    sight: {
      line: -Number(rule('sightLine')),
      inner: Number(rule('sightInner')),
      outer: Number(rule('sightOuter')),
    },
    usual: Number(rule('viewingDistance')),
  }
}

/**
 * The planner's question. Works without a size can't be planned with.
 *
 * @param units stacks and grids that works stand in
 */
export function problemOf(known: Known, weights: TermWeights, units: readonly ShowUnit[] = known.formed): Asked {
  const { question, rooms, sight, usual } = known
  const { margin, gap } = question
  const stretches = stretchesIn(question.works, question.walls)
  const staying = new Map(
    question.walls.flatMap(wall =>
      staysOn(wall).map(work => [work.entry, { face: wall.wall.face, x: work.x }] as const),
    ),
  )
  const sized = question.works.filter(work => work.width !== null && work.height !== null)
  const order = [...question.sections.map(section => section.id), null]
  const excepted = new Set(known.read.exceptions.map(({ entry }) => entry))
  const works = sized.map((asked, rank): Work => {
    const [width, height] = [asked.width ?? 0, asked.height ?? 0]
    const stays = staying.get(asked.entry)
    const size = { width, height, limit: asked.limit }
    // What is settled with a reason bars nothing, and still counts as what it is beside others.
    const barring = excepted.has(asked.entry) ? { ...size, limit: null } : size
    return {
      ...size,
      id: asked.entry,
      weight: known.weighs.get(asked.work) ?? 0,
      section: order.indexOf(asked.section),
      rank,
      served: stretches.map(stretch => servedOn(stretch, barring, { margin, usual, sight })),
      stays: stays === undefined ? null : { before: firstAfter(stretches, stays) },
    }
  })
  const standing = sized.map(({ entry, width }) => ({ width, stays: staying.get(entry) ?? null }))
  const bays = stretches.map((stretch, index): Bay => {
    const { elevation, from, to } = stretch
    const { face } = elevation.wall
    return {
      id: `${face}/${index}`,
      face,
      from,
      to,
      margin,
      gap,
      leftOf: neighbourAt(standing, face, from, 'right'),
      rightOf: neighbourAt(standing, face, to, 'left'),
      axes: doorAxes(rooms, elevation).filter(x => x > from && x < to),
    }
  })
  const bare: Problem = { bays, works, facing: [], rules: noRules, weights, orderBy: 'section' }
  const ruled = underRules(bare, known, known.read.rulings)
  const all = sized.map(work => work.entry)
  const { problem, members } = overUnits(ruled, all, units, stretches, known)
  return {
    problem,
    members,
    entries: members.map(([first]) => first?.entry ?? ''),
    stretches,
    unsized: question.works.filter(work => work.width === null || work.height === null).map(work => work.entry),
  }
}

/** Where the axes of doorways meet a wall. */
function doorAxes(rooms: readonly PlanRoomRow[], { wall, room, plan: { centreLine } }: Elevation): readonly number[] {
  const { ends, looking, bars } = looksIn(
    rooms.find(one => one.id === room.id),
    wall.face,
  )
  if (ends === null) return []
  const axes = axesOfFace(wall, { bottom: centreLine, top: centreLine }, ends, looking, bars)
  return axes.filter(({ kind }) => kind === 'doorway').map(({ x }) => x)
}
