/** The way through several rooms and storeys from a real file: which doors, the tightest, what is asked and kept. */
import ExcelJS from 'exceljs'
import { expect, test } from 'vitest'
import { newCatalogue, openOn, ownFolder } from './opened.ts'

/**
 * Hall – Corridor – Annex in a row on one storey, Hall with a doorway out; Loft above, with a doorway out too. A doorway
 * has the lesser of its two sides' sizes: 900 between Corridor and Annex, measured 905 and 900.
 */
async function building() {
  const folder = ownFolder()
  const open = openOn(folder, newCatalogue(folder))
  const room = async (name: string, storey: string) => {
    const walls = [6000, 5000, 6000, 5000].map(length => ({ length }))
    const { id, walls: made } = await open.call('room.add', { name, height: 3200, walls })
    const place = { was: null, to: [0, 0] as [number, number] }
    await open.call('plan.placeRoom', { rooms: [{ id, changes: { at: place, storey: { was: '', to: storey } } }] })
    return { id, wall: made[0] ?? '' }
  }
  const [hall, corridor, annex] = [await room('Hall', ''), await room('Corridor', ''), await room('Annex', '')]
  const loft = await room('Loft', 'upstairs')
  const door = (wall: string, x: number, width: number, height: number) =>
    open.call('opening.add', { wall, kind: 'door', x, y: 0, width, height })
  const lead = (id: string, to: string) => open.call('opening.update', { id, changes: { leadsTo: { was: null, to } } })
  await door(hall.wall, 100, 1800, 2500)
  await lead((await door(hall.wall, 2500, 1500, 2400)).id, corridor.id)
  await lead((await door(corridor.wall, 100, 905, 2100)).id, annex.id)
  await lead((await door(annex.wall, 100, 900, 2100)).id, corridor.id)
  await door(loft.wall, 100, 1600, 2300)
  await open.call('location.add', { kind: 'lift', name: 'Goods lift', width: 1400, height: 2200, depth: 2600 })
  const store = await open.call('location.add', { kind: 'place', name: 'Store 2' })
  const crate = (name: string, depth: number) =>
    open.call('location.add', { kind: 'crate', name, width: 1500, height: 2000, depth })
  const move = (id: string, to: string, more: { readonly despite?: string; readonly reason?: string } = {}) =>
    open.call('movement.add', { crates: [id], to, by: 'Tamsin Oake', ...more })
  const way = async (id: string, to?: string) =>
    (await open.call('movement.way', { crates: [id], ...(to === undefined ? {} : { to }) })).ways[0]
  return { open, hall, corridor, annex, loft, store: store.id, crate, move, way }
}

test('from outside to the room at the end by all doors between, and up by the lift', async () => {
  const { hall, annex, loft, crate, move, way } = await building()
  const { id } = await crate('Crate 5', 850)
  const out = [
    'the doorway out of Hall',
    'the doorway between Hall and Corridor',
    'the doorway between Corridor and Annex',
  ]
  const into = await way(id, annex.id)
  expect(into?.through.map(({ words, width }) => [words, width])).toEqual([
    [out[0], 1800],
    [out[1], 1500],
    [out[2], 900],
  ])
  expect([into?.fit, into?.tightest, into?.through[2]?.spare]).toEqual(['upright', 2, 50])
  expect(into?.text).toContain(
    'The tightest is the doorway between Corridor and Annex, 2\u2009100 mm high and 900 mm wide: 50 mm to spare.',
  )
  await move(id, annex.id)
  // Within the plan nothing is left open; out of the building it is the same way back.
  const back = await way(id, hall.id)
  expect([back?.through.length, back?.text.includes('does not show')]).toEqual([2, false])
  expect((await way(id))?.through.map(({ words }) => words)).toEqual(out.toReversed())
  const up = await way(id, loft.id)
  expect(up?.through.map(({ words, kind }) => [words, kind]).slice(-2)).toEqual([
    ['the lift Goods lift', 'lift'],
    ['the doorway out of Loft', 'door'],
  ])
  expect((await way(id, annex.id))?.told).toBe('same')
})

test('what does not pass is asked how it went, kept with its reason and flagged on the sheet of the day', async () => {
  const { open, annex, store, crate, move, way } = await building()
  const { id } = await crate('Crate 6', 980)
  expect((await way(id, annex.id))?.through.map(({ fit, over }) => [fit, over])).toEqual([
    ['upright', 0],
    ['upright', 0],
    ['no', 80],
  ])
  await move(id, store)
  const before = open.state()
  const refused = await open.ask('movement.add', { crates: [id], to: annex.id, by: 'Tamsin Oake' })
  expect(refused.ok ? null : [refused.refusal.code, refused.refusal.field]).toEqual(['does-not-pass', 'despite'])
  expect(open.state()).toBe(before)
  const { notes } = await move(id, annex.id, { reason: 'for the show', despite: 'door frame taken out' })
  expect(notes.map(({ code }) => code)).toEqual(['does-not-pass'])
  const { movements } = await open.call('movement.history', { kind: 'crate', id })
  expect(movements.at(-1)?.reason).toBe('for the show; does not pass by the plan: door frame taken out')
  const day = { from: '2000-01-01T00:00:00Z', to: '2100-01-01T00:00:00Z' }
  const { files } = await open.call('sheet.movements', day)
  const book = new ExcelJS.Workbook()
  await book.xlsx.readFile(open.host.handles.path(files.find(({ name }) => name.endsWith('.xlsx'))?.handle ?? '') ?? '')
  const rows: string[][] = []
  book.worksheets[0]?.eachRow(row => {
    const cells: string[] = []
    row.eachCell(cell => cells.push(cell.text))
    rows.push(cells)
  })
  const said = rows.find(row => row.includes('for the show; does not pass by the plan: door frame taken out'))
  expect(said?.find(text => text.startsWith('does not pass by the plan: by'))?.replaceAll(/\s/gu, ' ')).toBe(
    'does not pass by the plan: by 3 doorways or lifts, the tightest the doorway between Corridor and Annex, 80 mm too large',
  )
})

test('no way, no size and no room are told each by its sentence', async () => {
  const { open, annex, store, crate, move, way } = await building()
  const walls = [3000, 3000, 3000, 3000].map(length => ({ length }))
  const cell = await open.call('room.add', { name: 'Cell', height: 3000, walls })
  const { id } = await crate('Crate 7', 500)
  expect((await way(id, cell.id))?.text).toBe(
    'The plan knows no way for Crate 7 from outside its rooms to Cell: no doorways or lifts join them.',
  )
  expect((await way(id, store))?.told).toBe('outside')
  const bare = await open.call('location.add', { kind: 'crate', name: 'Crate 8' })
  expect((await way(bare.id, annex.id))?.text).toBe(
    'How Crate 8 passes is not known: its outer height, width and depth are not said.',
  )
  // Nothing is said of it when it is recorded, and nothing asked.
  expect((await move(bare.id, annex.id)).notes).toEqual([])
  expect((await move(id, cell.id)).notes).toEqual([])
})
