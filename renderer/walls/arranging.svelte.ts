/**
 * What a person asks for while works are arranged: which works, by which way, its figures, where. The answer follows
 * at once from where the works stand, never from where they are tried, so that a trial does not lead to the next.
 */
import type { Elevation } from '../../src/contract/areas/walls.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { type Arranged, inGrid, inRow, type Misfit, sized } from '../../src/drawing/arrange.ts'
import { inSalon } from '../../src/drawing/arrange-salon.ts'
import { inStacks, roomAt } from '../../src/drawing/arrange-stacks.ts'
import { type Bay, baysOf } from '../../src/layout/bays.ts'
import type { RowCure, RowRule } from '../../src/layout/layout-shape.ts'
import type { SalonAnswer } from '../../src/layout/salon-shape.ts'
import { bounds } from '../../src/layout/snap.ts'
import { calledOn } from '../../src/model/face-findings.ts'
import { rectOf } from '../../src/model/hung-rect.ts'
import { desk } from '../host/desk.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import type { Wall } from './wall.svelte.ts'

export type Way = RowRule['rule'] | 'stack' | 'grid' | 'salon'

export const ways: readonly { readonly way: Way; readonly says: string }[] = [
  { way: 'equal', says: 'equal gaps, ends too' },
  { way: 'margins', says: 'set margins at the ends' },
  { way: 'ends', says: 'ends as a multiple of the gap' },
  { way: 'gap', says: 'one fixed gap' },
  { way: 'by-size', says: 'gaps that follow size' },
  { way: 'stack', says: 'one above the other' },
  { way: 'grid', says: 'rows and columns' },
  { way: 'salon', says: 'salon hang' },
]

type Answer = Omit<Arranged, 'leftOver'> & {
  readonly leftOver: Arranged['leftOver']
  readonly salon: SalonAnswer | null
  readonly problem: string
}

const nothing = { spots: new Map(), misfits: [], leftOver: [], salon: null } as const
/** Shorter stretches are no place for a work. */
const leastBay = 300

export class Arranging {
  way = $state<Way>('equal')
  whom = $state<'selected' | 'all'>('selected')
  gap = $state(0)
  left = $state(600)
  right = $state(600)
  times = $state(2)
  factor = $state(0.5)
  least = $state(0)
  most = $state(2000)
  columns = $state(3)
  each = $state(2)
  between = $state(0)
  by = $state<'middle' | 'top' | 'bottom'>('middle')
  axis = $state<number | null>(null)
  /** Where the wall's own line does not count. */
  line = $state<number | null>(null)
  lowest = $state<number | null>(null)
  highest = $state<number | null>(null)
  /** The whole wall, each bay by itself, or one bay by its place in the list. */
  stretch = $state('whole')
  private readonly wall: Wall
  private readonly of: () => Elevation

  constructor(wall: Wall, of: () => Elevation) {
    this.wall = wall
    this.of = of
    const { rules, plan } = of()
    this.gap = Math.max(150, rules.minimumGap)
    this.between = this.gap
    this.least = rules.minimumGap
    this.by = plan.rule === 'top' ? 'top' : plan.rule === 'bottom' ? 'bottom' : 'middle'
    this.each = this.chosen.length > 3 ? 2 : Math.max(2, this.chosen.length)
    // A few of many are arranged where they stand, between what hangs on either side.
    const at = this.someSelected ? this.bays.findIndex(bay => this.isIn(bay)) : -1
    if (at >= 0) this.stretch = String(at)
  }

  private readonly marked = $derived.by(() => this.of().works.filter(work => show.isSelected(work.work)))
  readonly selected = $derived.by(() => this.marked.length)
  /** Several are selected, and not all. */
  readonly someSelected = $derived.by(() => this.selected > 1 && this.selected < this.of().works.length)
  private readonly works = $derived.by(() =>
    this.someSelected && this.whom === 'selected' ? this.marked : this.of().works,
  )
  readonly chosen = $derived.by(() => sized(this.works, this.wall.made.drilled))
  readonly staying = $derived.by(() => this.chosen.filter(each => each.stays).length)
  private readonly box = $derived.by(() => bounds(this.chosen.flatMap(({ work }) => rectOf(work) ?? [])))
  /** What hangs there and is not arranged. */
  private readonly others = $derived.by(() => {
    const own = new Set(this.chosen.map(each => each.work.placement))
    return this.of().works.flatMap(work => (own.has(work.placement) ? [] : (rectOf(work) ?? [])))
  })
  readonly bays = $derived.by((): readonly Bay[] => {
    const { box, others } = this
    if (box === null) return []
    const { wall } = this.of()
    const inTheWay = others.map(({ id, name, x, y, width, height }) => ({
      id,
      kind: 'work',
      label: name,
      x,
      y,
      width,
      height,
      margin: 0,
      reason: '',
    }))
    const band =
      this.way === 'salon' ? { bottom: this.bottom, top: this.top } : { bottom: box.y, top: box.y + box.height }
    return baysOf({ ...wall, keepClears: [...wall.keepClears, ...inTheWay] }, band, leastBay)
  })
  /** Something cuts the wall at the height of these works. */
  readonly isCut = $derived.by(() => {
    const [first] = this.bays
    return this.bays.length > 1 || (first !== undefined && first.length < this.of().wall.length - 1e-6)
  })
  readonly dense = $derived.by(() => this.way === 'stack' || this.way === 'salon')
  readonly hasAxis = $derived.by(
    () =>
      (this.way === 'gap' || this.way === 'by-size' || this.way === 'grid' || this.dense) && this.stretch !== 'each',
  )
  readonly bottom = $derived.by(() => this.lowest ?? Math.round(this.room.from))
  readonly top = $derived.by(() => this.highest ?? Math.round(this.room.to))
  private readonly room = $derived.by(() => {
    const elevation = this.of()
    const ends = [0, elevation.wall.length / 2, elevation.wall.length].map(x => roomAt(elevation, x))
    return { from: Math.max(...ends.map(end => end.from)), to: Math.min(...ends.map(end => end.to)) }
  })

