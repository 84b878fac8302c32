/**
 * A catalogue whose one long wall is full: works copied from the demo, each measured, with its back and a picture, in
 * three rows. Their pictures are the demo's own, said once more of each copy: reading 300 files anew takes minutes.
 */
import type { Host } from '../../main/hosts/host.ts'
import type { Input } from '../../src/contract/contract.ts'
import { callOn } from '../contract/fixture.ts'

const tiers = 3

/** A wall of 60 m in a room of its own with so many works; gives its face. */
export async function fillWall(host: Host, count: number): Promise<string> {
  const { exhibitions } = await callOn(host, 'exhibition.list', {})
  const exhibition = exhibitions[0]?.id ?? ''
  const { works } = await callOn(host, 'exhibition.frieze', { exhibition })
  const sources = works.filter(work => work.picture !== null && work.face !== null).slice(0, 20)
  if (sources.length === 0) throw new Error('the demo has no pictures')
  const [long, short] = [{ length: 60_000 }, { length: 8000 }]
  await callOn(host, 'room.add', { name: 'Bench', height: 4000, walls: [long, short, long, short] })
  const { rooms } = await callOn(host, 'room.list', {})
  const face = rooms.find(room => room.name === 'Bench')?.walls[0]?.face ?? ''
  const places: Input<'placement.put'>['places'][number][] = []
  const copies: { readonly work: string; readonly of: string }[] = []
  for (let at = 0; at < count; at += 1) {
    const of = sources[at % sources.length]?.work ?? ''
    const { id, entry } = await callOn(host, 'work.duplicate', { id: of, exhibition })
    const [height, width] = [500 + (at % 7) * 40, 360 + (at % 5) * 40]
    await callOn(host, 'work.addSize', { work: id, part: 'framed', height, width, raw: '', kind: 'measured' })
    copies.push({ work: id, of })
    const y = 700 + (at % tiers) * 1000
    places.push({ entry: entry ?? '', face, x: 400 + Math.floor(at / tiers) * 592, rule: 'hand', y, was: null })
  }
  await sayPictures(host, copies)
  await callOn(host, 'placement.put', { exhibition, places })
  return face
}

async function sayPictures(host: Host, copies: readonly { readonly work: string; readonly of: string }[]) {
  const person = { id: 'bench', name: 'Bench' }
  await host.open?.catalogue.edit({ procedure: 'work.addPicture', person, label: 'Pictures' }, ({ db }) => {
    const picture = db.prepare(
      `INSERT INTO picture(id, work, hash, mime, name, width_px, height_px, position, at)
       SELECT id || :work, :work, hash, mime, name, width_px, height_px, position, at FROM picture WHERE work = :of`,
    )
    const shown = db.prepare('UPDATE work SET picture = (SELECT picture FROM work WHERE id = :of) WHERE id = :work')
    for (const copy of copies) {
      picture.run(copy)
      shown.run(copy)
    }
  })
}
