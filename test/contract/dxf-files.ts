/** Small drawings for tests, written out by hand: the form is that of the DXF reference, "ASCII DXF files". */
export interface DrawnLine {
  readonly layer: string
  readonly ends: readonly [number, number, number, number]
}

export interface DrawnText {
  readonly text: string
  readonly at: readonly [number, number]
}

/** A drawing of lines and words; `units` is `$INSUNITS`, left out where null. */
export function dxfOf(
  lines: readonly DrawnLine[],
  texts: readonly DrawnText[] = [],
  units: number | null = 4,
): Uint8Array {
  const tags: (string | number)[] = [0, 'SECTION', 2, 'HEADER', 9, '$ACADVER', 1, 'AC1015']
  if (units !== null) tags.push(9, '$INSUNITS', 70, units)
  tags.push(0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES')
  for (const { layer, ends } of lines)
    tags.push(0, 'LINE', 8, layer, 10, ends[0], 20, ends[1], 11, ends[2], 21, ends[3])
  for (const { text, at } of texts) tags.push(0, 'TEXT', 8, 'WORDS', 10, at[0], 20, at[1], 40, 200, 1, text)
  tags.push(0, 'ENDSEC', 0, 'EOF')
  return new TextEncoder().encode(`${tags.join('\n')}\n`)
}

/** Four lines about a rectangle. */
export function box(layer: string, x: number, y: number, width: number, height: number): DrawnLine[] {
  const [right, top] = [x + width, y + height]
  return [
    { layer, ends: [x, y, right, y] },
    { layer, ends: [right, y, right, top] },
    { layer, ends: [right, top, x, top] },
    { layer, ends: [x, top, x, y] },
  ]
}

/** One room of 5 by 4 m within walls of 200 mm, called in words, with a table in it. */
export const oneRoom: readonly DrawnLine[] = [
  ...box('A-WALL', 0, 0, 5000, 4000),
  ...box('A-WALL', -200, -200, 5400, 4400),
  ...box('A-FURN', 1000, 1000, 900, 700),
]
export const oneRoomWords: readonly DrawnText[] = [
  { text: 'East Cabinet', at: [2000, 2400] },
  { text: '104', at: [2000, 2000] },
]

/** Two rooms of 5 by 4 m and 4 by 4 m, 200 mm of wall about and between them, a doorway of 1 m with jambs in the middle one. */
export const twoRooms: readonly DrawnLine[] = [
  ...box('A-WALL', -200, -200, 9600, 4400),
  ...openBox(0, 5000),
  ...openBox(9200, 5200),
  { layer: 'A-WALL', ends: [5000, 1500, 5200, 1500] },
  { layer: 'A-WALL', ends: [5000, 2500, 5200, 2500] },
]
export const twoRoomsWords: readonly DrawnText[] = [
  { text: 'East Cabinet', at: [2000, 2400] },
  { text: 'West Cabinet', at: [7000, 2400] },
]

/** Three walls about a room 4 m deep, and the fourth, at `open`, with a gap. */
function openBox(closed: number, open: number): DrawnLine[] {
  const wall = (...ends: DrawnLine['ends']): DrawnLine => ({ layer: 'A-WALL', ends })
  return [
    wall(closed, 0, open, 0),
    wall(closed, 4000, open, 4000),
    wall(closed, 0, closed, 4000),
    wall(open, 0, open, 1500),
    wall(open, 2500, open, 4000),
  ]
}
