/** The house rules of labels as nobody has changed them, written out. */
const accessible = 'published guidelines for accessible exhibitions'

function rule(key: string, value: number, says: string, reason: string, source: string, bounds: [number, number]) {
  const [least, most] = bounds
  return {
    key,
    group: 'Labels',
    value,
    default: value,
    says,
    reason,
    unit: key === 'labelPerLine' ? '' : 'mm',
    least,
    most,
    choices: [],
    source,
    since: '',
    by: '',
    changed: false,
  }
}

export const labelRuleRows = [
  rule(
    'labelLine',
    1370,
    'Labels have their centre at this height above the floor, where a room does not say.',
    'One height in a room is found without looking for it, standing or seated.',
    '54 in, the ideal centre of published guidelines for accessible exhibitions, second hand',
    [300, 2500],
  ),
  {
    key: 'labelLevel',
    group: 'Labels',
    value: 'line',
    default: 'line',
    says: 'Where a label stands beside a work that reaches lower than the room’s labels.',
    reason: 'One height is calm; level with the frames a label belongs to its work more plainly.',
    unit: '',
    least: null,
    most: null,
    choices: [
      { value: 'line', label: 'at the room’s height all the same' },
      { value: 'bottom', label: 'level with the work’s bottom edge' },
    ],
    source: 'both in use; from memory',
    since: '',
    by: '',
    changed: false,
  },
  rule(
    'labelLowest',
    1219.2,
    'No part of a label stands lower than this above the floor.',
    'Lower, a standing adult has to stoop.',
    `48 in, ${accessible}, second hand`,
    [0, 2500],
  ),
  rule(
    'labelHighest',
    1701.8,
    'No part of a label stands higher than this above the floor.',
    'Higher, it is not read from a wheelchair or by a child.',
    `67 in, ${accessible}, second hand`,
    [300, 4000],
  ),
  rule(
    'labelGap',
    60,
    'Between a work’s edge and its label, where a label does not say.',
    'So near that work and label are seen from one standing point.',
    '60 to 100 mm; common practice, no source',
    [0, 1000],
  ),
  rule(
    'labelClear',
    40,
    'Free room between a label and the next work, another label, or a plate or hole.',
    'Nearer, nobody knows whose label it is, and a plate’s screw cannot be turned.',
    'from memory',
    [0, 1000],
  ),
  rule(
    'labelType',
    6.35,
    'Type size of labels; their height follows from it and from their lines.',
    'Smaller type is not read from where the work is seen.',
    '18 point; from memory',
    [2, 60],
  ),
  rule(
    'labelPerLine',
    45,
    'Characters in a line of a label, at most; its width follows from it.',
    'Longer lines are lost on the way back.',
    `45 to 50, never more than 55; ${accessible}`,
    [10, 120],
  ),
]
