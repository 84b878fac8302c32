/** House rules as the catalogue has them: the program's defaults where nobody has set another. */
import type { Output, Received } from '../../src/contract/contract.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import type { LabelRules } from '../../src/layout/labels-shape.ts'
import { type HouseRule, type HouseRuleKey, houseRules, isHouseRule } from '../../src/model/house-rules.ts'
import { ruleProblem, saidInMillimetres, sayRule } from '../../src/model/rule-value.ts'
import type { ReadHandle } from '../database/handles.ts'
import { same } from './change.ts'
import type { Reading, ServicesOf, Writing } from './service.ts'
import { insert, row, rows, update, value } from './sql.ts'

interface Stored {
  readonly id: string
  readonly value: string
  readonly source: string
  readonly since: string
  readonly by: string
}

type Said = number | string

function saidBy(key: HouseRuleKey, stored: string | undefined): Said {
  return stored === undefined ? houseRules[key].value : JSON.parse(stored)
}

function said(db: ReadHandle, key: HouseRuleKey): Said {
  return saidBy(key, value<string>(db, 'SELECT value FROM house_rule WHERE id = :key', { key }))
}

/** The number a rule is at. */
export function ruleNumber(db: ReadHandle, key: HouseRuleKey): number {
  return Number(said(db, key))
}

export function ruleText(db: ReadHandle, key: HouseRuleKey): string {
  return String(said(db, key))
}

/** All rules by one statement, for who asks for dozens. */
export function rulesOf(db: ReadHandle): (key: HouseRuleKey) => Said {
  const stored = new Map(
    rows<Pick<Stored, 'id' | 'value'>>(db, 'SELECT id, value FROM house_rule').map(rule => [rule.id, rule.value]),
  )
  return key => saidBy(key, stored.get(key))
}

/** The rules of labels as the house has them. */
export function labelRulesOf(rule: (key: HouseRuleKey) => Said): LabelRules {
  return {
    line: Number(rule('labelLine')),
    level: rule('labelLevel') === 'bottom' ? 'bottom' : 'line',
    lowest: Number(rule('labelLowest')),
    highest: Number(rule('labelHighest')),
    gap: Number(rule('labelGap')),
    clear: Number(rule('labelClear')),
    type: Number(rule('labelType')),
    perLine: Math.round(Number(rule('labelPerLine'))),
  }
}

function list({ db }: Reading): Output<'rule.list'> {
  const stored = new Map(rows<Stored>(db, 'SELECT id, value, source, since, by FROM house_rule').map(r => [r.id, r]))
  return {
    rules: Object.entries(houseRules).map(([key, rule]) => {
      const own = stored.get(key)
      return {
        key,
        group: rule.group,
        value: own === undefined ? rule.value : JSON.parse(own.value),
        default: rule.value,
        says: rule.says,
        reason: rule.reason,
        unit: rule.unit,
        least: 'least' in rule ? rule.least : null,
        most: 'most' in rule ? rule.most : null,
        choices: 'choices' in rule ? rule.choices.map(choice => ({ ...choice })) : [],
        source: own?.source ?? rule.source,
        since: own?.since ?? '',
        by: own?.by ?? '',
        changed: own !== undefined,
      }
    }),
  }
}

function set(writing: Writing, input: Received<'rule.set'>): Output<'rule.set'> {
  const { key, was, to, source } = input
  if (!isHouseRule(key)) throw new Refusal('not-found', `There is no house rule “${key}”.`, { field: 'key' })
  const rule: HouseRule = houseRules[key]
  const problem = ruleProblem(rule, to)
  if (problem !== null) throw new Refusal('bad-input', problem, { field: 'to' })
  const stored = row<Stored>(writing.db, 'SELECT * FROM house_rule WHERE id = :key', { key })
  const now = stored === undefined ? rule.value : JSON.parse(stored.value)
  if (!same(now, was)) {
    throw new Refusal('clash', 'Somebody else has changed this rule meanwhile.', {
      field: 'to',
      details: { was, yours: to, theirs: now },
    })
  }
  writing.label(`House rule: ${rule.says.replace(/\.$/, '')} → ${sayRule(rule, to, saidInMillimetres)}`)
  const columns = { value: JSON.stringify(to), source, since: writing.now(), by: writing.person?.name ?? '' }
  if (stored === undefined) insert(writing.db, 'house_rule', { id: key, ...columns })
  else update(writing.db, 'house_rule', key, columns)
  return { done: true }
}

export const rulesServices: ServicesOf<'rule.list' | 'rule.set'> = { 'rule.list': list, 'rule.set': set }
