/**
 * An evening with a drill: six works on one wall, half of them drilled, and then another frame, a swap, a drop, a whole
 * wall lower. Wall and sizes are those of the worked wall of six (DERIVED in the design: gaps of 632 mm, left edges 900,
 * 2 012, 3 354, 4 526, 6 118, 7 230); works and names are invented.
 */
import { beforeEach, describe, expect, test } from 'vitest'
import type { Output } from '../../src/contract/contract.ts'
import { type Opened, refusalCode } from './opened.ts'
import { sitDown, wallOfSix } from './wall-of-six.ts'

let here: Opened
let show: string
let faces: readonly string[]
let entry: Readonly<Record<string, string>>
let place: Readonly<Record<string, string>>

beforeEach(async () => {
  ;({ here, show, faces, entry, place } = await wallOfSix())
}, 60_000)

const sit = (name: string) => sitDown(here, name)

const face = () => faces[0] ?? ''
const marksOf = (...titles: string[]) => ({
  exhibition: show,
  face: face(),
  marks: titles.flatMap(title => ['left', 'right'].map(slot => ({ placement: place[title] ?? '', slot }))),
})
async function drill(...titles: string[]) {
  await here.call('mark.services', { ...marksOf(...titles), checked: true })
  await here.call('mark.set', { ...marksOf(...titles), to: 'drilled' })
}
const marksNow = () => here.call('mark.ofFace', { exhibition: show, face: face() })
type Offered = Output<'late.offer'>['offers'][number]
type LateChange = Parameters<typeof offersOf>[0]
async function offersOf(change: Parameters<typeof here.call<'late.offer'>>[1]['change']) {
  return here.call('late.offer', { exhibition: show, change })
}
async function take(change: LateChange, { key, moves }: Offered) {
  return here.call('late.take', {
    exhibition: show,
    change,
    key,
    moves: moves.map(({ entry: of, x, y }) => ({ entry: of, x, y })),
  })
}
const wider = () => ({ kind: 'different' as const, entry: entry.C ?? '', width: 592, height: 540 })

describe('marks that are made', () => {
  test('stand at the places of the worked wall, with times and names', async () => {
    await drill('D')
    const { marks } = await marksNow()
    const d = marks.filter(mark => mark.placement === place.D)
    // D rings at x 4 586 and 5 426, bearing 1 880: the hook's hole is 14 above.
    expect(d.map(mark => [mark.made?.x, mark.made?.bearingY, mark.made?.y])).toEqual([
      [4586, 1880, 1894],
      [5426, 1880, 1894],
    ])
    expect(d.every(mark => mark.state === 'drilled' && mark.made?.drilled?.by === 'Tamsin Oake')).toBe(true)
    expect(marks.filter(mark => mark.placement === place.A).every(mark => mark.state === 'planned')).toBe(true)
  })

  test('get a note as one edit, which the work’s record tells', async () => {
    await here.call('mark.set', { ...marksOf('A'), to: 'marked' })
    const { marks } = await marksNow()
    const mark = marks.find(one => one.placement === place.A && one.slot === 'right')?.made?.id ?? ''
    await here.call('mark.note', { id: mark, note: 'hit metal at 20 mm, moved 12 mm right' })
    const { works } = await here.call('wall.elevation', { exhibition: show, face: face() })
    const work = works.find(one => one.placement === place.A)?.work ?? ''
    const written = async () => (await here.call('work.get', { id: work })).markNotes
    expect(await written()).toMatchObject([
      {
        mark,
        slot: 'right',
        note: 'hit metal at 20 mm, moved 12 mm right',
        by: 'Tamsin Oake',
        exhibitionTitle: 'Low Water',
      },
    ])
    await here.call('edit.undo', {})
    expect(await written()).toEqual([])
    expect((await marksNow()).marks.find(one => one.made?.id === mark)?.state).toBe('marked')
  })

  test('a work and its hooks are set as one edit', async () => {
    const at = async () => {
      const { works } = await here.call('wall.elevation', { exhibition: show, face: face() })
      const { x, hooksApart } = works.find(one => one.placement === place.A) ?? { x: 0, hooksApart: null }
      return { x, hooksApart }
    }
    const was = { face: face(), x: 1140, rule: 'face' as const, y: null }
    const hooks = { was: null, to: 300 }
    const to = { entry: entry.A ?? '', ...was, x: 1150, was, hooksApart: hooks }
    expect(await here.call('placement.put', { exhibition: show, places: [to] })).toMatchObject({ clashes: [] })
    expect(await at()).toEqual({ x: 1150, hooksApart: 300 })
    await here.call('edit.undo', {})
    expect(await at()).toEqual({ x: 1140, hooksApart: null })
  })

  test('freeze their work: it moves by a late change only', async () => {
    await drill('D')
    const put = await here.ask('placement.put', {
      exhibition: show,
      places: [
        {
          entry: entry.D ?? '',
          face: face(),
          x: 5050,
          rule: 'face',
          y: null,
          was: { face: face(), x: 5006, rule: 'face', y: null },
        },
      ],
    })
    expect(refusalCode(put)).toBe('drilled')
    expect(refusalCode(await here.ask('placement.remove', { placements: [place.D ?? ''] }))).toBe('drilled')
  })

  test('pencil follows the plan only when it is made anew', async () => {
    await here.call('mark.set', { ...marksOf('A'), to: 'marked' })
    await here.call('placement.put', {
      exhibition: show,
      places: [
        {
          entry: entry.A ?? '',
          face: face(),
          x: 1150,
          rule: 'face',
          y: null,
          was: { face: face(), x: 1140, rule: 'face', y: null },
        },
      ],
    })
    expect((await marksNow()).marks.find(mark => mark.placement === place.A)?.away).toBeCloseTo(10, 6)
    await here.call('mark.services', { ...marksOf('A'), checked: true })
    expect(refusalCode(await here.ask('mark.set', { ...marksOf('A'), to: 'drilled' }))).toBe('mark-moved')
    await here.call('mark.set', { ...marksOf('A'), to: 'marked' })
    // At its new place nobody has looked for pipes yet.
    expect(refusalCode(await here.ask('mark.set', { ...marksOf('A'), to: 'drilled' }))).toBe('services-not-checked')
    await here.call('mark.services', { ...marksOf('A'), checked: true })
    await here.call('mark.set', { ...marksOf('A'), to: 'drilled' })
    expect((await marksNow()).marks.find(mark => mark.placement === place.A)?.away).toBe(0)
  })

  test('are checked by somebody else than who hung the work', async () => {
    await drill('A')
    const early = await here.ask('placement.setState', { placements: [place.A ?? ''], to: 'checked' })
    expect(refusalCode(early)).toBe('not-hung')
    await here.call('placement.setState', { placements: [place.A ?? ''], to: 'hung' })
    const own = await here.ask('placement.setState', { placements: [place.A ?? ''], to: 'checked' })
    expect(refusalCode(own)).toBe('same-person')
    await sit('Ivo Marl')
    expect(await here.call('placement.setState', { placements: [place.A ?? ''], to: 'checked' })).toEqual({
      changed: 1,
    })
  })
})

