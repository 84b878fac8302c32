/** The building: rooms as ordered walls with measured lengths and corner angles, and what is fixed on the walls. */
import * as z from 'zod'
import { datumWays } from '../../hang/datum.ts'
import { cornerBounds } from '../../model/corner.ts'
import { procedure } from '../procedure.ts'
import {
  changes,
  degrees,
  done,
  finding,
  id,
  made,
  millimetres,
  name,
  shortText,
  size,
  typed,
  updated,
} from '../shared.ts'
import { keepClearRow, openingKind, openingRow } from './fixtures.ts'

export const wallType = z.enum([
  'drywall',
  'drywall on ply',
  'plaster',
  'plywood',
  'brick',
  'concrete',
  'block',
  'other',
])
/** Interior angle at a corner. */
const cornerAngle = z.number().gt(cornerBounds.least).lt(cornerBounds.most)

export const wallRow = z.strictObject({
  id,
  face: id,
  name: z.string(),
  length: z.number(),
  lengthText: z.string(),
  height: z.number(),
  heightText: z.string(),
  wallType,
  studFirst: z.number().nullable(),
  studSpacing: z.number().nullable(),
  backingFrom: z.number().nullable(),
  backingTo: z.number().nullable(),
  skirting: z.number().nullable(),
  /** Height of the level line above the floor at the point that `datumBy` names; null where the house rule gives it. */
  datum: z.number().nullable(),
  /** Which floor its lines are measured from: '' the left end, the high point, the middle; or they run along a ramp. */
  datumBy: z.enum(datumWays),
  /** Studs found one by one, x from left to right; they stand in place of the comb. */
  studs: z.array(z.number()),
  /** x of the joints between boards. */
  joints: z.array(z.number()),
  /** Height of the ceiling along the wall, and of the edge that hooks bear on of a picture rail; floor at x = 0. */
  ceiling: z.array(z.tuple([z.number(), z.number()])),
  rail: z.array(z.tuple([z.number(), z.number()])),
  /** What the rail may carry on each metre, as its maker says; kg. */
  railKgPerMetre: z.number().nullable(),
  /** How anybody knows what is behind: looked at, found with a detector, from drawings, and when. */
  behindSeen: z.string(),
  /** Measured floor heights: position along the wall, height of the floor there against the floor at 0. */
  floor: z.array(z.tuple([z.number(), z.number()])),
  /** The wall's two ends on the plan, from left to right as seen from the room. */
  from: z.tuple([z.number(), z.number()]),
  to: z.tuple([z.number(), z.number()]),
  /** Interior angle at the wall's right end, as measured. */
  angle: z.number().nullable(),
  /** Which face of a partition this is; walls of a room have one, a. Openings and fixtures are as seen on it. */
  side: z.enum(['a', 'b']),
  /** The show that a partition belongs to; null for a wall of the building. */
  exhibition: id.nullable(),
  /** Null where nobody measured it. */
  thickness: z.number().nullable(),
  openings: z.array(openingRow),
  keepClears: z.array(keepClearRow),
})
export type WallRow = z.output<typeof wallRow>

export const roomRow = z.strictObject({
  id,
  name: z.string(),
  number: z.string(),
  height: z.number(),
  /** Height that its labels hang to, above the floor; null where the house rule gives it. */
  labelLine: z.number().nullable(),
  walls: z.array(wallRow),
  /** By how much the measured lengths and angles fail to close, and what was used for the drawing. */
  closure: z.strictObject({
    closes: z.boolean(),
    gap: z.number(),
    note: z.string(),
    /** Walked: the gap shared by the compass rule. Fitted: by least squares, once a diagonal was measured. */
    way: z.enum(['walked', 'fitted']),
  }),
  area: z.number().meta({ description: 'floor area in square metres' }),
})
export type RoomRow = z.output<typeof roomRow>

const newWall = z.strictObject({
  name: name.optional(),
  length: size,
  lengthText: typed.optional(),
  /** Interior angle at its right end; 90 where left out. */
  angle: cornerAngle.nullable().optional(),
  wallType: wallType.optional(),
})

const places = z.array(millimetres).max(1000)
const heights = z.array(z.tuple([millimetres, millimetres])).max(1000)

/** What is behind, above and on a wall; each must lie on the wall and run from left to right. */
const behindChanges = {
  datumBy: z.enum(datumWays),
  studs: places,
  joints: places,
  ceiling: heights,
  rail: heights,
  railKgPerMetre: z.number().gt(0).max(1e5).nullable(),
  behindSeen: shortText,
} as const

