/** What a work has received of what house and lenders allow. */
import type { LightBudget, LightLimit } from '../../../src/contract/areas/light.ts'
import { above, type Sensitivity, sensitivityOf, spentOf, violetOf } from '../../../src/light/budget.ts'
import { type Day, dateOf } from '../../../src/light/day.ts'
import type { LitDay } from '../../../src/light/dose.ts'
import { termSaid } from '../../../src/loan/terms/said.ts'
import type { TermKind } from '../../../src/loan/terms/term.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type TermOfWork, termsOfWorks } from '../loans/terms-of-works.ts'
import { rulesOf } from '../rules.ts'
import { rows } from '../sql.ts'

interface Facts {
  readonly id: string
  readonly sensitivity: Sensitivity
  readonly level: number | null
  readonly uv: number | null
}

const date = (day: Day | null) => (day === null ? null : dateOf(day))

/** Limits and budgets of works, read together. */
export class Allowed {
  private readonly rule: ReturnType<typeof rulesOf>
  private readonly facts: ReadonlyMap<string, readonly Facts[]>
  private readonly terms: ReadonlyMap<string, readonly TermOfWork[]>

  constructor(db: ReadHandle, works: readonly string[]) {
    this.rule = rulesOf(db)
    const related = rows<Facts & { readonly wanted: string }>(
      db,
      `SELECT wanted.value AS wanted, other.id, other.sensitivity, other.light_limit AS level, other.uv_limit AS uv
       FROM json_each(:works) AS wanted CROSS JOIN work ON work.id = wanted.value
       JOIN work AS other ON other.id = work.id OR other.id = work.parent OR other.parent = work.id
       ORDER BY wanted.key, other.id`,
      { works: JSON.stringify(works) },
    )
    this.facts = Map.groupBy(related, each => each.wanted)
    const terms = termsOfWorks(db, [...new Set(related.map(({ id }) => id))])
    this.terms = Map.groupBy(terms, each => each.work)
  }

  /** What is told of a work's light, whose days are given in order. */
  told(work: string, days: readonly LitDay[], today: Day) {
    const related = this.facts.get(work) ?? []
    const own = related.find(each => each.id === work)?.sensitivity ?? ''
    const sensitivity = sensitivityOf(
      own,
      related.map(each => each.sensitivity),
    )
    const { used, ever, most, unknownHours } = spentOf(days, null, today)
    const violet = violetOf(days, today)
    return {
      sensitivity,
      budgets: this.budgets(work, sensitivity, days, today),
      ...{ used, ever, most, unknownHours, violet },
      levels: this.limits(work, 'light', least(related.map(each => each.level)), days),
      violets: this.limits(work, 'uv', least(related.map(each => each.uv)) ?? Number(this.rule('uvMost')), days),
    }
  }

  private asked(work: string, kind: TermKind) {
    const terms = (this.facts.get(work) ?? []).flatMap(({ id }) => this.terms.get(id) ?? [])
    return terms.flatMap(term => {
      if (term.kind !== kind || term.high === null) return []
      const { id, loan, loanNumber, partyName } = term
      return [{ most: term.high, asked: { term: id, loan, loanNumber, partyName, said: termSaid(term, String) } }]
    })
  }

  private budgets(work: string, sensitivity: Sensitivity, days: readonly LitDay[], today: Day): LightBudget[] {
    const house = this.houseBudget(sensitivity)
    return [...(house === null ? [] : [{ most: house, asked: null }]), ...this.asked(work, 'dose')]
      .sort((a, b) => a.most - b.most)
      .map(({ most, asked }) => {
        const { ends, endsIfLonger } = spentOf(days, most, today)
        return { luxHours: most, asked, ends: date(ends), endsIfLonger: date(endsIfLonger) }
      })
  }

  private limits(work: string, kind: 'light' | 'uv', house: number | null, days: readonly LitDay[]): LightLimit[] {
    return [...(house === null ? [] : [{ most: house, asked: null }]), ...this.asked(work, kind)]
      .sort((a, b) => a.most - b.most)
      .map(({ most, asked }) => {
        const { first, ...hours } = above(days, kind === 'uv' ? 'uv' : 'lux', most)
        return { most, asked, ...hours, first: date(first) }
      })
  }

  private houseBudget(sensitivity: Sensitivity): number | null {
    if (sensitivity === 'high') return Number(this.rule('lightBudgetHigh'))
    if (sensitivity === 'medium') return Number(this.rule('lightBudgetMedium'))
    return sensitivity === 'low' ? Number(this.rule('lightBudgetLow')) : null
  }
}

function least(figures: readonly (number | null)[]): number | null {
  const known = figures.flatMap(each => (each === null ? [] : [each]))
  return known.length === 0 ? null : Math.min(...known)
}
