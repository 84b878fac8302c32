/** What walls are called, and in which order visitors come to them. */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { change, id, name, updated } from '../shared.ts'

export const routeArea = {
  'route.set': procedure(
    'write',
    'Puts the faces of a show into the visitor’s order; a face that is not in it has none.',
    z.strictObject({
      exhibition: id,
      /** All faces that have a place in the order, first to last; based on the order as it was. */
      order: change(z.array(id).max(5000)),
    }),
    updated,
  ),
  'wall.rename': procedure(
    'write',
    'Names several walls at once, by the compass for instance.',
    z.strictObject({
      walls: z
        .array(z.strictObject({ id, name: change(name) }))
        .min(1)
        .max(5000),
    }),
    updated,
  ),
} as const
