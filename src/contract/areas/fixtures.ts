/**
 * What is fixed on a wall or goes through it: openings, and what works must keep clear of. On a partition a fixture is on
 * one face and said as seen there; an opening is said as seen on face a, or on face b where that is named.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { changes, done, id, made, millimetres, shortText, size, updated } from '../shared.ts'

export const openingKind = z.enum(['door', 'window', 'passage', 'niche'])
/** Which way its leaves turn, the hinge as seen from inside the room; both: two leaves. */
export const swing = z.enum(['', 'in left', 'in right', 'out left', 'out right', 'both in', 'both out', 'sliding'])
export const keepClearKind = z.enum([
  'switch',
  'outlet',
  'thermostat',
  'grille',
  'extinguisher',
  'call point',
  'sign',
  'other',
])

const place = { x: millimetres, y: millimetres, width: size, height: size } as const
const margin = z.number().min(0).max(5000)
/** The face of a partition; a where left out. */
const side = z.enum(['a', 'b'])
/** How far it goes into the wall, or stands out of it. */
const depth = z.number().min(0).max(5000)

export const openingRow = z.strictObject({
  id,
  kind: openingKind,
  x: z.number(),
  y: z.number(),
  width: z.number(),
  height: z.number(),
  label: z.string(),
  swing,
  /** The room it leads to. */
  leadsTo: id.nullable(),
  /** The same hole in the wall of the next room. */
  other: id.nullable(),
  /** Of a niche or a reveal; null where nobody measured it. */
  depth: z.number().nullable(),
})

export const keepClearRow = z.strictObject({
  id,
  kind: keepClearKind,
  x: z.number(),
  y: z.number(),
  width: z.number(),
  height: z.number(),
  margin: z.number(),
  label: z.string(),
  reason: z.string(),
  /** How far it stands out from the wall; null where nobody measured it. */
  depth: z.number().nullable(),
  /** A hand must get to it: nothing may hang or stand before it. */
  reachable: z.boolean(),
})

export const fixturesArea = {
  'opening.add': procedure(
    'write',
    'Adds a door, window, passage or niche to a wall.',
    z.strictObject({
      wall: id,
      /** The face that its place and its leaves are said from. */
      side: side.optional(),
      kind: openingKind,
      ...place,
      label: shortText.optional(),
      swing: swing.optional(),
      leadsTo: id.nullable().optional(),
      depth: depth.nullable().optional(),
    }),
    made,
  ),
  'opening.update': procedure(
    'write',
    'Moves or resizes an opening, or says how its leaves turn and which room it leads to.',
    z.strictObject({
      id,
      /** The face that place and leaves are said from. */
      side: side.optional(),
      changes: changes({
        kind: openingKind,
        ...place,
        label: shortText,
        swing,
        leadsTo: id.nullable(),
        depth: depth.nullable(),
      }),
    }),
    updated,
  ),
  'opening.pair': procedure(
    'write',
    'Says that two openings are one hole in the wall between two rooms, so that each leads to the other; null parts them.',
    z.strictObject({ id, other: id.nullable() }),
    done,
  ),
  'opening.remove': procedure('write', 'Removes an opening.', z.strictObject({ id }), done),
  'keepClear.add': procedure(
    'write',
    'Adds something on a wall that works must keep clear of, with its margin.',
    z.strictObject({
      wall: id,
      side: side.optional(),
      kind: keepClearKind,
      ...place,
      margin,
      label: shortText.optional(),
      reason: shortText.optional(),
      depth: depth.nullable().optional(),
      reachable: z.boolean().optional(),
    }),
    made,
  ),
  'keepClear.update': procedure(
    'write',
    'Moves or resizes it, or changes its margin, with a reason; says how deep it is and whether it must stay reachable.',
    z.strictObject({
      id,
      changes: changes({
        kind: keepClearKind,
        ...place,
        margin,
        label: shortText,
        reason: shortText,
        depth: depth.nullable(),
        reachable: z.boolean(),
      }),
    }),
    updated,
  ),
  'keepClear.remove': procedure('write', 'Removes it.', z.strictObject({ id }), done),
} as const
