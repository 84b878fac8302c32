/**
 * How the works of a wall balance as they stand this moment. Their weights come from the catalogue, their places from
 * the hand; pictures that nobody has read yet are read once, in a worker.
 */
import type { Elevation } from '../../src/contract/areas/walls.ts'
import type { HungRect } from '../../src/layout/findings.ts'
import { balanceOf } from '../../src/sequence/balance.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { ask, refusalOf } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'

interface Stands {
  readonly elevation: Elevation | undefined
  /** Of the works as they are told beside the drawing. */
  readonly toldRects: readonly HungRect[]
}

export class BalanceShown {
  private readonly wall: Stands
  private readonly query
  /** Which axis a person looks at: its place among those of the wall. */
  private chosen = $state(0)
  shown = $state(true)
  /** Shows whose pictures were asked for; once is enough. */
  private readonly asked = new Set<string>()

  readonly weights = $derived.by(() => this.query.value)
  readonly axes = $derived.by(() => this.weights?.axes ?? [])
  readonly axis = $derived.by(() => this.axes[this.chosen] ?? this.axes[0])
  readonly byPlacement = $derived.by(() => new Map((this.weights?.works ?? []).map(work => [work.placement, work])))
  /** Those whose middle lies on the part of the wall that the axis is of. */
  readonly standing = $derived.by(() => {
    const { axis, byPlacement } = this
    if (axis === undefined) return []
    return this.wall.toldRects.flatMap(({ id, x: left, y: bottom, width, height }) => {
      const own = byPlacement.get(id)
      const middle = left + width / 2
      if (own === undefined || middle < axis.from || middle > axis.to) return []
      const { weight, right, up, tone } = own
      return [{ id, left, bottom, width, height, weight, right, up, lightness: tone }]
    })
  })
  readonly balance = $derived.by(() => {
    const { axis } = this
    return axis === undefined ? null : balanceOf({ from: axis.from, to: axis.to, axis: axis.x, works: this.standing })
  })

  constructor(wall: Stands, face: () => string | null) {
    this.wall = wall
    this.query = watch('wall.weights', () => {
      const at = face()
      return at === null || show.id === null ? null : { exhibition: show.id, face: at }
    })
    $effect(() => {
      void face()
      this.chosen = 0
    })
    $effect(() => {
      const at = face()
      const exhibition = show.id
      if (at === null || exhibition === null || (this.weights?.pictures.toRead ?? 0) === 0) return
      if (this.asked.has(exhibition)) return
      this.asked.add(exhibition)
      void this.read(exhibition, at)
    })
  }

  get choice(): number {
    return this.axis === undefined ? 0 : this.axes.indexOf(this.axis)
  }

  set choice(at: number) {
    this.chosen = at
  }

  /** What pictures look like is nobody's edit, so nothing tells of it: the wall is asked again here. */
  private async read(exhibition: string, face: string): Promise<void> {
    try {
      await jobs.run('picture.weigh', 'Reading pictures', { exhibition })
      this.query.value = await ask('wall.weights', { exhibition, face })
    } catch (thrown) {
      const { code, message } = refusalOf(thrown)
      if (code !== 'cancelled') frame.said = { text: message, refused: true }
    }
  }
}
