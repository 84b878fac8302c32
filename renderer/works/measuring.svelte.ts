/**
 * The back of a work while it is measured: the method, the side it is seen from, what was typed for each measure. What
 * it means is asked of src at every key: where it bears on the wall, how the wire stands, what is refused and where.
 */
import type { Output } from '../../src/contract/contract.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { backAlone } from '../../src/hang/back-alone.ts'
import type { WorkFacts } from '../../src/hang/method.ts'
import { findMethod } from '../../src/hang/methods.ts'
import { call, refusalOf } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { rules } from '../host/rules.svelte.ts'
import { emptied } from '../shell/known.svelte.ts'
import { fieldsInUse, flat, keyOf, nested, type Path, type Value } from './back-data.ts'

export type BackRow = Output<'work.get'>['backs'][number]
type Side = BackRow['seenFrom']

export class Measuring {
  method = $state<BackRow['method'] | ''>('')
  seenFrom = $state<Side | null>(null)
  note = $state('')
  hooks = $state('')
  /** Saving was asked for: what is missing is said at its field from then on. */
  asked = $state(false)
  refused = $state('')
  ranges = $state(0)
  /** The record that the form began from. */
  record = $state.raw<BackRow | null>(null)
  size = $state.raw<WorkFacts | null>(null)
  private typed = $state.raw<ReadonlyMap<string, string>>(new Map())
  private kept = $state.raw<ReadonlyMap<string, Value>>(new Map())

  readonly hang = $derived(findMethod(this.method))
  readonly touched = $derived(
    this.typed.size > 0 ||
      this.note !== '' ||
      this.method !== (this.record?.method ?? '') ||
      this.seenFrom !== (this.record?.seenFrom ?? null),
  )
  readonly choices = $derived(
    new Map(
      (this.hang?.fields ?? []).flatMap(({ path, kind, choices }) =>
        kind === 'choice'
          ? [[keyOf(path), this.typed.get(keyOf(path)) ?? this.kept.get(keyOf(path)) ?? choices?.[0]?.value ?? '']]
          : [],
      ),
    ),
  )
  readonly fields = $derived(this.hang === null ? [] : fieldsInUse(this.hang, this.choices))
  readonly paths = $derived<readonly Path[]>(
    this.fields.flatMap(({ path }) =>
      keyOf(path) === 'ranges'
        ? Array.from({ length: this.ranges }, (_, at) => [
            ['ranges', at, 'from'] as Path,
            ['ranges', at, 'to'] as Path,
          ]).flat()
        : [path],
    ),
  )
  readonly data = $derived(
    nested(
      this.paths.flatMap(path => {
        const value = this.value(keyOf(path))
        return value === null ? [] : [[path, value] as const]
      }),
    ),
  )
  readonly missing = $derived(this.fields.filter(field => field.required && this.value(keyOf(field.path)) === null))
  readonly unread = $derived(this.paths.some(path => this.problem(keyOf(path)) !== ''))
  private readonly hooksRead = $derived(this.hooks.trim() === '' ? null : desk.parseLength(this.hooks))
  readonly hooksApart = $derived(this.hooksRead?.ok ? this.hooksRead.mm : null)
  readonly hooksProblem = $derived(this.hooksRead === null || this.hooksRead.ok ? '' : this.hooksRead.message)

  /** What the measures mean so far: an answer, a refusal with its field, or nothing while something is missing. */
  readonly trial = $derived.by(() => {
    const { hang, seenFrom, size } = this
    if (hang === null || seenFrom === null || size === null || this.missing.length > 0 || this.unread) return null
    try {
      const answer = backAlone({
        method: hang.key,
        seenFrom,
        data: this.data,
        work: size,
        hooksApart: this.hooksApart,
        rules: rules.hang,
        unit: desk.unit,
        steps: { mm: rules.figure('sheetStepMm'), fraction: desk.fraction },
      })
      return { answer, refusal: null }
    } catch (thrown) {
      if (thrown instanceof Refusal) return { answer: null, refusal: thrown }
      throw thrown
    }
  })

