/**
 * One wall in one show as it stands in front of a person: what the catalogue says, what is being tried on top of it
 * (a drag, nudges, an arrangement), and the way a trial becomes one edit. Geometry is replaced, never changed in place.
 */
import { getContext, setContext } from 'svelte'
import type { Elevation, PlacedWork } from '../../src/contract/areas/walls.ts'
import type { Input } from '../../src/contract/contract.ts'
import type { Finding } from '../../src/contract/shared.ts'
import { columnsOf } from '../../src/drawing/columns.ts'
import { alongTo, placeAt, type Spot, staysPut, withSpots } from '../../src/drawing/places.ts'
import type { Steps } from '../../src/hang/printing.ts'
import { climb } from '../../src/hang/wall.ts'
import { wallChain } from '../../src/layout/chains.ts'
import type { HungRect } from '../../src/layout/findings.ts'
import { findingsOfMoved, findingsThatStand } from '../../src/layout/moving.ts'
import { carriedBy } from '../../src/layout/snap.ts'
import { withoutSaid } from '../../src/loan/terms/findings.ts'
import { calledOn, faceFindings, unsettled } from '../../src/model/face-findings.ts'
import { deepRectOf } from '../../src/model/hung-rect.ts'
import { type MarksOrWhy, marksOfPlaced } from '../../src/model/marks-of-face.ts'
import { BalanceShown } from '../balance/balance.svelte.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { call } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import { Made } from './made.svelte.ts'

type Places = Input<'placement.put'>['places']
type PutClash = Awaited<ReturnType<typeof put>>['clashes'][number]

function put(exhibition: string, places: Places, label?: string) {
  return call('placement.put', { exhibition, places, ...(label === undefined ? {} : { label }) })
}

/** Moved together by a hand or by arrow keys, from where they stood; along a ramp each climbs with its floor besides. */
interface Offset {
  readonly ids: ReadonlySet<string>
  readonly dx: number
  readonly dy: number
}

const none: ReadonlyMap<string, Spot> = new Map()
/** After so long without another arrow key a burst of nudges is over, ms. */
const burst = 650
/** Words and figures beside the drawing follow a hand as often as an eye reads them, ms; the drawing at every frame. */
const readEvery = 80

export class Wall {
  readonly face: () => string | null
  readonly query
  private readonly known
  readonly made: Made
  readonly balance: BalanceShown
  readonly elevation = $derived.by((): Elevation | undefined => this.query.value)
  /** Moves of the moment; the works themselves stay where they stand until it ends. */
  private moves = $state.raw<Offset | null>(null)
  /** The works under the hand; the same set as long as it holds the same works, so that a move touches nothing else. */
  private inHand = $state.raw<ReadonlySet<string> | null>(null)
  /** The moves as far as they are told beside the drawing. */
  private told = $state.raw<Offset | null>(null)
  private tells: ReturnType<typeof setTimeout> | undefined
  /** As far as the list under the drawing has them: a frame after the tag, so that no frame has both to lay out. */
  private listed = $state.raw<Offset | null>(null)
  private lists = 0
  /** Spots tried on top of one answer of the catalogue; the next answer ends them. */
  private tried = $state.raw<{ readonly on: Elevation; readonly spots: ReadonlyMap<string, Spot> } | null>(null)
  clashes = $state.raw<{ readonly asked: Places; readonly clashes: readonly PutClash[] } | null>(null)
  /** Opens the late change; the screen gives it, since the tag is drawn outside of it. */
  askLate = $state.raw<(() => void) | null>(null)
  /** An arrangement is looked at: where its works stand now is drawn too. */
  weighing = $state(false)
  /** The kept layout that is drawn beside today's. */
  compared = $state<string | null>(null)
  private ends: ReturnType<typeof setTimeout> | undefined

