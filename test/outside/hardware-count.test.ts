/**
 * The demo's hardware, right to the screw: `count_hardware.py` counts it from the catalogue's rows by SQL and by rules
 * of its own; the list must say the same for each wall, in total, with spares and less what is in stock.
 */
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openCatalogue } from '../../main/database/catalogue.ts'
import { writeDemo } from '../../main/demo/write.ts'
import { openHandles } from '../../main/files/handles.ts'
import { openStore } from '../../main/files/store.ts'
import { hardware } from '../../main/services/crew/hardware.ts'
import type { CrewHardware } from '../../src/contract/areas/crew-shape.ts'
import { ownFolder, pythonAlone, run, withProgram } from './programs.ts'

const NOW = '2031-03-14T09:00:00.000Z'
const folder = ownFolder()
afterAll(folder.remove)

interface Counted {
  readonly boxes: Readonly<Record<string, Readonly<Record<string, number>>>>
  /** Needed, spare, to get. */
  readonly lines: Readonly<Record<string, readonly [number, number, number]>>
}

withProgram('Python', 'counts the demo’s hardware by itself', () => {
  let list: CrewHardware
  let counted: Counted
  beforeAll(async () => {
    const file = join(folder.path, 'demo.hangwright')
    let n = 0
    const clock = { now: () => NOW, newId: () => `d${(n++).toString(36).padStart(6, '0')}` }
    const { exhibitions } = await writeDemo(file, { ...clock, threads: 2, pictureSize: 160 })
    const exhibition = exhibitions[0] ?? ''
    const catalogue = openCatalogue(file, clock)
    const reading = {
      db: catalogue.db,
      store: openStore(file),
      handles: openHandles(join(folder.path, 'handles')),
      now: clock.now,
      person: null,
    }
    list = hardware(reading, { exhibition })
    catalogue.close()
    const script = new URL('count_hardware.py', import.meta.url).pathname
    counted = JSON.parse(run(pythonAlone ?? 'python3', [script, file, exhibition]))
  }, 180_000)

  test('every wall’s box', () => {
    const boxes = list.boxes.map(box => [box.face, Object.fromEntries(box.lines.map(line => [line.what, line.count]))])
    expect(Object.fromEntries(boxes)).toEqual(counted.boxes)
    expect(list.boxes.length).toBeGreaterThan(10)
  })

  test('needed, spare and to get of every line', () => {
    const lines = list.lines.map(line => [line.what, [line.needed, line.spare, line.toGet]])
    expect(Object.fromEntries(lines)).toEqual(counted.lines)
    expect(list.lines.length).toBeGreaterThan(40)
  })
})
