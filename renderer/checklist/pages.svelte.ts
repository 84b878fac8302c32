/**
 * A list of any length that is never mirrored: pages are asked for shortly before they come into view, the farther
 * ahead the faster the list rolls; some are kept, and after a change the ones on show are asked for again while the old
 * lines stay up.
 */
import { untrack } from 'svelte'
import type { WorkLine } from '../../src/contract/areas/works-list.ts'
import type { Input } from '../../src/contract/contract.ts'
import { concerns } from '../host/catalogue.svelte.ts'
import { ask, listen, type Refused, refusalOf } from '../host/client.svelte.ts'

export type ListQuery = Omit<Input<'work.list'>, 'offset' | 'limit'>

const pageSize = 100
const keptPages = 60
/** Calls under way at a time: more would only wait in the host, and be out of date when their turn comes. */
const mostCalls = 2
/** How many looks ahead a rolling list is read: a call takes a few frames. */
const looksAhead = 12
const mostAhead = 1200
/** So many lines between two looks are no wheel's or key's doing. */
const pulledFrom = 200

class Pages {
  total = $state(0)
  /** Nothing has been answered for this question yet. */
  loading = $state(true)
  refusal = $state.raw<Refused | null>(null)
  /** The list is pulled faster than its lines can come, as by the thumb of its bar. */
  pulled = $state(false)
  private pages = $state.raw<ReadonlyMap<number, readonly WorkLine[]>>(new Map())
  private query: ListQuery = {}
  private asked = ''
  private round = 0
  private stale = new Set<number>()
  private pending = new Set<string>()
  /** Pages to ask for, the most wanted first. */
  private wanted: readonly number[] = []
  private seen: readonly [number, number] = [0, 40]

  constructor() {
    listen(event => {
      if (event.kind === 'opened' || (event.kind === 'changed' && concerns('work.list', event.tables))) this.refresh()
    })
  }

  /** Asks another question; the old lines stay until its first answer. */
  ask(query: ListQuery): void {
    const text = JSON.stringify(query)
    if (text === this.asked) return
    this.asked = text
    this.query = query
    this.loading = true
    this.seen = [0, 40]
    this.refresh()
  }

  line(index: number): WorkLine | undefined {
    return this.pages.get(Math.floor(index / pageSize))?.[index % pageSize]
  }

  /** The place of a work among the lines that are loaded. */
  indexOf(work: string): number {
    for (const [page, lines] of this.pages) {
      const at = lines.findIndex(line => line.id === work)
      if (at >= 0) return page * pageSize + at
    }
    return -1
  }

  /** Makes sure of the lines from one index to another, and of those that come next the way the list rolls. */
  see(from: number, to: number): void {
    untrack(() => {
      const moved = from - this.seen[0]
      this.seen = [from, to]
      this.pulled = Math.abs(moved) > pulledFrom
      const ahead = Math.min(mostAhead, pageSize / 2 + Math.abs(moved) * looksAhead)
      const next = moved < 0 ? pagesOf(from - ahead, from).toReversed() : pagesOf(to, to + ahead)
      const behind = moved < 0 ? pagesOf(to, to + pageSize / 2) : pagesOf(from - pageSize / 2, from)
      this.wanted = [...new Set([...pagesOf(from, to), ...next, ...behind])]
      this.askNext()
    })
  }

  private refresh(): void {
    this.round++
    this.stale = new Set(this.pages.keys())
    this.see(...this.seen)
  }

  private askNext(): void {
    for (const page of this.wanted) {
      if (this.pending.size >= mostCalls) return
      const known = this.pages.has(page) && !this.stale.has(page) && !this.loading
      const beyond = !this.loading && page > 0 && page * pageSize >= this.total
      // Of a new question only the first answer is asked for until it is there.
      if (!known && !beyond) void this.load(page)
      if (this.loading) return
    }
  }

  private async load(page: number): Promise<void> {
    const { round } = this
    const key = `${round}:${page}`
    if (this.pending.has(key)) return
    this.pending.add(key)
    try {
      const answer = await ask('work.list', { ...this.query, offset: page * pageSize, limit: pageSize })
      if (round !== this.round) return
      const first = this.loading
      const pages = new Map(first ? [] : this.pages)
      pages.delete(page)
      pages.set(page, answer.works)
      for (const old of pages.keys()) {
        if (pages.size > keptPages || (this.stale.has(old) && old * pageSize >= answer.total)) pages.delete(old)
      }
      this.stale.delete(page)
      this.pages = pages
      this.total = answer.total
      this.loading = false
      this.refusal = null
    } catch (thrown) {
      if (round === this.round) {
        this.refusal = refusalOf(thrown)
        this.wanted = []
      }
    } finally {
      this.pending.delete(key)
      this.askNext()
    }
  }

  /** The works from one index to another, loaded or not. */
  async between(from: number, to: number): Promise<readonly string[]> {
    const ids: string[] = []
    for (let offset = from; offset <= to; offset += 500) {
      const { works } = await ask('work.list', { ...this.query, offset, limit: Math.min(500, to - offset + 1) })
      ids.push(...works.map(work => work.id))
    }
    return ids
  }
}

/** The pages that hold the lines from one index to another. */
function pagesOf(from: number, to: number): readonly number[] {
  const [first, last] = [
    Math.max(0, Math.floor(from / pageSize)),
    Math.max(0, Math.floor(Math.max(from, to) / pageSize)),
  ]
  return Array.from({ length: last - first + 1 }, (_, at) => first + at)
}

export const pages = new Pages()
