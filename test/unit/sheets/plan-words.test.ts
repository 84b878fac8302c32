/** Words on a plan's sheet: by the true widths of the fonts, no two over one another and no name hanging over its thing. */
import { describe, expect, test } from 'vitest'
import { openFaces } from '../../../main/fonts/faces.ts'
import { figuresOf } from '../../../src/plan/figures.ts'
import { planSheet } from '../../../src/sheets/plan-sheet.ts'
import { type Box, boxesMeet, papers } from '../../../src/sheets/shapes.ts'
import { partitionOf, roomOf, thingOf } from '../plan/plan-rooms.ts'

const scale = 100
const things = [
  thingOf({ at: [2500, 1200], width: 1800, depth: 500, kind: 'bench', name: 'Bench' }),
  thingOf({ at: [5000, 1200], width: 400, depth: 400, kind: 'plinth', name: 'Plinth of the drowned bell' }),
  thingOf({ at: [5600, 1200], width: 400, depth: 400, kind: 'plinth', name: 'Plinth of the harbour master' }),
  thingOf({ at: [1200, 3400], width: 500, depth: 2000, kind: 'case', name: 'Case of letters' }),
  thingOf({ at: [3200, 3800], width: 900, depth: 900, kind: 'case', name: 'Case of small shells' }),
  thingOf({ at: [6500, 4300], width: 300, depth: 300, kind: 'column', name: 'C1', round: true, turn: 30 }),
]

async function sheet(over: Partial<ReturnType<typeof roomOf>> = {}, paper: 'A4' | 'A3' = 'A4') {
  const room = {
    ...roomOf('Long Gallery of the East', [0, 0], 8000, 5000, {}, 200),
    ...{ things, partitions: [partitionOf('Screen', [4200, 2500], [4200, 4600], 150)] },
    ...over,
  }
  const storey = figuresOf([room], '', area => `${area} m²`)
  const question = {
    ...{ title: 'House', about: '', storey, scale, paper: papers[paper], north: null, time: 'today', by: '' },
    ...{ units: { unit: 'mm' as const, steps: { mm: 1, fraction: 16 as const } }, revision: null, voids: [] },
  }
  return planSheet(question, await openFaces())
}

/** Pairs of texts that lie over one another. */
const over = (boxes: readonly (Box & { readonly text: string })[]) =>
  boxes.flatMap((a, at) => boxes.slice(at + 1).flatMap(b => (boxesMeet(a, b) ? [[a.text, b.text]] : [])))

