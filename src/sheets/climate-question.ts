/** What the sheet of a room's air is drawn and written from. */
import type { LimitKey, Limits } from '../climate/limits.ts'
import type { Series } from '../climate/series.ts'
import type { ClimateFile, ClimateLogger } from '../contract/areas/climate.ts'
import type { Paper } from './shapes.ts'

export interface ClimateQuestion {
  /** "12 East room". */
  readonly room: string
  /** "from 1 March 2031 to 31 March 2031" */
  readonly period: string
  /** Seconds UTC, the whole of it. */
  readonly from: number
  readonly until: number
  /** Midnights of the period by the clock of the house, both ends counted, with the day as it is written. */
  readonly days: readonly { readonly at: number; readonly words: string; readonly monthBegins: boolean }[]
  /** Beginnings of hours likewise. */
  readonly hours: readonly number[]
  readonly limits: Limits
  /** Limits that the room has of its own; the others are the house's. */
  readonly own: readonly LimitKey[]
  readonly why: string
  readonly loggers: readonly { readonly series: Series; readonly told: ClimateLogger }[]
  readonly files: readonly ClimateFile[]
  readonly imperial: boolean
  readonly paper: Paper
  /** Who made it when. */
  readonly made: string
  readonly when: (moment: string) => string
}
