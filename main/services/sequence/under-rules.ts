/** The planner's question under the rules of the show, and whether they can hold together at all. */
import { facingBays } from '../../../src/sequence/can-hold.ts'
import { type Checked, contradictionAmong } from '../../../src/sequence/contradiction.ts'
import { chainsOf, givenRules, type RuledShow } from '../../../src/sequence/given-rules.ts'
import type { HangRule } from '../../../src/sequence/hang-rule.ts'
import type { Problem } from '../../../src/sequence/problem.ts'
import { contradictionSentence } from '../../../src/sequence/rule-sentence.ts'
import { ruledShow, spotsOf } from '../../../src/sequence/ruled-show.ts'
import { barOn } from '../../../src/sequence/served-on.ts'
import { firstAfter, neighbourAt, staysOn, stretchesIn } from '../../../src/sequence/stretches.ts'
import { facingOf, type Grounds, type Ruling, runsOf } from './ruling.ts'

interface PlannedShow {
  readonly show: RuledShow
  /** By a work's place in the question, its place among those that can be planned with. */
  readonly places: ReadonlyMap<number, number>
}

function plannedShow(grounds: Grounds): PlannedShow {
  const { works, walls, sections, margin, gap } = grounds.question
  const stretches = stretchesIn(works, walls)
  const sized = works.flatMap((work, index) =>
    work.width === null || work.height === null ? [] : [{ ...work, width: work.width, height: work.height, index }],
  )
  const places = new Map(sized.map(({ index }, place) => [index, place] as const))
  const placeOf = new Map(sized.map(({ entry }, place) => [entry, place] as const))
  const staying = walls.map(wall => ({
    face: wall.wall.face,
    works: staysOn(wall).flatMap(({ entry, x }) => {
      const work = placeOf.get(entry)
      return work === undefined ? [] : [{ work, x, width: sized[work]?.width ?? 0 }]
    }),
  }))
  const at = new Map(staying.flatMap(({ face, works: own }) => own.map(({ work, x }) => [work, { face, x }] as const)))
  const standing = sized.map(({ width }, place) => ({ width, stays: at.get(place) ?? null }))
  const bays = stretches.map(({ elevation, from, to }) => {
    const { face } = elevation.wall
    const leftOf = neighbourAt(standing, face, from, 'right')
    return { face, from, to, margin, gap, leftOf, rightOf: neighbourAt(standing, face, to, 'left') }
  })
  const planned = sized.map(({ width, height, section }) => ({
    width,
    section: sections.findIndex(({ id }) => id === section),
    could: stretches.map(stretch => barOn(stretch, { width, height, limit: null }, margin) === null),
  }))
  const runs = runsOf(grounds.question)
  const before = (work: number) => firstAfter(stretches, at.get(work) ?? { face: '', x: 0 })
  return { show: ruledShow(planned, bays, runs, spotsOf(staying, runs), before, facingOf(grounds)), places }
}

/** Rules that a planner has to keep: those in force, of works that have a size; a light limit of works that hang anyway is a finding. */
function kept({ show, places }: PlannedShow, rulings: readonly Ruling[]): HangRule[] {
  return rulings.flatMap(({ rule, rests, stored }) => {
    if (rests !== '' || stored?.inForce === false) return []
    const works = rule.works.flatMap(work => places.get(work) ?? [])
    const own = rule.kind === 'light' ? works.filter(work => show.works[work]?.stays === null) : works
    return own.length === 0 ? [] : [{ ...rule, works: own }]
  })
}

/** The same question, with bays barred and what must hold between works. */
export function underRules(problem: Problem, grounds: Grounds, rulings: readonly Ruling[]): Problem {
  const planned = plannedShow(grounds)
  const { rules, barred } = givenRules(planned.show, kept(planned, rulings))
  return {
    ...problem,
    rules,
    facing: rules.notFacing.length === 0 ? [] : facingBays(planned.show),
    chains: chainsOf(planned.show),
    works: problem.works.map((work, index) => ({
      ...work,
      served: work.served.map((share, bay) => (barred[index]?.[bay] === true ? null : share)),
    })),
  }
}

export interface Contradicting {
  readonly rules: string[]
  readonly says: string
  readonly minimal: boolean
}

export interface RulesChecked {
  readonly contradiction: Contradicting | null
  readonly answered: boolean
}

/** @param added a rule that stays in the set where it is part of any */
export function checkRules(grounds: Grounds, rulings: readonly Ruling[], added: string | null = null): RulesChecked {
  const planned = plannedShow(grounds)
  const rules = kept(planned, rulings)
  const ordered = [...rules.filter(({ id }) => id !== added), ...rules.filter(({ id }) => id === added)]
  const { contradiction, answered }: Checked = contradictionAmong(planned.show, ordered)
  if (contradiction === null) return { contradiction, answered }
  const named = rulings.filter(({ rule }) => contradiction.rules.includes(rule.id))
  const says = contradictionSentence(
    named.map(ruling => ruling.says),
    named.some(({ stored }) => stored === null),
  )
  return { contradiction: { rules: named.map(({ rule }) => rule.id), says, minimal: contradiction.minimal }, answered }
}