  load(record: BackRow | null): void {
    this.record = record
    this.method = record?.method ?? ''
    this.seenFrom = record?.seenFrom ?? null
    this.kept = flat(record?.data ?? {})
    this.typed = new Map()
    this.ranges = [...this.kept.keys()].filter(key => /^ranges\.\d+\.from$/.test(key)).length
    this.note = ''
    this.asked = false
    this.refused = ''
  }

  type(key: string, text: string): void {
    this.typed = new Map(this.typed).set(key, text)
  }

  addRange(): void {
    this.ranges += 1
  }

  /** The last stretch goes; the others keep their places. */
  dropRange(): void {
    this.ranges -= 1
    const gone = `ranges.${this.ranges}.`
    this.typed = new Map([...this.typed].filter(([key]) => !key.startsWith(gone))).set('ranges', '')
    this.kept = new Map([...this.kept].filter(([key]) => !key.startsWith(gone)))
  }

  text(key: string): string {
    const typed = this.typed.get(key)
    if (typed !== undefined) return typed
    const kept = this.kept.get(key)
    if (typeof kept !== 'number') return kept ?? ''
    const kind = this.kindOf(key)
    return kind === 'mass' ? desk.mass(kept) : kind === 'length' ? desk.length(kept) : String(kept)
  }

  value(key: string): Value | null {
    const choice = this.choices.get(key)
    if (choice !== undefined) return choice
    const typed = this.typed.get(key)
    if (typed === undefined) return this.kept.get(key) ?? null
    if (typed.trim() === '') return null
    const read = this.read(key, typed)
    return read.ok ? read.value : null
  }

  /** What kind of figure a field wants; a brace's ends are lengths. */
  private kindOf(key: string): string {
    return this.hang?.fields.find(field => keyOf(field.path) === key)?.kind ?? 'length'
  }

  /** A typed figure in the unit that its measure is kept in. */
  private read(key: string, typed: string) {
    const kind = this.kindOf(key)
    if (kind === 'length') {
      const read = desk.parseLength(typed)
      return read.ok ? ({ ok: true, value: read.mm } as const) : ({ ok: false, message: read.message } as const)
    }
    if (kind === 'mass') {
      const read = desk.parseMass(typed)
      return read.ok ? ({ ok: true, value: read.kg } as const) : ({ ok: false, message: read.message } as const)
    }
    const value = Number(typed.trim().replace(',', '.'))
    return Number.isFinite(value)
      ? ({ ok: true, value } as const)
      : ({ ok: false, message: `“${typed.trim()}” is no figure. Write it as 300 or 0.2.` } as const)
  }

  /** What is wrong with one measure, at its field. */
  problem(key: string): string {
    const typed = this.typed.get(key)
    if (typed !== undefined && typed.trim() !== '' && !this.choices.has(key)) {
      const read = this.read(key, typed)
      if (!read.ok) return read.message
    }
    if (this.asked && this.missing.some(field => keyOf(field.path) === key)) return 'Still to measure.'
    return ''
  }

  /** What src refuses, at the field that it names. */
  refusal(key: string): string {
    const refusal = this.trial?.refusal
    const field = (refusal?.field ?? '').replace(/^back\.data\./, '')
    return field === key ? (refusal?.message ?? '') : ''
  }

  async save(work: string): Promise<void> {
    this.asked = true
    this.refused = ''
    const { method, seenFrom } = this
    if (method === '' || seenFrom === null || this.missing.length > 0 || this.unread) return
    const sent = { typed: this.typed, note: this.note }
    try {
      const data = this.data as BackRow['data'] // numbers and words alone, as the fields give them
      await call('work.setBack', {
        work,
        method,
        data,
        seenFrom,
        ...(this.note.trim() === '' ? {} : { note: this.note.trim() }),
      })
      this.typed = new Map([...this.typed].filter(([key, text]) => sent.typed.get(key) !== text))
      this.note = emptied(this.note, sent.note)
      this.asked = false
      // What was saved is the record now; the newest row arrives with the next answer and looks the same.
      this.kept = flat(data)
      this.record = { id: '', method, seenFrom, data, by: '', at: '', note: '' }
    } catch (thrown) {
      this.refused = refusalOf(thrown).message
    }
  }
}
