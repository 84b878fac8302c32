/** Numbers of the parts of a set, offered and given: the number of the whole with the next free letter behind it. */
import { normalNumber } from '../../../src/checklist/numbers.ts'
import { nextPartNumber, partLetter, partsSaid, wholeOfParts } from '../../../src/checklist/part-numbers.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import type { Reading, Writing } from '../service.ts'
import { row, rows } from '../sql.ts'
import { addNumberTo, workName } from '../works/facts.ts'
import { numberOrder } from '../works/figures.ts'
import { partIdsOf } from './figures.ts'

/** The number that the parts have theirs from: the set's own, else what the numbers of its parts begin with. */
interface Numbered {
  readonly whole: string | null
  /** Every number that is taken behind it, of whatever kind and work. */
  readonly taken: readonly string[]
  readonly lacking: readonly string[]
}

function numberedParts(db: ReadHandle, set: string): Numbered {
  const parts = partIdsOf(db, set)
  const permanent = rows<{ work: string; text: string }>(
    db,
    `SELECT number.work, number.text FROM json_each(:parts) AS wanted
     CROSS JOIN work_number AS number ON number.work = wanted.value WHERE number.kind = 'permanent' ORDER BY number.id`,
    { parts: JSON.stringify(parts) },
  )
  const own = row<{ text: string }>(
    db,
    `SELECT text FROM work_number WHERE work = :set ORDER BY ${numberOrder}, id LIMIT 1`,
    { set },
  )
  const whole = own?.text ?? wholeOfParts(permanent.map(one => one.text))
  const having = new Set(permanent.map(one => one.work))
  // A letter that another work of the catalogue has is not free.
  const taken =
    whole === null
      ? []
      : rows<{ text: string }>(
          db,
          'SELECT text FROM work_number WHERE norm >= :norm AND norm < :norm || char(1114111) ORDER BY id',
          { norm: normalNumber(whole) },
        )
          .map(one => one.text)
          .filter(text => partLetter(whole, text) !== null)
  return { whole, taken, lacking: parts.filter(part => !having.has(part)) }
}

/** One after the other, each with the letter that the ones before left free. */
function offers({ whole, taken, lacking }: Numbered): readonly { readonly work: string; readonly text: string }[] {
  if (whole === null) return []
  const so = [...taken]
  return lacking.map(work => {
    const text = nextPartNumber(whole, so)
    so.push(text)
    return { work, text }
  })
}

export function ofParts({ db }: Reading, { work }: Received<'number.ofParts'>): Output<'number.ofParts'> {
  const found = row<{ parent: string | null }>(db, 'SELECT parent FROM work WHERE id = :work', { work })
  if (found === undefined) throw notFound('work', 'work')
  const set = found.parent ?? work
  if (partIdsOf(db, set).length === 0) return { said: '', offered: [] }
  const numbered = numberedParts(db, set)
  const offered = offers(numbered)
    .filter(one => found.parent === null || one.work === work)
    .map(one => ({ ...one, title: workName(db, one.work) }))
  return { said: numbered.whole === null ? '' : partsSaid(numbered.whole, numbered.taken), offered }
}

export function giveParts(writing: Writing, { set }: Received<'number.giveParts'>): Output<'number.giveParts'> {
  const { db } = writing
  const parts = partIdsOf(db, set)
  if (parts.length === 0)
    throw new Refusal('not-a-set', 'This work has no parts. Make a set of works first.', { field: 'set' })
  const numbered = numberedParts(db, set)
  if (numbered.whole === null) {
    throw new Refusal('no-number', 'The set has no number yet. Give it one; its parts get it with a letter behind.', {
      field: 'set',
    })
  }
  const wanted = offers(numbered)
  if (wanted.length === 0)
    throw new Refusal('nothing-to-do', 'Every part has a permanent number already.', { field: 'set' })
  writing.label(
    `Number the parts of ${workName(db, set)}: ${partsSaid(
      numbered.whole,
      wanted.map(one => one.text),
    )}`,
  )
  return {
    given: wanted.map(({ work, text }) => ({ id: addNumberTo(writing, work, 'permanent', text), work, text })),
  }
}
