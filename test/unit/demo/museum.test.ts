/** The demo's data by itself: counts, ranges, that rooms close and rows add up, before anything is written. */
import { describe, expect, it } from 'vitest'
import { hangingFigures, listedFigures, listedSizes, massOf, measuredSizes } from '../../../main/demo/measures.ts'
import { backOf, ways } from '../../../main/demo/museum/backs.ts'
import { fixings } from '../../../main/demo/museum/fixings.ts'
import { lenders, sections } from '../../../main/demo/museum/house.ts'
import { listText } from '../../../main/demo/museum/list.ts'
import { blocks, keptLayout, plans, rows } from '../../../main/demo/museum/placements.ts'
import { rooms } from '../../../main/demo/museum/rooms.ts'
import { sets } from '../../../main/demo/museum/sets.ts'
import { works } from '../../../main/demo/museum/works.ts'
import { centresOf } from '../../../main/demo/write-walls.ts'
import { methodKeys } from '../../../src/hang/method-keys.ts'
import { methodOf } from '../../../src/hang/methods.ts'
import { laySet } from '../../../src/layout/set.ts'
import { outlineOf } from '../../../src/model/outline.ts'

const walls = rooms.flatMap(room => room.walls.map(wall => ({ ...wall, height: room.height })))
const placed = rows.flatMap(row => centresOf(row).map(centre => ({ ...centre, wall: row.wall })))

describe('rooms', () => {
  it('are three with fourteen walls, 2.4 to 9.2 m long, 2.9 to 3.6 m high', () => {
    expect(rooms).toHaveLength(3)
    expect(walls).toHaveLength(14)
    expect(Math.min(...walls.map(wall => wall.length))).toBeGreaterThanOrEqual(2400)
    expect(Math.max(...walls.map(wall => wall.length))).toBe(9200)
    for (const room of rooms) expect(room.height >= 2900 && room.height <= 3600, room.name).toBe(true)
    expect(new Set(walls.map(wall => wall.type)).size).toBeGreaterThanOrEqual(4)
  })

  it('close within the house rule of 20 mm', () => {
    for (const room of rooms) {
      const outline = outlineOf(
        room.walls.map(({ length, angle }) => ({ length, angle })),
        20,
      )
      expect(outline.closed, room.name).toBe(true)
      // Interior angles of a polygon add up to (n − 2) · 180° (Euclid, Elements I.32, corollary).
      const sum = room.walls.reduce((total, wall) => total + wall.angle, 0)
      expect(sum, room.name).toBeCloseTo((room.walls.length - 2) * 180, 9)
    }
  })

  it('have everything fixed inside its wall, and nothing in an opening', () => {
    for (const wall of walls) {
      for (const thing of [...(wall.openings ?? []), ...(wall.keepClears ?? [])]) {
        expect(thing.x >= 0 && thing.x + thing.width <= wall.length, `${wall.key} ${thing.kind}`).toBe(true)
        expect(thing.y >= 0 && thing.y + thing.height <= wall.height, `${wall.key} ${thing.kind}`).toBe(true)
      }
      for (const thing of wall.keepClears ?? []) {
        const inside = (wall.openings ?? []).some(
          door =>
            thing.x < door.x + door.width &&
            door.x < thing.x + thing.width &&
            thing.y < door.y + door.height &&
            door.y < thing.y + thing.height,
        )
        expect(inside, `${wall.key} ${thing.kind}`).toBe(false)
      }
    }
  })
})

