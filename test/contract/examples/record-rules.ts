/** The house rules of the record as nobody has changed them, written out. */
function rule(key: string, value: number, most: number, says: string, reason: string) {
  const of = { group: 'Condition', unit: 'mm', least: 0, choices: [], source: 'from memory' }
  return { key, value, default: value, most, says, reason, ...of, since: '', by: '', changed: false }
}

export const recordRuleRows = [
  rule(
    'conditionNear',
    20,
    500,
    'Findings of two reports with the same word are one and the same within this distance.',
    'Two hands never mark the same spot twice in the same place; farther apart it may be another.',
  ),
  rule(
    'conditionGrown',
    3,
    100,
    'A finding that is larger than before by more than this has grown.',
    'Less is only drawn or measured otherwise; more is told to the lender.',
  ),
  {
    ...rule(
      'damageOwnerHours',
      24,
      720,
      'The owner of a work is told of damage within this time from when it was found.',
      'Nothing is treated without the owner’s leave, and who hears of it late trusts the next loan less.',
    ),
    unit: 'h',
    least: 0.5,
    source: 'common practice, no source',
  },
]
