/**
 * A lender's list as it came, with what such lists leave unclear: no unit, two units that disagree, a date made of a
 * fraction, nothing at all. It goes into the demo through the same import that a user's list goes through.
 */
import type { Input } from '../../../src/contract/contract.ts'
import type { Recipe } from '../pictures/render.ts'
import type { LenderKey } from './house.ts'

type WorkKind = NonNullable<Input<'work.add'>['kind']>

export const list: { readonly lender: LenderKey; readonly section: number; readonly name: string } = {
  lender: 'navigation',
  section: 3,
  name: 'tamble-navigation-loans.csv',
}

const heading = ['Number', 'Maker', 'Title', 'Date', 'Medium', 'Dimensions', 'Weight', 'Credit line']

const lines = [
  [
    'TNA 1904/3',
    'unknown maker',
    'Lock keeper and dog, Sallow Cut',
    'about 1904',
    'albumen print',
    '28,5 x 21 cm; framed 47 x 39 x 3 cm',
    '2,6 kg',
  ],
  ['TNA 1911/17', 'unknown maker', 'Opening of the upper lock', '1911', 'gelatin silver print', '21 x 29.7', '2,2 kg'],
  [
    'TNA 1926/8',
    'Jonty Ormerelle',
    'Dredger at Sallowford',
    '1926',
    'gelatin silver print',
    'framed: 15 3/4 x 19 11/16 in; sight 9 x 12 3/4 in',
    '6 lb',
  ],
  [
    'TNA 1931/2',
    'Tamble Navigation drawing office',
    'Weir, section and gates',
    '1931',
    'ink and wash on linen',
    '18 x 26 in. (45.7 x 60.6 cm)',
    '',
  ],
  ['TNA 1931/5', 'Tamble Navigation drawing office', 'Weir, gauge boards', '1931', 'ink on linen', '2-Jan', ''],
  [
    'TNA 1952/40',
    'Jonty Ormerelle',
    'The gauge at its highest',
    '1952',
    'gelatin silver print',
    'H 40 x W 50 x D 3 cm (framed)',
    '3 kg',
  ],
  [
    'TNA 1952/41',
    'unknown maker',
    'Banner of the relief committee',
    '1952',
    'painted cotton',
    'dimensions variable',
    '',
  ],
  ['TNA 1952/44', 'unknown maker', 'Flood marks, eleven doors', '1952', 'gelatin silver prints', 'TBC', ''],
] as const

function cell(text: string): string {
  return /[",;\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** The list as a file, separated by commas. */
export const listText = `${[heading, ...lines.map(line => [...line, 'Tamble Navigation Archive'])]
  .map(line => line.map(cell).join(','))
  .join('\r\n')}\r\n`

/** What kind of thing each is, as the house sees it; the list does not say. */
export const listKinds: Readonly<Record<string, WorkKind>> = {
  'TNA 1904/3': 'photograph',
  'TNA 1911/17': 'photograph',
  'TNA 1926/8': 'photograph',
  'TNA 1931/2': 'drawing',
  'TNA 1931/5': 'drawing',
  'TNA 1952/40': 'photograph',
  'TNA 1952/41': 'textile',
  'TNA 1952/44': 'photograph',
}

/** Pictures that came with some of its works, by their number. */
export const listPictures: readonly Recipe[] = [
  { key: 'TNA 1904/3', medium: 'warm silver', scene: 'weir', palette: 'rain', width: 210, height: 285 },
  { key: 'TNA 1911/17', medium: 'warm silver', scene: 'town', palette: 'winter', width: 297, height: 210 },
  { key: 'TNA 1926/8', medium: 'gelatin silver', scene: 'reeds', palette: 'winter', width: 324, height: 229 },
  { key: 'TNA 1931/2', medium: 'ink wash', scene: 'bridge', palette: 'slate', width: 660, height: 457 },
  { key: 'TNA 1952/40', medium: 'gelatin silver', scene: 'hills', palette: 'slate', width: 420, height: 320 },
]
