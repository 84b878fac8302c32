/** Walls and sections from several proposals, put together: nothing asked twice, nothing lost without being told. */
import { describe, expect, test } from 'vitest'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { gather, type Picks, type WallToday } from '../../../src/sequence/gather.ts'

const none: Picks = { walls: new Map(), sections: new Map(), on: new Map(), off: new Set() }
const wall = (face: string, works: WallToday['works']): WallToday => ({
  ...{ face, rule: 'centre', centreLine: 1500, eyeFraction: 0.5, ramp: [], works },
})
const at = (entry: string, x: number, stays = false) => ({ entry, x, y: 1500, stays })
const size = (section: string | null) => ({ section, width: 500, height: 500 })
const sizes = new Map([
  ['a', size('s')],
  ['b', size('s')],
  ['c', size('t')],
  ['d', size(null)],
])
const today = [
  wall('one', [at('a', 500), at('b', 1500)]),
  wall('two', [at('c', 500), at('d', 2500, true)]),
  wall('three', []),
]
const first = {
  faces: [
    { face: 'one', works: [{ entry: 'a', x: 1000 }] },
    { face: 'two', works: [{ entry: 'b', x: 800 }] },
    { face: 'three', works: [{ entry: 'c', x: 900 }] },
  ],
}
const second = {
  faces: [
    { face: 'one', works: [{ entry: 'c', x: 1000 }] },
    {
      face: 'three',
      works: [
        { entry: 'a', x: 700 },
        { entry: 'b', x: 1500 },
      ],
    },
  ],
}

describe('gathered from several proposals', () => {
  test('a wall from each; what both want is asked about, and settled by naming a wall', () => {
    const walls = new Map([
      ['one', 0],
      ['three', 1],
    ])
    const asked = gather(today, [first, second], sizes, { ...none, walls })
    expect(asked.twice).toEqual([{ entry: 'a', faces: ['one', 'three'] }])
    expect(asked.off).toEqual([])
    const settled = gather(today, [first, second], sizes, { ...none, walls, on: new Map([['a', 'three']]) })
    expect(settled).toEqual({
      faces: [
        { face: 'one', others: 'off', works: [] },
        {
          face: 'three',
          others: 'off',
          works: [
            { entry: 'a', x: 700 },
            { entry: 'b', x: 1500 },
          ],
        },
      ],
      twice: [],
      off: [],
      overlaps: [],
    })
  })

  test('what would come off its wall is told until it may', () => {
    const walls = new Map([['one', 1]])
    expect(gather(today, [first, second], sizes, { ...none, walls }).off).toEqual(['a', 'b'])
    expect(gather(today, [first, second], sizes, { ...none, walls, off: new Set(['a', 'b']) }).off).toEqual([])
  })

  test('a section alone moves its works and leaves others; who would stand in whom is told', () => {
    const sections = new Map([['s', 0]])
    const told = gather(today, [first, second], sizes, { ...none, sections })
    expect(told.faces).toEqual([
      { face: 'one', others: 'stay', works: [{ entry: 'a', x: 1000 }] },
      { face: 'two', others: 'stay', works: [{ entry: 'b', x: 800 }] },
    ])
    expect(told.off).toEqual([])
    expect(told.overlaps).toEqual([{ face: 'two', one: 'b', other: 'c' }])
  })

  test('a wall and a section that agree ask once, at the wall’s place', () => {
    const told = gather(today, [first, second], sizes, {
      ...none,
      walls: new Map([['one', 0]]),
      sections: new Map([['s', 0]]),
    })
    expect(told.twice).toEqual([])
    expect(told.faces[0]).toEqual({ face: 'one', others: 'off', works: [{ entry: 'a', x: 1000 }] })
  })

  test('of random picks nothing that stays is given, nothing is given twice, and every work is accounted for', () => {
    for (let seed = 1; seed <= 300; seed += 1) {
      const chance = chanceFrom(seed)
      const entries = Array.from({ length: 9 }, (_, index) => `e${index}`)
      const places = new Map(entries.map((entry, index) => [entry, { ...size(`s${index % 3}`) }]))
      const spread = (stays: boolean) => ['f0', 'f1', 'f2'].map(face => ({ face, entries: [] as string[], stays }))
      const hang = () => {
        const rows = spread(false)
        for (const entry of entries.slice(1)) if (chance() < 0.8) rows[pickBelow(chance, 3)]?.entries.push(entry)
        return rows
      }
      const walls = hang().map((row, index) =>
        wall(row.face, [
          ...(index === 0 ? [at('e0', 100, true)] : []),
          ...row.entries.map((entry, place) => at(entry, 1000 * place + 900)),
        ]),
      )
      const proposals = [hang(), hang()].map(rows => ({
        faces: rows.map(row => ({
          face: row.face,
          works: row.entries.map((entry, place) => ({ entry, x: 700 * place + 900 })),
        })),
      }))
      const picks: Picks = {
        walls: new Map(
          ['f0', 'f1', 'f2'].flatMap(face => (chance() < 0.6 ? [[face, pickBelow(chance, 2)] as const] : [])),
        ),
        sections: new Map(
          ['s1'].flatMap(section => (chance() < 0.4 ? [[section, pickBelow(chance, 2)] as const] : [])),
        ),
        on: new Map(),
        off: new Set(),
      }
      const told = gather(walls, proposals, places, picks)
      const given = told.faces.flatMap(({ works }) => works.map(({ entry }) => entry))
      expect(given).not.toContain('e0')
      expect(new Set(given).size).toBe(given.length)
      const unsettled = new Set([...told.twice.map(({ entry }) => entry), ...told.off])
      for (const { face, works } of walls) {
        if (!picks.walls.has(face)) continue
        for (const { entry, stays } of works) expect(stays || given.includes(entry) || unsettled.has(entry)).toBe(true)
      }
    }
  })
})
