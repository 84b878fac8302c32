/**
 * The paper template at full size, read back by pdf.js and drawn by poppler: a millimetre of wall is 72 / 25.4 points
 * of paper (PDF's unit is 1/72 in, ISO 32000-1, 8.3.2.3; the inch is 25.4 mm), on every sheet and across seams.
 */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, describe, expect, test } from 'vitest'
import { writePdf } from '../../main/files/pdf/writer.ts'
import { openFaces } from '../../main/fonts/faces.ts'
import type { MarksAnswer } from '../../src/hang/marks-shape.ts'
import { defaultSteps } from '../../src/hang/printing.ts'
import { marksOfFace } from '../../src/model/marks-of-face.ts'
import type { Paper } from '../../src/sheets/shapes.ts'
import { paperTemplate, type Template, type TemplateQuestion } from '../../src/sheets/template.ts'
import { triptych } from '../unit/model/triptych.ts'
import { placed, six, wallOf } from '../unit/sheets/wall.ts'
import { crossesOf, type ReadPage, readPdf } from './pdf-strokes.ts'
import { ownFolder, run, withProgram } from './programs.ts'

const POINTS = 72 / 25.4
const folder = ownFolder()
afterAll(folder.remove)

const wall = wallOf(six.map((given, index) => placed(given, index)))

function answerOf(index: number): MarksAnswer {
  const found = marksOfFace(wall, { unit: 'mm', steps: defaultSteps }).get(`p${index}`)
  if (found === undefined || !('answer' in found)) throw new Error(`no marks of ${index}`)
  return found.answer
}

async function make(name: string, index: number, area: 'marks' | 'work', paper: Paper, unit: 'mm' | 'in' = 'mm') {
  const heading = {
    called: `${index + 1} Causeway`,
    place: 'Room 2, east wall',
    time: '14 March 2031, 16:20',
    by: 'Tamsin Oake',
  }
  return written(name, { answer: answerOf(index), area, paper, units: { unit, steps: defaultSteps }, heading })
}

async function written(name: string, question: TemplateQuestion) {
  const template = paperTemplate(question, await openFaces())
  const file = join(folder.path, `${name}.pdf`)
  const at = '2031-03-14T16:20:00.000Z'
  await writePdf(
    file,
    { title: template.title, language: 'en', at, pages: template.pages, picture: () => null },
    await openFaces(),
  )
  return { template, file, pages: await readPdf(file) }
}

test('a cancel between two pages leaves neither the file nor a part of it', async () => {
  const { template } = await make('kept', 3, 'work', 'A4')
  const at = '2031-03-14T16:20:00.000Z'
  const question = { title: 'cancelled', language: 'en', at, pages: template.pages, picture: () => null }
  const abort = new AbortController()
  const told: number[] = []
  const writing = writePdf(join(folder.path, 'cancelled.pdf'), question, await openFaces(), abort.signal, done => {
    told.push(done)
    // As a person does it: from outside, while the pages go on.
    if (done === 2) setTimeout(() => abort.abort(new Error('cancelled')), 0)
  })
  await expect(writing).rejects.toThrow('cancelled')
  expect(told.length).toBeGreaterThanOrEqual(3)
  expect(told.length).toBeLessThan(template.pages.length)
  expect(readdirSync(folder.path).filter(name => name.startsWith('cancelled'))).toEqual([])
})

/** The cross of a mark on its page: arms of 12 mm. */
function markOn(page: ReadPage | undefined): { x: number; y: number } {
  const [first, ...more] = page === undefined ? [] : crossesOf(page, 12 * POINTS)
  if (first === undefined || more.length > 0) throw new Error(`${more.length + 1} marks on the page`)
  return first
}

