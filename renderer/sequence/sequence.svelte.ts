/**
 * The sequence as it stands in front of a person: the walls in the visitor's order, proposals that were asked for, which
 * two are looked at side by side, and which walls and sections of which shall be taken. A proposal is held against the walls as they were when it
 * was asked for: what has moved since is refused, not moved again.
 */
import type { Input, Output } from '../../src/contract/contract.ts'
import { gather, type Picks } from '../../src/sequence/gather.ts'
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

/** How far a search was, the best it had, and what it knew then that nothing goes beyond; of 100. */
export interface Seen {
  readonly share: number
  readonly best: number
  readonly bound: number
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
  private looked = $state(0)
  /** What stands beside it: another proposal, or today (null). */
  private beside = $state<number | null>(null)
  /** Walls and sections that shall be taken, each from its proposal; all of the one looked at while none is picked. */
  picks = $state.raw<Picks>(noPicks)
  seen = $state.raw<readonly Seen[]>([])
  asking = $state(false)

  readonly found = $derived.by(() => (this.asked !== null && this.asked.show === show.id ? this.asked.found : null))
  readonly proposal = $derived.by(() => this.found?.proposals[this.looked] ?? null)
  readonly against = $derived.by(() => (this.beside === null ? null : (this.found?.proposals[this.beside] ?? null)))
  /** What would be taken as it is picked now, and what is to settle before. */
  readonly gathered = $derived.by(() => {
    const { asked, proposal } = this
    if (asked === null || proposal === null) return null
    const walls = this.picksNothing
      ? new Map(asked.walls.map(({ face }) => [face, this.looked] as const))
      : this.picks.walls
    return gather(asked.walls, asked.found.proposals, this.sizes, { ...this.picks, walls })
  })
  private readonly sizes = $derived.by(
    () =>
      new Map(
        [...this.works.values()].map(
          ({ entry, section, width, height }) => [entry, { section, width: width ?? 0, height: height ?? 0 }] as const,
        ),
      ),
  )
  private readonly hangs = $derived.by(() => placesOf(this.walls.value?.walls ?? []))

  get looksAt(): number {
    return this.looked
  }

  get besideAt(): number | null {
    return this.beside
  }

  get picksNothing(): boolean {
    return this.picks.walls.size === 0 && this.picks.sections.size === 0
  }

  look(at: number): void {
    this.looked = at
    if (this.beside === at) this.beside = null
  }

  standBeside(at: number | null): void {
    this.beside = at === this.looked ? null : at
  }

  /** Whether the proposal puts a work on another wall than it hangs on today. */
  moves(entry: string, face: string): boolean {
    return this.hangs.get(entry) !== face
  }

  async ask(): Promise<void> {
    const exhibition = show.id
    const walls = this.walls.value?.walls
    if (exhibition === null || walls === undefined || this.asking) return
    this.asking = true
    // What was refused before may be so no longer.
    frame.said = null
    this.seen = []
    const stop = $effect.root(() => {
      $effect(() => {
        const told = jobs.list.find(one => one.label === asksLabel)
        const [best = 0, bound = 0] = (told?.words.match(/[\d.]+/g) ?? []).map(Number)
        if (told === undefined || told.total === null || !(best > 0)) return
        const share = told.done / told.total
        const last = this.seen.at(-1)
        if (last === undefined || share > last.share) this.seen = [...this.seen, { share, best, bound }]
      })
    })
    try {
      const found = await jobs.run('sequence.propose', asksLabel, {
        exhibition,
        seed: this.seed,
        weights: this.weights,
      })
      this.asked = { found, walls, show: exhibition }
      this.picks = noPicks
      this.beside = null
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
    this.seen = []
    this.picks = noPicks
  }

  /** Takes a wall from the proposal looked at, or no longer from it. */
  pickWall(face: string): void {
    this.picks = { ...this.picks, walls: turned(this.picks.walls, face, this.looked) }
  }

  pickSection(section: string | null): void {
    this.picks = { ...this.picks, sections: turned(this.picks.sections, section, this.looked) }
  }

  /** Of a work that is asked for twice, the wall it shall hang on. */
  settle(entry: string, face: string): void {
    this.picks = { ...this.picks, on: new Map([...this.picks.on, [entry, face]]) }
  }

  letOff(entries: readonly string[]): void {
    this.picks = { ...this.picks, off: new Set([...this.picks.off, ...entries]) }
  }

  /** The walls and sections picked, or all, as proposed; one edit. */
  async take(): Promise<void> {
    const { asked, gathered } = this
    if (asked === null || gathered === null) return
    const stood = placesOf(asked.walls)
    const faces = gathered.faces.map(({ face, others, works }) => ({
      face,
      others,
      works: works.map(({ entry, x, y }) => ({ entry, x, y: y ?? null, was: stood.get(entry) ?? null })),
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

  /** Puts works on a wall, or moves them there; one edit. */
  async putAll(
    places: readonly { readonly entry: string; readonly face: string; readonly x: number }[],
  ): Promise<void> {
    const exhibition = show.id
    if (exhibition === null || places.length === 0) return
    const there = new Map(
      (this.walls.value?.walls ?? []).flatMap(({ face, works }) =>
        works.map(({ entry, x, rule, own }) => [entry, { face, x, rule, y: own }] as const),
      ),
    )
    const label = places.length > 1 ? { label: `Move ${places.length} works` } : {}
    await frame.attempt(() =>
      call('placement.put', {
        exhibition,
        ...label,
        places: places.map(({ entry, face, x }) => {
          const was = there.get(entry) ?? null
          // Along its own wall a work keeps its height; another wall has its own.
          const high = was?.face === face ? { rule: was.rule, y: was.y } : { rule: 'face' as const, y: null }
          return { entry, face, x: Math.round(x), ...high, was }
        }),
      }),
    )
  }
}

const asksLabel = 'Looking for ways to hang the show'
const noPicks: Picks = { walls: new Map(), sections: new Map(), on: new Map(), off: new Set() }

export function placesOf(
  walls: readonly { readonly face: string; readonly works: readonly { readonly entry: string }[] }[],
): ReadonlyMap<string, string> {
  return new Map(walls.flatMap(({ face, works }) => works.map(({ entry }) => [entry, face] as const)))
}

/** With a key from a proposal; without it, where it was from that one already. */
function turned<K>(map: ReadonlyMap<K, number>, key: K, to: number): ReadonlyMap<K, number> {
  const next = new Map(map)
  if (next.get(key) === to) next.delete(key)
  else next.set(key, to)
  return next
}
