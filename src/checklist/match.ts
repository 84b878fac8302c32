/**
 * Which work of the catalogue a row of a list belongs to. The rule it keeps: the same lender's or loan number from the
 * same lender, or the same permanent number, in normal form; never a running number, nor a number of another lender.
 * Without a number: lender, maker, title and date. Several candidates, or one whose maker or title differs, are a
 * question, and the row stays a work of its own until it is answered.
 */
import { numberFields } from './fields.ts'
import { nearNumber } from './numbers.ts'
import { dateWords, keyOfWords, makerWords, titleWords } from './plain-text.ts'
import type { AnswerOption, ListedNumber, RowQuestion, RowReading } from './reading.ts'

export interface KnownWork {
  readonly id: string
  readonly lender: string | null
  readonly maker: string
  readonly title: string
  readonly date: string
  /** What lists said about it, whole rows as written, the last first. */
  readonly listed: readonly ListedRow[]
  /** The row of this very list that it was taken from or matched to; 0 for none. */
  readonly row: number
  readonly numbers: readonly { readonly kind: string; readonly text: string }[]
}

export interface ListedRow {
  readonly print: string
  readonly maker: string
  readonly title: string
}

/** What the catalogue, and the rows before this one, know. */
export interface KnownWorks {
  readonly byNumber: (key: string) => readonly KnownWork[]
  readonly byKey: (key: string) => readonly KnownWork[]
}

export interface Match {
  /** The work it belongs to; null for a new one. */
  readonly work: string | null
  readonly question: RowQuestion | null
}

/** Raw fields that belong to a show, not to the work: they may differ from list to list. */
const passing: ReadonlySet<string> = new Set(['running', 'section', 'place', 'status'])

/** A row as written, without what passes: two rows with one print say the same about a work. */
export function printOf(raw: Readonly<Record<string, string>>): string {
  return JSON.stringify(
    Object.keys(raw)
      .filter(key => !passing.has(key))
      .sort()
      .map(key => [key, raw[key]]),
  )
}

/** Under what a number of a work is looked up; undefined for one of a show, which another show gives to another work. */
export function numberKey(kind: string, norm: string, party: string | null): string | undefined {
  if (kind === 'permanent' || kind === 'former') return `${kind} ${norm}`
  return kind === 'exhibition' ? undefined : `${kind} ${party ?? '?'} ${norm}`
}

/** Numbers by which a row is its work: each stands for one work. The others only make it likely. */
const identifies: ReadonlySet<ListedNumber['field']> = new Set(['permanent', 'lenderNumber', 'loan'])

/** What a row is found by where it has no number, in normal form. */
export interface RowWords {
  readonly maker: string
  readonly title: string
  readonly date: string
}

/** A list repeats its makers and years, so that each is brought into its normal form once. */
export function wordsReader(): (reading: RowReading) => RowWords {
  const makers = new Map<string, string>()
  const dates = new Map<string, string>()
  function once(known: Map<string, string>, text: string, normal: (text: string) => string): string {
    let found = known.get(text)
    if (found === undefined) {
      found = normal(text)
      if (known.size >= mostKept) known.clear()
      known.set(text, found)
    }
    return found
  }
  return ({ facts: { maker = '', title = '', date = '' } }) => ({
    maker: once(makers, String(maker), makerWords),
    title: titleWords(String(title)),
    date: once(dates, String(date), dateWords),
  })
}

const mostKept = 5000

/** The row's key among works without a number; empty where there is no title and no maker. */
export function rowKey({ maker, title, date }: RowWords, lender: string | null): string {
  return keyOfWords(lender ?? '', maker, title, date)
}

/**
 * `key` is the row's `rowKey`; `answer` is what a person chose in the preview for the question "same work", if
 * anything.
 */
