/** Walls with many works for the benches: the demo's long wall with its measured works repeated along it. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { writeDemo } from '../../main/demo/write.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { machineClock } from '../../main/services/clock.ts'
import type { Elevation } from '../../src/contract/areas/walls.ts'
import type { Input } from '../../src/contract/contract.ts'
import { wantedHoles } from '../../src/model/holes-of-face.ts'
import { callOn } from '../contract/fixture.ts'

const gap = 400

/** What comes of the demo's catalogue, written anew for it and thrown away. */
export async function withDemo<T>(use: (host: Host, file: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))
  const file = join(folder, 'bench.hangwright')
  await writeDemo(file, machineClock)
  const host = createHost({ kind: 'command line', data: join(folder, 'data') })
  try {
    host.openFile(file)
    return await use(host, file)
  } finally {
    await host.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

/** The demo's wall with most works, as the catalogue gives it. */
export async function demoWall(host: Host): Promise<Elevation> {
  const { exhibitions } = await callOn(host, 'exhibition.list', {})
  const { rooms } = await callOn(host, 'room.list', {})
  const walls: Elevation[] = []
  for (const { face } of rooms.flatMap(room => room.walls)) {
    walls.push(await callOn(host, 'wall.elevation', { exhibition: exhibitions[0]?.id ?? '', face }))
  }
  const [most] = walls.sort((a, b) => b.works.length - a.works.length)
  if (most === undefined) throw new Error('the demo has no wall')
  return most
}

/** A show of its own in the catalogue: the wall's measured works copied on to so many walls, each with so many. */
export async function addShow(host: Host, from: Elevation, walls: number, each: number): Promise<string> {
  const { id: exhibition } = await callOn(host, 'exhibition.add', { title: 'Bench' })
  const models = measured(from)
  const before = new Set((await callOn(host, 'room.list', {})).rooms.map(room => room.id))
  for (let at = 0; at < walls / 4; at += 1) {
    const length = { length: 30_000 }
    await callOn(host, 'room.add', { name: `Bench ${at + 1}`, height: 4000, walls: [length, length, length, length] })
  }
  const { rooms } = await callOn(host, 'room.list', {})
  const faces = rooms.filter(room => !before.has(room.id)).flatMap(room => room.walls.map(wall => wall.face))
  const places: Input<'placement.put'>['places'][number][] = []
  for (const face of faces) {
    let left = 600
    for (let at = 0; at < each; at += 1) {
      const model = models[at % models.length]
      if (model === undefined) throw new Error('the demo’s wall has no work with a measured back')
      const { entry } = await callOn(host, 'work.duplicate', { id: model.work, exhibition })
      const width = model.size?.width ?? 0
      places.push({ entry: entry ?? '', face, x: left + width / 2, rule: 'face', y: null, was: null })
      left += width + gap
    }
  }
  await callOn(host, 'placement.put', { exhibition, places })
  return exhibition
}

function measured(from: Elevation): Elevation['works'] {
  return from.works.filter(work => work.size !== null && work.back !== null && work.fixing !== null)
}

/** Its measured works again and again on a wall long enough; the first `drilled` of them with their holes made. */
export function wallOf(from: Elevation, name: string, count: number, drilled: number): Elevation {
  const models = measured(from)
  let left = 600
  const works = Array.from({ length: count }, (_, at) => {
    const model = models[at % models.length]
    if (model === undefined) throw new Error('the demo’s wall has no work with a measured back')
    const width = model.size?.width ?? 0
    const id = `${name}-${at}`
    const work = {
      ...model,
      placement: `p-${id}`,
      entry: `e-${id}`,
      work: `w-${id}`,
      running: `${at + 1}`,
      x: left + width / 2,
      held: false,
      state: 'planned' as const,
    }
    left += width + gap
    return work
  })
  const bare: Elevation = {
    ...from,
    wall: { ...from.wall, face: name, length: left - gap + 600, keepClears: [], openings: [], floor: [], ceiling: [] },
    works,
    made: [],
    settled: [],
    layouts: [],
  }
  const holed = new Set(works.slice(0, drilled).map(work => work.placement))
  const made = wantedHoles(bare, { unit: 'mm', steps: { mm: 1, fraction: 16 } })
    .filter(hole => holed.has(hole.placement))
    .map(({ placement, slot, x, y, bearingY }) => ({
      id: `${placement} ${slot}`,
      placement,
      slot,
      x,
      y,
      bearingY,
      fixing: '',
      kind: '',
      state: 'drilled' as const,
      services: null,
      marked: null,
      drilled: null,
      filled: null,
      note: '',
    }))
  return { ...bare, made }
}

/**
 * Of so many runs, ms by the clock: the first, and of the rest the quickest, the median and the longest. What else the
 * machine does spoils all but the quickest.
 */
export async function times(runs: number, act: () => unknown): Promise<string> {
  const spent: number[] = []
  for (let run = 0; run < runs; run += 1) {
    const from = performance.now()
    await act()
    spent.push(performance.now() - from)
  }
  const [first, ...rest] = spent
  rest.sort((a, b) => a - b)
  const at = (part: number) => (rest[Math.min(rest.length - 1, Math.floor(part * rest.length))] ?? 0).toFixed(1)
  return `first ${first?.toFixed(1)} ms, then quickest ${at(0)} ms, median ${at(0.5)} ms, longest ${at(1)} ms of ${rest.length}`
}
