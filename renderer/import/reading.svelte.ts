/**
 * A list on its way in: what the host read of it, what a person corrected and answered. Nothing is written until it is
 * taken; every correction asks for a new reading.
 */
import type { Input, Output } from '../../src/contract/contract.ts'
import { Brought } from '../host/brought.svelte.ts'
import { type Refused, refusalOf } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'

export type Preview = Output<'import.preview'>
export type Row = Preview['rows'][number]
export type Asked = Pick<Row['questions'][number], 'field' | 'question'>
export type Column = Preview['columns'][number]
type Given = Input<'import.accept'>
type Mapping = NonNullable<Given['mapping']>[number]
export type Shown = NonNullable<Input<'import.preview'>['show']> | 'all'

const pageSize = 100
/** Rows beyond these are asked for again when they come into view once more. */
const keptPages = 40

export class Reading {
  preview = $state.raw<Preview | null>(null)
  refused = $state.raw<Refused | null>(null)
  taken = $state.raw<Output<'import.accept'> | null>(null)
  shown = $state<Shown>('all')
  sheet = $state<string | undefined>(undefined)
  exhibition = $state<string | undefined>(undefined)
  /** Of an exhibition to be made with the list, as typed; undefined where none is. */
  exhibitionTitle = $state<string | undefined>(undefined)
  /** An exhibition is asked for that has no title yet. */
  readonly untitled = $derived(this.exhibitionTitle?.trim() === '')
  /** As a person said it; left out, it is found. */
  private headingRow = $state<number | undefined>(undefined)
  /** As typed, and the id of the known lender that it names. */
  lenderName = $state('')
  lender = $state<string | undefined>(undefined)
  private mapping = $state.raw<readonly Mapping[]>([])
  private answers = $state.raw<NonNullable<Given['answers']>>([])
  /** The file, where the list is none of typed text. */
  readonly brought: Brought | undefined
  private readonly text: string | undefined
  private pages = $state.raw<ReadonlyMap<number, readonly Row[]>>(new Map())
  private pending = new Set<number>()
  private seen: readonly [number, number] = [0, 0]
  private reading = new AbortController()

  constructor(file: File | undefined, text: string | undefined, exhibition: string | undefined) {
    this.brought = file && new Brought(file)
    this.text = text
    this.exhibition = exhibition
  }

  private given(): Given {
    const lender = this.lenderName.trim()
    const title = this.exhibitionTitle?.trim() ?? ''
    return {
      ...(this.brought === undefined ? { text: this.text ?? '' } : { handle: this.brought.handle }),
      ...(this.sheet === undefined ? {} : { sheet: this.sheet }),
      ...(this.headingRow === undefined ? {} : { headingRow: this.headingRow }),
      ...(this.exhibition === undefined ? {} : { exhibition: this.exhibition }),
      ...(title === '' ? {} : { exhibitionTitle: title }),
      ...(this.lender !== undefined ? { lender: this.lender } : lender === '' ? {} : { lenderName: lender }),
      ...(this.mapping.length === 0 ? {} : { mapping: [...this.mapping] }),
      ...(this.answers.length === 0 ? {} : { answers: [...this.answers] }),
    }
  }

  /** Reads the list anew, with the rows in view; a reading under way that this one takes the place of is ended. */
  async read(): Promise<void> {
    this.reading.abort()
    const mine = new AbortController()
    this.reading = mine
    this.pending = new Set()
    this.refused = null
    const page = Math.floor(this.seen[0] / pageSize)
    try {
      await this.brought?.whole()
      if (mine.signal.aborted) return
      const preview = await this.ask(page, mine.signal)
      if (mine.signal.aborted) return
      this.preview = preview
      this.pages = new Map([[page, preview.rows]])
      if (preview.rows.length === 0 && page > 0) this.seen = [0, 0]
      this.see(...this.seen)
    } catch (thrown) {
      if (!mine.signal.aborted) this.refused = refusalOf(thrown)
    }
  }

  /** Nobody waits for a reading any more. */
  leave(): void {
    this.reading.abort()
    this.brought?.leave()
  }

  private ask(page: number, signal: AbortSignal): Promise<Preview> {
    return jobs.run(
      'import.preview',
      'Reading the list',
      {
        ...this.given(),
        ...(this.shown === 'all' ? {} : { show: this.shown }),
        offset: page * pageSize,
        limit: pageSize,
      },
      signal,
    )
  }

  /** A row by its place among those shown, where it is there already. */
  row(index: number): Row | undefined {
    return this.pages.get(Math.floor(index / pageSize))?.[index % pageSize]
  }

  /** Makes sure of the rows in view and the page after them. */
  see(from: number, to: number): void {
    this.seen = [from, to]
    const total = this.preview?.total ?? 0
    const last = Math.floor(Math.min(to + pageSize / 2, total - 1) / pageSize)
    for (let page = Math.floor(from / pageSize); page <= last; page++) void this.load(page)
  }

  private async load(page: number): Promise<void> {
    const { signal } = this.reading
    if (this.pages.has(page) || this.pending.has(page)) return
    const { pending } = this
    pending.add(page)
    try {
      const { rows } = await this.ask(page, signal)
      if (signal.aborted) return
      const pages = new Map(this.pages).set(page, rows)
      for (const old of pages.keys()) if (pages.size > keptPages && old !== page) pages.delete(old)
      this.pages = pages
    } catch (thrown) {
      if (!signal.aborted) this.refused = refusalOf(thrown)
    } finally {
      pending.delete(page)
    }
  }

  show(shown: Shown): Promise<void> {
    this.shown = shown
    this.seen = [0, 0]
    return this.read()
  }

  /** @param row from 1; 0 where the list has no headings */
  headings(row: number): Promise<void> {
    this.headingRow = row
    return this.read()
  }

  map(column: number, field: Mapping['field']): Promise<void> {
    this.mapping = [...this.mapping.filter(one => one.column !== column), { column, field }]
    return this.read()
  }

  answer(row: number, asked: Asked, answer: string): Promise<void> {
    const { field, question } = asked
    this.answers = [...this.answersBut(row, asked), { row, field, question, answer }]
    return this.read()
  }

  leaveOpen(row: number, asked: Asked): Promise<void> {
    this.answers = this.answersBut(row, asked)
    return this.read()
  }

  private answersBut(row: number, { field, question }: Asked): NonNullable<Given['answers']> {
    return this.answers.filter(one => one.row !== row || one.field !== field || one.question !== question)
  }

  async take(): Promise<void> {
    this.refused = null
    try {
      this.taken = await jobs.run('import.accept', 'Taking the list in', this.given())
    } catch (thrown) {
      this.refused = refusalOf(thrown)
    }
  }
}
