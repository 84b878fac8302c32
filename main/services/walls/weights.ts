/** How heavy works look on a face, and about what their hang may be balanced. */
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { frameBand } from '../../../src/drawing/labels.ts'
import { halfAway } from '../../../src/measure/rounding.ts'
import { rectOf } from '../../../src/model/hung-rect.ts'
import { hungOf } from '../../../src/model/parts-of-set.ts'
import { axesOfFace } from '../../../src/sequence/axes-of-face.ts'
import { labOfHex } from '../../../src/sequence/colour.ts'
import { looksIn } from '../../../src/sequence/looks-in-room.ts'
import { meanTone } from '../../../src/sequence/tones.ts'
import { piecesOf, type VisualWeight, visualWeight, weightOfSet } from '../../../src/sequence/visual-weight.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { plan } from '../plan/get.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'
import { row, rows } from '../sql.ts'
import { picturesOn, tonesOf } from '../works/tones.ts'
import { elevationOf } from './elevation.ts'

/** A wall that nobody chose a colour for. */
const unpainted = '#FFFFFF'
const white = { l: 100, a: 0, b: 0 }

/** To a square millimetre, a thousandth of a millimetre: what nobody reads of a computed figure is not sent. */
function told(weight: VisualWeight): VisualWeight {
  const short = (figure: number, parts: number) => halfAway(figure * parts) / parts + 0
  return {
    area: short(weight.area, 1e6),
    lightness: short(weight.lightness, 1e6),
    colour: short(weight.colour, 1e6),
    detail: short(weight.detail, 1e6),
    hand: short(weight.hand, 1e6),
    weight: short(weight.weight, 1e6),
    right: short(weight.right, 1e3),
    up: short(weight.up, 1e3),
    from: weight.from,
  }
}

interface Looked {
  readonly work: string
  readonly picture: string | null
  readonly size: { readonly width: number; readonly height: number; readonly part: string } | null
}

function weighedOf(db: ReadHandle, { work, picture, size }: Looked) {
  const said = row<{ frame: string; hand: number | null }>(
    db,
    'SELECT frame_colour AS frame, hand_weight AS hand FROM work WHERE id = :work',
    { work },
  )
  return {
    width: size?.width ?? 0,
    height: size?.height ?? 0,
    band: size === null ? 0 : frameBand(size),
    tones: tonesOf(db, picture) ?? null,
    frame: labOfHex(said?.frame ?? ''),
    hand: said?.hand ?? 1,
  }
}

function rulesOf(db: ReadHandle) {
  return {
    lightness: ruleNumber(db, 'weightLightness'),
    colour: ruleNumber(db, 'weightColour'),
    detail: ruleNumber(db, 'weightDetail'),
  }
}

/** A work or a set as it hangs; null while a size is missing. */
function weightOn(db: ReadHandle, work: PlacedWork, wall: typeof white): VisualWeight | null {
  if (work.size === null) return null
  const rules = rulesOf(db)
  if (work.set === null) return visualWeight(weighedOf(db, work), wall, rules)
  const parts = hungOf(work)
  if (parts.length === 0) return null
  const hand = weighedOf(db, work).hand
  return weightOfSet(
    parts.map(part => ({
      x: part.x - work.x,
      y: part.centreY - work.centreY,
      own: visualWeight(weighedOf(db, part), wall, rules),
    })),
    hand,
  )
}

/** How heavy a work, or all parts of a set, looks on white: what a planner compares before it knows the wall. m². */
export function weightOnWhite(db: ReadHandle, work: string): number {
  const parts = rows<Looked & { width: number | null; height: number | null; part: string }>(
    db,
    `SELECT id AS work, picture, hang_width AS width, hang_height AS height, hang_part AS part FROM work
     WHERE id = :work AND set_form = '' OR parent = :work`,
    { work },
  )
  const hand = weighedOf(db, { work, picture: null, size: null }).hand
  const rules = rulesOf(db)
  return parts.reduce((sum, { width, height, part, ...one }) => {
    const size = width === null || height === null ? null : { width, height, part }
    const own = visualWeight(weighedOf(db, { ...one, size }), white, rules).weight
    return sum + (one.work === work ? own : own * hand)
  }, 0)
}

/** The band of wall that its works take; about the line where none hangs. */
function bandOf({ works, plan: { centreLine } }: Elevation) {
  const rects = works.flatMap(work => rectOf(work) ?? [])
  return {
    bottom: Math.min(centreLine, ...rects.map(rect => rect.y)),
    top: Math.max(centreLine, ...rects.map(rect => rect.y + rect.height)),
  }
}

export function weights(reading: Reading, input: Received<'wall.weights'>): Output<'wall.weights'> {
  const { db } = reading
  const elevation = elevationOf(db, input.exhibition, input.face)
  const wallColour = elevation.plan.colour === '' ? unpainted : elevation.plan.colour
  const wall = labOfHex(wallColour) ?? white
  const room = plan(reading, { exhibition: input.exhibition }).rooms.find(one => one.id === elevation.room.id)
  const parts = elevation.works.flatMap(work => hungOf(work))
  return {
    wallColour,
    works: elevation.works.flatMap(work => {
      const weight = weightOn(db, work, wall)
      if (weight === null) return []
      const tones = hungOf(work).flatMap(part => tonesOf(db, part.picture) ?? [])
      return [
        {
          placement: work.placement,
          ...told(weight),
          tone: tones.length === 0 ? null : halfAway(100 * meanTone(tones).l) / 100,
        },
      ]
    }),
    axes: axesOn(elevation, room),
    pictures: picturesOn(
      db,
      parts.flatMap(part => part.picture ?? []),
    ),
  }
}

function axesOn(elevation: Elevation, room: PlanRoomRow | undefined): Output<'wall.weights'>['axes'] {
  const { ends, looking, bars } = looksIn(room, elevation.wall.face)
  return [
    ...axesOfFace(
      elevation.wall,
      bandOf(elevation),
      ends ?? [
        [0, 0],
        [elevation.wall.length, 0],
      ],
      looking,
      bars,
    ),
  ]
}

export function weightSeen({ db }: Reading, input: Received<'work.weightSeen'>): Output<'work.weightSeen'> {
  const found = row<{ picture: string | null; width: number | null; height: number | null; part: string }>(
    db,
    'SELECT picture, hang_width AS width, hang_height AS height, hang_part AS part FROM work WHERE id = :work',
    { work: input.work },
  )
  if (found === undefined) throw notFound('work', 'work')
  const colour =
    input.exhibition === null || input.face === null
      ? ''
      : (row<{ colour: string }>(db, 'SELECT colour FROM face_plan WHERE exhibition = :exhibition AND face = :face', {
          exhibition: input.exhibition,
          face: input.face,
        })?.colour ?? '')
  const wall = labOfHex(colour) ?? white
  const { picture, width, height, part } = found
  const size = width === null || height === null ? null : { width, height, part }
  const work = weighedOf(db, { work: input.work, picture, size })
  const rules = rulesOf(db)
  return {
    width: work.width,
    height: work.height,
    picture,
    band: work.band,
    weight: size === null ? null : told(visualWeight(work, wall, rules)),
    pieces:
      size === null
        ? []
        : piecesOf(work, wall, rules).map(({ lightness, colour: strong, detail, ...piece }) => ({
            ...piece,
            times: 1 + lightness + strong + detail,
          })),
  }
}
