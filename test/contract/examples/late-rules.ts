/** The house rules of late changes as nobody has changed them, written out. */

const source = 'common practice, no source'

function rule(key: string, value: number, most: number, says: string, reason: string) {
  const of = { group: 'Late changes', unit: '', least: 0, choices: [], source, since: '', by: '', changed: false }
  return { key, value, default: value, most, says, reason, ...of }
}

export const lateRuleRows = [
  rule(
    'lateHungMoved',
    1000,
    100_000,
    'Points for each work moved that hangs already.',
    'It is taken down, carried and hung again; a work that hangs is moved last of all.',
  ),
  rule(
    'lateNewHole',
    30,
    10_000,
    'Points for each hole that must be drilled anew.',
    'Measured, drilled and cleaned up, in front of works that hang.',
  ),
  rule(
    'lateDeadHole',
    20,
    10_000,
    'Points for each hole that nothing hangs on any more.',
    'It is filled and painted, and shows until the paint is dry.',
  ),
  rule('lateMoved', 10, 10_000, 'Points for each work moved that does not hang yet.', 'Its marks are made anew.'),
  rule(
    'lateLabel',
    5,
    10_000,
    'Points for each label that comes to another place.',
    'A label peeled off is often a label printed again.',
  ),
  rule(
    'lateGapSpread',
    0.2,
    1000,
    'Points for each millimetre between the widest and the narrowest gap of the row.',
    'An uneven row is seen, but less than a hole.',
  ),
  rule(
    'lateEnds',
    0.1,
    1000,
    'Points for each millimetre that the row’s outer edges move.',
    'Margins against a corner are seen too.',
  ),
  rule(
    'lateOffLine',
    0.5,
    1000,
    'Points for each millimetre that a work hangs off its own line.',
    'A work off the line is seen at once.',
  ),
]
