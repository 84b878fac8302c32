/** How a work's page says backs, sizes and changes of the record. */
import type { Output } from '../../src/contract/contract.ts'
import { findMethod } from '../../src/hang/methods.ts'
import { desk } from '../host/desk.svelte.ts'
import { flat, keyOf } from './back-data.ts'

type Got = Output<'work.get'>
export type SizeRow = Got['sizes'][number]

/** The measures of one record of the back in a line. */
export function backWords(back: Got['backs'][number]): string {
  const method = findMethod(back.method)
  const values = flat(back.data)
  const said = (method?.fields ?? []).flatMap(({ path, label, kind }) => {
    const value = values.get(keyOf(path))
    return kind === 'length' && typeof value === 'number' ? [`${label.toLowerCase()} ${desk.length(value)}`] : []
  })
  return `${method?.name ?? back.method} from the ${back.seenFrom}: ${said.join(', ')}`
}

/** Height, width, depth and diameter as far as they are known. */
export function figuresOf(size: Pick<SizeRow, 'height' | 'width' | 'depth' | 'diameter'>): string {
  const sides = [size.height, size.width, size.depth].flatMap(mm => (mm === null ? [] : [desk.length(mm)]))
  const round = size.diameter === null ? [] : [`⌀ ${desk.length(size.diameter)}`]
  return [...(sides.length > 0 ? [sides.join(' × ')] : []), ...round].join(', ')
}
