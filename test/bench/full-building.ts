/** A building of many rooms, each of ten walls with an alcove and a notch, placed in rows, with things on the walls. */
import type { Host } from '../../main/hosts/host.ts'
import type { Input } from '../../src/contract/contract.ts'
import { callOn } from '../contract/fixture.ts'

const across = 10
/** From one room to the next: wider than a room by a wall. */
const pitch = { x: 8120, y: 7120 }

const walls: Input<'room.add'>['walls'] = [
  [3000, 270],
  [1000, 90],
  [2000, 90],
  [1000, 270],
  [3000, 90],
  [6000, 90],
  [6500, 90],
  [1500, 270],
  [1500, 90],
  [4500, 90],
].map(([length = 0, angle = 90]) => ({ length, angle }))

/** Gives how many of each there are. */
export async function fillBuilding(
  host: Host,
  rooms: number,
  fixtures: number,
): Promise<{ readonly walls: number; readonly fixtures: number }> {
  let put = 0
  for (let at = 0; at < rooms; at += 1) {
    const place = {
      at: [(at % across) * pitch.x, Math.floor(at / across) * pitch.y] as [number, number],
      turn: 0,
      storey: '',
    }
    const made = await callOn(host, 'room.add', { name: `Room ${at + 1}`, height: 4000, walls, place })
    const door = made.walls[5] ?? ''
    await callOn(host, 'opening.add', { wall: door, kind: 'door', x: 4200, y: 0, width: 1000, height: 2100 })
    const wanted = Math.round(((at + 1) * fixtures) / rooms) - put
    for (let each = 0; each < wanted; each += 1) {
      const wall = made.walls[[0, 4, 6, 9][each % 4] ?? 0] ?? ''
      const x = 150 + Math.floor(each / 4) * 260
      await callOn(host, 'keepClear.add', { wall, kind: 'outlet', x, y: 300, width: 150, height: 85, margin: 100 })
      put += 1
    }
  }
  return { walls: rooms * walls.length, fixtures: put }
}
