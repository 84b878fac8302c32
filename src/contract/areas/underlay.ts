/** Pictures of plans under the plan of a storey: to draw over, never to measure from. */
import * as z from 'zod'
import { scaleBounds } from '../../plan/underlay.ts'
import { procedure } from '../procedure.ts'
import { changes, degrees, done, handle, hash, id, millimetres, size, updated } from '../shared.ts'

const storey = z.string().trim().max(60)
const at = z.tuple([millimetres, millimetres])
const mmPerPx = z.number().min(scaleBounds.least).max(scaleBounds.most)

export const underlayRow = z.strictObject({
  id,
  storey: z.string(),
  name: z.string(),
  hash,
  widthPx: z.int(),
  heightPx: z.int(),
  /** Its upper left corner in the building’s coordinates. */
  at: z.tuple([z.number(), z.number()]),
  /** Degrees clockwise on the page. */
  turn: z.number(),
  /** Millimetres of the house in a pixel. */
  mmPerPx: z.number(),
  shown: z.boolean(),
})
export type UnderlayRow = z.output<typeof underlayRow>

export const underlayArea = {
  'underlay.list': procedure(
    'read',
    'Lists the pictures that lie under the plan, with their place and scale.',
    z.strictObject({}),
    z.strictObject({ underlays: z.array(underlayRow) }),
  ),
  'underlay.add': procedure(
    'long',
    'Lays a picture of a plan under a storey; it is kept by its hash, as all pictures are. Scale it by two points then.',
    z.strictObject({ handle, storey: storey.optional(), at: at.optional(), mmPerPx: mmPerPx.optional() }),
    underlayRow,
  ),
  'underlay.update': procedure(
    'write',
    'Moves, turns or scales a picture under the plan, hides or shows it.',
    z.strictObject({ id, changes: changes({ at, turn: degrees, mmPerPx, shown: z.boolean(), storey }) }),
    updated,
  ),
  'underlay.scale': procedure(
    'write',
    'Scales a picture by two of its points as they lie on the plan and their true distance; the first stays in place.',
    z.strictObject({ id, from: at, to: at, distance: size }),
    underlayRow,
  ),
  'underlay.remove': procedure(
    'write',
    'Takes a picture off the plan; its file is kept.',
    z.strictObject({ id }),
    done,
  ),
} as const
