/** Loggers' files are chained by hash as movements are; those that are there already are chained as they stand. */
import { chainClimate } from '../climate-chain.ts'
import type { Migration } from '../migrate.ts'

export const climateChain: Migration = {
  version: 23,
  name: 'climate-chain',
  sql: `
ALTER TABLE climate_file ADD COLUMN hash TEXT NOT NULL DEFAULT '';
`,
  fill: chainClimate,
}
