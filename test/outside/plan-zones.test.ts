/**
 * Climate and light zones of a plan: poppler must put ink into every text box of the model and a hatching over the rooms
 * of a zone alone; ezdxf reads the zones' layer as large as their rooms.
 */
import { copyFileSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { writePdf } from '../../main/files/pdf/writer.ts'
import { openFaces } from '../../main/fonts/faces.ts'
import { formatArea } from '../../src/measure/area.ts'
import { figuresOf } from '../../src/plan/figures.ts'
import { planSheet } from '../../src/sheets/plan-sheet.ts'
import { papers } from '../../src/sheets/shapes.ts'
import { newCatalogue, openOn, ownFolder as ownCatalogueFolder } from '../contract/opened.ts'
import { ownFolder, pythonDxf, run, withProgram } from './programs.ts'

const folder = ownFolder()
afterAll(folder.remove)
beforeAll(() => openFaces())

const limits = '50 % ± 5 relative humidity, 20 °C ± 2'

/** Three rooms of 5,000 by 4,000 mm in a row: the first in both zones, the second in one, the third in none. */
async function house() {
  const own = ownCatalogueFolder()
  const opened = openOn(own, newCatalogue(own))
  const { call } = opened
  const walls = [5000, 4000, 5000, 4000].map(length => ({ length, angle: 90 }))
  const rooms: string[] = []
  for (const [at, name] of ['East', 'Middle', 'West'].entries()) {
    const place = { at: [at * 5400, 0] as [number, number], turn: 0, storey: '' }
    rooms.push((await call('room.add', { name, height: 3200, walls, place })).id)
  }
  await call('zone.add', { kind: 'climate', name: 'paper', note: limits, rooms: rooms.slice(0, 2) })
  await call('zone.add', { kind: 'light', name: 'no daylight', note: 'blinds stay down', rooms: rooms.slice(0, 1) })
  return opened
}

withProgram('poppler (pdftoppm)', 'zones on paper', () => {
  test('every word of the legend and of the rooms is there; rooms of a zone are hatched, others are not', async () => {
    const { call } = await house()
    const { rooms, zones } = await call('plan.get', { exhibition: null })
    const storey = figuresOf(rooms, '', area => formatArea(area, 'metric'), zones)
    const faces = await openFaces()
    const question = {
      title: 'House',
      about: '',
      storey,
      scale: 100,
      paper: papers.A4,
      north: null,
      units: { unit: 'mm', steps: { mm: 1, fraction: 16 } },
      time: 'today',
      by: '',
      revision: null,
      voids: [],
    } as const
    const { page, boxes } = planSheet(question, faces)
    expect(boxes.map(box => box.text)).toEqual(
      expect.arrayContaining([`climate zone: ${limits}`, 'light zone: blinds stay down', 'paper · no daylight']),
    )
    const file = join(folder.path, 'zones.pdf')
    await writePdf(
      file,
      { title: 'zones', language: 'en', at: '2031-03-14T10:00:00Z', pages: [page], picture: () => null },
      faces,
    )
    // 254 dpi: ten pixels a millimetre.
    run('pdftoppm', ['-r', '254', '-gray', '-png', '-singlefile', file, join(folder.path, 'zones')])
    const { data, info } = await sharp(readFileSync(join(folder.path, 'zones.png')))
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true })
    const at = (x: number, y: number) => data[Math.round(y * 10) * info.width + Math.round(x * 10)] ?? 255
    const empty = boxes.filter(box => {
      for (let y = box.y; y <= box.y + box.h; y += 0.1)
        for (let x = box.x; x <= box.x + box.w; x += 0.1) if (at(x, y) < 170) return false
      return true
    })
    expect(empty.map(box => `${box.name} “${box.text}”`)).toEqual([])
    // How much of a strip of each room, below its words, is not white. Rooms are 50 mm wide, 54 mm from one to the next.
    const middle = boxes.find(box => box.text === 'Middle')
    if (middle === undefined) throw new Error('the room has a name')
    const inked = [-54, 0, 54].map(off => {
      let dark = 0
      for (let y = middle.y + 12; y < middle.y + 17; y += 0.1)
        for (let x = middle.x + off - 15; x < middle.x + off + 15; x += 0.1) if (at(x, y) < 240) dark += 1
      return dark
    })
    const [both = 0, one = 0, none = 0] = inked.toSorted((a, b) => b - a)
    expect(none).toBe(0)
    expect(one).toBeGreaterThan(300)
    expect(both).toBeGreaterThan(one * 1.5)
  })
})

withProgram('ezdxf', 'zones of a drawing', () => {
  test('are a layer of their own, with the floors of their rooms and their names', async () => {
    const { call, host } = await house()
    const { files } = await call('sheet.plan', { exhibition: null, formats: ['dxf'] })
    const path = join(folder.path, 'zones.dxf')
    copyFileSync(host.handles.path(files[0]?.handle ?? ''), path)
    const script = fileURLToPath(new URL('read_plan.py', import.meta.url))
    const { layers, errors } = JSON.parse(run(pythonDxf ?? '', [script, path]))
    expect(errors).toEqual([])
    // One room in both zones, one in one: three floors of 5,000 × 4,000 mm.
    expect(layers.ZONES).toMatchObject({ closed: 3, open: 0, texts: ['paper · no daylight', 'paper'] })
    expect(layers.ZONES.area).toBeCloseTo(3 * 5000 * 4000, 0)
    // Read in again, rooms are still found by their walls and not by their zones.
    const again = await call('drawing.read', { handle: files[0]?.handle ?? '' })
    expect(again.layers.filter(layer => layer.chosen).map(layer => layer.name)).not.toContain('ZONES')
  })
})
