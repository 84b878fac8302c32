/** Walls with many works for the benches: the demo's long wall with its measured works repeated along it. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { writeDemo } from '../../main/demo/write.ts'
import { createHost } from '../../main/hosts/host.ts'
import { machineClock } from '../../main/services/clock.ts'
import type { Elevation } from '../../src/contract/areas/walls.ts'
import { wantedHoles } from '../../src/model/holes-of-face.ts'
import { callOn } from '../contract/fixture.ts'

const gap = 400

/** The demo's wall with most works, as the catalogue gives it. */
export async function demoWall(): Promise<Elevation> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))
  const file = join(folder, 'bench.hangwright')
  await writeDemo(file, machineClock)
  const host = createHost({ kind: 'command line', data: join(folder, 'data') })
  try {
    host.openFile(file)
    const { exhibitions } = await callOn(host, 'exhibition.list', {})
    const { rooms } = await callOn(host, 'room.list', {})
    const walls: Elevation[] = []
    for (const { face } of rooms.flatMap(room => room.walls)) {
      walls.push(await callOn(host, 'wall.elevation', { exhibition: exhibitions[0]?.id ?? '', face }))
    }
    const [most] = walls.sort((a, b) => b.works.length - a.works.length)
    if (most === undefined) throw new Error('the demo has no wall')
    return most
  } finally {
    await host.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Its measured works again and again on a wall long enough; the first `drilled` of them with their holes made. */
export function wallOf(from: Elevation, name: string, count: number, drilled: number): Elevation {
  const models = from.works.filter(work => work.size !== null && work.back !== null && work.fixing !== null)
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

/** Median and longest of so many runs, after three that nobody counts, ms. */
export function times(runs: number, act: () => unknown): string {
  for (let warm = 0; warm < 3; warm += 1) act()
  const spent = Array.from({ length: runs }, () => {
    const from = performance.now()
    act()
    return performance.now() - from
  }).sort((a, b) => a - b)
  const at = (part: number) => (spent[Math.min(runs - 1, Math.floor(part * runs))] ?? 0).toFixed(1)
  return `median ${at(0.5)} ms, longest ${at(1)} ms of ${runs}`
}