  readonly spots = $derived.by(() =>
    this.tried !== null && this.tried.on === this.elevation ? this.tried.spots : none,
  )
  /** Works as drawn, without the offset of the moment. */
  readonly works = $derived.by((): readonly PlacedWork[] => {
    const { elevation } = this
    return elevation === undefined ? [] : withSpots(elevation.works, elevation.plan, this.spots)
  })
  readonly restingRects = $derived.by(() => this.works.flatMap(work => deepRectOf(work) ?? []))
  /** Rectangles of the works as they stand this very moment. */
  readonly rects = $derived.by(() => this.carriedRects(this.offset))
  /** The same as told beside the drawing. */
  readonly toldRects = $derived.by(() => this.carriedRects(this.told))
  private readonly chosen = $derived.by(() => this.works.filter(work => show.isSelected(work.work)))
  /** The selected works as they stand this very moment. */
  readonly selected = $derived.by(() => this.carriedWorks(this.offset))
  /** The same as told beside the drawing. */
  readonly inTag = $derived.by(() => this.carriedWorks(this.told))
  private readonly placements = $derived.by(
    () =>
      new Map(
        this.works.flatMap(work => [
          [work.work, work.placement] as const,
          ...(work.set?.parts ?? []).map(part => [part.work, work.placement] as const),
        ]),
      ),
  )
  readonly steps = $derived.by((): Steps => ({ mm: this.elevation?.rules.sheetStepMm ?? 1, fraction: desk.fraction }))
  readonly marks = $derived.by((): ReadonlyMap<string, MarksOrWhy> => {
    const { elevation } = this
    if (elevation === undefined) return new Map()
    return new Map(this.works.map(work => [work.placement, this.marksOf(work)]))
  })
  readonly columns = $derived.by(() => columnsOf(this.rects))
  readonly chain = $derived.by(() => wallChain(this.elevation?.wall.length ?? 0, this.columns, this.steps))
  /** Findings of the works where they stand, whatever a hand is doing. */
  readonly resting = $derived.by((): readonly Finding[] => {
    const { elevation } = this
    if (elevation === undefined) return []
    const hang = faceFindings({ ...elevation, works: [...this.works] }, { unit: desk.unit, steps: this.steps })
    // What the works' own records leave open does not change with their places: the host's answer stands.
    const records = (this.known.value?.findings ?? []).filter(
      ({ subject }) => subject.kind === 'work' || subject.kind === 'loan',
    )
    return [...unsettled(withoutSaid(hang, this.works, records), elevation.settled), ...records]
  })
  /** Those of them that no move of the hand changes. */
  readonly standing = $derived.by(() =>
    this.moving === null ? this.resting : findingsThatStand(this.resting, this.moving),
  )
  /** What is said of the works under the hand where they are now, on the drawing. */
  readonly ofMoved = $derived.by(() => this.saidOf(this.rects))
  /** The same beside the drawing. */
  readonly toldOfMoved = $derived.by(() => this.saidOf(this.toldRects))
  /** The same in the list under the drawing. */
  readonly listedOfMoved = $derived.by(() => this.saidOf(this.carriedRects(this.listed)))
  /** Findings of this moment as told beside the drawing. */
  readonly findings = $derived.by(() => [...this.toldOfMoved, ...this.standing])

  constructor(face: () => string | null) {
    this.face = face
    this.made = new Made(face)
    this.balance = new BalanceShown(this, face)
    this.query = watch('wall.elevation', () => {
      const at = face()
      return at === null || show.id === null ? null : { exhibition: show.id, face: at }
    })
    this.known = watch('finding.list', () => {
      const at = face()
      return at === null || show.id === null ? null : { exhibition: show.id, face: at, unit: desk.unit }
    })
  }

  get moving(): ReadonlySet<string> | null {
    return this.inHand
  }

  get offset(): Offset | null {
    return this.moves
  }

  private set offset(offset: Offset | null) {
    this.moves = offset
    const ids = offset?.ids ?? null
    if (this.inHand !== ids) {
      this.inHand = ids
      this.tell()
      this.listed = offset
    } else this.tells ??= setTimeout(() => this.tell(), readEvery)
  }

  private tell(): void {
    clearTimeout(this.tells)
    this.tells = undefined
    this.told = this.moves
    cancelAnimationFrame(this.lists)
    this.lists = requestAnimationFrame(() => {
      this.listed = this.told
    })
  }

  private carriedRects(offset: Offset | null): readonly HungRect[] {
    const { restingRects } = this
    if (offset === null) return restingRects
    const { ids, dx, dy } = offset
    return restingRects.map(rect => (ids.has(rect.id) ? { ...rect, ...carriedBy(rect, dx, dy, this.ramp) } : rect))
  }

  private carriedWorks(offset: Offset | null): readonly PlacedWork[] {
    const { elevation, chosen } = this
    if (elevation === undefined || offset === null) return chosen
    return withSpots(chosen, elevation.plan, this.offsetSpots(offset))
  }

  private saidOf(rects: readonly HungRect[]): readonly Finding[] {
    const { elevation, moving } = this
    if (elevation === undefined || moving === null) return []
    return findingsOfMoved(elevation.wall, rects, moving, elevation.rules, desk.unit)
  }

  /** The placed work that a finding is about, or null for one about the wall. */
  placementOf(found: Finding): string | null {
    const { kind, id } = found.subject
    if (kind === 'placement') return id
    return kind === 'work' ? (this.placements.get(id) ?? null) : null
  }

  /** Works that one piece of the chain stands for. */
  worksIn(piece: string): readonly string[] {
    return this.columns.find(column => column.id === piece)?.ids ?? [piece]
  }

  marksOf(work: PlacedWork): MarksOrWhy {
    const { elevation } = this
    if (elevation === undefined) return { problem: '' }
    return marksOfPlaced(elevation, work, { unit: desk.unit, steps: this.steps })
  }

