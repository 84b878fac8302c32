/**
 * What a person measured behind and above a wall is looked at before it is stored: on the wall, from left to right, no
 * place twice, the ceiling over the floor and the rail under the ceiling. A refusal names the figure that is wrong.
 */
import type { Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { floorAt, heightAlong } from '../../../src/hang/wall.ts'
import { formatLength } from '../../../src/measure/format.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { row } from '../sql.ts'

type Changes = Received<'wall.update'>['changes']
type Heights = readonly (readonly [number, number])[]

const mm = (length: number) => formatLength(length, { unit: 'mm' })
const words = { studs: 'A stud', joints: 'A joint', ceiling: 'A height of the ceiling', rail: 'A height of the rail' }

/** Judged as the wall will be: figures that come with the same change count already. */
export function checkBehind(db: ReadHandle, id: string, changes: Changes): void {
  const stored = row<{ length: number; height: number; floor: string | null; ceiling: string | null }>(
    db,
    'SELECT length, height, floor, ceiling FROM wall WHERE id = :id',
    { id },
  )
  if (stored === undefined) return
  const length = changes.length?.to ?? stored.length
  for (const field of ['studs', 'joints'] as const) along(field, changes[field]?.to ?? [], length)
  for (const field of ['ceiling', 'rail'] as const) {
    const points = changes[field]?.to ?? []
    along(
      field,
      points.map(([x]) => x),
      length,
      '.0',
    )
  }
  const floor: Heights = changes.floor?.to ?? JSON.parse(stored.floor ?? '[]')
  const ceiling: Heights = changes.ceiling?.to ?? JSON.parse(stored.ceiling ?? '[]')
  const height = changes.height?.to ?? stored.height
  changes.ceiling?.to.forEach(([x, y], index) => {
    if (y <= floorAt(floor, x)) {
      throw wrong('ceiling', index, '.1', `The ceiling at ${mm(x)} would be ${mm(y)} high, not above the floor.`, {
        x,
        y,
        floor: floorAt(floor, x),
      })
    }
  })
  changes.rail?.to.forEach(([x, y], index) => {
    const above = heightAlong(ceiling, x) ?? height
    if (y <= floorAt(floor, x) || y > above) {
      throw wrong(
        'rail',
        index,
        '.1',
        `The rail at ${mm(x)} would be ${mm(y)} high; the ceiling is ${mm(above)} there.`,
        {
          x,
          y,
          floor: floorAt(floor, x),
          ceiling: above,
        },
      )
    }
  })
}

function along(field: keyof typeof words, places: readonly number[], length: number, part = ''): void {
  places.forEach((x, index) => {
    if (x < 0 || x > length) {
      throw wrong(field, index, part, `${words[field]} at ${mm(x)} is not on the wall, which is ${mm(length)} long.`, {
        x,
        length,
      })
    }
    const before = places[index - 1]
    if (before !== undefined && x <= before) {
      throw wrong(
        field,
        index,
        part,
        `${words[field]} at ${mm(x)} comes after one at ${mm(before)}: give them from left to right, each once.`,
        { x, before },
      )
    }
  })
}

function wrong(
  field: keyof typeof words,
  index: number,
  part: string,
  text: string,
  details: Readonly<Record<string, number>>,
): Refusal {
  const code = 'before' in details ? 'not-in-order' : part === '.1' ? 'height-wrong' : 'off-the-wall'
  return new Refusal(code, text, { field: `changes.${field}.to.${index}${part}`, details })
}
