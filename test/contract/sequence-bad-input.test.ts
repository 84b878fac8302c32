/**
 * Shows that cannot be planned as they are: each gets a sentence that helps, in bounded time, and leaves everything as
 * it was. No work here has a picture. Sizes by hand: the room's walls are 9140 and 5200 long, with room for a label, 219, at each end.
 */
import { beforeEach, describe, expect, test } from 'vitest'
import type { Opened } from './opened.ts'
import { refusalCode } from './opened.ts'
import { showInRoom } from './show-in-room.ts'

let here: Opened
let show: string
let room: string

beforeEach(async () => {
  ;({ here, show, room } = await showInRoom())
}, 60_000)

/** Works of these sizes at the end of the checklist, by one list. */
async function bring(sizes: readonly (readonly [width: number, height: number])[]): Promise<void> {
  const rows = sizes.map(([width, height], index) => `N ${index + 1},Work ${index + 1},framed ${height} x ${width} mm`)
  const handle = here.give('list.csv', ['No,Title,Dimensions', ...rows].join('\n'))
  const { added } = await here.call('import.accept', { handle, exhibition: show })
  expect(added).toBe(sizes.length)
}
const times = (many: number, width = 500, height = 400) =>
  Array.from({ length: many }, (_, index) => [width + (index % 7) * 10, height] as const)
const entries = async () => (await here.call('exhibition.frieze', { exhibition: show })).works
const capacity = () => here.call('sequence.capacity', { exhibition: show })
const propose = (more: { seed?: number; steps?: number } = {}, job?: string) =>
  here.call('sequence.propose', { exhibition: show, ...more }, job)

describe('a show that cannot be planned', { timeout: 120_000 }, () => {
  test('of no works says so, and has nothing to propose', async () => {
    expect((await capacity()).says).toBe('The show has no works yet. Bring in a list, or add one.')
    expect(await propose()).toMatchObject({ works: 0, proposals: [], unsized: [] })
    expect(await here.call('sequence.walls', { exhibition: show })).toMatchObject({ ordered: false })
  })

  test('of works without size names them, and has nothing to propose', async () => {
    const { entry } = await here.call('work.add', { title: 'Unmeasured', exhibition: show })
    expect(await propose()).toMatchObject({ works: 0, proposals: [], unsized: [entry] })
    expect((await capacity()).sections[0]).toMatchObject({ works: 1, unsized: 1 })
  })

  test('without any wall says what to draw', async () => {
    await here.call('room.remove', { id: room })
    await bring(times(3))
    expect((await capacity()).says).toBe('No wall is on the visitor’s way. Draw a room, or put walls into the order.')
    expect(await propose()).toMatchObject({ works: 3, stretches: 0, proposals: [] })
  })
})

