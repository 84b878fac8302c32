/**
 * Readings of light are chained by hash as movements are; those that are there already are chained as they stand.
 * Ultraviolet may be what a meter shows of a surface, mW/m², in place of what it shows for each lumen.
 */
import { chainReadings } from '../light-chain.ts'
import type { Migration } from '../migrate.ts'

export const lightChain: Migration = {
  version: 26,
  name: 'light-chain',
  sql: `
ALTER TABLE light_reading ADD COLUMN uv_area REAL;
ALTER TABLE light_reading ADD COLUMN hash TEXT NOT NULL DEFAULT '';
`,
  fill: chainReadings,
}
