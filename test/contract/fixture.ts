/**
 * A small catalogue for the contract test, made through the contract with a clock and ids of its own, so that the same
 * calls give the same answers through every host. All of it is invented.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createCatalogue } from '../../main/database/catalogue.ts'
import { answer } from '../../main/hosts/answer.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { clockFrom } from '../../main/services/clock.ts'
import type { Input, Name, Output } from '../../src/contract/contract.ts'

export const fixtureClock = { at: '2031-03-01T08:00:00.000Z', ids: 'f' }
/** Where the clock of a tested call begins; its ids can't meet the fixture's. */
export const callClock = { at: '2031-03-14T16:20:00.000Z', ids: 't' }

/** Ids of the fixture by the name that examples call them. */
const names = [
  'boats',
  'causeway',
  'causewayEntry',
  'causewayMass',
  'causewayPlace',
  'causewaySize',
  'closed',
  'cornerA',
  'cornerB',
  'cornerC',
  'door',
  'east',
  'eastFace',
  'hook',
  'layout',
  'lender',
  'loose',
  'north',
  'northFace',
  'other',
  'pans',
  'pansEntry',
  'pansMass',
  'pansNumber',
  'pansPicture',
  'pansPictureHash',
  'pansPlace',
  'pansSize',
  'pansTerms',
  'person',
  'raking',
  'rakingEntry',
  'rakingMass',
  'rakingSize',
  'room',
  'settled',
  'shore',
  'show',
  'termsHash',
  'thermostat',
] as const

export type Known = Readonly<Record<(typeof names)[number], string>>

export async function callOn<N extends Name>(host: Host, name: N, input: Input<N>): Promise<Output<N>> {
  const answered = await answer(host, name, input)
  if (!answered.ok)
    throw new Error(`${name}: ${answered.refusal.code} ${answered.refusal.field ?? ''} ${answered.refusal.message}`)
  return answered.value as Output<N> // the service of that name gave it
}

/** Makes the fixture's catalogue in `folder` and closes it. */
export async function makeFixture(folder: string): Promise<{ file: string; known: Known }> {
  const file = join(folder, 'fixture.hangwright')
  createCatalogue(file, clockFrom(fixtureClock)).close()
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock: fixtureClock, checksOutput: true })
  try {
    host.openFile(file)
    return { file, known: await fill(host) }
  } finally {
    await host.close()
  }
}

/** The smallest picture: one grey pixel as PNG. */
export const onePixel: Uint8Array = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
)

export function give(host: Host, name: string, bytes: Uint8Array): string {
  const { handle, path } = host.handles.create(name)
  writeFileSync(path, bytes)
  return handle
}

