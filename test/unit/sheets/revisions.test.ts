/** Printing as a record, on a real catalogue: revisions, what they make void, and undo back to what was printed. */
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { buildFonts } from '../../../main/fonts/build.ts'
import { answer } from '../../../main/hosts/answer.ts'
import { createHost, type Host } from '../../../main/hosts/host.ts'
import { callOn, type Known, makeFixture } from '../../contract/fixture.ts'

let folder: string
let known: Known
let host: Host
beforeAll(() => buildFonts())
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-sheets-'))
  const made = await makeFixture(folder)
  known = made.known
  host = createHost({ kind: 'command line', data: join(folder, 'data'), checksOutput: true })
  host.openFile(made.file)
})
afterEach(async () => {
  await host.close()
  rmSync(folder, { recursive: true, force: true })
})

const print = async () => {
  const { files } = await callOn(host, 'sheet.wall', { exhibition: known.show ?? '', faces: [known.northFace ?? ''] })
  return files[0]?.revision
}
const state = async () => (await callOn(host, 'sheet.state', { exhibition: known.show ?? '' })).faces[0]
const move = (from: number, to: number) =>
  callOn(host, 'placement.put', {
    exhibition: known.show ?? '',
    places: [
      {
        entry: known.causewayEntry ?? '',
        face: known.northFace ?? '',
        x: to,
        rule: 'face',
        y: null,
        was: { face: known.northFace ?? '', x: from, rule: 'face', y: null },
      },
    ],
  })

test('a print of the same content is the same revision; a changed one is the next and voids the older', async () => {
  expect(await print()).toBe(1)
  expect(await print()).toBe(1)
  await move(2367, 2400)
  expect(await state()).toMatchObject({ printed: { revision: 1 }, upToDate: false, voids: [] })
  expect(await print()).toBe(2)
  expect(await state()).toMatchObject({ printed: { revision: 2 }, upToDate: true, voids: [1] })
  await move(2400, 2450)
  expect(await print()).toBe(3)
  expect(await state()).toMatchObject({ voids: [1, 2] })
})

test('a plan counts revisions by what it shows, whatever its form; the building alone counts none', async () => {
  const exhibition = known.show ?? ''
  const out = async (of: string | null, format: 'pdf' | 'dxf') =>
    (await callOn(host, 'sheet.plan', { exhibition: of, formats: [format] })).files[0]?.revision
  const plan = async () => (await callOn(host, 'sheet.state', { exhibition })).plans[0]
  expect(await out(exhibition, 'pdf')).toBe(1)
  expect(await out(exhibition, 'dxf')).toBe(1)
  await move(2367, 2400)
  expect(await plan()).toMatchObject({ printed: { revision: 1 }, upToDate: false, voids: [] })
  expect(await out(exhibition, 'dxf')).toBe(2)
  expect(await plan()).toMatchObject({ printed: { revision: 2 }, upToDate: true, voids: [1] })
  expect(await out(null, 'pdf')).toBeNull()
  expect(await plan()).toMatchObject({ printed: { revision: 2 }, upToDate: true, voids: [1] })
})

test('undo back to what was printed makes the print good again, and never takes a print back', async () => {
  const { id } = await callOn(host, 'person.add', {
    name: 'Bo Lind',
    role: 'technician',
    lengthUnit: 'mm',
    paper: 'A4',
    fraction: 16,
  })
  await callOn(host, 'desk.sit', { person: id })
  await move(2367, 2400)
  expect(await print()).toBe(1)
  await move(2400, 2450)
  expect((await state())?.upToDate).toBe(false)
  await callOn(host, 'edit.undo', {})
  expect(await state()).toMatchObject({ printed: { revision: 1, by: 'Bo Lind' }, upToDate: true })
  // The next undo passes over the print and takes back the move before it.
  await callOn(host, 'edit.undo', {})
  expect(await state()).toMatchObject({ printed: { revision: 1 }, upToDate: false })
})

test('what is refused leaves no file and no record', async () => {
  const before = existsSync(host.handlesFolder) ? readdirSync(host.handlesFolder) : []
  const refused = await answer(host, 'sheet.wall', { exhibition: known.show, faces: [known.northFace, 'zzzzzz'] })
  expect(refused).toMatchObject({ ok: false, refusal: { code: 'not-found', field: 'faces.1' } })
  expect(readdirSync(host.handlesFolder)).toEqual(before)
  expect((await state())?.printed).toBeNull()
})

test('the shapes of the preview are those that are printed', async () => {
  const preview = await callOn(host, 'sheet.preview', { exhibition: known.show ?? '', face: known.northFace ?? '' })
  const texts = preview.pages.flatMap(page => page.shapes.flatMap(shape => (shape.kind === 'text' ? [shape.text] : [])))
  expect(texts).toContain('revision 1')
  // Scenario "wall of six": the second work bears at 1 795, common practice.
  expect(texts).toContain('1\u2009795')
  expect((await state())?.printed).toBeNull()
})

describe('a wall that changes while its sheet is made', () => {
  const tables = ['sheet.wall', 'sheet.set'] as const
  test.each(tables)('%s refuses, records nothing, leaves no file, and prints it when asked again', async name => {
    let moved: Promise<unknown> | undefined
    host.subscribe(event => {
      // Told when the wall has been read; the move then asks for the lock before the print does.
      if (event.kind === 'progress' && event.words.startsWith('Drawing')) moved ??= move(2367, 2400)
    })
    const ask = () =>
      answer(host, name, { exhibition: known.show, ...(name === 'sheet.wall' ? { faces: [known.northFace] } : {}) })
    expect(await ask()).toMatchObject({
      ok: false,
      refusal: { code: 'changed-meanwhile', field: 'faces', details: { face: known.northFace } },
    })
    expect(moved).toBeDefined()
    await moved
    expect((await state())?.printed).toBeNull()
    expect(readdirSync(host.handlesFolder).filter(file => file.includes('.pdf'))).toEqual([])
    expect(await ask()).toMatchObject({ ok: true })
    expect(await state()).toMatchObject({ printed: { revision: 1 }, upToDate: true })
  })
})
