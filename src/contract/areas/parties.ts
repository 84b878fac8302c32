/** Lenders and other parties. */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { changes, clash, id, shortText, updated } from '../shared.ts'

export const partiesArea = {
  'party.list': procedure(
    'read',
    'Lists lenders and other parties.',
    z.strictObject({}),
    z.strictObject({
      parties: z.array(
        z.strictObject({
          id,
          kind: z.string(),
          name: z.string(),
          contact: z.string(),
          creditLine: z.string(),
          works: z.int(),
        }),
      ),
    }),
  ),
  'party.add': procedure(
    'write',
    'Adds a lender or another party, and where a work is named chooses it as that work’s lender by the same edit.',
    z.strictObject({
      kind: z.enum(['lender', 'owner', 'person', 'house']),
      name: z.string().trim().min(1).max(200),
      contact: shortText.optional(),
      creditLine: shortText.optional(),
      /** The work that it lends, with the lender it had. */
      work: z.strictObject({ id, was: id.nullable() }).optional(),
    }),
    z.strictObject({ id, clashes: z.array(clash) }),
  ),
  'party.update': procedure(
    'write',
    'Changes a party.',
    z.strictObject({
      id,
      changes: changes({ name: z.string().trim().min(1).max(200), contact: shortText, creditLine: shortText }),
    }),
    updated,
  ),
} as const
