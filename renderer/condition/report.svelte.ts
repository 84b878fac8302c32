/** One condition report as its screen shows it: what is chosen, what it is held against, and every edit of it. */
import type { ConditionFindingTold, Report } from '../../src/contract/areas/condition-shape.ts'
import type { Input, Output } from '../../src/contract/contract.ts'
import { type Shape, type Side, type Spot, sides } from '../../src/record/condition/shape.ts'
import { faceOfSide, needsDepth } from '../../src/record/condition/sides.ts'
import { materialsFor } from '../../src/record/condition/vocabulary.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { call } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'

/** A side of the work as it is drawn on. */
export interface Drawn {
  readonly width: number
  readonly height: number
  readonly picture: string | null
  /** Of a back without a picture, what was measured of it. */
  readonly behind: Report['behind']
  /** Of the frame, where the picture stands in it. */
  readonly opening: Report['opening']
}
export type Placed = Pick<Shape, 'form'> & { readonly points: Spot[] }
type FindingChanges = Input<'condition.updateFinding'>['changes']
type ReportChanges = Input<'condition.update'>['changes']
type PhotoChanges = Input<'condition.updatePhoto'>['changes']
type Clash = Output<'condition.update'>['clashes'][number]

export class ReportShown {
  readonly id: string
  /** The finding whose fields are open. */
  chosen = $state<string | null>(null)
  /** The side that is looked at. */
  side = $state<Side>('front')
  /** The finding whose place the next drawing is. */
  anew = $state<string | null>(null)
  /** Chosen to be held against; null takes the last complete report before this one. */
  private heldAgainst = $state<string | null>(null)

  readonly query = watch('condition.get', () => ({ id: this.id }))
  readonly report: Report | null = $derived.by(() => this.query.value ?? null)
  readonly open = $derived.by(() => this.report !== null && this.report.completeAt === null)
  private readonly ofWork = watch('condition.list', () => (this.report === null ? null : { work: this.report.work }))
  /** What it can be held against: every report of the work that is not later. */
  readonly earlier = $derived.by(() => {
    const { report } = this
    if (report === null) return []
    const all = this.ofWork.value?.reports ?? []
    return all.filter(
      each => each.id !== report.id && each.id !== report.corrects && each.examinedAt <= report.examinedAt,
    )
  })
  readonly against = $derived.by(() => {
    const chosen = this.earlier.find(each => each.id === this.heldAgainst)
    return chosen ?? this.earlier.find(each => each.completeAt !== null && each.correctedBy === null) ?? null
  })
  private readonly beforeQuery = watch('condition.get', () => (this.against === null ? null : { id: this.against.id }))
  readonly before: Report | null = $derived.by(() => this.beforeQuery.value ?? null)
  readonly comparison = watch('condition.compare', () =>
    this.against === null ? null : { before: this.against.id, after: this.id },
  )
  /** Findings of the earlier report that nothing in this one answers to. */
  readonly notSeen = $derived.by(() => {
    const gone = (this.comparison.value?.lines ?? []).filter(each => each.outcome === 'not seen')
    return (this.before?.findings ?? []).filter(each => gone.some(line => line.before === each.id))
  })

  private readonly vocabulary = watch('condition.words', () => ({}))
  private readonly work = watch('work.get', () =>
    this.report === null ? null : { id: this.report.work, unit: desk.unit },
  )
  /** Words by what the work is made of, then its frame, then the rest; on the frame those of frames first. */
  readonly words = $derived.by(() => {
    const made = materialsFor(this.work.value?.facts.kind ?? '')
    const order = this.side === 'frame' ? (['frame', ...made.filter(each => each !== 'frame')] as const) : made
    const words = this.vocabulary.value?.words ?? []
    return order.flatMap(material => words.filter(each => each.material === material))
  })

  /** Pictures of the work, which its back can be drawn on too. */
  readonly pictures = $derived.by(() => this.work.value?.pictures ?? [])

  constructor(id: string) {
    this.id = id
  }

  holdAgainst(id: string): void {
    this.heldAgainst = id
  }

  /** The side that is looked at, of this report or of the one that it is held against. */
  faceOf(report: Report): Drawn {
    const { picture, backPicture, behind, opening } = report
    const { side } = this
    const { width, height } = faceOfSide(report, side) ?? report
    return {
      ...{ width, height },
      picture: side === 'front' ? picture : side === 'back' ? backPicture : null,
      behind: side === 'back' && backPicture === null ? behind : null,
      opening: side === 'frame' ? opening : null,
    }
  }

  /** Those that can be looked at: the sides of what has a depth only where it is known. */
  readonly sides = $derived.by(() => sides.filter(each => this.report?.depth != null || !needsDepth(each)))

  /** The next side, round and round. */
  lookNext(): void {
    this.look(this.sides[(this.sides.indexOf(this.side) + 1) % this.sides.length] ?? 'front')
  }

  look(side: Side): void {
    this.side = side
    this.anew = null
  }

  /** Opens the fields of a finding, on the side where it lies; null closes them. */
  choose(id: string | null): void {
    this.chosen = id
    const side = this.report?.findings.find(each => each.id === id)?.side
    if (side !== undefined && side !== this.side) this.look(side)
  }

  /** What the hand has drawn: a new finding, or the place of one that is drawn anew. */
  async mark(shape: Placed): Promise<void> {
    const anew = this.report?.findings.find(each => each.id === this.anew)
    this.anew = null
    await frame.attempt(async () => {
      if (anew !== undefined) {
        const { form, points } = anew
        const clash = await this.setFinding(anew.id, { shape: { was: { form, points }, to: shape } })
        if (clash !== null) frame.say(`Meanwhile somebody drew ${anew.number} elsewhere; theirs was kept.`)
        return
      }
      const { id } = await call('condition.addFinding', { report: this.id, side: this.side, ...shape })
      this.chosen = id
    })
  }

  /** The same is there again: taken over from the earlier report, to be looked at and changed. */
  async seenAgain(earlier: ConditionFindingTold): Promise<void> {
    const { form, points, side, term, severity, stable, across, id: follows } = earlier
    await frame.attempt(async () => {
      const same = { form, points, side, term, severity, stable, across, age: 'old' as const }
      const made = await call('condition.addFinding', {
        report: this.id,
        ...same,
        // A draft's finding may still go, so nothing goes on from it.
        ...(this.before?.completeAt === null ? {} : { follows }),
      })
      this.chosen = made.id
      this.look(side)
    })
  }

  async takeOff(id: string): Promise<void> {
    const done = await frame.attempt(() => call('condition.removeFinding', { id }))
    if (done && this.chosen === id) this.chosen = null
  }

  readonly setFinding = async (id: string, changes: FindingChanges): Promise<Clash | null> =>
    (await call('condition.updateFinding', { id, changes })).clashes[0] ?? null

  readonly setPhoto = async (id: string, changes: PhotoChanges): Promise<Clash | null> =>
    (await call('condition.updatePhoto', { id, changes })).clashes[0] ?? null

  readonly set = async (changes: ReportChanges): Promise<Clash | null> =>
    (await call('condition.update', { id: this.id, changes })).clashes[0] ?? null
}
