/** All numbers of works with what is doubtful among them. The rule it keeps: doubts are computed, settlements stored. */

import { type HeldNumber, type NumberDoubt, numberDoubts } from '../../../src/checklist/number-doubts.ts'
import { doubtSaid } from '../../../src/checklist/number-kinds.ts'
import { normalNumber, sortKeyOfNormal } from '../../../src/checklist/numbers.ts'
import type { NumberKind } from '../../../src/contract/areas/works-shape.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { ReadHandle } from '../../database/handles.ts'
import type { Reading } from '../service.ts'
import { rows } from '../sql.ts'
import { workName } from './facts.ts'
import { stampOf } from './order.ts'

type Line = Output<'number.list'>['lines'][number]
type Doubt = Line['doubts'][number]

interface Settled {
  readonly id: string
  readonly code: NumberDoubt['code']
  readonly subject: string
  readonly figures: string
  readonly reason: string
  readonly by: string
  readonly at: string
}

interface All {
  readonly stamp: string
  readonly numbers: readonly HeldNumber[]
  readonly doubts: ReadonlyMap<string, readonly NumberDoubt[]>
  readonly settled: ReadonlyMap<string, Settled>
}

const kept = new WeakMap<object, All>()

const settledKey = ({ code, figures }: Pick<NumberDoubt, 'code' | 'figures'>) => `${code} ${figures}`

/** Read once until something is written: of 70,000 works, all numbers must be seen to know what one is near to. */
function allNumbers(db: ReadHandle): All {
  const stamp = stampOf(db)
  const now = kept.get(db)
  if (now?.stamp === stamp) return now
  const numbers = rows<HeldNumber>(
    db,
    // A number written by hand may name no party: it is then the work's own lender's.
    `SELECT number.id, number.work, number.kind, number.text, number.norm,
       CASE WHEN number.kind IN ('permanent', 'former') THEN NULL ELSE coalesce(number.party, work.lender) END AS party
     FROM work_number AS number JOIN work ON work.id = number.work`,
  )
  const twins = rows<{ a: string; b: string }>(
    db,
    `SELECT min(id) AS a, max(id) AS b FROM work WHERE sort_title <> '' AND sort_maker <> ''
     GROUP BY sort_maker, sort_title, date_text HAVING count(*) = 2`,
  ).map(({ a, b }) => [a, b] as const)
  const byNumber = new Map<string, NumberDoubt[]>()
  for (const doubt of numberDoubts(numbers, twins)) {
    for (const { id } of doubt.numbers) byNumber.set(id, [...(byNumber.get(id) ?? []), doubt])
  }
  const settled = rows<Settled>(
    db,
    `SELECT id, code, subject, figures, reason, "by", at FROM settlement
     WHERE code IN ('number-twice', 'number-kinds', 'number-two', 'number-near') ORDER BY at, id`,
  )
  const all: All = {
    stamp,
    numbers,
    doubts: byNumber,
    settled: new Map(settled.map(one => [settledKey(one), one])),
  }
  kept.set(db, all)
  return all
}

/** In their natural order; of one work's few, or of all once until something is written. */
function inOrder(numbers: readonly HeldNumber[]): readonly HeldNumber[] {
  const now = sorted.get(numbers)
  if (now !== undefined) return now
  const keyed = numbers.map(number => ({ number, key: sortKeyOfNormal(number.norm) }))
  keyed.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : a.number.id < b.number.id ? -1 : 1))
  const order = keyed.map(({ number }) => number)
  sorted.set(numbers, order)
  return order
}

const sorted = new WeakMap<readonly HeldNumber[], readonly HeldNumber[]>()

export function list({ db }: Reading, input: Received<'number.list'>): Output<'number.list'> {
  const { offset = 0, limit = 200, kind, doubtful = false } = input
  const { numbers, doubts, settled } = allNumbers(db)
  const open = (number: HeldNumber) => (doubts.get(number.id) ?? []).some(doubt => !settled.has(settledKey(doubt)))
  const passes = passing(db, input)
  // Of all, the order is kept; of some, they are chosen first.
  const all = input.work === undefined ? inOrder(numbers) : numbers
  const some = all.filter(number => (kind === undefined || number.kind === kind) && passes(number))
  const asked = input.work === undefined ? some : inOrder(some)
  const first = asked.filter(open)
  const ordered = doubtful ? first : [...first, ...asked.filter(number => !open(number))]
  const shown = ordered.slice(offset, offset + limit)
  const facts = factsOf(db, shown)
  const called = (work: string) => workName(db, work)
  return {
    lines: shown.flatMap(number => {
      const fact = facts.get(number.id)
      if (fact === undefined) return []
      return [
        {
          ...fact,
          doubts: (doubts.get(number.id) ?? []).map(doubt =>
            asDoubt(doubt, number, called, settled.get(settledKey(doubt))),
          ),
        },
      ]
    }),
    total: ordered.length,
    doubtful: first.length,
  }
}

function asDoubt(
  doubt: NumberDoubt,
  beside: HeldNumber,
  called: (work: string) => string,
  settled: Settled | undefined,
): Doubt {
  return {
    code: doubt.code,
    text: doubtSaid(doubt, beside, called),
    subject: doubt.numbers[0]?.id ?? beside.id,
    figures: doubt.figures,
    others: doubt.numbers
      .filter(one => one.id !== beside.id)
      .slice(0, 20)
      .map(({ id, kind, text, work }) => ({ number: id, kind, text, work, title: called(work) })),
    settled: settled === undefined ? null : { id: settled.id, reason: settled.reason, by: settled.by, at: settled.at },
  }
}

/** Whether a number is asked for, by its work, its show and words of it. */
function passing(db: ReadHandle, input: Received<'number.list'>): (number: HeldNumber) => boolean {
  const { work, exhibition, words = '' } = input
  const inShow =
    exhibition === undefined
      ? null
      : new Set(
          rows<{ work: string }>(
            db,
            `SELECT entry.work FROM entry WHERE exhibition = :exhibition
             UNION SELECT part.id FROM entry JOIN work AS part ON part.parent = entry.work WHERE exhibition = :exhibition`,
            { exhibition },
          ).map(one => one.work),
        )
  const text = words.trim().toLowerCase()
  const norm = normalNumber(words)
  const named =
    text === ''
      ? null
      : new Set(
          rows<{ id: string }>(
            db,
            `SELECT work.id FROM work LEFT JOIN party ON party.id = work.lender
             WHERE instr(lower(title), :text) OR instr(lower(maker), :text) OR instr(lower(coalesce(party.name, '')), :text)`,
            { text },
          ).map(one => one.id),
        )
  return number =>
    (work === undefined || number.work === work) &&
    (inShow === null || inShow.has(number.work)) &&
    (named === null ||
      named.has(number.work) ||
      (norm !== '' && number.norm.startsWith(norm)) ||
      number.text.toLowerCase().includes(text))
}

function factsOf(db: ReadHandle, numbers: readonly HeldNumber[]): ReadonlyMap<string, Omit<Line, 'doubts'>> {
  const stored = rows<Omit<Line, 'doubts' | 'kind'> & { readonly kind: NumberKind }>(
    db,
    `SELECT number.id AS number, number.kind, number.text, number.since, number.by, number.note,
       coalesce(party.name, '') AS whose, number.work, work.title, work.maker
     FROM json_each(:wanted) AS wanted CROSS JOIN work_number AS number ON number.id = wanted.value
     JOIN work ON work.id = number.work LEFT JOIN party ON party.id = number.party`,
    { wanted: JSON.stringify(numbers.map(one => one.id)) },
  )
  return new Map(stored.map(one => [one.number, one]))
}