describe('works', () => {
  it('are about sixty with the list’s, of five lenders and the house, in four sections', () => {
    const listed = listText.trim().split('\r\n').length - 1
    const parts = sets.flatMap(set => set.parts)
    expect(works.length - parts.length + sets.length + listed).toBe(70)
    expect(new Set([...works.map(work => work.lender), 'navigation'])).toEqual(new Set(Object.keys(lenders)))
    expect(Object.values(lenders).filter(lender => lender.kind === 'lender')).toHaveLength(5)
    for (const index of sections.keys()) expect(works.filter(work => work.section === index).length).toBeGreaterThan(5)
    expect(new Set(works.map(work => work.kind))).toEqual(
      new Set(['painting', 'print', 'photograph', 'textile', 'drawing', 'object']),
    )
  })

  it('have keys and numbers of their own', () => {
    expect(new Set(works.map(work => work.key)).size).toBe(works.length)
    const numbers = works.flatMap(work => [work.number, ...(work.more ?? []).map(([, text]) => text)])
    expect(new Set(numbers).size).toBe(numbers.length)
    expect(new Set(works.flatMap(work => (work.more ?? []).map(([kind]) => kind)))).toEqual(
      new Set(['loan', 'exhibition', 'entry']),
    )
  })

  it('are larger with their frames, by a frame and mount of 40 to 210 mm', () => {
    for (const work of works) {
      if (work.framed === null) continue
      for (const side of [0, 1] as const) {
        const rim = work.framed[side] - work.image[side]
        expect(rim >= 40 && rim <= 210, `${work.key}: ${rim}`).toBe(true)
      }
    }
  })

  it('weigh what such works weigh: what hangs framed or stretched 2 to 40 kg for each square metre', () => {
    for (const work of works) {
      if (work.kg === null || work.kind === 'object' || work.hangs === 'sheet on magnets') continue
      const [height, width] = hangingFigures(work)
      const each = work.kg / ((height * width) / 1e6)
      expect(each >= 2 && each <= 40, `${work.key}: ${each.toFixed(1)}`).toBe(true)
    }
  })

  it('date from 1890 to the 2030s', () => {
    for (const work of works) {
      const year = Number(/\d{4}/.exec(work.date)?.[0])
      expect(year >= 1890 && year < 2040, work.key).toBe(true)
    }
  })

  it('hang or stand by every method there is', () => {
    const used = new Set(works.flatMap(work => (work.hangs === null ? [] : backOf(work.hangs, 600, 500).method)))
    expect([...used].sort()).toEqual([...methodKeys].sort())
  })

  it('hang in every way, each with a back that its method accepts', () => {
    const used = new Set<string>(works.flatMap(work => work.hangs ?? []))
    expect(used).toEqual(new Set(ways))
    for (const work of works) {
      if (work.hangs === null) continue
      const [height, width] = hangingFigures(work)
      const { method, data } = backOf(work.hangs, height, width)
      expect(methodOf(method).schema.safeParse(data).success, work.key).toBe(true)
    }
    expect(works.some(work => work.hangs === null)).toBe(true)
  })

  it('are listed in the lender’s unit: inches to an eighth, as written and as converted', () => {
    const rope = works.find(work => work.key === 'ferry-rope')
    if (rope === undefined) throw new Error('no ferry rope')
    // 910 mm is 35.83 in, 35 7/8 in to the eighth, and an inch is 25.4 mm exactly (NIST SP 811, from memory).
    expect(listedSizes(rope)[0]).toMatchObject({
      part: 'framed',
      raw: '35 7/8 × 28 × 2 1/8 in',
      height: 911.225,
      width: 711.2,
      kind: 'listed',
    })
    expect(measuredSizes(rope)[0]).toMatchObject({
      part: 'framed',
      raw: '910 × 710 × 55 mm',
      height: 910,
      width: 710,
      kind: 'measured',
    })
    const weir = works.find(work => work.key === 'weir-low')
    if (weir === undefined) throw new Error('no weir')
    expect(listedSizes(weir)[0]).toMatchObject({ raw: '62 × 48 × 2.8 cm', height: 620, width: 480 })
  })

  it('are weighed or listed, and a listed mass is only about right', () => {
    const room = works.find(work => work.key === 'room-above')
    if (room === undefined) throw new Error('no room')
    // 7.0 kg is 15.4 lb; 15 lb is 6.80388555 kg (0.45359237 kg to the pound exactly, NIST SP 811, from memory).
    expect(massOf(room)).toMatchObject({ raw: 'about 15 lb', kg: 6.80388555, kind: 'listed', approximate: true })
  })
})