describe('read by pdf.js', () => {
  test('two marks 300 mm apart on one A3 sheet are 300 × 72 / 25.4 points apart, to a thousandth of a point', async () => {
    const small = wallOf([placed({ ...(six[2] ?? fail()), inset: 120 }, 0)])
    const found = marksOfFace(small, { unit: 'mm', steps: defaultSteps }).get('p0')
    if (found === undefined || !('answer' in found)) throw new Error('no marks')
    const one = paperTemplate(
      {
        answer: found.answer,
        area: 'marks',
        paper: 'A3',
        units: { unit: 'mm', steps: defaultSteps },
        heading: { called: '3', place: '', time: '', by: '' },
      },
      await openFaces(),
    )
    const file = join(folder.path, 'single.pdf')
    await writePdf(
      file,
      { title: 'single', language: 'en', at: '2031-03-14T16:20:00.000Z', pages: one.pages, picture: () => null },
      await openFaces(),
    )
    const [page, ...more] = await readPdf(file)
    if (page === undefined) throw new Error('no page')
    expect(more.length).toBe(0)
    const [left, right] = crossesOf(page, 12 * POINTS)
    if (left === undefined || right === undefined) throw new Error('not two marks')
    // 540 wide, insets 120: 300 apart.
    expect(Math.abs(right.x - left.x - 300 * POINTS)).toBeLessThan(0.001)
    expect(Math.abs(right.y - left.y)).toBeLessThan(0.001)
    // The paper has its own size, too.
    expect(page.width).toBeCloseTo(420 * POINTS, 2)
    expect(page.height).toBeCloseTo(297 * POINTS, 2)
  })

  test.each([
    ['marks of a work 710 wide on A4', 1, 'marks', 'A4'],
    ['the whole of it on A4', 1, 'work', 'A4'],
    ['marks on Letter', 1, 'marks', 'Letter'],
    ['a work of 1 220 × 960 on A3', 3, 'work', 'A3'],
  ] as const)(
    '%s: laid cross on cross, the marks are as far apart as on the wall',
    async (name, index, area, paper) => {
      const { template, pages } = await make(name.replace(/\W/g, ''), index, area, paper)
      expect(pages.length).toBe(template.pages.length)
      const spots = new Map(template.tiles.map((tile, at) => [tile.name, { tile, page: pages[at] }]))
      const answer = answerOf(index)
      const [left, right] = answer.marks
      if (left === undefined || right === undefined) throw new Error('not two marks')
      const from = [...spots.values()].find(({ tile }) => within(left.hole, tile))
      const to = [...spots.values()].find(({ tile }) => within(right.hole, tile))
      if (from?.page === undefined || to?.page === undefined) throw new Error('a mark is on no sheet')
      // From sheet to sheet along the row by the two crosses of each seam.
      let x = 0
      let y = 0
      for (let column = from.tile.column; column < to.tile.column; column++) {
        const here = spots.get(nameOf(from.tile.name, column))?.page
        const next = spots.get(nameOf(from.tile.name, column + 1))?.page
        if (here === undefined || next === undefined) throw new Error('a sheet between the marks is missing')
        const seam = seamCrosses(here, 'right')
        const other = seamCrosses(next, 'left')
        expect(seam.length).toBe(2)
        expect(other.length).toBe(2)
        seam.forEach((cross, each) => {
          // Both crosses of the seam lie on each other: no turn, no stretch.
          expect(Math.abs(cross.y - (other[each]?.y ?? 0))).toBeLessThan(0.001)
        })
        x += (seam[0]?.x ?? 0) - (other[0]?.x ?? 0)
        y += (seam[0]?.y ?? 0) - (other[0]?.y ?? 0)
      }
      const a = markOn(from.page)
      const b = markOn(to.page)
      expect(Math.abs(b.x + x - a.x - (right.hole.x - left.hole.x) * POINTS)).toBeLessThan(0.002)
      expect(Math.abs(b.y + y - a.y - (right.hole.y - left.hole.y) * POINTS)).toBeLessThan(0.002)
    },
  )

  test('the bars are 100 mm and 4 in on every sheet', async () => {
    const { pages } = await make('bars', 1, 'work', 'A4')
    for (const page of pages) {
      const lengths = page.strokes.map(each => Math.hypot(each.x2 - each.x1, each.y2 - each.y1))
      expect(lengths.filter(length => Math.abs(length - 100 * POINTS) < 0.001).length).toBeGreaterThanOrEqual(2)
      expect(lengths.filter(length => Math.abs(length - 4 * 72) < 0.001).length).toBeGreaterThanOrEqual(1)
    }
  })

  test('every sheet says which it is and that it must not be fitted; marks carry their heights in inches, too', async () => {
    const { template, pages } = await make('inches', 1, 'marks', 'Letter', 'in')
    pages.forEach((page, index) => {
      expect(page.text).toContain(`sheet ${template.tiles[index]?.name}, ${index + 1} of ${pages.length}`)
      expect(page.text).toContain('100 %')
    })
    // 1 480 + 910 / 2 − 140 + 14 = 1 809 mm: 70 11/16 + 9/16 in by the printed line.
    expect(pages.map(page => page.text).join(' ')).toMatch(/hole \+\d+/)
    expect(pages.map(page => page.text).join(' ')).toContain('71 1/4')
  })
})

