/** The house rules of visual weight and of the sequence as nobody has changed them, written out. */

function rule(key: string, value: number, says: string, reason: string) {
  const source = 'that they count is common practice; the figure has no source'
  const of = { group: 'Visual weight', choices: [], since: '', by: '', changed: false }
  return { key, value, default: value, unit: '×', least: 0, most: 5, says, reason, source, ...of }
}

export const weightRuleRows = [
  rule(
    'weightLightness',
    1,
    'How much a work weighs more where it is as far from its wall in lightness as black from white: 1 is as much again.',
    'A dark work on a white wall pulls more than a pale one of its size.',
  ),
  rule(
    'weightColour',
    0.5,
    'The same for colour: what a distance of 100 in CIELAB a* and b* from the wall adds.',
    'A strong red pulls more than a grey of its lightness.',
  ),
  rule(
    'weightDetail',
    0.5,
    'The same for detail: what a work that is restless all over adds to one that is even.',
    'The eye stays where there is much to see.',
  ),
]

function sequenceRule(
  key: string,
  value: number,
  unit: string,
  bounds: readonly [number, number],
  says: string,
  reason: string,
  source: string,
) {
  const [least, most] = bounds
  const of = { group: 'Sequence', choices: [], since: '', by: '', changed: false }
  return { key, value, default: value, unit, least, most, says, reason, source, ...of }
}

export const sequenceRuleRows = [
  sequenceRule(
    'viewingDistance',
    2000,
    'mm',
    [300, 20_000],
    'Works are looked at from this far, where a wall does not say.',
    'From further off an eye takes in more of a work, and its height matters less.',
    'one often stands no closer than 2 m to pictures; common practice, no source',
  ),
  sequenceRule(
    'sightLine',
    10,
    '°',
    [0, 45],
    'Viewers look so far below the level of their eyes.',
    'A head at ease is a little bent.',
    'a convention: 15° goes back to a handbook without data, seated people prefer more',
  ),
  sequenceRule(
    'sightInner',
    10,
    '°',
    [1, 60],
    'The middle of a work is to lie within so much of the line of sight.',
    'Outside it the head is lifted or bent for every work.',
    'from memory',
  ),
  sequenceRule(
    'sightOuter',
    30,
    '°',
    [1, 80],
    'All of a work is to lie within so much of the line of sight.',
    'What lies outside it is not seen without moving the head.',
    'vertical field without strain; from memory',
  ),
  sequenceRule(
    'sectionPanel',
    600,
    'mm',
    [0, 5000],
    'Width of the text panel at the beginning of each section; 0 where sections have none.',
    'A panel takes wall from the works, and a list of works does not say so.',
    'from memory',
  ),
  sequenceRule(
    'stackLowest',
    700,
    'mm',
    [0, 3000],
    'The lowest edge of a stack or grid is at least so high, where its section does not say.',
    'Below it nobody bends to look, and bags and wheels brush against frames.',
    'common practice, no source',
  ),
  sequenceRule(
    'stackHighest',
    2300,
    'mm',
    [500, 10_000],
    'The highest edge of a stack or grid is at most so high, where its section does not say.',
    'Above it a small work is not read from where people stand, and two people on the floor can’t hang it.',
    'common practice, no source',
  ),
]
