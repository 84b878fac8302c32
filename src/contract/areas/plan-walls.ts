/** Walls on the plan: what two rooms share, and a wall moved with its neighbours. */
import * as z from 'zod'
import { pivots } from '../../plan/turn-wall.ts'
import { procedure } from '../procedure.ts'
import { done, id, millimetres, size } from '../shared.ts'

/** What was measured and says otherwise counts no more; without it the move is refused and names that. */
const setAside = z.boolean().optional()
/**
 * Of a wall that two rooms share this side moves by itself: the wall becomes thicker or thinner by as much, or is no
 * longer one. Without it both its sides go, and the next room's walls beside it grow or shrink.
 */
const alone = z.boolean().optional()

export const planWallsArea = {
  'wall.share': procedure(
    'write',
    'Says that walls of two rooms are the two sides of one, with its thickness, and pairs the doorways through both.',
    z.strictObject({
      id,
      with: id,
      /** Null: nobody measured it; what one of them already has is kept. */
      thickness: size.nullable(),
    }),
    z.strictObject({ doorways: z.int() }),
  ),
  'wall.unshare': procedure(
    'write',
    'Takes back that a wall and one of the next room are the two sides of one; their doorways are parted too.',
    z.strictObject({ id }),
    done,
  ),
  'wall.shift': procedure(
    'write',
    'Moves a wall parallel, outwards or (below 0) into the room, with its side in the next room: their neighbours grow or shrink, all else stays where it stands.',
    z.strictObject({ id, by: millimetres, setAside, alone }),
    done,
  ),
  'wall.turn': procedure(
    'write',
    'Turns a wall about an end or its middle, clockwise on the page, with its side in the next room: their neighbours grow or shrink, all else stays.',
    z.strictObject({ id, about: z.enum(pivots), by: z.number().min(-90).max(90), setAside, alone }),
    done,
  ),
} as const