describe('of a set', () => {
  /** Salt pans, Causeway and Raking, 19 mm apart, as one object whose left edge is at 3 116. */
  async function setOf(name: string, area: 'marks' | 'work', paper: Paper, unit: 'mm' | 'in' = 'mm') {
    const style = { unit, steps: defaultSteps }
    const found = marksOfFace(wallOf([triptych()]), style).get('p9')
    if (found === undefined || !('answer' in found)) throw new Error('no marks of the set')
    const parts = (found.parts ?? []).flatMap(({ letter, marks }) =>
      'answer' in marks ? [{ letter, answer: marks.answer }] : [],
    )
    const heading = { called: '12 Shore', place: 'Room 2, east wall', time: '', by: '' }
    return written(name, { answer: found.answer, parts, area, paper, units: style, heading })
  }

  test('sheets laid cross on cross have every mark of every part where it stands on the wall', async () => {
    const { template, pages } = await setOf('set', 'marks', 'A3')
    expect(template.rows).toBe(1)
    // Where each sheet lies beside the first, by the crosses of the seams between.
    let x = 0
    const marks = pages.flatMap((page, index) => {
      const before = pages[index - 1]
      if (before !== undefined) x += (seamCrosses(before, 'right')[0]?.x ?? 0) - (seamCrosses(page, 'left')[0]?.x ?? 0)
      return crossesOf(page, 12 * POINTS).map(cross => ({ x: cross.x + x, y: cross.y }))
    })
    // What two sheets show stands on both at the same place.
    const seen = marks
      .sort((a, b) => a.x - b.x)
      .filter(({ x: at }, index, all) => index === 0 || at - (all[index - 1]?.x ?? 0) > 0.01)
    // By hand: 3 116 + 40 and 1 480 + 310 − 95 + 14; 3 615 + 55 and 1 480 + 455 − 140 + 14; 4 344 + 35 and 1 480 + 270 − 70 + 14.
    const wanted = [
      [3156, 1709],
      [3556, 1709],
      [3670, 1809],
      [4270, 1809],
      [4379, 1694],
      [4849, 1694],
    ]
    expect(seen).toHaveLength(wanted.length)
    const [first] = seen
    seen.forEach((mark, index) => {
      expect(Math.abs(mark.x - (first?.x ?? 0) - ((wanted[index]?.[0] ?? 0) - 3156) * POINTS)).toBeLessThan(0.005)
      expect(Math.abs(mark.y - (first?.y ?? 0) - ((wanted[index]?.[1] ?? 0) - 1709) * POINTS)).toBeLessThan(0.002)
    })
  })

  test.each([
    // 480 + 19 + 710 + 19 + 35 = 1 263 mm; 40 mm; 480 + 19 + 55 = 554 mm.
    ['mm', ['40', '554', '1263']],
    // 1 263 mm is 49.72 in, to the sixteenth 49 3/4; 40 mm 1.57, 1 9/16; 554 mm 21.81, 21 13/16.
    ['in', ['19/16', '2113/16', '493/4']],
  ] as const)('its marks run from the left edge of the set, in %s', async (unit, running) => {
    const { template, pages } = await setOf(`running ${unit}`, 'work', 'A3', unit)
    const text = pages.map(page => page.text.replaceAll(/\s/g, '')).join(' ')
    for (const figure of running) expect(text).toContain(`${figure}fromtheset’sleftedge`)
    expect(new Set(template.marks.map(mark => mark.name))).toEqual(
      new Set(['a', 'b', 'c'].flatMap(letter => [`${letter} left mark`, `${letter} right mark`])),
    )
    for (const letter of ['a', 'b', 'c']) expect(text).toContain(`topedgeof${letter}`)
  })

  withProgram('poppler (pdftoppm)', 'draws ink into every text box and at every mark', () => {
    test.each(['marks', 'work'] as const)('%s', async area => {
      const { template, file } = await setOf(`setink${area}`, area, 'A3')
      expect(await withoutInk(`setink${area}`, template, file)).toEqual([])
    })
  })
})