describe('a frame 52 mm wider on a half-drilled wall', () => {
  test('is offered with its holes, taken as one edit, and undone to the same bytes', async () => {
    await drill('A', 'B', 'C')
    await here.call('placement.setState', { placements: [place.A ?? '', place.B ?? ''], to: 'hung' })
    const before = here.state().split('\n').slice(1).join('\n')
    const { offers, problem } = await offersOf(wider())
    expect(problem).toBe('')
    expect(offers[0]?.cost.hungMoved).toBe(0)
    const centre = offers.find(offer => offer.key === 'centre')
    expect(centre?.cost).toMatchObject({ moved: 0, newHoles: 2, deadHoles: 2, hungMoved: 0 })
    // Insets stay 35, so each ring comes 26 further out.
    expect(centre?.newHoles.map(hole => [hole.slot, hole.x])).toEqual([
      ['left', 3363],
      ['right', 3885],
    ])
    if (centre === undefined) throw new Error('not offered')
    expect(await take(wider(), centre)).toEqual({ moved: 0, taken: 0 })
    const elevation = await here.call('wall.elevation', { exhibition: show, face: face() })
    expect(elevation.works.find(work => work.entry === entry.C)?.size).toMatchObject({ width: 592, kind: 'measured' })
    const { marks } = await marksNow()
    expect(marks.filter(mark => mark.placement === place.C).map(mark => mark.away)).toEqual([26, 26])
    const undone = await here.call('edit.undo', {})
    expect(undone.undone).toContain('another frame for C')
    expect(here.state().split('\n').slice(1).join('\n')).toBe(before)
  })

  test('is refused when somebody has moved a work since it was shown', async () => {
    await drill('C')
    const { offers } = await offersOf(wider())
    const push = offers.find(offer => offer.moves.length > 0)
    if (push === undefined) throw new Error('nothing moves')
    expect(
      refusalCode(await here.ask('late.take', { exhibition: show, change: wider(), key: push.key, moves: [] })),
    ).toBe('offer-gone')
  })
})

