/** Every migration in order. A new one is added at the end, with a test from the version before. */
import type { Migration } from '../migrate.ts'
import { foundation } from './0001-foundation.ts'
import { marks } from './0002-marks.ts'

export const migrations: readonly Migration[] = [foundation, marks]
