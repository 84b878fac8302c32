/** The house rules of light as nobody has changed them, written out. */
function rule(key: string, value: number, sensitivity: string) {
  return {
    key,
    group: 'Light',
    value,
    default: value,
    says: `A work of ${sensitivity} sensitivity receives at most so many lux-hours in a year.`,
    reason: 'No level is harmless and nothing heals in the dark: a budget spends slowly what cannot be got back.',
    unit: 'lx h',
    least: 1,
    most: 10_000_000,
    choices: [],
    source: 'CIE 157:2004, from memory; sources differ (15 000 to 150 000 for the most sensitive)',
    since: '',
    by: '',
    changed: false,
  }
}

export const lightRuleRows = [
  rule('lightBudgetHigh', 15_000, 'high'),
  rule('lightBudgetMedium', 150_000, 'medium'),
  rule('lightBudgetLow', 600_000, 'low'),
  {
    ...rule('uvMost', 75, ''),
    says: 'The light at a work has at most so much ultraviolet, unless the work has a limit of its own.',
    reason: 'Ultraviolet does harm and shows nothing: it is filtered out before light is dimmed.',
    unit: 'µW/lm',
    least: 0,
    most: 10_000,
    source: 'Texas Association of Museums, sheet on light: at most 75 µW/lm, best 0 to 10',
  },
]
