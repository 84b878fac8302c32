/** House rules of light: what a work may receive in a year, by how sensitive it is. */
import type { HouseRule } from './house-rules.ts'

const source = 'CIE 157:2004, from memory; sources differ (15 000 to 150 000 for the most sensitive)'
const reason = 'No level is harmless and nothing heals in the dark: a budget spends slowly what cannot be got back.'

export const lightRules = {
  lightBudgetHigh: {
    group: 'Light',
    says: 'A work of high sensitivity receives at most so many lux-hours in a year.',
    reason,
    value: 15_000,
    unit: 'lx h',
    least: 1,
    most: 10_000_000,
    source,
  },
  lightBudgetMedium: {
    group: 'Light',
    says: 'A work of medium sensitivity receives at most so many lux-hours in a year.',
    reason,
    value: 150_000,
    unit: 'lx h',
    least: 1,
    most: 10_000_000,
    source,
  },
  lightBudgetLow: {
    group: 'Light',
    says: 'A work of low sensitivity receives at most so many lux-hours in a year.',
    reason,
    value: 600_000,
    unit: 'lx h',
    least: 1,
    most: 10_000_000,
    source,
  },
  uvMost: {
    group: 'Light',
    says: 'The light at a work has at most so much ultraviolet, unless the work has a limit of its own.',
    reason: 'Ultraviolet does harm and shows nothing: it is filtered out before light is dimmed.',
    value: 75,
    unit: 'µW/lm',
    least: 0,
    most: 10_000,
    source: 'Texas Association of Museums, sheet on light: at most 75 µW/lm, best 0 to 10',
  },
} as const satisfies Readonly<Record<string, HouseRule>>
