/** The facts of one face in one show: what the elevation draws, the sheet prints and the checks are made of. */
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import type { Received } from '../../../src/contract/contract.ts'
import { type DatumBy, levelLine } from '../../../src/hang/datum.ts'
import { hangRulesFrom } from '../../../src/hang/rules.ts'
import { suggestLabel } from '../../../src/layout/label-size.ts'
import { centreOnFace } from '../../../src/model/centre-on-face.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { asMade, madeOn } from '../marks/made.ts'
import { wallOfFace } from '../rooms/read.ts'
import { labelRulesOf, ruleNumber, rulesOf, ruleText } from '../rules.ts'
import type { Reading } from '../service.ts'
import { setsOn } from '../sets/read.ts'
import { row, rows } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { fixingsOf } from './fixings.ts'

interface StoredPlan {
  readonly centre_line: number | null
  readonly rule: Elevation['plan']['rule'] | null
  readonly eye_fraction: number | null
  readonly planned_lux: number | null
  readonly visitor_order: number | null
  readonly viewing_distance: number | null
  readonly viewers: string | null
  readonly colour: string | null
  readonly note: string | null
}

export function facePlanOf(db: ReadHandle, exhibition: string, face: string): Elevation['plan'] {
  const stored = row<StoredPlan>(db, 'SELECT * FROM face_plan WHERE exhibition = :exhibition AND face = :face', {
    exhibition,
    face,
  })
  const houseRule = ruleText(db, 'heightRule') as Elevation['plan']['rule'] // rule.set lets nothing else in
  const wall = row<{ length: number; by: DatumBy; floor: string | null }>(
    db,
    'SELECT wall.length, wall.datum_by AS "by", wall.floor FROM wall JOIN face ON face.wall = wall.id WHERE face.id = :face',
    { face },
  )
  const floor: [number, number][] = JSON.parse(wall?.floor ?? '[]')
  const set = stored?.centre_line ?? ruleNumber(db, 'centreLine')
  const line = levelLine({ floor, length: wall?.length ?? 0 }, wall?.by ?? '', set)
  return {
    centreLine: line.y,
    centreLineSet: set,
    ramp: line.ramp ? floor : [],
    centreLineFrom: stored?.centre_line == null ? 'house rule' : 'this wall',
    rule: stored?.rule ?? houseRule,
    eyeFraction: stored?.eye_fraction ?? ruleNumber(db, 'eyeFraction'),
    plannedLux: stored?.planned_lux ?? null,
    visitorOrder: stored?.visitor_order ?? null,
    viewingDistance: stored?.viewing_distance ?? null,
    viewers: JSON.parse(stored?.viewers || '[]'),
    colour: stored?.colour ?? '',
    note: stored?.note ?? '',
  }
}

interface StoredPlacement {
  readonly placement: string
  readonly entry: string
  readonly work: string
  readonly running: string
  readonly number: string | null
  readonly title: string
  readonly maker: string
  readonly dateText: string
  readonly medium: string
  readonly hang_height: number | null
  readonly hang_width: number | null
  readonly hang_depth: number | null
  readonly hang_diameter: number | null
  readonly hang_part: NonNullable<PlacedWork['size']>['part']
  readonly hang_source: NonNullable<PlacedWork['size']>['kind']
  readonly hang_at: string
  readonly mass: number | null
  readonly glazing: PlacedWork['glazing']
  readonly sensitivity: PlacedWork['sensitivity']
  readonly lightLimit: number | null
  readonly picture: string | null
  readonly method: NonNullable<PlacedWork['back']>['method'] | null
  readonly data: string | null
  readonly seenFrom: NonNullable<PlacedWork['back']>['seenFrom'] | null
  readonly fixing: string | null
  readonly keeper: string | null
  readonly lockTool: string
  readonly hooksApart: number | null
  readonly x: number
  readonly rule: PlacedWork['rule']
  readonly y: number | null
  readonly held: number
  readonly state: PlacedWork['state']
  readonly labelSide: PlacedWork['labelSide']
  readonly creditLine: string
  readonly labelText: string
  readonly labelWidth: number | null
  readonly labelHeight: number | null
  readonly labelGap: number | null
  readonly note: string
}

/** A set may receive what the most sensitive of its parts may. */
const lowestLimit = `(SELECT min(light_limit) FROM work AS one WHERE one.id = work.id OR one.parent = work.id)`

