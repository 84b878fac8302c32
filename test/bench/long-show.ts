/** The demo's show made long, for benches of what a coordinator does with a whole show before them. */
import type { Host } from '../../main/hosts/host.ts'
import { callOn } from '../contract/fixture.ts'

/** So many works and walls: copies of the demo's works, and rooms of four walls at the end of its visit. The demo's show. */
export async function fillShow(host: Host, works: number, walls: number): Promise<string> {
  const { exhibitions } = await callOn(host, 'exhibition.list', {})
  const exhibition = exhibitions[0]?.id ?? ''
  const own = (await callOn(host, 'exhibition.frieze', { exhibition })).works
  for (let at = 0; own.length + at < works; at += 1)
    await callOn(host, 'work.duplicate', { id: own[at % own.length]?.work ?? '', exhibition })
  const met = (await callOn(host, 'sequence.walls', { exhibition })).walls.length
  for (let at = 0; met + 4 * at < walls; at += 1) {
    const sides = [8000, 6000, 8000, 6000].map(length => ({ length }))
    await callOn(host, 'room.add', { name: `Bench ${at + 1}`, height: 4000, walls: sides })
  }
  const { rooms } = await callOn(host, 'room.list', {})
  const faces = rooms
    .filter(({ name }) => name.startsWith('Bench '))
    .flatMap(room => room.walls.map(({ face }) => face))
  for (const [at, face] of faces.entries())
    await callOn(host, 'wall.plan', { exhibition, face, changes: { visitorOrder: { was: null, to: 1000 + at } } })
  return exhibition
}
