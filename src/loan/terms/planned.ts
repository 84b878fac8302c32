/** What is planned and known of a lent work, for its terms to be held against. Lengths in mm. */
import type { AirSpan } from '../../climate/beyond.ts'
import type { DayAir } from '../../climate/day-air.ts'
import type { Elevation } from '../../contract/areas/walls.ts'
import type { TermWork } from '../../sequence/terms-offered.ts'
import type { Together } from './money.ts'

/** Part of a barrier as its wall sees it: along the wall, and how far its near edge stands before it. */
export interface BarrierSeen {
  readonly from: number
  readonly to: number
  readonly away: number
}

export interface HungPlan {
  /** "Room 1, north". */
  readonly wall: string
  readonly plannedLux: number | null
  /** Edges above the floor under the work; null while its size is not known. */
  readonly lower: number | null
  readonly upper: number | null
  /** From where to where it is along its wall; null likewise. */
  readonly span: readonly [number, number] | null
  readonly method: string | null
  /** Something besides what carries it keeps it: a lock, a plate's screw. */
  readonly kept: boolean
  /** Works next to it on the wall, left and right. */
  readonly beside: readonly TermWork[]
  readonly barriers: readonly BarrierSeen[]
  /** Who said that it hangs, is level, locked, checked. */
  readonly hands: readonly string[]
  /** The days on which they said so. */
  readonly hungOn: readonly string[]
  /** What its label says; empty where nobody has written one. */
  readonly label: string
}

/** Of a loan, and of the record of one of its works while it is lent. Days are dates. */
export interface LoanPeople {
  readonly contacts: readonly { readonly name: string; readonly role: string }[]
  /** In the order of their moments, those set right left out. `people` as they were written. */
  readonly moves: readonly { readonly day: string; readonly people: string; readonly onWall: boolean }[]
  /** Of condition reports; `role` is what they signed as. */
  readonly signed: readonly { readonly day: string; readonly name: string; readonly role: string }[]
}

export interface LentWork {
  /** As wall and sheet call it. */
  readonly called: string
  readonly glazing: Elevation['works'][number]['glazing']
  /** The size that hangs is of this part; null while no size is known. */
  readonly part: string | null
  /** As it hangs, mm; null each while nobody knows it. */
  readonly size: { readonly width: number | null; readonly height: number | null; readonly depth: number | null }
  /** As it hangs, kg. */
  readonly mass: number | null
  /** Null while it stands on no wall of the show. */
  readonly hung: HungPlan | null
  /** The newest reading that was not struck. */
  readonly reading: { readonly lux: number; readonly day: string } | null
  /** The newest that has its ultraviolet, µW/lm. */
  readonly violet: { readonly uv: number; readonly day: string } | null
  /** Fullest 365 days with what is planned, and hours lit at a level that nobody knows. */
  readonly dose: { readonly most: number; readonly unknownHours: number } | null
  /** What loggers of its rooms have shown; null where nothing says from which day on. */
  readonly climate: Climate | null
  /** On its own page: what its label is made of where nobody has written one. */
  readonly creditLine: string
  /** What the works of the term asked are worth together; null where sums are not told. */
  readonly together: readonly Together[] | null
  /** Null where no term is of people. */
  readonly people: LoanPeople | null
}

/** A room while the work was in it, or was planned to be. */
export interface RoomAir {
  readonly room: string
  /** Days of each logger in order, each day once. */
  readonly loggers: readonly (readonly DayAir[])[]
  readonly spans: readonly AirSpan[]
}

/** The air that a work had over the period of its loan. */
export interface Climate {
  /** Empty where nothing says in which room it is. */
  readonly rooms: readonly RoomAir[]
  /** "from 1 March 2031 to 31 March 2031", or "since 1 March 2031". */
  readonly period: string
  /** How many days that is; null without an end. */
  readonly days: number | null
  /** A moment, in seconds UTC, by the clock of the house. */
  readonly said: (moment: number) => string
  readonly dayOf: (moment: number) => number
}

export const termStates = ['holds', 'broken', 'unknown', 'asked'] as const
export type TermState = (typeof termStates)[number]

export interface TermTold {
  /** `unknown` says what is missing, `asked` what a named person is to confirm. */
  readonly state: TermState
  /** A sentence without the term itself: where, and by how much. */
  readonly text: string
  readonly figures: Readonly<Record<string, number | string | null>>
}

export const holds = (text: string, figures: TermTold['figures'] = {}): TermTold => ({ state: 'holds', text, figures })
export const broken = (text: string, figures: TermTold['figures'] = {}): TermTold => ({
  state: 'broken',
  text,
  figures,
})
export const unknown = (text: string): TermTold => ({ state: 'unknown', text, figures: {} })
export const asked = (text: string): TermTold => ({ state: 'asked', text, figures: {} })