/** Works on a face from left to right. */
export function placedOn(db: ReadHandle, exhibition: string, face: string, plan: Elevation['plan']): PlacedWork[] {
  const fixings = new Map(fixingsOf(db).map(fixing => [fixing.id, fixing]))
  const stored = rows<StoredPlacement>(
    db,
    `SELECT placement.id AS placement, entry.id AS entry, work.id AS work, entry.running,
      ${firstNumber} AS number,
      work.title, work.maker, work.date_text AS dateText, work.medium, work.hang_height, work.hang_width, work.hang_depth,
      work.hang_diameter, work.hang_part, work.hang_source, work.hang_at, work.mass, work.glazing, work.sensitivity,
      ${lowestLimit} AS lightLimit, work.picture, back.method, back.data, back.seen_from AS seenFrom,
      placement.fixing, placement.keeper, placement.lock_tool AS lockTool, placement.hooks_apart AS hooksApart, placement.x, placement.rule, placement.y, placement.held,
      placement.state, placement.label_side AS labelSide, placement.note, work.credit_line AS creditLine,
      entry.label_text AS labelText, entry.label_width AS labelWidth, entry.label_height AS labelHeight,
      entry.label_gap AS labelGap
     FROM placement JOIN entry ON entry.id = placement.entry JOIN work ON work.id = entry.work
     LEFT JOIN work_back AS back ON back.id =
       (SELECT id FROM work_back WHERE work_back.work = work.id ORDER BY at DESC, id DESC LIMIT 1)
     WHERE placement.exhibition = :exhibition AND placement.face = :face ORDER BY placement.x, placement.id`,
    { exhibition, face },
  )
  const sets = setsOn(db, exhibition, face, fixings)
  return stored.map(one => {
    const {
      hang_height: height,
      hang_width: width,
      hang_depth,
      hang_diameter,
      hang_part,
      hang_source,
      hang_at,
      ...rest
    } = one
    const { method, data, seenFrom, fixing, keeper, held, number, ...others } = rest
    const { creditLine, labelText, labelWidth, labelHeight, labelGap, ...plain } = others
    return {
      ...plain,
      number: number ?? '',
      size:
        height === null || width === null
          ? null
          : {
              height,
              width,
              depth: hang_depth,
              diameter: hang_diameter,
              part: hang_part,
              kind: hang_source,
              at: hang_at,
            },
      back: method === null || data === null || seenFrom === null ? null : { method, data: JSON.parse(data), seenFrom },
      fixing: fixing === null ? null : (fixings.get(fixing) ?? null),
      keeper: keeper === null ? null : (fixings.get(keeper) ?? null),
      label: {
        text: labelText,
        suggestion: suggestLabel({ ...plain, credit: creditLine }),
        width: labelWidth,
        height: labelHeight,
        gap: labelGap,
      },
      held: held === 1,
      set: sets.get(one.placement) ?? null,
      centreY: centreOnFace(one, plan, height ?? 0),
    }
  })
}

/** Sections with works on a face that hang in stacks or grids. */
function stacksAsked(db: ReadHandle, exhibition: string, face: string): Elevation['rules']['stacks'] {
  const sections = rows<Omit<Elevation['rules']['stacks'][number], 'works'> & { id: string }>(
    db,
    `SELECT id, hang, gap_down AS gapDown, gap_across AS gapAcross FROM section
     WHERE exhibition = :exhibition AND hang <> 'row' ORDER BY position, id`,
    { exhibition },
  )
  return sections.flatMap(({ id, ...asked }) => {
    const works = rows<{ placement: string }>(
      db,
      `SELECT placement.id AS placement FROM placement JOIN entry ON entry.id = placement.entry
       WHERE placement.exhibition = :exhibition AND placement.face = :face AND entry.section = :id ORDER BY placement.id`,
      { exhibition, face, id },
    ).map(({ placement }) => placement)
    return works.length === 0 ? [] : [{ ...asked, works }]
  })
}

export function elevationOf(db: ReadHandle, exhibition: string, face: string): Elevation {
  const show = row<{ title: string; state: string }>(db, 'SELECT title, state FROM exhibition WHERE id = :exhibition', {
    exhibition,
  })
  if (show === undefined) throw notFound('exhibition', 'exhibition')
  const found = wallOfFace(db, face)
  if (found === undefined) throw notFound('wall', 'face')
  if (found.wall.exhibition !== null && found.wall.exhibition !== exhibition)
    throw notFound('wall in this show', 'face')
  const plan = facePlanOf(db, exhibition, face)
  const rule = rulesOf(db)
  return {
    exhibition,
    exhibitionTitle: show.title,
    closed: show.state === 'closed',
    room: found.room,
    wall: found.wall,
    plan,
    rules: {
      centreLine: Number(rule('centreLine')),
      minimumGap: Number(rule('minimumGap')),
      minimumMargin: Number(rule('minimumMargin')),
      liftOn: Number(rule('liftOn')),
      sheetStepMm: Number(rule('sheetStepMm')),
      tools: {
        lockRoom: Number(rule('lockRoom')),
        handRoom: Number(rule('handRoom')),
        driverRoom: Number(rule('driverRoom')),
      },
      hang: hangRulesFrom(key => Number(rule(key))),
      labels: labelRulesOf(rule),
      stacks: stacksAsked(db, exhibition, face),
    },
    works: placedOn(db, exhibition, face, plan),
    made: madeOn(db, exhibition, face).map(asMade),
    layouts: rows(
      db,
      `SELECT id, name, at, "by", (SELECT count(*) FROM kept_place WHERE layout = kept_layout.id) AS works
       FROM kept_layout WHERE exhibition = :exhibition AND face = :face ORDER BY at DESC, id DESC`,
      { exhibition, face },
    ),
    settled: rows(db, 'SELECT id, code, subject, figures, reason, "by" FROM settlement ORDER BY id'),
  }
}

export function elevation({ db }: Reading, { exhibition, face }: Received<'wall.elevation'>): Elevation {
  return elevationOf(db, exhibition, face)
}
