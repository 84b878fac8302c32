/** The house rules of surveying and of the plan as nobody has changed them, written out. */

const memory = 'from memory'

function rule(
  key: string,
  value: number,
  unit: string,
  bounds: readonly [number, number],
  says: string,
  reason: string,
  source: string,
) {
  const [least, most] = bounds
  const of = { group: 'Measures and sheets', choices: [], since: '', by: '', changed: false }
  return { key, value, default: value, unit, least, most, says, reason, source, ...of }
}

export const surveyRuleRows = [
  rule(
    'tapeWithin',
    3,
    'mm',
    [0.5, 50],
    'A length is taped to about this: two readings in three are nearer.',
    'How far a misclosure is shared over the lengths, and when one of them stands out.',
    memory,
  ),
  rule(
    'tapePerMetre',
    0.3,
    'mm',
    [0, 10],
    'And to so much more for each metre of it.',
    'A long tape sags and is pulled less evenly.',
    'about class II of the European measuring instruments directive, 0.2 mm a metre, and the hand; from memory',
  ),
  rule(
    'angleWithin',
    0.5,
    '°',
    [0.05, 10],
    'The angle of a corner is read to about this: two readings in three are nearer.',
    'An angle gauge in a corner of plaster says less of a room than a tape across it.',
    memory,
  ),
  rule(
    'drawnWithin',
    20,
    'mm',
    [0, 2000],
    'A wall measured further than this from its drawing is a finding.',
    'Walls are rarely as drawn. Who planned by the drawing must hear of it.',
    'common practice, no source',
  ),
  rule(
    'straightWithin',
    1,
    '°',
    [0, 5],
    'Two walls are in line when the corner between them is 180° to within this.',
    'Only walls in line can be joined to one.',
    memory,
  ),
]

export const planRuleRows = [
  rule(
    'clearBefore',
    915,
    'mm',
    [0, 5000],
    'So much floor stays free before doors, passages and what must stay reachable.',
    'A person with a frame, a trolley or a chair has to get there. Local codes may want more.',
    'a walkway of 36 in; common practice, no source',
  ),
]
