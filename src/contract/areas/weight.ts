/** Visual weight: how heavy works look on their walls, where the weight sits, and about what a hang may be balanced. */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { id } from '../shared.ts'

export const weighed = z.strictObject({
  /** m². */
  area: z.number(),
  /** What each adds to every square metre, as a share of it. */
  lightness: z.number(),
  colour: z.number(),
  detail: z.number(),
  hand: z.number(),
  /** m² that it looks like: area × (1 + lightness + colour + detail) × hand. */
  weight: z.number(),
  /** Where it sits from the middle of the work, mm. */
  right: z.number(),
  up: z.number(),
  from: z.enum(['picture', 'area']),
})

/** Pictures of a show that nobody has read yet, and those that can't be read. */
const pictures = z.strictObject({ toRead: z.int(), unreadable: z.int() })

export const weightArea = {
  'wall.weights': procedure(
    'read',
    'Tells how heavy each work on a face looks there, and the axes that its hang may be balanced about.',
    z.strictObject({ exhibition: id, face: id }),
    z.strictObject({
      /** As `#RRGGBB`; a wall that nobody chose a colour for is white. */
      wallColour: z.string(),
      works: z.array(
        z.strictObject({
          placement: id,
          ...weighed.shape,
          /** L* of its picture, 0 to 100; null where that is not known. */
          tone: z.number().nullable(),
        }),
      ),
      axes: z.array(
        z.strictObject({
          kind: z.enum(['middle', 'stretch', 'doorway', 'bench']),
          label: z.string(),
          x: z.number(),
          from: z.number(),
          to: z.number(),
        }),
      ),
      pictures,
    }),
  ),
  'work.weightSeen': procedure(
    'read',
    'Gives a work in pieces, each with how much it weighs for its size, as seen against its wall or against white.',
    z.strictObject({ work: id, exhibition: id.nullable(), face: id.nullable() }),
    z.strictObject({
      /** mm. */
      width: z.number(),
      height: z.number(),
      picture: z.string().nullable(),
      band: z.number(),
      /** Null while the work has no size. */
      weight: weighed.nullable(),
      /** From the middle of the work, mm, y up; `times` its area. */
      pieces: z.array(
        z.strictObject({ x: z.number(), y: z.number(), width: z.number(), height: z.number(), times: z.number() }),
      ),
    }),
  ),
  'picture.weigh': procedure(
    'long',
    'Reads how light, strong and busy the pictures of a show’s works are, where that is not known yet.',
    z.strictObject({ exhibition: id }),
    z.strictObject({ read: z.int(), unreadable: z.int() }),
  ),
}