describe('sets', () => {
  const layOut = (key: string) => {
    const set = sets.find(each => each.key === key) ?? fail()
    const parts = set.parts.map(id => {
      const [height, width] = hangingFigures(works.find(work => work.key === id) ?? fail())
      return { id, height, width }
    })
    return { set, laid: laySet({ ...set, parts }) }
  }

  it('are two panels that differ in size and mass, and a grid of six that differs by millimetres', () => {
    expect(sets.map(({ form, parts }) => [form, parts.length])).toEqual([
      ['row', 2],
      ['grid', 6],
    ])
    // By hand: 420 + 20 + 300 wide, as high as the taller.
    expect(layOut('ford').laid).toMatchObject({ width: 740, height: 560 })
    const [near, far] = layOut('ford').set.parts.map(key => works.find(work => work.key === key)?.kg)
    expect(near).not.toBe(far)
    // The widest two of a row are 200 and 203, so centres stand 201.5 + 24 = 225.5 apart; 100 + 225.5 + 101.5 wide.
    // The tallest two of a column are 261 and 262: 261.5 + 24 = 285.5 apart; 130 + 2 · 285.5 + 131 high.
    expect(layOut('gauge').laid).toMatchObject({
      width: 427,
      height: 832,
      columns: 2,
      rows: 3,
      centresX: { least: 225.5, most: 225.5 },
      differ: true,
    })
  })

  it('are answered what stays equal, and each part has a back and a fixing', () => {
    for (const { keeps, parts } of sets) {
      expect(keeps).not.toBe('')
      for (const key of parts) {
        const work = works.find(each => each.key === key)
        expect(work?.measured === true && work.hangs !== null && work.fixing !== undefined, key).toBe(true)
      }
    }
  })
})

describe('placements', () => {
  it('leave about a quarter of the works off the walls, and some walls bare', () => {
    expect(placed).toHaveLength(52)
    expect(new Set(placed.map(place => place.key)).size).toBe(52)
    expect(new Set(rows.map(row => row.wall)).size).toBe(13)
    expect(plans.map(plan => plan.wall).sort()).toEqual(walls.map(wall => wall.key).sort())
    for (const { key } of placed) {
      // A set hangs by its parts.
      if (sets.some(set => set.key === key)) continue
      const work = works.find(each => each.key === key)
      // What stands on the floor needs none.
      if (work?.hangs === 'plinth' || work?.hangs === 'case') expect(work.fixing, key).toBeUndefined()
      else expect(Object.keys(fixings), key).toContain(work?.fixing)
    }
  })

  it('have equal gaps that add up to the bay', () => {
    for (const row of rows) {
      if (row.wall === 'mill slant') continue
      const sides = row.works.map(key => {
        const block = blocks.find(each => each.key === key)
        const keys = block?.works ?? [key]
        const centres = placed.filter(place => keys.includes(place.key))
        const width = (k: string): number => {
          const set = sets.find(each => each.key === k)
          if (set !== undefined) {
            const parts = set.parts.map(id => ({ id, height: 1, width: width(id) }))
            return laySet({ ...set, parts }).width
          }
          const work = works.find(each => each.key === k)
          if (work === undefined) throw new Error(k)
          return (row.plannedAsListed === true ? listedFigures(work) : hangingFigures(work))[1]
        }
        return [
          Math.min(...centres.map(c => c.x - width(c.key) / 2)),
          Math.max(...centres.map(c => c.x + width(c.key) / 2)),
        ] as const
      })
      const first = sides[0]?.[0] ?? 0
      const last = sides.at(-1)?.[1] ?? 0
      const gaps = sides.slice(1).map(([left], index) => left - (sides[index]?.[1] ?? 0))
      for (const gap of gaps) expect(gap, row.wall).toBeCloseTo(gaps[0] ?? 0, 6)
      expect(first - row.from, row.wall).toBeCloseTo(row.to - last, 6)
      if (gaps.length > 0) expect(first - row.from, row.wall).toBeCloseTo(row.margin, 6)
    }
  })

  it('put the long wall where its widths say: margins 699, gap 430', () => {
    // (9 200 − 2 · 699 − 5 222) / 6 = 430, by hand.
    const centres = centresOf(rows.find(row => row.wall === keptLayout.wall) ?? rows[0] ?? fail()).map(
      centre => centre.x,
    )
    expect(centres).toEqual([939, 1964, 3019, 4475, 5901, 7001, 8181])
  })

  it('stand on walls that are there', () => {
    for (const row of rows) expect(walls.map(wall => wall.key)).toContain(row.wall)
  })
})

function fail(): never {
  throw new Error('the demo has no rows')
}
