/** The vocabulary: what the program brings, and the words of the house after it. */
import type { Output, Received } from '../../../../src/contract/contract.ts'
import { Refusal } from '../../../../src/contract/refusal.ts'
import type { Material } from '../../../../src/record/condition/vocabulary.ts'
import { vocabulary } from '../../../../src/record/condition/vocabulary.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { notFound } from '../../change.ts'
import type { Reading, Writing } from '../../service.ts'
import { insert, remove as removeRow, rows, value } from '../../sql.ts'
import { workName } from '../../works/facts.ts'
import { reportOf } from './rows.ts'

type Told = Output<'condition.words'>['words'][number]

function ownWords(db: ReadHandle): Told[] {
  return rows<{ key: string; material: Material; word: string; meaning: string }>(
    db,
    'SELECT id AS key, material, word, meaning FROM condition_term ORDER BY word COLLATE NOCASE, id',
  ).map(each => ({ ...each, own: true }))
}

export function words({ db }: Reading): Output<'condition.words'> {
  return { words: [...vocabulary.map(each => ({ ...each, own: false })), ...ownWords(db)] }
}

/** The word of a term as it is now; empty for none. Refuses what is no word of the vocabulary. */
export function wordOf(db: ReadHandle, term: string, field: string): string {
  if (term === '') return ''
  const own = vocabulary.find(each => each.key === term)?.word
  const word = own ?? value<string>(db, 'SELECT word FROM condition_term WHERE id = :term', { term })
  if (word !== undefined) return word
  throw new Refusal('bad-input', 'That is no word of the vocabulary. Add it first, then use it.', { field })
}

export function addWord(writing: Writing, input: Received<'condition.addWord'>): Output<'condition.addWord'> {
  const same = (word: string) => word.toLocaleLowerCase('en') === input.word.toLocaleLowerCase('en')
  const there = words(writing).words.find(each => each.material === input.material && same(each.word))
  if (there !== undefined) {
    throw new Refusal('same-name', `There is the word ${there.word} for ${input.material} already: ${there.meaning}.`, {
      field: 'word',
    })
  }
  const id = writing.newId()
  writing.label(`Add the word ${input.word} for ${input.material}`)
  insert(writing.db, 'condition_term', { id, material: input.material, word: input.word, meaning: input.meaning })
  return { id }
}

/** Refuses `in-use`: a finding whose word is gone is compared with nothing. */
function refuseUsed(db: ReadHandle, term: string, word: string): void {
  const used = rows<{ report: string }>(db, 'SELECT report FROM condition_finding WHERE term = :term ORDER BY id', {
    term,
  })
  const [first] = used
  if (first === undefined) return
  const { kind, work } = reportOf(db, first.report)
  const findings = used.length === 1 ? 'one finding is' : `${used.length} findings are`
  const sentence = `${findings} called ${word}, so it stays: the first in the ${kind} report of ${workName(db, work)}. Call those by another word first; what two have signed keeps its words.`
  throw new Refusal('in-use', `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`, { field: 'id' })
}

export function removeWord(writing: Writing, { id }: Received<'condition.removeWord'>): Output<'condition.removeWord'> {
  const word = value<string>(writing.db, 'SELECT word FROM condition_term WHERE id = :id', { id })
  if (word === undefined) throw notFound('word of the house')
  refuseUsed(writing.db, id, word)
  writing.label(`Take the word ${word} away`)
  removeRow(writing.db, 'condition_term', id)
  return { done: true }
}
