/**
 * The sequence as it stands in front of a person: the walls in the visitor's order, proposals that were asked for, which
 * of them is looked at, and which walls of it shall be taken. A proposal is held against the walls as they were when it
 * was asked for: what has moved since is refused, not moved again.
 */
import type { Input, Output } from '../../src/contract/contract.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { call, refusalOf } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'

export type SequenceWall = Output<'sequence.walls'>['walls'][number]
export type Proposed = Output<'sequence.propose'>
export type Proposal = Proposed['proposals'][number]
export type Weights = NonNullable<Input<'sequence.propose'>['weights']>
export type FriezeWork = Output<'exhibition.frieze'>['works'][number]

/** How far a search was, and the best it had. */
export interface Seen {
  readonly share: number
  readonly best: number
}

export const wayWords = { 'in order': 'In order', freer: 'Freer', another: 'Another' } as const

export class Sequence {
  readonly walls = watch('sequence.walls', () => (show.id === null ? null : { exhibition: show.id }))
  readonly capacity = watch('sequence.capacity', () => (show.id === null ? null : { exhibition: show.id }))
  readonly works = $derived.by(
    (): ReadonlyMap<string, FriezeWork> => new Map((show.frieze.value?.works ?? []).map(work => [work.entry, work])),
  )
  weights = $state<Weights>({ order: 1, balance: 1, evenness: 1, light: 1, sight: 1, rhythm: 1 })
  seed = $state(1)
  /** With the walls as they were then. */
  asked = $state.raw<{
    readonly found: Proposed
    readonly walls: readonly SequenceWall[]
    readonly show: string
  } | null>(null)
  /** Null: today alone. */
  private looked = $state(0)
  /** Walls of the proposal that shall be taken; all of them while none is chosen. */
  chosen = $state.raw<ReadonlySet<string>>(new Set())
  seen = $state.raw<readonly Seen[]>([])
  asking = $state(false)

  readonly found = $derived.by(() => (this.asked !== null && this.asked.show === show.id ? this.asked.found : null))
  readonly proposal = $derived.by(() => this.found?.proposals[this.looked] ?? null)
  readonly byFace = $derived.by(() => new Map((this.proposal?.faces ?? []).map(({ face, works }) => [face, works])))
  /** Of the proposal looked at: where each work would hang. */
  private readonly wouldHang = $derived.by(
    () =>
      new Map(
        (this.proposal?.faces ?? []).flatMap(({ face, works }) => works.map(({ entry }) => [entry, face] as const)),
      ),
  )
  private readonly hangs = $derived.by(
    () =>
      new Map(
        (this.walls.value?.walls ?? []).flatMap(({ face, works }) => works.map(({ entry }) => [entry, face] as const)),
      ),
  )

  get looksAt(): number {
    return this.looked
  }

  look(at: number): void {
    this.looked = at
    this.chosen = new Set()
  }

  /** Whether the proposal puts a work on another wall than it hangs on today. */
  moves(entry: string): boolean {
    return this.wouldHang.has(entry) && this.wouldHang.get(entry) !== this.hangs.get(entry)
  }

  async ask(): Promise<void> {
    const exhibition = show.id
    const walls = this.walls.value?.walls
    if (exhibition === null || walls === undefined || this.asking) return
    this.asking = true
    this.seen = []
    const stop = $effect.root(() => {
      $effect(() => {
        const told = jobs.list.find(one => one.label === asksLabel)
        const best = Number(/^[\d.]+/.exec(told?.words ?? '')?.[0])
        if (told === undefined || told.total === null || !(best > 0)) return
        const share = told.done / told.total
        const last = this.seen.at(-1)
        if (last === undefined || share > last.share) this.seen = [...this.seen, { share, best }]
      })
    })
    try {
      const found = await jobs.run('sequence.propose', asksLabel, {
        exhibition,
        seed: this.seed,
        weights: this.weights,
      })
      this.asked = { found, walls, show: exhibition }
      this.look(0)
    } catch (thrown) {
      const refused = refusalOf(thrown)
      if (refused.code !== 'cancelled') frame.refuse(refused)
    } finally {
      stop()
      this.asking = false
    }
  }

  letGo(): void {
    this.asked = null
    this.chosen = new Set()
  }

  choose(face: string): void {
    const next = new Set(this.chosen)
    if (!next.delete(face)) next.add(face)
    this.chosen = next
  }

  /** The walls chosen, or all, as proposed; one edit. */
  async take(): Promise<void> {
    const { asked, proposal } = this
    if (asked === null || proposal === null) return
    const stood = new Map(asked.walls.flatMap(({ face, works }) => works.map(({ entry }) => [entry, face] as const)))
    const faces = asked.walls
      .filter(({ face }) => this.chosen.size === 0 || this.chosen.has(face))
      .map(({ face }) => ({
        face,
        works: (this.byFace.get(face) ?? []).map(({ entry, x }) => ({ entry, x, was: stood.get(entry) ?? null })),
      }))
    let said = ''
    const went = await frame.attempt(async () => {
      const { placed, off } = await call('sequence.take', { exhibition: asked.show, faces })
      said = `${placed === 1 ? 'One work hangs' : `${placed} works hang`} as proposed${off === 0 ? '' : `, ${off} came off their walls`}. One undo takes all of it back.`
    })
    if (!went) return
    this.letGo()
    frame.say(said)
  }

  /** Puts a work on a wall, or moves it there; one edit. */
  async put(entry: string, face: string, x: number): Promise<void> {
    const exhibition = show.id
    if (exhibition === null) return
    const there = this.walls.value?.walls.flatMap(wall => wall.works.map(work => ({ ...work, face: wall.face })))
    const stands = there?.find(work => work.entry === entry)
    const was = stands === undefined ? null : { face: stands.face, x: stands.x, rule: stands.rule, y: stands.own }
    await frame.attempt(() =>
      call('placement.put', { exhibition, places: [{ entry, face, x: Math.round(x), rule: 'face', y: null, was }] }),
    )
  }
}

const asksLabel = 'Looking for ways to hang the show'
