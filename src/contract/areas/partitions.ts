/**
 * Partitions: free-standing walls of one show, with two faces that works hang on. The building and other shows never
 * see them. A work keeps its distance from the left end of its face, whatever a partition does.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { changes, degrees, done, finding, id, millimetres, name, size, updated } from '../shared.ts'
import { openingRow } from './fixtures.ts'
import { wallType } from './rooms.ts'

const point = z.tuple([millimetres, millimetres])
/** The middle of its thickness, room-local; from the left end as face a sees it. */
const ends = z.tuple([point, point])
/** A partition that no hand could build is a slip of the pen. */
const thickness = size.max(2000)

export const partitionRow = z.strictObject({
  id,
  room: id,
  exhibition: id,
  name: z.string(),
  faces: z.strictObject({ a: id, b: id }),
  ends: z.tuple([z.tuple([z.number(), z.number()]), z.tuple([z.number(), z.number()])]),
  length: z.number(),
  /** Degrees clockwise on the page from the x axis, from its left end. */
  angle: z.number(),
  height: z.number(),
  thickness: z.number(),
  wallType,
  /** What goes through it, as seen on face a. */
  openings: z.array(openingRow),
  /** Works on both its faces. */
  works: z.int(),
})
export type PartitionRow = z.output<typeof partitionRow>

/** Stops of its two faces that were none before: works that no longer fit. */
const noLongerFits = z.array(finding)

export const partitionsArea = {
  'partition.list': procedure(
    'read',
    'Lists the partitions of a show, room by room.',
    z.strictObject({ exhibition: id }),
    z.strictObject({ partitions: z.array(partitionRow) }),
  ),
  'partition.add': procedure(
    'write',
    'Adds a partition to a room for a show: by two ends, or by its left end with a length and an angle.',
    z.strictObject({
      exhibition: id,
      room: id,
      name: name.optional(),
      from: point,
      to: point.optional(),
      length: size.optional(),
      /** Clockwise on the page from the x axis; 0 where left out. */
      angle: degrees.optional(),
      /** That of the room where left out. */
      height: size.optional(),
      thickness: thickness.optional(),
      wallType: wallType.optional(),
    }),
    z.strictObject({ id, faces: z.strictObject({ a: id, b: id }) }),
  ),
  'partition.update': procedure(
    'write',
    'Moves, turns or lengthens a partition, or changes its facts; works stay from their left end, and what no longer fits is told.',
    z.strictObject({
      id,
      changes: changes({ name, room: id, ends, height: size, thickness, wallType }),
    }),
    updated.extend({ noLongerFits }),
  ),
  'partition.remove': procedure(
    'write',
    'Removes a partition; refused while works stand on it or once sheets of it were printed.',
    z.strictObject({ id }),
    done,
  ),
} as const
