/**
 * Marks as somebody makes them on the wall: services looked for, pencil, drill. It ticks them, and keeps in words what
 * stood in the way of the last tick until it is answered: a hole is never taken back without a reason.
 */
import type { Output } from '../../src/contract/contract.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { call, refusalOf } from '../host/client.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'

export type MarkRow = Output<'mark.ofFace'>['marks'][number]
export type Column = 'services' | 'marked' | 'drilled'
export type State = 'planned' | 'hung' | 'level' | 'locked' | 'checked'
type To = 'planned' | 'marked' | 'drilled'

/** Nearer to its plan than this a mark stands where it is planned: half of what a tape shows. mm. */
export const OFF_PLAN = 0.5

/** What has to be answered before the ticks go on. */
export interface Asked {
  readonly kind: 'services' | 'moved' | 'reason' | 'told'
  readonly marks: readonly MarkRow[]
  readonly to: To
  readonly text: string
}

const moment = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })

/** Who and when, such as "R. Venn, 25 Nov, 14:32". */
export function tickWords(tick: { readonly at: string; readonly by: string }): string {
  const at = moment.format(new Date(tick.at)).replaceAll(' ', '\u00a0')
  return tick.by === '' ? at : `${tick.by}, ${at}`
}

export function isTicked(row: MarkRow, column: Column): boolean {
  if (column === 'services') return row.made?.services != null
  return column === 'marked' ? row.made !== null : row.state === 'drilled'
}

export function isOff(row: MarkRow): boolean {
  return row.away !== null && row.away > OFF_PLAN
}

export class Made {
  private readonly face: () => string | null
  readonly query
  private readonly walked
  asked = $state.raw<Asked | null>(null)
  readonly rows = $derived.by((): readonly MarkRow[] => this.query.value?.marks ?? [])
  readonly dead = $derived.by(() => this.query.value?.dead ?? [])
  /** Placements with a hole in the wall: they move by a late change only. */
  readonly drilled = $derived.by(
    (): ReadonlySet<string> =>
      new Set(this.rows.flatMap(row => (row.made?.state === 'drilled' ? [row.placement] : []))),
  )

  constructor(face: () => string | null) {
    this.face = face
    const input = () => {
      const at = face()
      return at === null || show.id === null ? null : { exhibition: show.id, face: at }
    }
    this.query = watch('mark.ofFace', input)
    this.walked = watch('placement.steps', input)
  }

  rowsOf(placements: readonly string[]): readonly MarkRow[] {
    return this.rows.filter(row => placements.includes(row.placement))
  }

  /** When a work was last said to be so, since it was last planned; null where nobody said it. */
  stepOf(placement: string, state: State): { readonly at: string; readonly by: string } | null {
    const own = (this.walked.value?.steps ?? []).filter(step => step.placement === placement)
    const since = own.slice(own.findLastIndex(step => step.state === 'planned') + 1)
    return since.findLast(step => step.state === state) ?? null
  }

  /** Ticks a column for marks, or takes it back where all of them have it. */
  async turn(rows: readonly MarkRow[], column: Column): Promise<void> {
    const on = !rows.every(row => isTicked(row, column))
    if (column === 'services') await this.look(rows, on)
    else if (on)
      await this.set(
        rows.filter(row => !isTicked(row, column)),
        column,
      )
    else if (rows.some(row => row.state === 'drilled')) {
      this.ask(
        'reason',
        rows,
        column === 'drilled' ? 'marked' : 'planned',
        'A drilled hole is there. Was it ticked by mistake?',
      )
    } else await this.set(rows, 'planned')
  }

  /** For keys: ticks what is not ticked, and takes nothing back. */
  async tick(rows: readonly MarkRow[], column: Column): Promise<void> {
    if (rows.length === 0) frame.say('There are no marks to tick: select works whose backs are measured.')
    else if (rows.every(row => isTicked(row, column)))
      frame.say(`All of these marks are ticked ${column === 'services' ? 'as looked at' : column} already.`)
    else await this.turn(rows, column)
  }

  look(rows: readonly MarkRow[], checked: boolean): Promise<boolean> {
    return this.attempt(rows, 'marked', where => call('mark.services', { ...where, checked }))
  }

  async set(rows: readonly MarkRow[], to: To, reason?: string): Promise<boolean> {
    if (rows.length === 0) return false
    return this.attempt(rows, to, where =>
      call('mark.set', { ...where, to, ...(reason === undefined ? {} : { reason }) }),
    )
  }

  /** The way out that stands beside what was refused. */
  async answer(reason = ''): Promise<void> {
    const { asked } = this
    if (asked === null) return
    if (asked.kind === 'services') {
      if (await this.look(asked.marks, true)) await this.set(asked.marks, asked.to)
    } else if (asked.kind === 'moved') await this.set(asked.marks.filter(isOff), 'marked')
    else if (asked.kind === 'reason') await this.set(asked.marks, asked.to, reason)
  }

  private ask(kind: Asked['kind'], marks: readonly MarkRow[], to: To, text: string): void {
    this.asked = { kind, marks, to, text }
  }

  private async attempt(
    rows: readonly MarkRow[],
    to: To,
    act: (where: {
      exhibition: string
      face: string
      marks: { placement: string; slot: string }[]
    }) => Promise<unknown>,
  ): Promise<boolean> {
    const face = this.face()
    if (face === null || show.id === null || rows.length === 0) return false
    this.asked = null
    frame.said = null
    try {
      const marks = rows.map(({ placement, slot }) => ({ placement, slot }))
      await act({ exhibition: show.id, face, marks })
      return true
    } catch (thrown) {
      const refused = refusalOf(thrown)
      const kind =
        ({ 'services-not-checked': 'services', 'mark-moved': 'moved', 'drilled-stays': 'reason' } as const)[
          refused.code
        ] ?? 'told'
      this.ask(kind, rows, to, refused.message)
      return false
    }
  }

  async fill(ids: readonly string[]): Promise<void> {
    const went = await frame.attempt(() => call('mark.fill', { marks: [...ids], filled: true }))
    if (went)
      frame.say(`${ids.length === 1 ? 'The hole is' : `${ids.length} holes are`} filled; Ctrl and Z take that back.`)
  }
}
