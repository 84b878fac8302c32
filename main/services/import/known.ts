/**
 * What the catalogue knows about works, for matching a list against it: loaded once, then kept true while the rows of
 * the list come in, so that a row also meets the rows before it.
 */
import { type KnownWork, type KnownWorks, type ListedRow, numberKey, printOf } from '../../../src/checklist/match.ts'
import type { LastListed } from '../../../src/checklist/merge.ts'
import { workKey } from '../../../src/checklist/plain-text.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'

/** The field of `import_value` under which what a list said about a work stands, as one JSON text. */
export const listField = 'list'

/** What a list said about a work: as the catalogue keeps it, or as it stands in the list being read. */
type Stored = string | LastListed

/** Reading again what lists said is dear, and most works are never asked for it. */
class Loaded implements KnownWork {
  readonly id: string
  readonly lender: string | null
  readonly maker: string
  readonly title: string
  readonly date: string
  row: number
  readonly numbers: { readonly kind: string; readonly text: string }[]
  readonly stored: Stored[]
  private known: readonly ListedRow[] | undefined

  constructor(
    work: Omit<KnownWork, 'listed' | 'numbers'>,
    numbers: { readonly kind: string; readonly text: string }[],
    stored: Stored[],
  ) {
    this.id = work.id
    this.lender = work.lender
    this.maker = work.maker
    this.title = work.title
    this.date = work.date
    this.row = work.row
    this.numbers = numbers
    this.stored = stored
  }

  get listed(): readonly ListedRow[] {
    this.known ??= this.stored.map(rowOf)
    return this.known
  }
}

export interface Known extends KnownWorks {
  readonly work: (id: string) => KnownWork | undefined
  /** What the last list said about it; where a list said it in these very words before, that one. */
  readonly last: (id: string, print: string) => LastListed | undefined
  /** The row of this list that a work belongs to. */
  readonly take: (id: string, row: number) => void
  readonly add: (work: {
    readonly id: string
    /** Its `rowKey`. */
    readonly key: string
    readonly lender: string | null
    readonly maker: string
    readonly title: string
    readonly date: string
    readonly row: number
    readonly numbers: readonly { readonly kind: string; readonly text: string; readonly norm: string }[]
    readonly raw: Readonly<Record<string, string>>
  }) => void
}

export function listedOf(stored: Stored): LastListed {
  // Written by this program as exactly that.
  return typeof stored === 'string' ? (JSON.parse(stored) as LastListed) : stored
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : ''
}

/** As a list gave them, for finding the work again after a person changed it. */
function rowOf(stored: Stored): ListedRow & { readonly date: string; readonly lender: string | null } {
  const { raw, lender } = listedOf(stored)
  return { print: printOf(raw), maker: text(raw.maker), title: text(raw.title), date: text(raw.date), lender }
}

export function loadKnown(db: ReadHandle): Known {
  const works = new Map<string, Loaded>()
  const numbers: Found = new Map()
  let keys: Found | undefined

  for (const work of rows<{ id: string; lender: string | null; maker: string; title: string; date: string }>(
    db,
    'SELECT id, lender, maker, title, date_text AS date FROM work ORDER BY n',
  )) {
    works.set(work.id, new Loaded({ ...work, row: 0 }, [], []))
  }
  for (const number of rows<{
    work: string
    kind: string
    text: string
    norm: string
    party: string | null
    lender: string | null
  }>(
    db,
    `SELECT number.work, number.kind, number.text, number.norm, number.party, work.lender
     FROM work_number AS number JOIN work ON work.id = number.work`,
  )) {
    const work = works.get(number.work)
    if (work === undefined) continue
    work.numbers.push({ kind: number.kind, text: number.text })
    // A number typed by hand names no party: it is then the work's own lender's.
    put(numbers, numberKey(number.kind, number.norm, number.party ?? number.lender), work)
  }
  for (const value of rows<{ work: string; value: string }>(
    db,
    'SELECT work, value FROM import_value WHERE field = :field ORDER BY at DESC, id DESC',
    { field: listField },
  )) {
    works.get(value.work)?.stored.push(value.value)
  }

  function keyed(): Found {
    if (keys !== undefined) return keys
    keys = new Map()
    for (const work of works.values()) {
      put(keys, keyOf(work), work)
      for (const stored of work.stored) {
        const listed = rowOf(stored)
        put(keys, keyOf({ ...listed, lender: listed.lender ?? work.lender }), work)
      }
    }
    return keys
  }

  return {
    byNumber: key => under(numbers, key),
    byKey: key => under(keyed(), key),
    work: id => works.get(id),
    last(id, print) {
      const work = works.get(id)
      const same = work?.listed.findIndex(row => row.print === print) ?? -1
      const stored = work?.stored[same === -1 ? 0 : same]
      return stored === undefined ? undefined : listedOf(stored)
    },
    take(id, row) {
      const work = works.get(id)
      if (work !== undefined) work.row = row
    },
    add(given) {
      const { id, lender } = given
      const work = new Loaded(given, [...given.numbers], [{ raw: given.raw, facts: noFacts, lender }])
      works.set(id, work)
      for (const { kind, norm } of given.numbers) put(numbers, numberKey(kind, norm, lender), work)
      if (keys !== undefined) put(keys, given.key, work)
    },
  }
}

function keyOf(work: {
  readonly lender: string | null
  readonly maker: string
  readonly title: string
  readonly date: string
}): string {
  return workKey({ ...work, lender: work.lender ?? '' })
}

/** Nearly every key stands for one work, and a list of 70,000 has as many: only a second one makes an array of them. */
type Found = Map<string, Loaded | Loaded[]>

function put(map: Found, key: string | undefined, work: Loaded): void {
  if (key === undefined || key === '') return
  const there = map.get(key)
  if (there === undefined) map.set(key, work)
  else if (!Array.isArray(there)) map.set(key, there === work ? work : [there, work])
  else if (!there.includes(work)) there.push(work)
}

function under(map: Found, key: string): readonly Loaded[] {
  const there = map.get(key)
  return there === undefined ? nobody : Array.isArray(there) ? there : [there]
}

const nobody: readonly Loaded[] = []
const noFacts = {}