export const roomsArea = {
  'room.list': procedure(
    'read',
    'Gives the building: rooms with their walls, what is fixed on them, and the plan.',
    z.strictObject({}),
    z.strictObject({
      building: z.strictObject({ id, name: z.string() }).nullable(),
      rooms: z.array(roomRow),
    }),
  ),
  'room.plan': procedure(
    'read',
    'Gives the key plan for a show: each wall with how full it is and whether something is to settle.',
    z.strictObject({ exhibition: id.nullable() }),
    z.strictObject({
      rooms: z.array(
        z.strictObject({
          id,
          name: z.string(),
          number: z.string(),
          walls: z.array(
            z.strictObject({
              id,
              face: id,
              name: z.string(),
              from: z.tuple([z.number(), z.number()]),
              to: z.tuple([z.number(), z.number()]),
              length: z.number(),
              /** One face of a partition of the show; it is no part of the room's outline. */
              partition: z.boolean(),
              openings: z.array(z.strictObject({ kind: openingKind, x: z.number(), width: z.number() })),
              works: z.int(),
              filled: z.number().meta({ description: 'widths of the works over the length of the wall' }),
              settle: z.int(),
              stop: z.int(),
              order: z.number().nullable(),
            }),
          ),
        }),
      ),
    }),
  ),
  'room.setBuilding': procedure('write', 'Names the building.', z.strictObject({ name }), made),
  'room.add': procedure(
    'write',
    'Adds a room by the lengths of its walls and the angles of its corners, in order, seen from inside, to the right.',
    z.strictObject({
      /** Where its first corner stands in the building and which way its first wall runs; without it, nobody knows yet. */
      place: z
        .strictObject({ at: z.tuple([millimetres, millimetres]), turn: degrees, storey: z.string().trim().max(60) })
        .optional(),
      name,
      number: z.string().max(20).optional(),
      height: size,
      wallType: wallType.optional(),
      walls: z.array(newWall).min(1).max(60),
      /** Drawn figures stay beside what is measured later; measured where left out. */
      how: z.enum(['drawn', 'measured']).optional(),
    }),
    z.strictObject({ id, walls: z.array(id) }),
  ),
  'room.update': procedure(
    'write',
    'Changes a room’s name, number or height, or the height that its labels hang to.',
    z.strictObject({
      id,
      changes: changes({ name, number: z.string().max(20), height: size, labelLine: size.nullable() }),
    }),
    updated,
  ),
  'room.copy': procedure(
    'write',
    'Copies a room beside it: walls, what is fixed on them, what was measured, what of the building stands in it; no works.',
    z.strictObject({ id, name: name.optional() }),
    made,
  ),
  'room.move': procedure(
    'write',
    'Moves a room before another in the list.',
    z.strictObject({ id, before: id.nullable() }),
    done,
  ),
  'room.remove': procedure(
    'write',
    'Removes a room; refused while works stand on its walls.',
    z.strictObject({ id }),
    done,
  ),
  'room.check': procedure(
    'read',
    'Tells whether lengths and corner angles close by the house rule, by how much they fail and where to measure again.',
    z.strictObject({
      walls: z
        .array(z.strictObject({ length: size, angle: cornerAngle.nullable(), name: name.optional() }))
        .min(1)
        .max(60),
    }),
    z.strictObject({
      closes: z.boolean(),
      gap: z.number(),
      note: z.string(),
      corners: z.array(z.tuple([z.number(), z.number()])),
      area: z.number(),
    }),
  ),
  'wall.add': procedure(
    'write',
    'Adds a wall to a room after another.',
    z.strictObject({ room: id, after: id.nullable(), wall: newWall }),
    made,
  ),
  'wall.update': procedure(
    'write',
    'Changes a wall: name, length, height, corner angle, type, studs, backing, joints, skirting, level line, floor, ceiling, rail.',
    z.strictObject({
      id,
      changes: changes({
        name,
        length: size,
        lengthText: typed,
        height: size,
        heightText: typed,
        angle: cornerAngle.nullable(),
        wallType,
        studFirst: millimetres.nullable(),
        studSpacing: size.nullable(),
        backingFrom: millimetres.nullable(),
        backingTo: millimetres.nullable(),
        skirting: millimetres.nullable(),
        thickness: size.nullable(),
        datum: millimetres.nullable(),
        floor: z.array(z.tuple([millimetres, millimetres])).max(100),
        ...behindChanges,
      }),
    }),
    updated,
  ),
  'wall.move': procedure(
    'write',
    'Moves a wall before another of its room, or to the end, with the corner at its right; the room is drawn anew.',
    z.strictObject({ id, before: id.nullable() }),
    done,
  ),
  'wall.split': procedure(
    'write',
    'Splits a wall at a place along it, with its other side in the next room unless this one alone is asked for; what has its centre on the right part goes with that, and stays where it is.',
    z.strictObject({ id, x: millimetres, name: name.optional(), alone: z.boolean().optional() }),
    made,
  ),
  'wall.join': procedure(
    'write',
    'Joins a wall with the next where the corner between them is straight, with their other sides in the next room unless this one alone is asked for; what is on them stays where it is.',
    z.strictObject({ id, alone: z.boolean().optional() }),
    done,
  ),
  'wall.remove': procedure('write', 'Removes a wall; refused while works stand on it.', z.strictObject({ id }), done),
  'room.findings': procedure(
    'read',
    'Lists what the plan leaves to settle: rooms that do not close, openings without room, and what stands in the way for a show.',
    z.strictObject({ exhibition: id.nullable().optional() }),
    z.strictObject({ findings: z.array(finding) }),
  ),
} as const
