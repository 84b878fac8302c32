/**
 * Which works a list shows, in which order, as row numbers kept in memory until anything is written: a page of 70,000
 * works is then cut out at any depth in the time of a page at the top. The rule it keeps: works that lack what the list
 * is sorted by stand at its end, whichever way it runs.
 */
import type { ReadHandle } from '../../database/handles.ts'
import { numbers, type Value, value } from '../sql.ts'
import { type Clause, clausesOf, type Filter } from './filter.ts'

/** Orders and filters that are kept; each of 70,000 works takes 280 kB. */
const most = 32

interface Kept {
  readonly stamp: string
  readonly answers: Map<string, Int32Array>
}

const kept = new WeakMap<object, Kept>()

/** Changes with every write, of this connection and of any other. */
export function stampOf(db: ReadHandle): string {
  return `${value<number>(db, 'PRAGMA data_version')} ${value<number>(db, 'SELECT total_changes()')}`
}

function keptOf(db: ReadHandle): Map<string, Int32Array> {
  const stamp = stampOf(db)
  const now = kept.get(db)
  if (now?.stamp === stamp) return now.answers
  const answers = new Map<string, Int32Array>()
  kept.set(db, { stamp, answers })
  return answers
}

function remember(answers: Map<string, Int32Array>, key: string, make: () => Int32Array): Int32Array {
  const found = answers.get(key) ?? make()
  // Taken out and put back, so that the one not used for longest is the first.
  answers.delete(key)
  answers.set(key, found)
  const [oldest] = answers.keys()
  if (answers.size > most && oldest !== undefined) answers.delete(oldest)
  return found
}

/** The row numbers (`work.n`) of the works that the list shows, in its order. */
export function orderedWorks(db: ReadHandle, filter: Filter): Int32Array {
  const answers = keptOf(db)
  const { offset: _, limit: __, ...question } = filter
  return remember(answers, `list ${JSON.stringify(question)}`, () => {
    const orders = ordersOf(filter).map(({ sql, parameters, reversed }) => {
      const order = remember(answers, `${sql} ${JSON.stringify(parameters)}`, () => numbers(db, sql, parameters))
      return reversed ? order.toReversed() : order
    })
    const clauses = clausesOf(db, filter)
    const found = clauses.map(({ sql, parameters }) =>
      remember(answers, `${sql} ${JSON.stringify(parameters)}`, () => numbers(db, sql, parameters)),
    )
    return passing(orders, clauses, found)
  })
}

/** The works of the orders, one behind the other, that pass every clause. */
function passing(orders: readonly Int32Array[], clauses: readonly Clause[], found: readonly Int32Array[]): Int32Array {
  let [total, last] = [0, 0]
  for (const order of orders) {
    total += order.length
    for (const n of order) last = Math.max(last, n)
  }
  const failed = new Uint8Array(last + 1)
  for (const [at, clause] of clauses.entries()) {
    const named = new Uint8Array(last + 1)
    for (const n of found[at] ?? []) if (n <= last) named[n] = 1
    const wanted = clause.not === true ? 0 : 1
    for (let n = 0; n <= last; n++) if (named[n] !== wanted) failed[n] = 1
  }
  const passed = new Int32Array(total)
  let count = 0
  for (const order of orders) for (const n of order) if (failed[n] === 0) passed[count++] = n
  return passed.slice(0, count)
}

interface Order {
  readonly sql: string
  readonly parameters: Readonly<Record<string, Value>>
  readonly reversed: boolean
}

type Sort = NonNullable<Filter['sort']>

/** What a list is sorted by, and whether a work lacks it. The texts have indexes. */
const sorts: Readonly<Record<Exclude<Sort, 'order' | 'where'>, { readonly by: string; readonly lacks: string }>> = {
  number: { by: 'sort_number', lacks: `sort_number = ''` },
  title: { by: 'sort_title', lacks: `sort_title = ''` },
  maker: { by: 'sort_maker, sort_title', lacks: `sort_maker = ''` },
  date: { by: 'date_text', lacks: `date_text = ''` },
  size: { by: 'hang_height * hang_width', lacks: 'hang_height IS NULL OR hang_width IS NULL' },
  mass: { by: 'mass', lacks: 'mass IS NULL' },
  limit: { by: 'light_limit', lacks: 'light_limit IS NULL' },
}

function ordersOf(filter: Filter): readonly Order[] {
  const { exhibition, sort = 'order', descending: reversed = false } = filter
  const isShow = exhibition !== undefined && filter.outside !== true
  if (isShow && (sort === 'order' || sort === 'where')) return [inShow(exhibition, sort, reversed)]
  const from = isShow
    ? 'entry CROSS JOIN work ON work.id = entry.work WHERE exhibition = :exhibition AND'
    : 'work WHERE'
  const parameters: Order['parameters'] = isShow ? { exhibition } : {}
  const order = (where: string, by: string): Order => ({
    sql: `SELECT work.n FROM ${from} ${where} ORDER BY ${by}`,
    parameters,
    reversed,
  })
  if (sort === 'order' || sort === 'where') return [order('1', 'work.n')]
  const { by, lacks } = sorts[sort]
  return [order(`NOT (${lacks})`, `${by}, work.n`), order(`(${lacks})`, 'work.n')]
}

/** The order of the show, and the order of its walls; what stands in no section and on no wall comes last. */
function inShow(exhibition: string, sort: 'order' | 'where', reversed: boolean): Order {
  const way = reversed ? 'DESC' : 'ASC'
  const by =
    sort === 'order'
      ? `section.position IS NULL, section.position ${way}, entry.position ${way}`
      : `placement.id IS NULL, room.position ${way}, wall.position ${way}, face.side ${way}, placement.x ${way}`
  const sql = `SELECT work.n FROM entry CROSS JOIN work ON work.id = entry.work
    LEFT JOIN section ON section.id = entry.section
    LEFT JOIN placement ON placement.entry = entry.id LEFT JOIN face ON face.id = placement.face
    LEFT JOIN wall ON wall.id = face.wall LEFT JOIN room ON room.id = wall.room
    WHERE entry.exhibition = :exhibition ORDER BY ${by}, work.n`
  return { sql, parameters: { exhibition }, reversed: false }
}