export function matchRow(
  reading: RowReading,
  lender: string | null,
  key: string,
  known: KnownWorks,
  answer: string | undefined,
): Match {
  const numbered = reading.numbers.flatMap(number => {
    if (!identifies.has(number.field)) return []
    const key = numberKey(numberFields[number.field], number.norm, lender)
    return key === undefined ? [] : [{ number, works: known.byNumber(key) }]
  })
  if (numbered.length === 0)
    return otherKind(reading, lender, key, known, answer) ?? withoutNumber(reading, key, known, answer)
  const candidates: KnownWork[] = []
  let shown: ListedNumber | undefined
  const found: Found[] = []
  for (const { number, works } of numbered) {
    // A number whose lender nobody named says nothing beyond the list it stands in.
    const bare = number.field !== 'permanent' && lender === null
    const its = works.filter(work => !bare || (work.lender === null && agrees(reading, work)))
    if (its.length === 0) continue
    shown ??= number
    found.push({ number, works: its })
    for (const work of its) if (!candidates.includes(work)) candidates.push(work)
  }
  if (candidates.length === 0 || shown === undefined) {
    return otherKind(reading, lender, key, known, answer) ?? nearMatch(reading, key, known, answer)
  }
  const listed = byPrint(candidates, printOf(reading.raw))
  if (listed !== undefined) return { work: listed.id, question: null }
  const clash = clashOf(found)
  if (clash !== null) return ask(candidates, clash, shown.text, reading, answer)
  const agreeing = candidates.filter(work => work.row === 0 && agrees(reading, work))
  const [only, more] = agreeing
  if (only !== undefined && more === undefined) return { work: only.id, question: null }
  const asked = agreeing.length > 1 ? agreeing : candidates
  return ask(asked, numberSentence(asked, shown.text, agreeing.length > 1), shown.text, reading, answer)
}

interface Found {
  readonly number: ListedNumber
  readonly works: readonly KnownWork[]
}

/** Two numbers of one row that stand for two works of the catalogue: which it is, nobody can tell from the list. */
function clashOf(found: readonly Found[]): string | null {
  for (const [at, one] of found.entries()) {
    const other = found.slice(at + 1).find(({ works }) => !works.some(work => one.works.includes(work)))
    const [a] = one.works
    const [b] = other?.works ?? []
    if (other !== undefined && a !== undefined && b !== undefined) {
      return `${one.number.text} is ${wordsOf(a)}, and ${other.number.text} is ${wordsOf(b)}. Which of them is it?`
    }
  }
  return null
}

/** As which other kinds a work of the catalogue may have the number of a column. */
const otherKinds: Readonly<Partial<Record<ListedNumber['field'], readonly string[]>>> = {
  permanent: ['former'],
  formerNumber: ['former', 'permanent'],
  entryNumber: ['entry'],
}

/**
 * A work that has the number as one of another kind: it had it once, or has one now where the list gives an old one; or
 * the entry number, where maker and title agree. Asked, unless the words of the row lead to it
 * too.
 */
function otherKind(
  reading: RowReading,
  lender: string | null,
  key: string,
  known: KnownWorks,
  answer: string | undefined,
): Match | null {
  for (const number of reading.numbers) {
    const kinds = otherKinds[number.field] ?? []
    for (const kind of kinds) {
      const works = known
        .byNumber(numberKey(kind, number.norm, lender) ?? '')
        .filter(work => work.row === 0 && (kind !== 'entry' || agrees(reading, work)))
      const [first] = works
      if (first === undefined) continue
      const listed = byPrint(works, printOf(reading.raw))
      if (listed !== undefined) return { work: listed.id, question: null }
      // Found by its number and by maker, title and date: two signs that agree are no guess.
      if (works.length === 1 && known.byKey(key).includes(first)) return { work: first.id, question: null }
      const is = kind === 'former' ? 'was once' : kind === 'entry' ? 'is the entry number of' : 'is now'
      const question =
        works.length > 1
          ? `${number.text} stands for several works. Is this one of them?`
          : `${number.text} ${is} ${wordsOf(first)}. Is this the same work?`
      return ask(works, question, number.text, reading, answer)
    }
  }
  return null
}

function numberSentence(works: readonly KnownWork[], number: string, agree: boolean): string {
  const [first] = works
  if (works.length > 1 || first === undefined) return `${number} stands for several works. Is this one of them?`
  if (first.row > 0) return `Row ${first.row} of this list gives ${number} too. Is it the same work?`
  return agree
    ? `${number} is ${wordsOf(first)}. Is this the same work?`
    : `${number} is ${wordsOf(first)}, which reads otherwise here. Is this the same work?`
}