withProgram('poppler (pdftoppm)', 'draws ink into every text box and at every mark', () => {
  test.each([
    ['marks', 'A4'],
    ['work', 'A4'],
  ] as const)('%s on %s', async (area, paper) => {
    const { template, file } = await make(`ink${area}`, 1, area, paper)
    expect(await withoutInk(`ink${area}`, template, file)).toEqual([])
    expect(template.marks.length).toBeGreaterThanOrEqual(2)
  })
})

/** Boxes and marks of a template where poppler draws nothing. */
async function withoutInk(name: string, template: Template, file: string): Promise<readonly string[]> {
  run('pdftoppm', ['-r', '150', '-png', file, join(folder.path, name)])
  const empty: string[] = []
  const digits = String(template.pages.length).length
  for (const [index, boxes] of template.boxes.entries()) {
    const picture = join(folder.path, `${name}-${String(index + 1).padStart(digits, '0')}.png`)
    const { data, info } = await sharp(picture).greyscale().raw().toBuffer({ resolveWithObject: true })
    const scale = info.width / (template.pages[index]?.width ?? 1)
    const marks = template.marks.filter(mark => mark.page === index)
    const spots = [
      ...boxes.map(box => ({ ...box, called: `${box.name} “${box.text}”` })),
      ...marks.map(mark => ({ x: mark.x - 0.2, y: mark.y - 0.2, w: 0.4, h: 0.4, called: mark.name })),
    ]
    for (const box of spots) {
      // White words on a filled field are ink of the other kind.
      let darkest = 255
      let lightest = 0
      for (let y = Math.floor(box.y * scale); y <= Math.min((box.y + box.h) * scale, info.height - 1); y++) {
        for (let x = Math.floor(box.x * scale); x <= Math.min((box.x + box.w) * scale, info.width - 1); x++) {
          darkest = Math.min(darkest, data[y * info.width + x] ?? 255)
          lightest = Math.max(lightest, data[y * info.width + x] ?? 0)
        }
      }
      if (darkest > 170 || lightest - darkest < 60) empty.push(`page ${index + 1}: ${box.called}`)
    }
  }
  return empty
}

function fail(): never {
  throw new Error('no such work')
}

function nameOf(name: string, column: number): string {
  return `${name.replace(/\d+$/, '')}${column + 1}`
}

function within(point: { x: number; y: number }, tile: Template['tiles'][number]): boolean {
  return point.x >= tile.left && point.x <= tile.right && point.y >= tile.bottom && point.y <= tile.top
}

/** The two crosses of the seam to one side, lower first: arms of 4 mm. */
function seamCrosses(page: ReadPage, side: 'left' | 'right') {
  const all = crossesOf(page, 4 * POINTS)
  const at = side === 'left' ? Math.min(...all.map(each => each.x)) : Math.max(...all.map(each => each.x))
  return all.filter(each => Math.abs(each.x - at) < 0.01).sort((a, b) => a.y - b.y)
}
