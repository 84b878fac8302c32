/** The house rules of visual weight as nobody has changed them, written out. */

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
