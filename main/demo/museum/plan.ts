/**
 * The three rooms in their building: where each stands, so that the doors in their party walls face each other, how
 * thick those walls are, and where north is. Millimetres, degrees clockwise on the page.
 */

export const north = 12

/** Between River Room and Long Gallery, and between Long Gallery and Mill Room, through the doorways. */
export const partyWall = 250

export const places: readonly { readonly room: string; readonly at: readonly [number, number] }[] = [
  { room: 'River Room', at: [0, 0] },
  { room: 'Long Gallery', at: [7200 + partyWall, -600] },
  { room: 'Mill Room', at: [7200 + partyWall + 9200 + partyWall, 1900] },
]

/** Walls by room and name, in pairs back to back. */
export const parties: readonly (readonly [readonly [string, string], readonly [string, string]])[] = [
  [
    ['River Room', 'east wall'],
    ['Long Gallery', 'west wall'],
  ],
  [
    ['Long Gallery', 'east wall'],
    ['Mill Room', 'west wall'],
  ],
]
