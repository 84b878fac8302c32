/** What a wall sheet is made from: the facts of one face, its marks and findings, and how it shall be printed. */

import type { Elevation } from '../contract/areas/walls.ts'
import type { Finding } from '../contract/shared.ts'
import type { Steps } from '../hang/printing.ts'
import type { MarksOrWhy } from '../model/marks-of-face.ts'
import type { LengthUnit } from './figures.ts'
import type { Paper } from './shapes.ts'

export interface WallSheetQuestion {
  readonly elevation: Elevation
  /** By placement. */
  readonly marks: ReadonlyMap<string, MarksOrWhy>
  /** Height of the level line above the floor at x = 0. */
  readonly datum: number
  /** What is to settle on this wall; what fits is not printed. */
  readonly findings: readonly Finding[]
  readonly unit: LengthUnit
  readonly steps: Steps
  readonly paper: Paper
  readonly revision: number
  /** Earlier revisions, which this one makes void. */
  readonly voids: readonly number[]
  /** When, in words, as it shall stand on the sheet. */
  readonly time: string
  readonly by: string
  /** Where the sheet stands in a set: pages before it and in all. Left out: it stands alone. */
  readonly set?: { readonly before: number; readonly total: number }
}

export function titleOf({ room, wall }: Elevation): string {
  return `${room.name}, ${wall.name}`
}
