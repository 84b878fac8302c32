/**
 * One field of one work, written from what a person typed: read in the unit of the day, sent with the value it was
 * based on. What can't be read is said before anything is sent.
 */
import type { WorkLine } from '../../src/contract/areas/works-list.ts'
import type { Output } from '../../src/contract/contract.ts'
import { call } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { readFact } from '../host/facts.ts'
import type { Field } from './columns.ts'
import { sizeWords } from './words.ts'

export type Clash = Output<'work.update'>['clashes'][number]
export type Saved = { readonly problem: string } | { readonly clash: Clash } | 'saved'

/** The field as it is put into the hand. */
export function textOf(line: WorkLine, field: Field): string {
  if (field === 'running') return line.entry?.running ?? ''
  if (field === 'size') return line.size ? sizeWords(line.size) : ''
  if (field === 'lightLimit') return line.lightLimit === null ? '' : String(line.lightLimit)
  return line[field]
}

function outcome(answer: { readonly clashes: readonly Clash[] }): Saved {
  const [clash] = answer.clashes
  return clash === undefined ? 'saved' : { clash }
}

/** `was` stands for the value that the change is based on; after a clash it is theirs. */
export async function save(
  line: WorkLine,
  field: Field,
  text: string,
  origin: 'listed' | 'measured',
  was?: unknown,
): Promise<Saved> {
  if (was === undefined && text.trim() === textOf(line, field).trim()) return 'saved'
  if (field === 'size') {
    // A statement without a unit is meant in the unit of the day.
    const raw = /[a-z"'″′]/i.test(text.replaceAll(/\bx\b|×/gi, '')) ? text : `${text} ${desk.unit}`
    await call('work.addSize', { work: line.id, part: line.size?.part ?? 'framed', raw, kind: origin })
    return 'saved'
  }
  if (field === 'running') {
    if (line.entry === null) return 'saved'
    return outcome(
      await call('entry.setRunning', {
        id: line.entry.id,
        was: typeof was === 'string' ? was : line.entry.running,
        to: text.trim(),
      }),
    )
  }
  const read = readFact(field, text)
  if ('problem' in read) return read
  const based = was === undefined ? line[field] : was
  return outcome(
    await call('work.update', { id: line.id, changes: { [field]: { was: based as string, to: read.value } } }), // what stood there, or theirs
  )
}
