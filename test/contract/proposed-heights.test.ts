/** Heights of what is proposed: what stands on a base stands there when it is taken, whatever line its new wall has. */
import { expect, test } from 'vitest'
import { showInRoom } from './show-in-room.ts'

test('an object on a plinth keeps to its plinth, and its neighbours to the line; labels end before the wall does', async () => {
  const { here, show } = await showInRoom()
  const sizes = [500, 620, 700, 480].map((width, index) => `N ${index + 1},Work ${index + 1},framed 400 x ${width} mm`)
  const handle = here.give('list.csv', ['No,Title,Dimensions', ...sizes].join('\n'))
  await here.call('import.accept', { handle, exhibition: show })
  const { works } = await here.call('exhibition.frieze', { exhibition: show })
  const [jar] = works
  await here.call('work.setBack', {
    work: jar?.work ?? '',
    method: 'plinth',
    seenFrom: 'front',
    data: { base: { width: 600, depth: 500, height: 950 } },
  })
  const { proposals } = await here.call('sequence.propose', { exhibition: show, steps: 2000 })
  const [one] = proposals
  const faces = (one?.faces ?? []).map(({ face, works: own }) => ({
    face,
    works: own.map(({ entry, x, y }) => ({ entry, x, y: y ?? null, was: null })),
  }))
  await here.call('sequence.take', { exhibition: show, faces })
  const { walls } = await here.call('sequence.walls', { exhibition: show })
  const hung = walls.flatMap(wall => wall.works.map(work => ({ ...work, length: wall.length })))
  expect(hung).toHaveLength(4)
  for (const { entry, y } of hung) expect(y).toBeCloseTo(entry === jar?.entry ? 950 + 200 : 1480, 6)
  const width = new Map(works.map(work => [work.entry, work.width ?? 0]))
  // A label is 159 wide and hangs 60 beside its work: the house's rules.
  for (const { entry, x, length } of hung) expect(x + (width.get(entry) ?? 0) / 2 + 219).toBeLessThanOrEqual(length)
})
