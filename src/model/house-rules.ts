/**
 * House rules: every default that a computation uses, with its unit, why there is such a rule, its bounds and where the
 * value comes from. An institution replaces any of them; a computation names the ones it used. Values without a
 * published source say so.
 */
import { climateRules } from './climate-rules.ts'
import { crewRules } from './crew-rules.ts'
import { labelRules } from './label-rules.ts'
import { lateRules } from './late-rules.ts'
import { lightRules } from './light-rules.ts'
import { planRules } from './plan-rules.ts'
import { recordRules } from './record-rules.ts'
import { sequenceRules } from './sequence-rules.ts'
import { surveyRules } from './survey-rules.ts'
import { weightRules } from './weight-rules.ts'

export const ruleUnits = [
  'mm',
  'kg',
  '°',
  '×',
  'of its width',
  'of its height',
  'h',
  'lx h',
  'µW/lm',
  '%',
  '°C',
  '',
] as const
export type RuleUnit = (typeof ruleUnits)[number]

/** The headings that rules stand under, in their order. */
export const ruleGroups = [
  'Where works hang',
  'Room between works',
  'Visual weight',
  'Sequence',
  'Marks',
  'Loads',
  'Labels',
  'Measures and sheets',
  'Crew',
  'Late changes',
  'Condition',
  'Light',
  'Climate',
] as const
export type RuleGroup = (typeof ruleGroups)[number]

interface RuleWords {
  readonly group: RuleGroup
  readonly says: string
  /** What it guards against or decides. */
  readonly reason: string
  readonly unit: RuleUnit
  readonly source: string
}

export interface NumberRule extends RuleWords {
  readonly value: number
  /** Bounds that a house's own value keeps: beyond them a computation has no answer or nobody means it. */
  readonly least: number
  readonly most: number
}

export interface ChoiceRule extends RuleWords {
  readonly value: string
  readonly choices: readonly { readonly value: string; readonly label: string }[]
}

export type HouseRule = NumberRule | ChoiceRule