  private offsetSpots({ ids, dx, dy }: Offset): ReadonlyMap<string, Spot> {
    return new Map(
      this.works
        .filter(work => ids.has(work.placement))
        .map(work => {
          const { x, centreY } = this.alongTo(work, work.x + dx)
          return [work.placement, { x, centreY: centreY + dy }]
        }),
    )
  }

  private get ramp(): Elevation['plan']['ramp'] {
    return this.elevation?.plan.ramp ?? []
  }

  /** Where a work comes to that goes along the wall only. */
  alongTo(work: PlacedWork, x: number): Spot {
    return alongTo(work, this.ramp, x)
  }

  /** By how much a work under the hand has climbed along a ramp, beside the hand's own way; 0 on a level line. */
  climbed({ x }: PlacedWork): number {
    return this.offset === null ? 0 : climb(this.ramp, x, x + this.offset.dx)
  }

  /** Held, hung or drilled: no hand moves it. */
  stays(work: PlacedWork): boolean {
    return staysPut(work) || this.made.drilled.has(work.placement)
  }

  /** In words, why a work does not move by hand; empty where it does. */
  whyStays(work: PlacedWork): string {
    const late = 'A late change says what moving it costs.'
    if (work.state !== 'planned')
      return `${calledOn(work)} is ${work.state} here. ${late} Or say that it is planned again.`
    if (work.held) return `${calledOn(work)} is held here. Let it go before you move it.`
    return this.made.drilled.has(work.placement)
      ? `${calledOn(work)} is drilled here: its holes stay where they are. ${late}`
      : ''
  }

  /** The works of a selection that a hand may move; says why where none may. */
  movable(works: readonly PlacedWork[]): readonly PlacedWork[] {
    const free = works.filter(work => !this.stays(work))
    const [first] = works
    if (this.elevation?.closed) {
      frame.said = { text: 'This show is closed; nothing in it moves any more.', refused: true }
      return []
    }
    if (free.length === 0 && first !== undefined) frame.said = { text: this.whyStays(first), refused: true }
    return free
  }

  move(ids: ReadonlySet<string>, dx: number, dy: number): void {
    this.offset = { ids, dx, dy }
  }

  /** One more step of the arrow keys. Steps that follow each other are one edit. */
  nudge(dx: number, dy: number): void {
    clearTimeout(this.ends)
    const works = this.movable(this.selected)
    if (works.length === 0) return
    const ids = new Set(works.map(work => work.placement))
    const before = this.offset
    const goesOn = before !== null && before.ids.size === ids.size && [...ids].every(id => before.ids.has(id))
    if (before !== null && !goesOn) void this.land()
    this.offset = {
      ids: goesOn ? before.ids : ids,
      dx: (goesOn ? before.dx : 0) + dx,
      dy: (goesOn ? before.dy : 0) + dy,
    }
    this.ends = setTimeout(() => void this.land('Move by keys'), burst)
  }

  /** Ends a move of the moment where it is. */
  async land(label?: string): Promise<void> {
    clearTimeout(this.ends)
    const { offset } = this
    if (offset === null) return
    const spots = this.offsetSpots(offset)
    this.offset = null
    if (offset.dx === 0 && offset.dy === 0) return
    await this.putSpots(spots, label)
  }

  letFall(): void {
    clearTimeout(this.ends)
    this.offset = null
    this.tried = null
  }

  /** Draws spots without asking for them. */
  try(spots: ReadonlyMap<string, Spot>): void {
    if (this.elevation !== undefined) this.tried = { on: this.elevation, spots }
  }

  /** Asks for new spots as one edit and shows them at once. */
  async putSpots(spots: ReadonlyMap<string, Spot>, label?: string): Promise<boolean> {
    const { elevation } = this
    if (elevation === undefined) return false
    const moving = elevation.works.filter(work => spots.has(work.placement))
    const places = moving.flatMap(work => {
      const spot = spots.get(work.placement)
      if (spot === undefined || this.stays(work)) return []
      return [this.request(work, placeAt(work, elevation.plan, spot))]
    })
    if (places.length === 0) return false
    this.try(spots)
    return this.put(places, label)
  }

  request(work: PlacedWork, place: Pick<PlacedWork, 'x' | 'rule' | 'y'>): Places[number] {
    const face = this.face() ?? ''
    return { entry: work.entry, face, ...place, was: { face, x: work.x, rule: work.rule, y: work.y } }
  }

  async put(places: Places, label?: string): Promise<boolean> {
    const { elevation } = this
    if (elevation === undefined) return false
    const trial = this.tried
    const went = await frame.attempt(async () => {
      const { clashes } = await put(elevation.exhibition, places, label)
      this.clashes = clashes.length === 0 ? null : { asked: places, clashes }
      if (clashes.length > 0) this.tried = null
    })
    if (!went && this.tried === trial) this.tried = null
    return went
  }
}

const key = Symbol('wall')

export function shareWall(wall: Wall): Wall {
  return setContext(key, wall)
}

export function useWall(): Wall {
  return getContext<Wall>(key)
}
