/** The house rules of the crew as nobody has changed them, written out. */

type Bounds = readonly [reason: string, least: number, most: number]

function rule(key: string, value: number, says: string, unit: string, source: string, [reason, least, most]: Bounds) {
  const group = 'Crew'
  return {
    key,
    group,
    value,
    default: value,
    says,
    reason,
    unit,
    least,
    most,
    choices: [],
    source,
    since: '',
    by: '',
    changed: false,
  }
}

export const crewRuleRows = [
  rule('crewTeams', 2, 'Teams of two that hang at the same time, where a show does not say.', '', 'from memory', [
    'How many walls can be hung at once.',
    1,
    50,
  ]),
  rule('crewHours', 6, 'Productive hours of a working day, where a show does not say.', 'h', 'about 6; from memory', [
    'Breaks, clearing and waiting are not in it.',
    0.5,
    24,
  ]),
  rule(
    'crewContingency',
    1,
    'Part of the estimate that is set aside on top of it: 1 is as much again.',
    '×',
    'set aside twice the first estimate; common practice, no source',
    ['First estimates are too low.', 0, 5],
  ),
  rule(
    'hardwareSpare',
    0.125,
    'Part of the hardware that is taken along as spare, where a show does not say.',
    '×',
    '10 to 15 %; from memory',
    ['Screws fall, plugs turn, walls surprise.', 0, 3],
  ),
  rule(
    'aloneKg',
    7,
    'One person alone lifts a work up to this.',
    'kg',
    'guideline figure for arm’s length, elbow to shoulder, L23 (HSE); from memory',
    ['Above it a second person takes the other side. Local rules on lifting come first.', 0, 100],
  ),
  rule('aloneSide', 1000, 'One person alone lifts a work with no side longer.', 'mm', 'from memory', [
    'Nobody can see round a larger one or hold both its ends.',
    0,
    10000,
  ]),
  rule(
    'liftKg',
    150,
    'Up to this a work goes up with a stacker lift and three people at least.',
    'kg',
    'up to 150 kg and about 3.5 × 3 m; common practice, no source',
    ['Above it a hoist is needed.', 1, 2000],
  ),
  rule(
    'liftLongSide',
    3500,
    'The longer side of a work that a stacker lift takes.',
    'mm',
    'up to 150 kg and about 3.5 × 3 m; common practice, no source',
    ['A larger work does not stand on its fork.', 100, 20000],
  ),
  rule(
    'liftShortSide',
    3000,
    'The shorter side of a work that a stacker lift takes.',
    'mm',
    'up to 150 kg and about 3.5 × 3 m; common practice, no source',
    ['A larger work does not stand on its fork.', 100, 20000],
  ),
  rule(
    'hoistKg',
    400,
    'Up to this a work goes up with a hoist; above it only by a competent person’s lifting plan.',
    'kg',
    'common practice, no source',
    ['Beyond it nothing general can be said.', 1, 10000],
  ),
  rule(
    'stepsReach',
    2000,
    'Up to this height fixings are reached from folding steps, above it from a platform.',
    'mm',
    'from memory',
    ['Nobody works from the top of folding steps.', 500, 5000],
  ),
  rule(
    'platformReach',
    3500,
    'Up to this height fixings are reached from a platform, above it from a lift.',
    'mm',
    'from memory',
    ['A higher platform is a scaffold.', 500, 10000],
  ),
  rule(
    'lockRoom',
    300,
    'Room that a lock’s tool needs beside its work, where nobody measured the tool.',
    'mm',
    'from memory',
    ['A neighbour, the floor or a thing on the wall closer than that bars the tool.', 0, 2000],
  ),
  rule('handRoom', 100, 'Width that a hand with a lock’s tool needs.', 'mm', 'from memory', [
    'The tool turns by a quarter, and the hand with it.',
    0,
    1000,
  ]),
  rule('driverRoom', 25, 'Room all round a screw beside a frame for the driver.', 'mm', 'from memory', [
    'A frame beside it keeps the driver from standing straight, and the screw’s head is spoilt.',
    0,
    500,
  ]),
  rule('patchSide', 150, 'Side of the square that is painted over a filled hole.', 'mm', 'from memory', [
    'A smaller patch shows.',
    10,
    2000,
  ]),
]
