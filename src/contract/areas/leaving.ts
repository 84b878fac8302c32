/** The end of a show: what is done before each work goes, what is next, what stands in the way, crate by crate. */
import * as z from 'zod'
import { leavingSteps } from '../../record/leaving.ts'
import { procedure } from '../procedure.ts'
import { id } from '../shared.ts'

const step = z.enum(leavingSteps)
const work = z.strictObject({ id, number: z.string(), title: z.string() })

const line = z.strictObject({
  ...work.shape,
  running: z.string(),
  lender: z.string(),
  lent: z.boolean(),
  /** Where the record has it, through every crate; empty where it has it nowhere. */
  where: z.string(),
  /** The crate that it came in. */
  cameIn: z.string(),
  steps: z.array(z.strictObject({ step, done: z.boolean() })),
  next: step.nullable(),
  lacks: z.array(z.strictObject({ code: z.string(), stops: z.boolean(), text: z.string() })),
  /** Its outgoing report, drafted or complete. */
  report: id.nullable(),
  /** Records of damage that are not closed. */
  damage: z.array(z.strictObject({ id, reference: z.string() })),
})
export type LeavingLine = z.output<typeof line>

const crate = z.strictObject({
  id,
  name: z.string(),
  where: z.string(),
  inIt: z.array(work),
  missing: z.array(work),
  strange: z.array(work),
})
export type LeavingCrate = z.output<typeof crate>

export const leavingArea = {
  'leaving.list': procedure(
    'read',
    'Tells how far each work of a show is on its way out, what is next, what is missing, and what lies in each crate.',
    z.strictObject({ exhibition: id }),
    z.strictObject({ lines: z.array(line), crates: z.array(crate) }),
  ),
} as const
