/** What works say in words, read as terms of the hang: what each sentence would be as a rule of this show. */
import type { Output } from '../../../src/contract/contract.ts'
import { type LoanTerm, loanTerms, type TermsOf } from '../../../src/sequence/loan-terms.ts'
import { ruleSentence } from '../../../src/sequence/rule-sentence.ts'
import { type RuleOffered, type TermWork, termOffered } from '../../../src/sequence/terms-offered.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'
import type { notesOf } from './rules-stored.ts'
import { type Grounds, placeOf, type Ruling } from './ruling.ts'

type Note = ReturnType<typeof notesOf>[number]
type Told = Output<'sequence.rules'>['notes'][number]
type Settled = NonNullable<Told['terms'][number]['settled']>

/** That a sentence of a work's words needs no rule: settled with a reason by `finding.settle`, on the entry. */
const termSettled = 'loan-term'

/** What a rule may quote: the whole note, or a sentence of it. */
export function quotesOf(text: string, field: TermsOf): ReadonlySet<string> {
  return new Set([text, ...loanTerms(text, field).map(({ quoted }) => quoted)])
}

export function termsRead(
  db: ReadHandle,
  exhibition: string,
  grounds: Grounds,
  rulings: readonly Ruling[],
  notes: readonly Note[],
): Told[] {
  if (notes.length === 0) return []
  const makers = new Map(
    rows<{ work: string; maker: string }>(
      db,
      'SELECT work.id AS work, work.maker FROM entry JOIN work ON work.id = entry.work WHERE entry.exhibition = :exhibition',
      { exhibition },
    ).map(({ work, maker }) => [work, maker] as const),
  )
  const works = grounds.question.works.map(
    ({ work, running, title, limit }): TermWork => ({ work, running, title, limit, maker: makers.get(work) ?? '' }),
  )
  const show = { works, rooms: grounds.rooms }
  const settled = settledTerms(db)
  return notes.map(note => {
    const own = works.find(({ work }) => work === note.work)
    const made = (quoted: string) =>
      rulings.flatMap(({ stored }) => {
        const said = stored?.said
        return said?.of === note.work && said.field === note.field && said.text === quoted ? [stored?.id ?? ''] : []
      })
    const read = (term: LoanTerm): Told['terms'][number] => {
      const { offers, ...rest } =
        own === undefined ? { offers: [], limit: null, asks: '', kept: '' } : termOffered(term, own, show)
      return {
        quoted: term.quoted,
        ...rest,
        offers: offers.map(offer => asTold(offer, grounds, works)),
        rules: made(term.quoted),
        settled: settled.get(settledKey(note.entry, figuresOf(note.field, term.quoted))) ?? null,
      }
    }
    return { ...note, rules: made(note.text), terms: loanTerms(note.text, note.field).map(read) }
  })
}

function asTold({ kind, works, places }: RuleOffered, { rooms }: Grounds, all: readonly TermWork[]) {
  const named = works.flatMap(id => all.find(({ work }) => work === id) ?? [])
  const words = places.flatMap(place => placeOf(rooms, place)).map(place => place.words)
  const says = ruleSentence({ kind, works: named, places: words, within: null, section: '', limit: null })
  return { kind, works: [...works], places: [...places], says }
}

function figuresOf(field: TermsOf, quoted: string): string {
  return JSON.stringify({ field, quoted })
}

function settledKey(entry: string, figures: string): string {
  return `${entry} ${figures}`
}

function settledTerms(db: ReadHandle): ReadonlyMap<string, Settled> {
  const found = rows<Settled & { entry: string; figures: string }>(
    db,
    'SELECT id, subject AS entry, figures, reason, "by" FROM settlement WHERE code = :code',
    { code: termSettled },
  )
  return new Map(
    found.map(({ entry, figures, id, reason, by }) => [settledKey(entry, figures), { id, reason, by }] as const),
  )
}