describe('two works swapped', () => {
  test('and swapped back: every mark is where it was, every hole serves', async () => {
    await drill('A', 'E')
    const change = { kind: 'swap' as const, one: entry.A ?? '', other: entry.E ?? '' }
    const was = (await marksNow()).marks.map(mark => [mark.placement, mark.slot, mark.planned])
    for (const round of [1, 2]) {
      const { offers } = await offersOf(change)
      const [best] = offers
      if (best === undefined) throw new Error('not offered')
      expect(best.cost, `round ${round}`).toMatchObject({ moved: 2, newHoles: 0, deadHoles: 0, hungMoved: 0 })
      await take(change, best)
      const { marks, dead } = await marksNow()
      expect(dead).toEqual([])
      // The other work's holes are its own now.
      const swapped = marks.filter(mark => [place.A, place.E].includes(mark.placement))
      expect(swapped.map(mark => [mark.state, mark.away])).toEqual(Array.from({ length: 4 }, () => ['drilled', 0]))
    }
    expect((await marksNow()).marks.map(mark => [mark.placement, mark.slot, mark.planned])).toEqual(was)
  })

  test('from wall to wall: each takes the other’s place', async () => {
    await here.call('placement.put', {
      exhibition: show,
      places: [
        {
          entry: entry.F ?? '',
          face: faces[1] ?? '',
          x: 2600,
          rule: 'face',
          y: null,
          was: { face: face(), x: 7735, rule: 'face', y: null },
        },
      ],
    })
    await drill('C')
    const change = { kind: 'swap' as const, one: entry.C ?? '', other: entry.F ?? '' }
    const { offers } = await offersOf(change)
    const [best] = offers
    if (best === undefined) throw new Error('not offered')
    expect(best.off).toEqual([])
    await take(change, best)
    const [first, second] = await Promise.all(
      faces.slice(0, 2).map(each => here.call('wall.elevation', { exhibition: show, face: each })),
    )
    expect(first?.works.map(work => work.title)).toContain('F')
    expect(second?.works.map(work => [work.title, work.x])).toEqual([['C', 2600]])
    // C's holes stayed behind.
    expect((await marksNow()).dead.map(mark => mark.x)).toEqual([3389, 3859])
  })
})

describe('a work dropped, and its holes', () => {
  test('stay on the wall until they are filled', async () => {
    await drill('C')
    const change = { kind: 'drop' as const, entry: entry.C ?? '' }
    const { offers } = await offersOf(change)
    const leave = offers.find(offer => offer.key === 'leave-gap')
    if (leave === undefined) throw new Error('not offered')
    expect(await take(change, leave)).toEqual({ moved: 0, taken: 1 })
    const { dead } = await marksNow()
    expect(dead).toHaveLength(2)
    await here.call('mark.fill', { marks: dead.map(mark => mark.id), filled: true })
    expect((await marksNow()).dead).toEqual([])
    expect((await marksNow()).filled.map(mark => mark.x)).toEqual([3389, 3859])
  })
})

describe('a work that is only moved along', () => {
  test('keeps the height rule of its own', async () => {
    const at = { face: face(), x: 5006 }
    await here.call('placement.put', {
      exhibition: show,
      places: [{ entry: entry.D ?? '', ...at, rule: 'top', y: 2090, was: { ...at, rule: 'face', y: null } }],
    })
    const change = { kind: 'drop' as const, entry: entry.C ?? '' }
    const { offers } = await offersOf(change)
    const chosen = offers.find(offer => offer.moves.some(move => move.entry === entry.D))
    if (chosen === undefined) throw new Error('no way moves it')
    await take(change, chosen)
    const { works } = await here.call('wall.elevation', { exhibition: show, face: face() })
    const moved = works.find(work => work.entry === entry.D)
    expect(moved).toMatchObject({ rule: 'top', y: 2090, centreY: 1480 })
    expect(moved?.x).not.toBeCloseTo(5006, 1)
  })
})

describe('a whole wall lower by 50 mm', () => {
  test('prices what is drilled and moves nothing that hangs unless asked', async () => {
    await drill('A', 'B')
    await here.call('placement.setState', { placements: [place.A ?? ''], to: 'hung' })
    const change = { kind: 'lower' as const, by: 50, faces: [face()] }
    const { offers } = await offersOf(change)
    const by = new Map(offers.map(offer => [offer.key, offer]))
    expect(by.get('lower-free')?.cost).toMatchObject({ moved: 4, newHoles: 0, deadHoles: 0 })
    expect(by.get('lower-not-hung')?.cost).toMatchObject({ moved: 5, newHoles: 2, deadHoles: 2 })
    expect(by.get('lower-all')?.cost).toMatchObject({ moved: 5, hungMoved: 1, newHoles: 4, deadHoles: 4 })
    expect(offers.at(-1)?.key).toBe('lower-all')
    const all = by.get('lower-all')
    if (all === undefined) throw new Error('not offered')
    await take(change, all)
    const elevation = await here.call('wall.elevation', { exhibition: show, face: face() })
    expect(elevation.works.map(work => work.centreY)).toEqual([1430, 1430, 1430, 1430, 1430, 1430])
    expect(elevation.works.every(work => work.state === 'planned')).toBe(true)
  })
})