export const houseRules = {
  centreLine: {
    group: 'Where works hang',
    says: 'Centres of works hang at this height above the floor.',
    reason: 'One line through all works makes a row calm. A wall may have its own.',
    value: 1480,
    unit: 'mm',
    least: 300,
    most: 4000,
    source: 'within the 49 to 66 in that are in use; common practice, no source',
  },
  heightRule: {
    group: 'Where works hang',
    says: 'What of a work stands on the line: its centre, top, bottom, or a point a fraction of its height down.',
    reason: 'A new wall begins with it; a wall and a work may each have another.',
    value: 'centre',
    unit: '',
    choices: [
      { value: 'centre', label: 'its centre' },
      { value: 'top', label: 'its top' },
      { value: 'bottom', label: 'its bottom' },
      { value: 'eye', label: 'where the eye falls' },
    ],
    source: 'common practice, no source',
  },
  eyeFraction: {
    group: 'Where works hang',
    says: 'How far down a work the eye falls where works hang to the eye: half is the centre.',
    reason: 'Tall works hang lower by it than by their centre.',
    value: 0.5,
    unit: 'of its height',
    least: 0,
    most: 1,
    source: 'common practice, no source',
  },
  minimumGap: {
    group: 'Room between works',
    says: 'Neighbouring works stand at least this far apart.',
    reason: 'Closer, frames touch when one is lifted off, and a label has no place.',
    value: 75,
    unit: 'mm',
    least: 0,
    most: 5000,
    source: '3 to 6 in for a single row; common practice, no source',
  },
  minimumMargin: {
    group: 'Room between works',
    says: 'Works stay at least this far from the end of a wall.',
    reason: 'People brush along corners and door frames.',
    value: 150,
    unit: 'mm',
    least: 0,
    most: 5000,
    source: '6 to 12 in clear at both ends; common practice, no source',
  },
  liftOn: {
    group: 'Room between works',
    says: 'Free height needed above a work to lift it onto its fixing.',
    reason: 'Under a ceiling or a beam a work cannot be raised over its hooks or cleat.',
    value: 25,
    unit: 'mm',
    least: 0,
    most: 1000,
    source: '10 to 25 mm for a cleat; from memory',
  },
  ...weightRules,
  ...sequenceRules,
  markFromEnd: {
    group: 'Marks',
    says: 'A hole is at least this far from the end of a wall or a board joint.',
    reason: 'Near an edge plaster and board break out.',
    value: 25,
    unit: 'mm',
    least: 0,
    most: 1000,
    source: 'from memory',
  },
  besideService: {
    group: 'Marks',
    says: 'A hole above or below a switch or an outlet stays this far to its side, or is asked about.',
    reason: 'Cables run straight up and down from them. Look for them before drilling in any case.',
    value: 25,
    unit: 'mm',
    least: 0,
    most: 1000,
    source: 'from memory',
  },
  boardFace: {
    group: 'Marks',
    says: 'The face of a drywall is this thick, with or without ply behind it.',
    reason: 'What a nail or screw has in stud or backing is its length less this. Measure it on the spot.',
    value: 12.7,
    unit: 'mm',
    least: 3,
    most: 100,
    source: '1/2 in board; from memory',
  },
  plasterFace: {
    group: 'Marks',
    says: 'The face of a plaster wall is this thick.',
    reason: 'What a nail or screw has in stud or backing is its length less this. Measure it on the spot.',
    value: 22,
    unit: 'mm',
    least: 3,
    most: 100,
    source: 'plaster on lath; from memory',
  },
  leastBehind: {
    group: 'Marks',
    says: 'A nail or screw finds at least this much stud or backing behind the face.',
    reason: 'One that is shorter holds by the face alone.',
    value: 18,
    unit: 'mm',
    least: 1,
    most: 200,
    source: 'the thickness of 3/4 in ply, the usual backing; from memory',
  },
  nailsIn: {
    group: 'Marks',
    says: 'Nails under a stretcher bar stand this far in from each side of the work.',
    reason: 'A third in carries an ordinary bar; a quarter is steadier for a long one. Braces move a nail aside.',
    value: 1 / 3,
    unit: 'of its width',
    least: 0.05,
    most: 0.45,
    source: 'a third and a quarter are both in use; common practice, no source',
  },
  clearOfBrace: {
    group: 'Marks',
    says: 'A nail under a stretcher bar stays this far from a brace or a key, beside its own half thickness.',
    reason: 'A nail against a brace or a key splits it, or lifts the bar off the other nail.',
    value: 10,
    unit: 'mm',
    least: 0,
    most: 200,
    source: 'from memory',
  },
  cleatShorter: {
    group: 'Marks',
    says: 'The wall’s part of a cleat is this much shorter than the work’s, where nobody measured it.',
    reason: 'The work slides sideways on it by half of this to either side.',
    value: 19.05,
    unit: 'mm',
    least: 0,
    most: 500,
    source: '1/2 to 1 in; common practice, no source',
  },
  screwsApart: {
    group: 'Marks',
    says: 'Screws of a cleat’s wall part are at most this far apart where no studs decide.',
    reason: 'The bar must not bow between them.',
    value: 127,
    unit: 'mm',
    least: 25,
    most: 1000,
    source: '4 to 6 in; common practice, no source',
  },
  houseFactor: {
    group: 'Loads',
    says: 'A fixing carries at most its rated load divided by this.',
    reason: 'A rating holds for the maker’s wall and a good installation; yours may be worse.',
    value: 4,
    unit: '×',
    least: 1,
    most: 20,
    source: 'framing trade; common practice, no source',
  },
  leastWireAngle: {
    group: 'Loads',
    says: 'A wire’s legs stand at least this steep, counted from the horizontal.',
    reason: 'At 30° each ring is pulled with the whole weight of the work; flatter, with more.',
    value: 30,
    unit: '°',
    least: 1,
    most: 89,
    source: 'the load factor 1 / sin of published sling tables; the limit is common practice, no source',
  },
  hookHidden: {
    group: 'Loads',
    says: 'A wire on its hooks stays at least this far below the top edge of its work.',
    reason: 'Nearer, the hooks show over the frame.',
    value: 50.8,
    unit: 'mm',
    least: 0,
    most: 1000,
    source: '2 in; common practice, no source',
  },
  onePersonKg: {
    group: 'Loads',
    says: 'A heavier work is carried and hung by two people or more.',
    reason: 'It is said on the wall sheet. Local rules on lifting come first.',
    value: 30,
    unit: 'kg',
    least: 1,
    most: 100,
    source: 'common practice, no source',
  },
  onePersonSize: {
    group: 'Loads',
    says: 'A larger work is carried and hung by two people or more, whatever it weighs.',
    reason: 'Nobody can see round it or hold both its ends.',
    value: 1500,
    unit: 'mm',
    least: 100,
    most: 10_000,
    source: 'common practice, no source',
  },
  liftingPlanKg: {
    group: 'Loads',
    says: 'For a heavier work a competent person makes the lifting plan.',
    reason: 'It is said with the marks and on the wall sheet. Local rules on lifting come first.',
    value: 150,
    unit: 'kg',
    least: 1,
    most: 2000,
    source: 'common practice, no source',
  },
  measureTolerance: {
    group: 'Measures and sheets',
    says: 'Two ways to one spacing on the back may differ by this before it is measured again.',
    reason: 'Hangers that are off by more do not meet their fixings.',
    value: 1,
    unit: 'mm',
    least: 0,
    most: 50,
    source: 'common practice, no source',
  },
  dropTolerance: {
    group: 'Measures and sheets',
    says: 'Two drops of one work, or the floor beneath it, may be off level by this before it is a finding.',
    reason: 'More than this is seen: the work hangs crooked, or wrong against its neighbours.',
    value: 2,
    unit: 'mm',
    least: 0,
    most: 50,
    source: 'common practice, no source',
  },
  differsBy: {
    group: 'Measures and sheets',
    says: 'Listed and measured sizes that differ by more than this are a finding.',
    reason: 'Frames are larger than lists say; gaps and marks follow the measured size.',
    value: 3,
    unit: 'mm',
    least: 0,
    most: 500,
    source: 'from memory',
  },
  closesWithin: {
    group: 'Measures and sheets',
    says: 'A room whose measured walls fail to close by more than this has one to measure again.',
    reason: 'A tape read wrong shows here before works are hung by it.',
    value: 20,
    unit: 'mm',
    least: 0,
    most: 2000,
    source: 'common practice, no source',
  },
  ...surveyRules,
  ...planRules,
  sheetStepMm: {
    group: 'Measures and sheets',
    says: 'Sheets in millimetres round to this step.',
    reason: 'What a pencil and a tape can keep.',
    value: 1,
    unit: 'mm',
    least: 0.1,
    most: 10,
    source: 'common practice, no source',
  },
  ...labelRules,
  ...crewRules,
  ...lateRules,
  ...recordRules,
  ...lightRules,
  ...climateRules,
} as const satisfies Readonly<Record<string, HouseRule>>

export type HouseRuleKey = keyof typeof houseRules
/** Rules whose value is a figure. */
export type NumberRuleKey = {
  [K in HouseRuleKey]: (typeof houseRules)[K]['value'] extends number ? K : never
}[HouseRuleKey]

export function isHouseRule(key: string): key is HouseRuleKey {
  return Object.hasOwn(houseRules, key)
}