  private isIn({ from, to }: Bay): boolean {
    return this.box !== null && this.box.x >= from - 1e-6 && this.box.x + this.box.width <= to + 1e-6
  }

  private readonly whole = $derived.by((): Bay => {
    const { length } = this.of().wall
    return { from: 0, to: length, length, leftOf: 'end', rightOf: 'end' }
  })
  private readonly spans = $derived.by((): readonly Bay[] => {
    if (this.stretch === 'each' && !this.dense) return this.bays
    return [this.bays[Number(this.stretch)] ?? this.whole]
  })

  readonly answer = $derived.by((): Answer => {
    if (this.box === null || this.chosen.length === 0) return { ...nothing, problem: 'No work here has a size yet.' }
    try {
      const { salon = null, ...arranged } = this.arrange()
      return { ...arranged, salon, problem: '' }
    } catch (thrown) {
      if (thrown instanceof Refusal) return { ...nothing, problem: thrown.message }
      throw thrown
    }
  })

  private arrange(): Arranged & { readonly salon?: SalonAnswer } {
    const { chosen, gap, axis, box, spans } = this
    const elevation = this.of()
    const { plan, rules, wall } = elevation
    const line = this.line ?? plan.centreLine
    const [span = this.whole] = spans
    if (this.way === 'stack') {
      const { each, between, by } = this
      return inStacks(
        chosen,
        { each, gap, between, line, by, axis, from: span.from, to: span.to },
        elevation,
        plan.ramp,
      )
    }
    if (this.way === 'salon') {
      const from = Math.max(span.from, rules.minimumMargin)
      const to = Math.min(span.to, wall.length - rules.minimumMargin)
      const { bottom, top } = this
      return inSalon(chosen, { gap, from, to, bottom, top, axis, line }, elevation, this.others)
    }
    if (this.way === 'grid') {
      const x = axis ?? (box === null ? wall.length / 2 : box.x + box.width / 2)
      return inGrid(chosen, Math.max(1, this.columns), gap, gap, { x, centreY: plan.centreLine }, plan.ramp)
    }
    return inRow(chosen, this.rule(this.way), spans, rules.minimumGap, plan.ramp)
  }

  private rule(way: RowRule['rule']): RowRule {
    const { left, right, times, gap, factor, least, most, axis } = this
    if (way === 'margins') return { rule: way, left, right }
    if (way === 'ends') return { rule: way, times }
    if (way === 'gap') return { rule: way, gap, axis }
    if (way === 'by-size') return { rule: way, factor, least, most, axis }
    return { rule: 'equal' }
  }

  private called(id: string): string {
    const work = this.of().works.find(one => one.placement === id)
    return work === undefined ? '?' : calledOn(work)
  }

  pairSays({ gap, a, b }: { readonly gap: number; readonly a: string; readonly b: string }): string {
    return `${this.called(a)} and ${this.called(b)}, ${desk.lengthWithUnit(gap)}`
  }

  cureSays(cure: RowCure, { way }: Pick<Misfit, 'way'>): string {
    const figure = 'mm' in cure ? desk.lengthWithUnit(cure.mm) : ''
    switch (cure.kind) {
      case 'gap':
        return `a gap of ${figure} would fit`
      case 'least-gap':
        return `a least gap of ${figure} would fit`
      case 'times':
        return `ends of ${cure.times.toFixed(2)} times the gap would fit`
      case 'factor':
        return `${cure.times.toFixed(2)} times the mean width would fit`
      case 'axis':
        return way === 'higher' ? `a line at ${figure} would fit` : `an axis at ${figure} would fit`
      case 'margins':
        return `margins of ${figure} would fit`
      case 'leave-out':
        return `leave out ${this.called(cure.id)}`
      case 'let-go':
        return `let go of ${this.called(cure.id)}`
      case 'longer':
        return way === 'higher'
          ? `the wall would have to be ${figure} higher`
          : `the stretch would have to be ${figure} longer`
    }
  }

  /** What takes a cure that is one of the figures here; null where it is done elsewhere. */
  curing(cure: RowCure): (() => void) | null {
    switch (cure.kind) {
      case 'gap': {
        const { mm } = cure
        return () => {
          if (this.way === 'stack' && this.answer.misfits[0]?.way === 'longer') this.between = mm
          else this.gap = mm
        }
      }
      case 'times':
        return () => (this.times = Math.floor(cure.times * 100) / 100)
      case 'factor':
        return () => (this.factor = Math.floor(cure.times * 100) / 100)
      case 'margins':
        return () => (this.left = this.right = cure.mm)
      case 'axis':
        return () => {
          if (this.answer.misfits[0]?.way === 'higher') this.line = cure.mm
          else this.axis = cure.mm
        }
      case 'least-gap':
        return this.way === 'by-size' ? () => (this.least = cure.mm) : null
      default:
        return null
    }
  }
}
