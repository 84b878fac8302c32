/** Works as sentences call them: their number, and the title marked, so that it can be set in italics where it is drawn. */
import type { Sequence } from './sequence.svelte.ts'

/** Signs of no alphabet stand around a title until it is drawn. */
const [opens, closes] = ['\uE000', '\uE001']

export function workNamed(sequence: Sequence, entry: string): string {
  const one = sequence.works.get(entry)
  const title = `${opens}${one?.title || 'untitled'}${closes}`
  return one === undefined || one.running === '' ? title : `${one.running} ${title}`
}

export function wallNamed(sequence: Sequence, face: string): string {
  const one = sequence.walls.value?.walls.find(each => each.face === face)
  return one === undefined ? 'a wall' : `${one.room}, ${one.name}`
}

export function pieces(text: string): readonly { readonly text: string; readonly title: boolean }[] {
  return text.split(opens).flatMap((part, index) => {
    if (index === 0) return [{ text: part, title: false }]
    const [title = '', rest = ''] = part.split(closes)
    return [
      { text: title, title: true },
      { text: rest, title: false },
    ]
  })
}
