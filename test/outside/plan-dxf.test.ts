/**
 * Plans in and out, held against programs that know the formats: ezdxf draws what we read and reads what we write, and
 * poppler draws the sheet, on which a millimetre is a hundred of the house at 1:100.
 */
import { copyFileSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import sharp from 'sharp'
import { afterAll, expect, test } from 'vitest'
import { readDxf } from '../../main/files/dxf/read.ts'
import { outlinesOf, usualOutlineRules } from '../../src/plan/outlines-from-lines.ts'
import { dxfOf, oneRoom, oneRoomWords, twoRooms } from '../contract/dxf-files.ts'
import { newCatalogue, openOn, ownFolder as ownCatalogueFolder } from '../contract/opened.ts'
import { ownFolder, pythonDxf, run, withProgram } from './programs.ts'

const folder = ownFolder()
afterAll(folder.remove)
const script = (name: string) => fileURLToPath(new URL(name, import.meta.url))
const quiet = () => undefined

interface Layer {
  readonly closed: number
  readonly open: number
  readonly area: number
  readonly length: number
  readonly texts: readonly string[]
}

/** A room of 5,000 by 4,000 mm within walls of 200 mm, taken from a drawing, with the files asked for. */
async function takenOut(formats: ('pdf' | 'svg' | 'dxf')[], scale?: number) {
  const own = ownCatalogueFolder()
  const { call, give, host } = openOn(own, newCatalogue(own))
  const handle = give('east.dxf', dxfOf(oneRoom, oneRoomWords))
  await call('drawing.take', { handle, rooms: [{ outline: '1', name: 'East Cabinet', number: '104' }], height: 3200 })
  const made = await call('sheet.plan', {
    exhibition: null,
    formats,
    paper: 'A4',
    ...(scale === undefined ? {} : { scale }),
  })
  return made.files.map(file => {
    const path = join(folder.path, file.name)
    copyFileSync(host.handles.path(file.handle), path)
    return path
  })
}

withProgram('ezdxf', 'plans in and out', () => {
  test.each(['R12', 'R2000', 'R2007', 'R2018'])('%s: all lines are as long and reach as far as it says', version => {
    const file = join(folder.path, `${version}.dxf`)
    const said: { length: number; left: number; right: number } = JSON.parse(
      run(pythonDxf ?? '', [script('draw_plan.py'), version, file]),
    )
    const { pieces, unit, layers } = readDxf(file, quiet)
    let length = 0
    let [left, right] = [Infinity, -Infinity]
    for (let at = 0; at < pieces.count; at++) {
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = pieces.xy.subarray(at * 4, at * 4 + 4)
      length += Math.hypot(x2 - x1, y2 - y1)
      left = Math.min(left, x1, x2)
      right = Math.max(right, x1, x2)
    }
    // Chords of 10° are shorter than their arc by 0.13 %: 1 − sin 5° / (5° in radians). A third here is straight.
    expect(length / said.length).toBeGreaterThan(1 - 0.0013)
    expect(length / said.length).toBeLessThanOrEqual(1 + 1e-9)
    // No chord is off its arc by more than r (1 − cos 5°), r at most 3.7 m here.
    expect(Math.abs(left - said.left)).toBeLessThan(0.015)
    expect(Math.abs(right - said.right)).toBeLessThan(0.015)
    // R12 has no place for a unit.
    expect(unit).toBe(version === 'R12' ? null : 'm')
    expect(layers.map(layer => layer.name)).toContain('Möbel')
  })

  test('what we write is clean, in millimetres, closed, and as large as the room; read again it is the same room', async () => {
    const [file = ''] = await takenOut(['dxf'])
    const said: {
      readonly version: string
      readonly units: number
      readonly errors: readonly string[]
      readonly fixes: readonly string[]
      readonly layers: Readonly<Record<string, Layer>>
      readonly linetypes: Readonly<Record<string, string>>
      readonly patterns: Readonly<Record<string, readonly number[]>>
    } = JSON.parse(run(pythonDxf ?? '', [script('read_plan.py'), file]))
    expect(said).toMatchObject({ version: 'AC1021', units: 4, errors: [], fixes: [] })
    // What is hidden or above the cut is dashed (ISO 128): 3 and 1.5 mm at 1:100.
    expect(said.linetypes).toMatchObject({ WALLS: 'Continuous', TRACKS: 'DASHED', 'WALLS-UNMEASURED': 'DASHED' })
    expect(said.patterns.DASHED).toEqual([300, -150])
    const { ROOMS: rooms, WALLS: walls, TEXT: texts } = said.layers
    expect(rooms).toMatchObject({ closed: 1, open: 0 })
    expect(rooms?.area).toBeCloseTo(5000 * 4000, 0)
    expect(rooms?.length).toBeCloseTo(18_000, 1)
    // Four bands between 5,400 × 4,400 outside and the room.
    expect(walls).toMatchObject({ closed: 4, open: 0 })
    expect(walls?.area).toBeCloseTo(5400 * 4400 - 5000 * 4000, 0)
    expect(texts?.texts).toEqual(['East Cabinet', '104 · 20.0 m²'])

    const again = readDxf(file, quiet)
    const place = again.layers.findIndex(layer => layer.name === 'ROOMS')
    const lines = Array.from({ length: again.pieces.count }, (_, at) => at)
      .filter(at => again.pieces.layer[at] === place)
      .flatMap(at => [...again.pieces.xy.subarray(at * 4, at * 4 + 4)])
    const [room] = outlinesOf(lines, usualOutlineRules)
    expect(room?.area).toBeCloseTo(20, 6)
  })
})

withProgram('ezdxf', 'a plan that another program has read and written anew', () => {
  test('is the same rooms with the same doorway', async () => {
    const own = ownCatalogueFolder()
    const { call, give, host } = openOn(own, newCatalogue(own))
    const openings = { kind: 'door', height: 2100 } as const
    const take = (handle: string) =>
      call('drawing.take', {
        handle,
        rooms: ['1', '2'].map(outline => ({ outline, name: `Cabinet ${outline}` })),
        height: 3200,
        openings,
      })
    const rooms = async () =>
      (await call('plan.get', { exhibition: null })).rooms.map(({ area, walls }) => ({
        area,
        walls: walls.map(({ length, thickness, openings: holes }) => [length, thickness, holes.map(each => each.x)]),
        leads: walls.flatMap(wall => wall.openings.map(each => each.other !== null && each.leadsTo !== null)),
      }))
    expect(await take(give('two.dxf', dxfOf(twoRooms)))).toMatchObject({ doorways: 1 })
    const before = await rooms()
    expect(before.map(({ area, leads }) => [area, leads])).toEqual([
      [20, [true]],
      [16, [true]],
    ])
    const { files } = await call('sheet.plan', { exhibition: null, formats: ['dxf'] })
    const [from, to] = [host.handles.path(files[0]?.handle ?? ''), join(folder.path, 'anew.dxf')]
    run(pythonDxf ?? '', [script('rewrite_plan.py'), from, to])
    await call('edit.undo', {})
    expect(await rooms()).toEqual([])
    expect(await take(give('anew.dxf', readFileSync(to)))).toMatchObject({ doorways: 1 })
    expect(await rooms()).toEqual(before)
  })
})

withProgram('poppler (pdftoppm)', 'a plan on paper', () => {
  test('5,000 mm of room are 50 mm of paper at 1:100, and 4,000 are 40', async () => {
    const [file = ''] = await takenOut(['pdf'], 100)
    // 254 dpi: ten pixels a millimetre.
    const picture = join(folder.path, 'plan')
    run('pdftoppm', ['-r', '254', '-gray', '-png', '-singlefile', file, picture])
    const { data, info } = await sharp(readFileSync(`${picture}.png`))
      .raw()
      .toBuffer({ resolveWithObject: true })
    const dark = (x: number, y: number) => (data[(y * info.width + x) * info.channels] ?? 255) < 100
    expect(info.width / 10).toBeCloseTo(297, 0)
    // Off the middle, where the name stands: along a line at a quarter of the room's height, and one of its width.
    const [middleX, middleY] = [Math.round(info.width / 2), Math.round(info.height / 2)]
    const inside = (line: (at: number) => boolean, from: number) => {
      let [a, b] = [from, from]
      while (!line(a - 1)) a -= 1
      while (!line(b + 1)) b += 1
      return (b - a + 1) / 10
    }
    const across = inside(x => dark(x, middleY + 130), middleX)
    const down = inside(y => dark(middleX - 180, y), middleY)
    // The line of the room, 0.35 mm, stands half within it on each side.
    expect(across).toBeGreaterThan(49.5)
    expect(across).toBeLessThan(50.1)
    expect(down).toBeGreaterThan(39.5)
    expect(down).toBeLessThan(40.1)
  })

  test('the SVG says the size of its paper and has the same lines', async () => {
    const [file = ''] = await takenOut(['svg'], 100)
    const text = readFileSync(file, 'utf8')
    expect(text).toContain('width="297mm" height="210mm" viewBox="0 0 297 210"')
    // 297 and 210 mm in points of 1/72 in.
    const { width, height } = await sharp(Buffer.from(text), { density: 72 }).metadata()
    expect([width, height]).toEqual([842, 595])
    expect(text).toContain('>East Cabinet<')
  })
})
