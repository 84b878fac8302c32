/** What a host tells its screens, one way. */
import * as z from 'zod'

export const hostEvent = z.discriminatedUnion('kind', [
  /** The catalogue changed: by an edit of ours (its number), or by another program (null). */
  z.strictObject({ kind: z.literal('changed'), edit: z.int().nullable(), tables: z.array(z.string()) }),
  /** Long work goes on. `total` is null while nobody knows. */
  z.strictObject({
    kind: z.literal('progress'),
    job: z.string(),
    done: z.number(),
    total: z.number().nullable(),
    words: z.string(),
  }),
  /** A write waits for other work to finish. */
  z.strictObject({ kind: z.literal('waiting'), job: z.string().nullable(), waits: z.boolean() }),
  /** Another catalogue is open now: everything shown is stale. */
  z.strictObject({ kind: z.literal('opened'), file: z.string() }),
])
export type HostEvent = z.output<typeof hostEvent>
