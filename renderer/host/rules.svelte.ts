/** The house's rules as the catalogue has them, for every screen that computes with one; the defaults until they are here. */
import { type HangRuleKey, hangRulesFrom } from '../../src/hang/rules.ts'
import { houseRules, type NumberRuleKey } from '../../src/model/house-rules.ts'
import { watchAlways } from './catalogue.svelte.ts'

class Rules {
  private readonly query = watchAlways('rule.list', () => ({}))
  readonly list = $derived(this.query.value?.rules ?? [])
  private readonly values = $derived(new Map(this.list.map(rule => [rule.key, rule.value])))
  /** What marks and backs are judged by. */
  readonly hang = $derived(hangRulesFrom((key: HangRuleKey) => this.figure(key)))

  figure(key: NumberRuleKey): number {
    const value = this.values.get(key)
    return typeof value === 'number' ? value : houseRules[key].value
  }
}

export const rules = new Rules()
