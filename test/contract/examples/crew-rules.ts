/** The house rules of the crew as nobody has changed them, written out. */

function rule(key: string, value: number, says: string, unit: string, source: string) {
  return { key, value, says, unit, source, since: '', by: '', changed: false }
}

export const crewRuleRows = [
  rule('crewTeams', 2, 'Teams of two that hang at the same time, where a show does not say.', '', 'from memory'),
  rule('crewHours', 6, 'Productive hours of a working day, where a show does not say.', 'h', 'about 6; from memory'),
  rule(
    'crewContingency',
    1,
    'Part of the estimate that is set aside on top of it: 1 is as much again.',
    '×',
    'set aside twice the first estimate; common practice, no source',
  ),
  rule(
    'hardwareSpare',
    0.125,
    'Part of the hardware that is taken along as spare, where a show does not say.',
    '×',
    '10 to 15 %; from memory',
  ),
  rule(
    'aloneKg',
    7,
    'One person alone lifts a work up to this.',
    'kg',
    'guideline figure for arm’s length, elbow to shoulder, L23 (HSE); from memory',
  ),
  rule('aloneSide', 1000, 'One person alone lifts a work with no side longer.', 'mm', 'from memory'),
  rule(
    'handKg',
    30,
    'Up to this a work is lifted by hand.',
    'kg',
    'about 30 kg and 1.5 m square; common practice, no source',
  ),
  rule(
    'handSide',
    1500,
    'A work with no side longer is lifted by hand.',
    'mm',
    'about 30 kg and 1.5 m square; common practice, no source',
  ),
  rule(
    'liftKg',
    150,
    'Up to this a work goes up with a stacker lift and three people at least.',
    'kg',
    'up to 150 kg and about 3.5 × 3 m; common practice, no source',
  ),
  rule(
    'liftLongSide',
    3500,
    'The longer side of a work that a stacker lift takes.',
    'mm',
    'up to 150 kg and about 3.5 × 3 m; common practice, no source',
  ),
  rule(
    'liftShortSide',
    3000,
    'The shorter side of a work that a stacker lift takes.',
    'mm',
    'up to 150 kg and about 3.5 × 3 m; common practice, no source',
  ),
  rule(
    'hoistKg',
    400,
    'Up to this a work goes up with a hoist; above it only by a competent person’s lifting plan.',
    'kg',
    'common practice, no source',
  ),
  rule(
    'stepsReach',
    2000,
    'Up to this height fixings are reached from folding steps, above it from a platform.',
    'mm',
    'from memory',
  ),
  rule(
    'platformReach',
    3500,
    'Up to this height fixings are reached from a platform, above it from a lift.',
    'mm',
    'from memory',
  ),
  rule('lockRoom', 300, 'Free height that a lock’s tool needs below the work.', 'mm', 'from memory'),
  rule('patchSide', 150, 'Side of the square that is painted over a filled hole.', 'mm', 'from memory'),
]
