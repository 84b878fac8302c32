/** The building's plan: where its rooms stand, and all that is drawn on it for a show. */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { change, changes, degrees, id, millimetres, size, updated } from '../shared.ts'
import { wallRow, wallType } from './rooms.ts'
import { standingRow, trackRow, zoneRow } from './standing.ts'

const point = z.tuple([z.number(), z.number()])
const storey = z.string().trim().max(60)

/** A work on a face as the plan sees it: where it hangs along the wall and how far it stands out. */
export const planWork = z.strictObject({
  placement: id,
  work: id,
  number: z.string(),
  title: z.string(),
  /** Of its centre, from the left end of its face. */
  x: z.number(),
  /** Null where it has no size yet. */
  width: z.number().nullable(),
  depth: z.number().nullable(),
  /** The niche that it hangs at the back of; null where it hangs on the wall itself. */
  niche: id.nullable(),
})

export const planOpening = z.strictObject({
  id,
  kind: wallRow.shape.openings.element.shape.kind,
  x: z.number(),
  y: z.number(),
  width: z.number(),
  height: z.number(),
  label: z.string(),
  /** Hinges as seen from inside the room; '' where nobody said. */
  swing: z.string(),
  depth: z.number().nullable(),
  leadsTo: id.nullable(),
  /** The same hole in the wall that backs this one. */
  other: id.nullable(),
})

export const planFixture = z.strictObject({
  id,
  kind: wallRow.shape.keepClears.element.shape.kind,
  x: z.number(),
  y: z.number(),
  width: z.number(),
  height: z.number(),
  margin: z.number(),
  label: z.string(),
  depth: z.number().nullable(),
  reachable: z.boolean(),
})

export const planWall = z.strictObject({
  id,
  face: id,
  name: z.string(),
  length: z.number(),
  height: z.number(),
  /** Interior angle at its right end. */
  angle: z.number().nullable(),
  wallType,
  /** Null where nobody measured it. */
  thickness: z.number().nullable(),
  /** The wall of the next room that is its other side. */
  backs: id.nullable(),
  /** Its ends in the building's coordinates, from left to right as seen from the room; room-local while not placed. */
  from: point,
  to: point,
  openings: z.array(planOpening),
  fixtures: z.array(planFixture),
  works: z.array(planWork),
})
export type PlanWallRow = z.output<typeof planWall>

/** A partition of the show; what goes through it is said from the left end of face a, what is on a face from its own. */
export const planPartition = z.strictObject({
  id,
  name: z.string(),
  /** The middle of its thickness, from the left end as face a sees it; where its room's walls are. */
  from: point,
  to: point,
  length: z.number(),
  angle: z.number(),
  height: z.number(),
  thickness: z.number(),
  wallType,
  openings: z.array(planOpening),
  sides: z.array(
    z.strictObject({
      side: z.enum(['a', 'b']),
      face: id,
      fixtures: z.array(planFixture),
      works: z.array(planWork),
    }),
  ),
})
export type PlanPartitionRow = z.output<typeof planPartition>

export const planRoom = z.strictObject({
  id,
  name: z.string(),
  number: z.string(),
  height: z.number(),
  /** Where its own 0, 0 stands in the building; null while it is not placed, its walls are room-local then. */
  at: point.nullable(),
  /** Degrees clockwise on the page. */
  turn: z.number(),
  storey: z.string(),
  floorLevel: z.number().nullable(),
  /** False while its walls do not come round. */
  closed: z.boolean(),
  closes: z.boolean(),
  /** By how much its measures fail to close, and a sentence that names what to measure again. */
  gap: z.number(),
  note: z.string(),
  /** Square metres. */
  area: z.number(),
  walls: z.array(planWall),
  /** Of the show that was asked for. */
  partitions: z.array(planPartition),
  /** On the floor, the building's and the show's; placed and turned as the room's walls are. */
  things: z.array(standingRow.omit({ room: true })),
  tracks: z.array(trackRow.omit({ room: true, ends: true }).extend({ from: point, to: point })),
})
export type PlanRoomRow = z.output<typeof planRoom>

export const planArea = {
  'plan.get': procedure(
    'read',
    'Gives the building’s plan for a show: rooms where they stand, walls, what is on them, works with their depth.',
    z.strictObject({ exhibition: id.nullable() }),
    z.strictObject({
      building: z
        .strictObject({
          id,
          name: z.string(),
          /** Degrees clockwise from the top of the page to north; null where nobody said. */
          north: z.number().nullable(),
        })
        .nullable(),
      /** In the order that rooms bring them; '' alone in a house of one. */
      storeys: z.array(z.string()),
      rooms: z.array(planRoom),
      zones: z.array(zoneRow),
    }),
  ),
  'plan.placeRoom': procedure(
    'write',
    'Puts rooms where they stand in the building, turned, on a storey, at a floor level; null takes a place back. Their walls and doorways may become one with it.',
    z.strictObject({
      rooms: z
        .array(
          z.strictObject({
            id,
            changes: changes({
              at: z.tuple([millimetres, millimetres]).nullable(),
              turn: degrees,
              storey,
              floorLevel: millimetres.nullable(),
            }),
          }),
        )
        .min(1)
        .max(500),
      /** Walls of rooms that stand back to back then, made one as `wall.share` does; nothing where a place clashes. */
      walls: z
        .array(z.strictObject({ id, with: id, thickness: size.nullable() }))
        .max(2000)
        .optional(),
      /** Openings that are one hole then, as pairs. */
      doorways: z
        .array(z.tuple([id, id]))
        .max(2000)
        .optional(),
    }),
    updated,
  ),
  'plan.setNorth': procedure(
    'write',
    'Says where north is: degrees clockwise from the top of the page.',
    change(degrees.nullable()),
    updated,
  ),
} as const
