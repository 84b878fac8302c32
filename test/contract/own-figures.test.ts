/**
 * Unit, paper and fraction are each person's own: whoever sits down has theirs on the sheets, after a change of them,
 * after its undo, and after the program begins anew. Paper sizes from ISO 216 and ANSI/ASME Y14.1, landscape.
 */
import { beforeEach, expect, test } from 'vitest'
import { openAndRemember } from '../../main/hosts/desk.ts'
import { type Opened, openOn } from './opened.ts'
import { sitDown, type WallOfSix, wallOfSix } from './wall-of-six.ts'

let wall: WallOfSix
const others = {
  Inch: { lengthUnit: 'in', paper: 'Tabloid', fraction: 32 },
  Centi: { lengthUnit: 'cm', paper: 'A3', fraction: 8 },
} as const

beforeEach(async () => {
  wall = await wallOfSix()
  for (const [name, likes] of Object.entries(others)) await wall.here.call('person.add', { name, role: '', ...likes })
}, 60_000)

/** What tells a sheet's paper and unit: its sides, how it says its units, the finest parts of an inch on it. */
async function sheet({ call }: Opened) {
  const { pages } = await call('sheet.preview', { exhibition: wall.show, face: wall.faces[0] ?? '' })
  const [page] = pages
  const words = JSON.stringify(pages)
  return {
    sides: [page?.width, page?.height],
    unit: /(mm|cm|in) large, (mm|in) small/.exec(words)?.[1],
    thirtySeconds: /[⁄/]32\b/.test(words),
    sixteenths: /[⁄/]16\b/.test(words),
  }
}

const tabloid = { sides: [431.8, 279.4], unit: 'in', thirtySeconds: true, sixteenths: true }
const a3 = { sides: [420, 297], unit: 'cm', thirtySeconds: false, sixteenths: false }
const a4 = { sides: [297, 210], unit: 'mm', thirtySeconds: false, sixteenths: true }

test('each has their own on the wall sheet, whoever sat there before', async () => {
  const { here } = wall
  for (const [name, expected] of [
    ['Inch', tabloid],
    ['Centi', a3],
    ['Tamsin Oake', a4],
    ['Inch', tabloid],
  ] as const) {
    await sitDown(here, name)
    expect(await sheet(here), name).toEqual(expected)
  }
})

test('a change counts from the next sheet on, and so does its undo', async () => {
  const { here } = wall
  await sitDown(here, 'Inch')
  const { people } = await here.call('person.list', {})
  const id = people.find(person => person.name === 'Inch')?.id ?? ''
  await here.call('person.update', { id, paper: 'A4', lengthUnit: 'mm', fraction: 16 })
  expect(await sheet(here)).toEqual(a4)
  await here.call('edit.undo', {})
  expect(await sheet(here)).toEqual(tabloid)
})

test('an edit carries the name that its person has now', async () => {
  const { here } = wall
  await sitDown(here, 'Inch')
  const { people } = await here.call('person.list', {})
  const id = people.find(person => person.name === 'Inch')?.id ?? ''
  await here.call('person.update', { id, name: 'Inch Weir' })
  await here.call('exhibition.add', { title: 'Ebb' })
  const { edits } = await here.call('edit.list', { limit: 1 })
  expect(edits[0]?.person).toBe('Inch Weir')
})

test('begun anew, whoever sat there last still has their own', async () => {
  let { here } = wall
  for (const [name, expected] of [
    ['Centi', a3],
    ['Inch', tabloid],
  ] as const) {
    await sitDown(here, name)
    await here.host.close()
    here = openOn(here.folder, here.file)
    openAndRemember(here.host, here.file)
    const { person } = await here.call('desk.state', {})
    expect(person).toMatchObject({ name, ...others[name] })
    expect(await sheet(here)).toEqual(expected)
  }
})
