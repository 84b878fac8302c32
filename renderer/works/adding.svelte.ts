/**
 * A size on its way in: a statement read by src as it is typed, its questions answered one by one, or figures in
 * fields of their own. Each part that was read becomes a dated row; what is still a question is not taken.
 */
import { sizePart } from '../../src/contract/areas/works-shape.ts'
import { answerQuestion } from '../../src/measure/answers.ts'
import { readDimensions } from '../../src/measure/dimensions.ts'
import type { Option, ReadPart, Statement } from '../../src/measure/statement.ts'
import { call, refusalOf } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import type { Got } from './work.svelte.ts'

export type SizePart = (typeof sizePart.options)[number]
export const sides = ['height', 'width', 'depth', 'diameter'] as const
type Side = (typeof sides)[number]

export class Adding {
  way = $state<'statement' | 'figures'>('statement')
  text = $state('')
  kind = $state<'measured' | 'listed'>('measured')
  source = $state('')
  approximate = $state(false)
  /** The part, for figures and for what a statement does not name. */
  part = $state<SizePart>('framed')
  figures = $state<Record<Side, string>>({ height: '', width: '', depth: '', diameter: '' })
  refused = $state('')
  private answers = $state.raw<readonly { readonly index: number; readonly option: Option }[]>([])

  readonly statement = $derived<Statement | null>(
    this.text.trim() === ''
      ? null
      : this.answers.reduce(
          (read, { index, option }) => answerQuestion(read, index, option),
          readDimensions(this.text),
        ),
  )
  readonly reads = $derived(
    sides.map(side => ({
      side,
      text: this.figures[side],
      read: this.figures[side].trim() === '' ? null : desk.parseLength(this.figures[side]),
    })),
  )
  readonly ready = $derived(
    this.way === 'statement'
      ? this.statement !== null &&
          this.statement.questions.length === 0 &&
          (this.statement.parts.length > 0 || this.statement.mass !== undefined)
      : this.reads.some(one => one.read?.ok) && this.reads.every(one => one.read === null || one.read.ok),
  )

  constructor(part: SizePart | undefined) {
    if (part !== undefined) this.part = part
  }

  write(text: string): void {
    this.text = text
    this.answers = []
  }

  answer(index: number, option: Option): void {
    this.answers = [...this.answers, { index, option }]
  }

  partOf(read: ReadPart): SizePart {
    return sizePart.options.find(part => part === read.part) ?? this.part
  }

  /** Writes what was read; true when all of it is there. */
  async save(work: Got): Promise<boolean> {
    const common = {
      work: work.id,
      kind: this.kind,
      ...(this.source.trim() === '' ? {} : { source: this.source.trim() }),
    }
    this.refused = ''
    try {
      if (this.way === 'figures') {
        const given = Object.fromEntries(this.reads.flatMap(({ side, read }) => (read?.ok ? [[side, read.mm]] : [])))
        const raw = this.reads
          .flatMap(({ side, text }) => (text.trim() === '' ? [] : [`${side === 'diameter' ? '⌀ ' : ''}${text.trim()}`]))
          .join(' × ')
        await call('work.addSize', { ...common, part: this.part, raw, approximate: this.approximate, ...given })
        return true
      }
      const { parts = [], mass } = this.statement ?? {}
      const sizes = parts.map(read => {
        const { label, count, height = null, width = null, depth = null, diameter = null, approximate } = read
        return { part: this.partOf(read), label, count, height, width, depth, diameter, approximate }
      })
      await call('work.addStatement', {
        ...common,
        part: this.part,
        raw: this.text.trim(),
        approximate: this.approximate,
        sizes,
        ...(mass === undefined ? {} : { mass }),
      })
      return true
    } catch (thrown) {
      this.refused = refusalOf(thrown).message
      return false
    }
  }
}
