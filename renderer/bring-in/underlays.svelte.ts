/** Pictures under the plan, and the two points that one of them is being scaled by. */
import type { Input, Output } from '../../src/contract/contract.ts'
import type { Point } from '../../src/drawing/room-plan.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { call } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'

export type UnderlayRow = Output<'underlay.list'>['underlays'][number]
type Changes = Input<'underlay.update'>['changes']

export class Underlays {
  readonly query = watch('underlay.list', () => ({}))
  readonly all = $derived(this.query.value?.underlays ?? [])
  /** Which one two points are being shown on, and those shown. */
  scaling = $state.raw<{ readonly id: string; readonly points: readonly Point[] } | null>(null)

  on(storey: string): readonly UnderlayRow[] {
    return this.all.filter(underlay => underlay.storey === storey)
  }

  add(file: File, storey: string, at: Point): Promise<unknown> {
    return frame.attempt(async () => {
      const { handle } = await jobs.upload(file)
      const { id } = await jobs.run('underlay.add', `Laying ${file.name} under the plan`, {
        handle,
        storey,
        at: [at[0], at[1]],
      })
      this.scaling = { id, points: [] }
    })
  }

  change(id: string, changes: Changes) {
    return call('underlay.update', { id, changes })
  }

  remove(id: string): Promise<unknown> {
    if (this.scaling?.id === id) this.scaling = null
    return frame.attempt(() => call('underlay.remove', { id }))
  }

  /** A third point begins anew. */
  point(at: Point): void {
    if (this.scaling === null) return
    const { id, points } = this.scaling
    this.scaling = { id, points: points.length >= 2 ? [at] : [...points, at] }
  }

  scale(distance: number): Promise<unknown> {
    const [from, to] = this.scaling?.points ?? []
    const id = this.scaling?.id
    if (id === undefined || from === undefined || to === undefined) return Promise.resolve()
    return frame.attempt(async () => {
      await call('underlay.scale', { id, from: [from[0], from[1]], to: [to[0], to[1]], distance })
      this.scaling = null
    })
  }
}
