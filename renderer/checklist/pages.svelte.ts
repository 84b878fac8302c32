/**
 * A list of any length that is never mirrored: pages are asked for as they come into view, a few are kept, and after a
 * change the ones on show are asked for again while the old lines stay up.
 */
import type { WorkLine } from '../../src/contract/areas/works.ts'
import type { Input } from '../../src/contract/contract.ts'
import { concerns } from '../host/catalogue.svelte.ts'
import { call, listen, type Refused, refusalOf } from '../host/client.svelte.ts'

export type ListQuery = Omit<Input<'work.list'>, 'offset' | 'limit'>

const pageSize = 100
const keptPages = 24

class Pages {
  total = $state(0)
  /** Nothing has been answered for this question yet. */
  loading = $state(true)
  refusal = $state.raw<Refused | null>(null)
  private pages = $state.raw<ReadonlyMap<number, readonly WorkLine[]>>(new Map())
  private query: ListQuery = {}
  private asked = ''
  private round = 0
  private stale = new Set<number>()
  private pending = new Set<string>()
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

  /** Makes sure of the lines from one index to another. */
  see(from: number, to: number): void {
    this.seen = [from, to]
    for (let page = Math.floor(from / pageSize); page <= Math.floor(Math.max(from, to) / pageSize); page++) {
      if (!this.pages.has(page) || this.stale.has(page)) void this.load(page)
    }
  }

  private refresh(): void {
    this.round++
    this.stale = new Set(this.pages.keys())
    this.see(...this.seen)
  }

  private async load(page: number): Promise<void> {
    const { round } = this
    const key = `${round}:${page}`
    if (this.pending.has(key)) return
    this.pending.add(key)
    try {
      const answer = await call('work.list', { ...this.query, offset: page * pageSize, limit: pageSize })
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
      if (round === this.round) this.refusal = refusalOf(thrown)
    } finally {
      this.pending.delete(key)
    }
  }

  /** The works from one index to another, loaded or not. */
  async between(from: number, to: number): Promise<readonly string[]> {
    const ids: string[] = []
    for (let offset = from; offset <= to; offset += 500) {
      const { works } = await call('work.list', { ...this.query, offset, limit: Math.min(500, to - offset + 1) })
      ids.push(...works.map(work => work.id))
    }
    return ids
  }
}

export const pages = new Pages()
