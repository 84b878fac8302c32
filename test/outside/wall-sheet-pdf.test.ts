/**
 * The wall sheet's PDF held against other readers: poppler draws it and must put ink into every text box of the model;
 * poppler and pdf.js read every number back. Reading text back alone proves nothing: a page may show nothing and still
 * give its text.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { papers } from '../../src/sheets/shapes.ts'
import type { WallSheet } from '../../src/sheets/wall-sheet.ts'
import { cases, writeCase } from '../unit/sheets/cases.ts'
import { ownFolder, run, withProgram } from './programs.ts'

const folder = ownFolder()
afterAll(folder.remove)

const sheets = new Map<string, WallSheet>()
const file = (name: string) => join(folder.path, `${name}.pdf`)

beforeAll(async () => {
  for (const one of cases) sheets.set(one.name, await writeCase(one, file(one.name)))
})

function sheetNamed(name: string): WallSheet {
  const sheet = sheets.get(name)
  if (sheet === undefined) throw new Error(`no sheet ${name}`)
  return sheet
}

/** Readers write spaces as they like. */
const bare = (text: string) => text.replace(/\s/gu, '')

/** Every number of a row as it stands on the paper. */
function numbersOf(sheet: WallSheet): readonly string[] {
  return sheet.rows.flatMap(row =>
    [
      ...row.fromFloor,
      ...row.fromLine,
      ...row.holeFromFloor,
      ...row.holeFromLine,
      row.leftMark,
      row.rightMark,
      row.apart,
      row.leftEdge,
      row.gapBefore,
    ]
      .flatMap(figure => (figure === null ? [] : [figure.main]))
      .map(bare),
  )
}

withProgram('poppler (pdftoppm)', 'draws ink into every text box of the model', () => {
  test.each(cases)('$name', async ({ name, paper }) => {
    const sheet = sheetNamed(name)
    run('pdftoppm', ['-r', '150', '-png', file(name), join(folder.path, name)])
    const empty: string[] = []
    for (const [index, boxes] of sheet.boxes.entries()) {
      const digits = String(sheet.pages.length).length
      const picture = join(folder.path, `${name}-${String(index + 1).padStart(digits, '0')}.png`)
      const { data, info } = await sharp(picture).greyscale().raw().toBuffer({ resolveWithObject: true })
      const scale = info.width / papers[paper].width
      for (const box of boxes) {
        let darkest = 255
        for (let y = Math.floor(box.y * scale); y <= Math.min((box.y + box.h) * scale, info.height - 1); y++) {
          for (let x = Math.floor(box.x * scale); x <= Math.min((box.x + box.w) * scale, info.width - 1); x++) {
            darkest = Math.min(darkest, data[y * info.width + x] ?? 255)
          }
        }
        if (darkest > 170) empty.push(`page ${index + 1}: ${box.name} “${box.text}”`)
      }
    }
    expect(empty).toEqual([])
    expect(sheet.boxes.flat().length).toBeGreaterThan(100)
  })
})

withProgram('poppler (pdftotext)', 'reads every number back', () => {
  test.each(cases)('$name', ({ name }) => {
    const text = bare(run('pdftotext', ['-layout', file(name), '-']))
    for (const number of numbersOf(sheetNamed(name))) expect(text).toContain(number)
    const [first] = sheetNamed(name).rows
    expect(text).toContain(bare(first?.title ?? '').slice(0, 12))
  })

  test('finds the letter that no face has, too', () => {
    expect(run('pdftotext', [file('six-A4-mm'), '-'])).toContain('波')
  })
})

describe('pdf.js in Node', () => {
  test.each(cases)('reads every number and the title of $name', async ({ name }) => {
    const fonts = new URL('../../node_modules/pdfjs-dist/standard_fonts/', import.meta.url).pathname
    const task = getDocument({
      data: new Uint8Array(readFileSync(file(name))),
      standardFontDataUrl: fonts,
      verbosity: 0,
    })
    const pdf = await task.promise
    const sheet = sheetNamed(name)
    expect(pdf.numPages).toBe(sheet.pages.length)
    let text = ''
    for (let page = 1; page <= pdf.numPages; page++) {
      const { items } = await (await pdf.getPage(page)).getTextContent()
      text += items.map(item => ('str' in item ? item.str : '')).join('')
    }
    for (const number of numbersOf(sheet)) expect(bare(text)).toContain(number)
    const { info } = await pdf.getMetadata()
    expect(info).toMatchObject({ Title: sheet.title, Language: 'en' })
    await task.destroy()
  })
})

test('the same sheet at the same time is the same file, byte by byte', async () => {
  const [one] = cases
  if (one === undefined) throw new Error('no case')
  await writeCase(one, join(folder.path, 'again.pdf'))
  expect(readFileSync(join(folder.path, 'again.pdf')).equals(readFileSync(file(one.name)))).toBe(true)
})
