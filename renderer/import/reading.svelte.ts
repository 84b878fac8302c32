/**
 * A list on its way in: what the host read of it, what a person corrected and answered. Nothing is written until it is
 * taken; every correction asks for a new reading.
 */
import type { Input, Output } from '../../src/contract/contract.ts'
import { type Refused, refusalOf, upload } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'

export type Preview = Output<'import.preview'>
export type Row = Preview['rows'][number]
export type Column = Preview['columns'][number]
type Given = Input<'import.accept'>
type Mapping = NonNullable<Given['mapping']>[number]
export type Shown = NonNullable<Input<'import.preview'>['show']> | 'all'

const pageSize = 50

export class Reading {
  preview = $state.raw<Preview | null>(null)
  refused = $state.raw<Refused | null>(null)
  taken = $state.raw<Output<'import.accept'> | null>(null)
  shown = $state<Shown>('all')
  offset = $state(0)
  sheet = $state<string | undefined>(undefined)
  exhibition = $state<string | undefined>(undefined)
  /** As typed, and the id of the known lender that it names. */
  lenderName = $state('')
  lender = $state<string | undefined>(undefined)
  private mapping = $state.raw<readonly Mapping[]>([])
  private answers = $state.raw<NonNullable<Given['answers']>>([])
  private handle: string | undefined
  private readonly text: string | undefined
  private asked = 0

  constructor(text: string | undefined, exhibition: string | undefined) {
    this.text = text
    this.exhibition = exhibition
  }

  async open(files: readonly File[]): Promise<void> {
    const [file] = files
    try {
      if (file !== undefined) this.handle = (await upload(file)).handle
      await this.read()
    } catch (thrown) {
      this.refused = refusalOf(thrown)
    }
  }

  private given(): Given {
    const lender = this.lenderName.trim()
    return {
      ...(this.handle === undefined ? { text: this.text ?? '' } : { handle: this.handle }),
      ...(this.sheet === undefined ? {} : { sheet: this.sheet }),
      ...(this.exhibition === undefined ? {} : { exhibition: this.exhibition }),
      ...(this.lender !== undefined ? { lender: this.lender } : lender === '' ? {} : { lenderName: lender }),
      ...(this.mapping.length === 0 ? {} : { mapping: [...this.mapping] }),
      ...(this.answers.length === 0 ? {} : { answers: [...this.answers] }),
    }
  }

  async read(): Promise<void> {
    const mine = ++this.asked
    this.refused = null
    try {
      const preview = await jobs.run('import.preview', 'Reading the list', {
        ...this.given(),
        ...(this.shown === 'all' ? {} : { show: this.shown }),
        offset: this.offset,
        limit: pageSize,
      })
      if (mine === this.asked) this.preview = preview
    } catch (thrown) {
      if (mine === this.asked) this.refused = refusalOf(thrown)
    }
  }

  show(shown: Shown): Promise<void> {
    this.shown = shown
    this.offset = 0
    return this.read()
  }

  page(step: 1 | -1): Promise<void> {
    this.offset = Math.max(0, this.offset + step * pageSize)
    return this.read()
  }

  map(column: number, field: Mapping['field']): Promise<void> {
    this.mapping = [...this.mapping.filter(one => one.column !== column), { column, field }]
    return this.read()
  }

  answer(row: number, field: string, answer: string): Promise<void> {
    this.answers = [...this.answers.filter(one => one.row !== row || one.field !== field), { row, field, answer }]
    return this.read()
  }

  leaveOpen(row: number, field: string): Promise<void> {
    this.answers = this.answers.filter(one => one.row !== row || one.field !== field)
    return this.read()
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
