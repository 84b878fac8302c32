/**
 * House rules: every default that a computation uses, with its unit and where it comes from. An institution replaces
 * any of them; a computation names the ones it used. Values without a published source say so.
 */
import { crewRules } from './crew-rules.ts'

export interface HouseRule {
  readonly says: string
  readonly value: number | string
  readonly unit: 'mm' | 'kg' | 'h' | '' | 'lx' | '×' | '°'
  readonly source: string
}

export const houseRules = {
  centreLine: {
    says: 'Centres of works hang at this height above the floor.',
    value: 1480,
    unit: 'mm',
    source: 'within the 49 to 66 in that are in use; common practice, no source',
  },
  heightRule: {
    says: 'What of a work stands on the line: its centre, top, bottom, or a point a fraction of its height down.',
    value: 'centre',
    unit: '',
    source: 'common practice, no source',
  },
  eyeFraction: {
    says: 'How far down a work the eye falls where works hang to the eye: 0.5 is the centre.',
    value: 0.5,
    unit: '',
    source: 'common practice, no source',
  },
  minimumGap: {
    says: 'Neighbouring works stand at least this far apart.',
    value: 75,
    unit: 'mm',
    source: '3 to 6 in for a single row; common practice, no source',
  },
  minimumMargin: {
    says: 'Works stay at least this far from the end of a wall.',
    value: 150,
    unit: 'mm',
    source: '6 to 12 in clear at both ends; common practice, no source',
  },
  houseFactor: {
    says: 'A fixing carries at most its rated load divided by this.',
    value: 4,
    unit: '×',
    source: 'framing trade; common practice, no source',
  },
  markFromEnd: {
    says: 'A hole is at least this far from the end of a wall or a board joint.',
    value: 25,
    unit: 'mm',
    source: 'from memory',
  },
  liftOn: {
    says: 'Free height needed above a work to lift it onto its fixing.',
    value: 25,
    unit: 'mm',
    source: '10 to 25 mm for a cleat; from memory',
  },
  sheetStepMm: {
    says: 'Sheets in millimetres round to this step.',
    value: 1,
    unit: 'mm',
    source: 'common practice, no source',
  },
  differsBy: {
    says: 'Listed and measured sizes that differ by more than this are a finding.',
    value: 3,
    unit: 'mm',
    source: 'from memory',
  },
  closesWithin: {
    says: 'A room whose measured walls fail to close by more than this has one to measure again.',
    value: 20,
    unit: 'mm',
    source: 'common practice, no source',
  },
  ...crewRules,
} as const satisfies Readonly<Record<string, HouseRule>>

export type HouseRuleKey = keyof typeof houseRules

export function isHouseRule(key: string): key is HouseRuleKey {
  return Object.hasOwn(houseRules, key)
}
