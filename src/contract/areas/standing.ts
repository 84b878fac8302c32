/**
 * What stands on the floor of rooms and hangs from their ceilings, and what rooms have in common: furniture and columns,
 * ceiling tracks, climate and light zones. What has an exhibition belongs to that show alone; the rest is the
 * building's. Places are room-local plan coordinates in mm: x to the right, y down the page.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { changes, degrees, done, id, longText, made, millimetres, name, size, updated } from '../shared.ts'

export const standingKind = z.enum([
  'column',
  'stair',
  'ramp',
  'platform',
  'plinth',
  'case',
  'bench',
  'barrier',
  'other',
])
export const zoneKind = z.enum(['climate', 'light'])

const point = z.tuple([millimetres, millimetres])
const shortName = z.string().trim().max(200)
const bottom = z.number().min(-1e5).max(1e5)

export const standingRow = z.strictObject({
  id,
  room: id,
  /** Null: the building's. */
  exhibition: id.nullable(),
  kind: standingKind,
  name: z.string(),
  /** Its middle. */
  at: z.tuple([z.number(), z.number()]),
  /** Clockwise on the page. */
  turn: z.number(),
  /** Across and, before it is turned, down the page. */
  width: z.number(),
  depth: z.number(),
  /** Null: up to the ceiling, or nobody measured it. */
  height: z.number().nullable(),
  /** Its lower edge above the floor. */
  bottom: z.number(),
  round: z.boolean(),
  note: z.string(),
})
export type StandingRow = z.output<typeof standingRow>

export const trackRow = z.strictObject({
  id,
  room: id,
  name: z.string(),
  ends: z.tuple([z.tuple([z.number(), z.number()]), z.tuple([z.number(), z.number()])]),
  length: z.number(),
  /** Above the floor; null where nobody measured it. */
  height: z.number().nullable(),
  note: z.string(),
})
export type TrackRow = z.output<typeof trackRow>

export const zoneRow = z.strictObject({
  id,
  kind: zoneKind,
  name: z.string(),
  note: z.string(),
  rooms: z.array(id),
})
export type ZoneRow = z.output<typeof zoneRow>

const sizes = { width: size, depth: size, height: size.nullable(), bottom, round: z.boolean() } as const
const zoneRooms = z.array(id).max(2000)

export const standingArea = {
  'standing.list': procedure(
    'read',
    'Lists what stands in the rooms, of the building and of a show, with ceiling tracks and zones.',
    z.strictObject({ exhibition: id.nullable() }),
    z.strictObject({ things: z.array(standingRow), tracks: z.array(trackRow), zones: z.array(zoneRow) }),
  ),
  'standing.add': procedure(
    'write',
    'Puts something on the floor of a room: by its middle, or measured from a wall and along it to its nearest sides.',
    z.strictObject({
      room: id,
      exhibition: id.nullable(),
      kind: standingKind,
      name: shortName.optional(),
      at: point.optional(),
      byWall: z.strictObject({ wall: id, along: millimetres, off: millimetres }).optional(),
      turn: degrees.optional(),
      width: size,
      depth: size,
      height: size.nullable().optional(),
      bottom: bottom.optional(),
      round: z.boolean().optional(),
      note: longText.optional(),
    }),
    made,
  ),
  'standing.update': procedure(
    'write',
    'Moves, turns or resizes it, or changes its facts or whose it is.',
    z.strictObject({
      id,
      changes: changes({
        kind: standingKind,
        name: shortName,
        exhibition: id.nullable(),
        room: id,
        at: point,
        turn: degrees,
        ...sizes,
        note: longText,
      }),
    }),
    updated,
  ),
  'standing.remove': procedure('write', 'Takes it away.', z.strictObject({ id }), done),
  'track.add': procedure(
    'write',
    'Adds a ceiling track to a room by its two ends.',
    z.strictObject({
      room: id,
      name: shortName.optional(),
      ends: z.tuple([point, point]),
      height: size.nullable().optional(),
      note: longText.optional(),
    }),
    made,
  ),
  'track.update': procedure(
    'write',
    'Moves a ceiling track or changes its facts.',
    z.strictObject({
      id,
      changes: changes({ name: shortName, ends: z.tuple([point, point]), height: size.nullable(), note: longText }),
    }),
    updated,
  ),
  'track.remove': procedure('write', 'Removes a ceiling track.', z.strictObject({ id }), done),
  'zone.add': procedure(
    'write',
    'Makes a climate or light zone of rooms.',
    z.strictObject({ kind: zoneKind, name, note: longText.optional(), rooms: zoneRooms.optional() }),
    made,
  ),
  'zone.update': procedure(
    'write',
    'Renames a zone, changes its note, or says which rooms are in it.',
    z.strictObject({ id, changes: changes({ kind: zoneKind, name, note: longText, rooms: zoneRooms }) }),
    updated,
  ),
  'zone.remove': procedure('write', 'Removes a zone; its rooms stay.', z.strictObject({ id }), done),
} as const