function withoutNumber(reading: RowReading, key: string, known: KnownWorks, answer: string | undefined): Match {
  const candidates = key === '' ? [] : known.byKey(key)
  if (candidates.length === 0) return { work: null, question: null }
  const print = printOf(reading.raw)
  const listed = byPrint(candidates, print)
  if (listed !== undefined) return { work: listed.id, question: null }
  const free = candidates.filter(work => work.row === 0)
  const [only, more] = free
  if (only !== undefined && more === undefined) return { work: only.id, question: null }
  if (free.length > 1) {
    return ask(free, 'Several works have this maker, title and date. Is this one of them?', '', reading, answer)
  }
  const twin = candidates.find(work => work.row > 0 && work.listed.some(row => row.print === print))
  if (twin === undefined) return { work: null, question: null }
  return ask([twin], `Row ${twin.row} of this list reads the same. Is it the same work?`, '', reading, answer)
}

/** A new number on a work that is otherwise known: a slip in copying, or a first number. */
function nearMatch(reading: RowReading, key: string, known: KnownWorks, answer: string | undefined): Match {
  if (key === '' || (reading.facts.title ?? '') === '') return { work: null, question: null }
  for (const work of known.byKey(key)) {
    for (const number of reading.numbers) {
      const others = work.numbers.filter(other => other.kind === numberFields[number.field])
      const near = others.find(other => nearNumber(other.text, number.text))
      if (near !== undefined) {
        return ask(
          [work],
          `${number.text} is nearly ${near.text}, the number of ${wordsOf(work)}. Is this the same work?`,
          number.text,
          reading,
          answer,
        )
      }
      if (others.length === 0 && work.row === 0) {
        return ask(
          [work],
          `${wordsOf(work)} is known without this number. Is this the same work?`,
          number.text,
          reading,
          answer,
        )
      }
    }
  }
  return { work: null, question: null }
}

/** The work that a list named by these very words before; one that no row of this list has taken goes first. */
function byPrint(works: readonly KnownWork[], print: string): KnownWork | undefined {
  const same = works.filter(work => work.listed.some(row => row.print === print) && !isOfThisList(work))
  return same.find(work => work.row === 0) ?? same[0]
}

/** A work that this list has just brought in has no past: what it is listed with is this list itself. */
function isOfThisList(work: KnownWork): boolean {
  return work.row > 0 && work.id.startsWith(newWork)
}

/** Works that a row will add carry their row until they have an id. */
export const newWork = 'row '

/** Whether maker and title are the same, now or as the last list gave them. What one side leaves out does not differ. */
export function agrees(reading: RowReading, work: KnownWork): boolean {
  const maker = makerWords(String(reading.facts.maker ?? ''))
  const title = titleWords(String(reading.facts.title ?? ''))
  const same = (list: string, theirs: string) => list === '' || theirs === '' || list === theirs
  return [work, ...work.listed].some(one => same(maker, makerWords(one.maker)) && same(title, titleWords(one.title)))
}

function wordsOf(work: KnownWork): string {
  const title = work.title === '' ? 'a work without title' : `“${work.title}”`
  return work.maker === '' ? title : `${title} by ${work.maker}`
}

function ask(
  works: readonly KnownWork[],
  question: string,
  raw: string,
  reading: RowReading,
  answer: string | undefined,
): Match {
  const named = works.slice(0, 20)
  const options: AnswerOption[] = [
    ...named.map((work, i) => ({
      answer: String(i + 1),
      label:
        named.length === 1 ? `Yes, the same work` : `Yes: ${wordsOf(work)}${work.date === '' ? '' : `, ${work.date}`}`,
      work: work.id,
    })),
    { answer: 'no', label: 'No, another work', work: null },
  ]
  const chosen = options.find(option => option.answer === answer)
  if (chosen?.work !== undefined) return { work: chosen.work, question: null }
  const text = raw === '' ? [reading.facts.maker, reading.facts.title].filter(Boolean).join(', ') : raw
  return { work: null, question: { field: 'same work', column: '', kind: 'same work', raw: text, question, options } }
}
