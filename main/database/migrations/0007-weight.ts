/**
 * What the visual weight of works is told from: how each picture reads, the colour of a frame, a hand's factor. The
 * tones of a picture follow from its bytes alone, so they are kept by hash and can always be read again; a row without
 * cells says that the picture was tried and can't be read.
 */
import type { Migration } from '../migrate.ts'

export const weight: Migration = {
  version: 7,
  name: 'weight',
  sql: `
CREATE TABLE picture_tone (hash TEXT PRIMARY KEY NOT NULL, cells BLOB) STRICT;
ALTER TABLE work ADD COLUMN frame_colour TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN hand_weight REAL;
`,
}