describe('names of what stands', () => {
  test('lie on their thing, turned or in lines where it is narrow, or beside it with a leader', async () => {
    const { boxes, page } = await sheet()
    const named = (prefix: string) =>
      boxes.filter(({ name }) => name.startsWith(prefix)).map(({ text, w, h }) => ({ text, upright: h > w }))
    expect(named('thing ')).toEqual([
      { text: 'Bench', upright: false },
      { text: 'Case of letters', upright: true },
      ...['Case of', 'small', 'shells'].map(text => ({ text, upright: false })),
    ])
    const beside = named('beside ').map(({ text }) => text)
    expect(beside.join(' ')).toBe('Plinth of the drowned bell Plinth of the harbour master C1')
    // A leader and its dot each.
    const dots = page.shapes.filter(shape => shape.kind === 'rect' && shape.w === 0.5)
    expect(dots).toHaveLength(3)
  })

  test('are over no other words, nor over a thing that is another’s', async () => {
    const { boxes } = await sheet()
    expect(over(boxes)).toEqual([])
    const bench = boxes.find(({ text }) => text === 'Bench')
    // 18 × 5 mm of paper at 1:100.
    expect(bench?.w).toBeLessThan(18)
    // From the middle of the bench the sheet's place of every thing follows.
    const origin = { x: (bench?.x ?? 0) + (bench?.w ?? 0) / 2 - 25, y: (bench?.y ?? 0) + (bench?.h ?? 0) / 2 - 12 }
    const squares = things.map(({ at: [x, y], width, depth }) => ({
      ...{ x: origin.x + (x - width / 2) / scale, y: origin.y + (y - depth / 2) / scale },
      ...{ w: width / scale, h: depth / scale },
    }))
    const beside = boxes.filter(({ name }) => name.startsWith('beside '))
    for (const box of beside) expect(squares.filter(square => boxesMeet(square, box))).toEqual([])
  })

  const plinths = Array.from({ length: 96 }, (_, at) =>
    thingOf({
      ...{ at: [500 + (at % 12) * 620, 400 + Math.floor(at / 12) * 590], width: 300, depth: 300 },
      ...{ kind: 'plinth', id: `t${at}`, name: `Plinth of the sea, number ${at}` },
    }),
  )
  /** Every name of a hundred, by where the sheet has it. */
  async function told(paper: 'A4' | 'A3', over: Parameters<typeof sheet>[0] = {}) {
    const { boxes, page } = await sheet({ things: plinths, partitions: [], ...over }, paper)
    const all = (prefix: string) => boxes.filter(({ name }) => name.startsWith(prefix))
    const list = all('keys ')
      .map(({ text }) => text)
      .join(' ')
      .replaceAll('\u00a0', ' ')
    const drawn = new Set(all('key ').map(({ text }) => text))
    const written = ['thing ', 'beside '].flatMap(prefix => {
      const lines = Map.groupBy(all(prefix), ({ name }) => name.split(' ')[1])
      return [...lines.values()].map(parts => parts.map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' '))
    })
    return { boxes, page, list, drawn, written }
  }

  test('find room among a hundred plinths, or have a number there and stand in the list below', async () => {
    const { boxes, page, list, drawn, written } = await told('A3')
    expect(over(boxes)).toEqual([])
    expect(written.length).toBeGreaterThan(12)
    expect(drawn.size).toBeGreaterThan(12)
    // None of them is lost, and none is told twice; the last few have no place for a number either.
    const entries = list.split(' · ').map(entry => /^(?:(\(\d+\)) |without a number: )?(.*)$/.exec(entry) ?? [])
    const room = boxes.some(({ text }) => text === 'Long Gallery of the East') ? [] : ['Long Gallery of the East']
    expect([...entries.map(([, , name]) => name ?? ''), ...written].sort()).toEqual(
      [...room, ...plinths.map(({ name }) => name)].sort(),
    )
    // The numbers of the list are those of the drawing, in their order.
    const numbers = entries.flatMap(([, number]) => number ?? [])
    expect(numbers).toEqual(numbers.map((_, at) => `(${at + 1})`))
    expect([...drawn].sort()).toEqual([...numbers].sort())
    // Below the drawing and above the foot, within the margins.
    const lines = boxes.filter(({ name }) => name.startsWith('keys '))
    const below = Math.max(
      ...boxes.filter(({ name }) => /^(key|thing|beside|words) /.test(name)).map(({ y, h }) => y + h),
    )
    for (const { x, y, w, h } of lines) {
      expect(y).toBeGreaterThanOrEqual(below)
      expect(y + h).toBeLessThan(page.height - 17)
      expect(x + w).toBeLessThanOrEqual(page.width - 10)
    }
  })

  test('are counted where the list has no room for all', async () => {
    // 18 m at 1:100 leave two lines of an A4 sheet below the drawing.
    const tall = roomOf('Nave', [0, 0], 8000, 14_400, {}, 200)
    const { boxes, list, drawn, written } = await told('A4', { walls: tall.walls })
    expect(over(boxes)).toEqual([])
    const more = Number(/and (\d+) more, which larger paper/.exec(list)?.[1] ?? 0)
    const listed = list.match(/Plinth of the sea, number/g)?.length ?? 0
    expect(more).toBeGreaterThan(0)
    expect(listed + more + written.length).toBe(plinths.length)
    expect(drawn.size).toBeLessThanOrEqual(listed + more)
  })

  test('of a room too narrow for its words too', async () => {
    const { boxes, list } = await told('A4', {
      ...{ name: 'Cupboard under the stairs to the organ', things: [] },
      walls: roomOf('Cupboard', [0, 0], 600, 5000, {}, 200).walls,
    })
    expect(boxes.find(({ name }) => name === 'key 1')?.text).toBe('(1)')
    expect(list).toMatch(/^\(1\) Cupboard under the stairs to the organ/)
    expect(over(boxes)).toEqual([])
  })
})

test('lengths of walls make way for what is on and before the wall', async () => {
  const socket = {
    ...{ id: 's', kind: 'grille' as const, label: '', x: 3500, y: 300, width: 1000, height: 80, margin: 0 },
    ...{ depth: 300, reachable: false },
  }
  const plain = roomOf('Hall', [0, 0], 8000, 5000, {}, 200)
  const walls = plain.walls.map((wall, at) => (at === 0 ? { ...wall, fixtures: [socket] } : wall))
  const lengths = async (room: Partial<ReturnType<typeof roomOf>>) =>
    (await sheet({ ...room, things: [], partitions: [] })).boxes.filter(({ name }) => name.startsWith('length '))
  const [free] = await lengths({})
  const [moved] = await lengths({ walls })
  expect([free?.text, moved?.text]).toEqual(['8\u2009000', '8\u2009000'])
  // The grille lies about the middle of the wall.
  expect(Math.abs((moved?.x ?? 0) - (free?.x ?? 0))).toBeGreaterThan(5)
})

test('a wall that slants, and a short one where nothing is in the way, have their lengths too', async () => {
  const plain = roomOf('Hall', [0, 0], 8000, 5000, {}, 200)
  const corners: [number, number][] = [
    [0, 0],
    [7200, 0],
    [7200, 600],
    [8000, 600],
    [8000, 3500],
    [6500, 5000],
    [0, 5000],
  ]
  const [first] = plain.walls
  if (first === undefined) throw new Error('a room has walls')
  const walls = corners.map((from, at) => {
    const to: [number, number] = corners[(at + 1) % corners.length] ?? [0, 0]
    return { ...first, id: `w${at}`, face: `w${at} a`, from, to, length: Math.hypot(to[0] - from[0], to[1] - from[1]) }
  })
  const { boxes } = await sheet({ ...plain, walls, things: [], partitions: [] })
  const lengths = boxes
    .filter(({ name }) => name.startsWith('length '))
    .map(({ text }) => text.replaceAll('\u2009', ''))
  // 1 500 by 1 500 across a corner: 2 121.3 mm by Pythagoras; 600 is 6 mm of this paper.
  expect(lengths).toEqual(['7200', '600', '800', '2900', '2121', '6500', '5000'])
  expect(over(boxes)).toEqual([])
})
