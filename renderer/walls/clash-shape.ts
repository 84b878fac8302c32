/** A place as a clash carries it: JSON from the host, read again before it is used. */
import * as zod from 'zod'
import { placementRule } from '../../src/contract/areas/walls.ts'

export const clashPlace = zod.object({
  face: zod.string(),
  x: zod.number(),
  rule: placementRule,
  y: zod.number().nullable(),
})