async function fill(host: Host): Promise<Known> {
  const call = <N extends Name>(name: N, input: Input<N>) => callOn(host, name, input)
  const known: Record<string, string> = {}

  known.person = (
    await call('person.add', { name: 'Tamsin Oake', role: 'technician', lengthUnit: 'mm', paper: 'A4', fraction: 16 })
  ).id
  known.lender = (await call('party.add', { kind: 'lender', name: 'Quay Collection' })).id
  known.show = (
    await call('exhibition.add', { title: 'Low Water', venue: 'East rooms', opens: '2031-04-01', closes: '2031-07-01' })
  ).id
  known.other = (await call('exhibition.add', { title: 'High Water' })).id
  known.closed = (await call('exhibition.add', { title: 'Slack Water' })).id
  known.shore = (await call('section.add', { exhibition: known.show, title: 'The shore' })).id
  known.boats = (await call('section.add', { exhibition: known.show, title: 'Boats' })).id

  const works = [
    ['pans', 'Salt pans', 'Ada Ruel', 'etching on paper', 'print', 'L-1.1', 620, 480, 4.2],
    ['causeway', 'Causeway', 'Ada Ruel', 'oil on canvas', 'painting', 'L-1.2', 910, 710, 9.5],
    ['raking', 'Raking', 'unknown maker', 'gelatin silver print', 'photograph', 'L-1.3', 540, 540, 3.1],
  ] as const
  for (const [key, title, maker, medium, kind, number, height, width, kg] of works) {
    const made = await call('work.add', {
      title,
      maker,
      medium,
      kind,
      lender: known.lender,
      number: { kind: 'lender', text: number },
      exhibition: known.show,
      section: known.shore,
    })
    known[key] = made.id
    known[`${key}Entry`] = made.entry ?? ''
    known[`${key}Size`] = (
      await call('work.addSize', {
        work: made.id,
        part: 'framed',
        height,
        width,
        raw: `${height} x ${width} mm`,
        kind: 'measured',
      })
    ).id
    known[`${key}Mass`] = (await call('work.addMass', { work: made.id, kg, raw: `${kg} kg`, kind: 'measured' })).id
  }
  known.loose = (await call('work.add', { title: 'Nets', maker: 'Bo Lind' })).id
  await call('work.setBack', {
    work: known.causeway ?? '',
    method: 'd-rings',
    seenFrom: 'back',
    data: { left: { drop: 140, inset: 55 }, right: { drop: 140, inset: 55 }, spacing: 600 },
  })
  const { numbers } = await call('work.get', { id: known.pans ?? '' })
  known.pansNumber = numbers[0]?.id ?? ''

  await call('room.setBuilding', { name: 'The Maltings' })
  const room = await call('room.add', {
    name: 'Room 1',
    height: 3450,
    wallType: 'drywall on ply',
    walls: [
      { name: 'north', length: 9140 },
      { name: 'east', length: 5200 },
      { name: 'south', length: 9140 },
      { name: 'west', length: 5200 },
    ],
  })
  known.room = room.id
  const { corners } = await call('survey.get', { room: room.id })
  for (const [at, letter] of ['A', 'B', 'C'].entries()) known[`corner${letter}`] = corners[at]?.id ?? ''
  known.north = room.walls[0] ?? ''
  known.east = room.walls[1] ?? ''
  known.door = (
    await call('opening.add', { wall: known.east, kind: 'door', x: 2000, y: 0, width: 1000, height: 2100 })
  ).id
  known.thermostat = (
    await call('keepClear.add', {
      wall: known.north,
      kind: 'thermostat',
      x: 4300,
      y: 1400,
      width: 120,
      height: 120,
      margin: 150,
    })
  ).id
  const { rooms } = await call('room.list', {})
  known.northFace = rooms[0]?.walls[0]?.face ?? ''
  known.eastFace = rooms[0]?.walls[1]?.face ?? ''

  known.hook = (
    await call('fixing.add', {
      name: 'two-nail hook, 50 lb',
      kind: 'hook',
      holeOffset: 14,
      ratedKg: 22.7,
      wallType: 'drywall on ply',
    })
  ).id
  const put = await call('placement.put', {
    exhibition: known.show,
    places: [
      { entry: known.pansEntry ?? '', face: known.northFace, x: 1140, rule: 'face', y: null, was: null },
      { entry: known.causewayEntry ?? '', face: known.northFace, x: 2367, rule: 'face', y: null, was: null },
    ],
  })
  known.pansPlace = put.placements[0] ?? ''
  known.causewayPlace = put.placements[1] ?? ''
  await call('placement.update', { id: known.causewayPlace, changes: { fixing: { was: null, to: known.hook } } })
  known.layout = (await call('layout.keep', { exhibition: known.show, face: known.northFace, name: 'first hang' })).id
  known.settled = (
    await call('finding.settle', {
      code: 'no-marks',
      subject: known.pansPlace,
      figures: '{}',
      reason: 'measured on Friday',
    })
  ).id
  const picture = await call('work.addPicture', { work: known.pans ?? '', handle: give(host, 'pans.png', onePixel) })
  known.pansPicture = picture.id
  known.pansPictureHash = picture.hash
  const terms = new TextEncoder().encode('no daylight')
  const document = await call('work.addDocument', { work: known.pans ?? '', handle: give(host, 'terms.txt', terms) })
  known.pansTerms = document.id
  known.termsHash = document.hash
  await call('exhibition.setState', { id: known.closed, was: 'planning', to: 'closed' })
  return complete(known)
}

/** Every name has its id, or the fixture is broken. */
function complete(known: Readonly<Record<string, string>>): Known {
  const lacking = names.filter(name => (known[name] ?? '') === '')
  if (lacking.length > 0) throw new Error(`the fixture has no ${lacking.join(', ')}`)
  return known as Known // just checked
}
