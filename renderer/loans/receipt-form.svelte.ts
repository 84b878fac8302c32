/** What is typed into the form of a receipt, new or set right, and which works are ticked. */
import type { ReceiptTold } from '../../src/contract/areas/receipts.ts'
import type { Input, Output } from '../../src/contract/contract.ts'
import { kindToCome } from '../../src/loan/receipts/outstanding.ts'
import type { ReceiptKind } from '../../src/loan/receipts/receipt.ts'
import { emptied } from '../shell/known.svelte.ts'

type Told = Output<'receipt.list'>
const fields = ['number', 'place', 'handedBy', 'receivedBy', 'note'] as const
type Typed = Record<(typeof fields)[number], string>

interface WorkTyped {
  ticked: boolean
  condition: string
  crate: string
}

export class ReceiptTyped {
  kind = $state<ReceiptKind>('received')
  day = $state('')
  text = $state<Typed>({ number: '', place: '', handedBy: '', receivedBy: '', note: '' })
  works = $state<Record<string, WorkTyped>>({})

  constructor(told: Told, wrong: ReceiptTold | null) {
    this.kind = wrong?.kind ?? kindToCome(told.works)
    this.day = wrong?.day ?? told.today
    if (wrong === null) return
    const { place, handedBy, receivedBy, note } = wrong
    this.text = { number: '', place, handedBy, receivedBy, note }
    for (const { work, condition, crate } of wrong.works) this.works[work] = { ticked: true, condition, crate }
  }

  /** Once no work can be what was chosen, it is what most can be. */
  follow(works: Told['works']): void {
    if (!works.some(({ next }) => next.includes(this.kind))) this.kind = kindToCome(works)
  }

  of(work: string): WorkTyped {
    return this.works[work] ?? { ticked: false, condition: '', crate: '' }
  }

  set(work: string, to: Partial<WorkTyped>): void {
    this.works[work] = { ...this.of(work), ...to }
  }

  /** Of these works, those that are ticked, as the contract takes them. */
  named(works: readonly string[]): Input<'receipt.add'>['works'] {
    return works.flatMap(work => {
      const { ticked, condition, crate } = this.of(work)
      return ticked ? [{ work, condition: condition.trim(), crate: crate.trim() }] : []
    })
  }

  /** What the contract takes of the rest; a number that nobody typed is the next. */
  said(): Pick<Input<'receipt.add'>, 'kind' | 'day' | 'number' | 'place' | 'handedBy' | 'receivedBy' | 'note'> {
    const { number, ...rest } = this.text
    return { kind: this.kind, day: this.day, ...rest, ...(number.trim() === '' ? {} : { number }) }
  }

  /** Takes out what was written; what was typed meanwhile stays. */
  empty(sent: Typed, works: Input<'receipt.add'>['works']): void {
    for (const field of fields) this.text[field] = emptied(this.text[field], sent[field])
    for (const { work } of works) delete this.works[work]
  }
}