describe('a show that is planned as far as it can be', { timeout: 120_000 }, () => {
  test('on one wall: nothing differs but the order, and what finds no room is named', async () => {
    const { rooms } = await here.call('room.list', {})
    const [north] = rooms[0]?.walls ?? []
    await here.call('wall.plan', {
      exhibition: show,
      face: north?.face ?? '',
      changes: { visitorOrder: { was: null, to: 1 } },
    })
    await bring(times(30))
    const { proposals, stretches } = await propose({ steps: 3000 })
    expect(stretches).toBe(1)
    expect(proposals.length).toBeGreaterThan(0)
    for (const { faces, out } of proposals) {
      expect(faces.map(({ face }) => face)).toEqual([north?.face])
      expect((faces[0]?.works.length ?? 0) + out.length).toBe(30)
      expect(out.length).toBeGreaterThan(0)
    }
  })

  // 9,140 mm of wall, less a label's room of 219 mm at either end.
  test('a work wider than any wall is named with its width, and all others are hung', async () => {
    await bring([[8703, 900], ...times(6)])
    const [wide] = await entries()
    const told = await capacity()
    expect(told.tooWide).toEqual([{ entry: wide?.entry, title: 'Work 1', width: 8703 }])
    const { proposals } = await propose({ steps: 3000 })
    for (const { out } of proposals) expect(out).toEqual([wide?.entry])
    const { work } = await here.call('sequence.explain', { exhibition: show, of: { entry: wide?.entry ?? '' } })
    expect(work).toMatchObject({ face: null, stretches: 4, barred: { tooWide: 4 } })
    // By a millimetre it is not.
    await here.call('edit.undo', {})
    await bring([[8702, 900]])
    expect((await capacity()).tooWide).toEqual([])
  })

  test('a checklist longer than the building says by how much, and where it runs out', async () => {
    await bring(times(80))
    const told = await capacity()
    expect(told.short).toBeGreaterThan(0)
    expect(told.needed - told.there).toBeCloseTo(told.short, 6)
    expect(told.says).toMatch(
      /^The works want \d+\.\d m, the walls give \d+\.\d m: \d+\.\d m are missing\. It runs out in without a section\.$/,
    )
    const { proposals, bound } = await propose({ steps: 3000 })
    for (const { out, quality, faces } of proposals) {
      expect(faces.flatMap(({ works }) => works).length + out.length).toBe(80)
      expect(out.length).toBeGreaterThan(0)
      expect(quality).toBeLessThanOrEqual(bound.quality + 1e-6)
    }
  })
})

test('rules that contradict are named, and nothing is searched for', { timeout: 120_000 }, async () => {
  await bring(times(6))
  const [one, two] = await entries()
  const works = [one?.work ?? '', two?.work ?? '']
  const rule = async (kind: 'side by side' | 'not beside') =>
    (await here.call('sequence.addRule', { exhibition: show, kind, works })).id
  const rules = [await rule('side by side'), await rule('not beside')]
  const before = here.state()
  const answered = await here.ask('sequence.propose', { exhibition: show })
  expect(refusalCode(answered)).toBe('rules-contradict')
  if (answered.ok) throw new Error('it was answered')
  expect(answered.refusal.details).toEqual({ rules: expect.arrayContaining(rules) })
  expect(answered.refusal.message).toBe(
    '“Work 1 and Work 2 hang side by side, on one wall” and “Work 1 and Work 2 do not hang side by side” can’t both be kept; without either the other can. Switch one of them off or change it.',
  )
  expect(here.state()).toBe(before)
})

describe('2,000 works', () => {
  beforeEach(async () => {
    await bring(times(2000))
  }, 60_000)

  test('are planned in one room in bounded time and memory, and the catalogue answers meanwhile', {
    timeout: 300_000,
  }, async () => {
    let most = 0
    const watching = setInterval(() => {
      most = Math.max(most, process.memoryUsage.rss())
    }, 50)
    const resting = process.memoryUsage.rss()
    const start = process.cpuUsage()
    const searching = propose({ seed: 1 })
    const told = await capacity()
    expect(told.says).toContain('are missing')
    const { proposals, works } = await searching
    clearInterval(watching)
    const { user, system } = process.cpuUsage(start)
    expect(works).toBe(2000)
    expect(proposals.length).toBeGreaterThan(0)
    for (const { faces, out } of proposals) expect(faces.flatMap(one => one.works).length + out.length).toBe(2000)
    expect((user + system) / 1e6).toBeLessThan(120)
    expect((most - resting) / 2 ** 20).toBeLessThan(500)
  })

  test('stop being searched for at once when cancelled, and change nothing', { timeout: 120_000 }, async () => {
    const before = here.state()
    let asked = 0
    here.host.subscribe(event => {
      if (asked > 0 || event.kind !== 'progress' || event.job !== 'search' || event.done === 0) return
      asked = performance.now()
      here.host.cancel('search')
    })
    const answered = await here.ask('sequence.propose', { exhibition: show }, 'search')
    expect(refusalCode(answered)).toBe('cancelled')
    expect(performance.now() - asked).toBeLessThan(10_000)
    expect(here.state()).toBe(before)
  })
})
