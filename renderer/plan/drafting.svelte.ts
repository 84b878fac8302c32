/**
 * A room under the hand: where its next corner goes, what was typed for it, and what is wrong. What is typed wins over
 * the pointer; without a pointer the side goes on at a right angle, so that a room can be drawn by figures alone.
 */
import type { Point } from '../../src/drawing/room-plan.ts'
import { parseLength } from '../../src/measure/length.ts'
import {
  addCorner,
  close,
  cornerTo,
  type Draft,
  type Drawn,
  emptyDraft,
  headingBy,
  lastHeading,
  pointBy,
  takeBack,
} from '../../src/plan/draft.ts'
import { type DraftSnap, type SnapWall, snapDraft } from '../../src/plan/snap-draft.ts'
import { desk } from '../host/desk.svelte.ts'
import { rules } from '../host/rules.svelte.ts'

/** How near holds, pixels. */
const reach = 9

/** Steps of the grid that read as round figures at this scale, mm. */
export function roundStep(scale: number): number {
  const foot = 304.8
  const steps = desk.imperial
    ? [foot / 12, foot / 4, foot / 2, foot, 2 * foot, 5 * foot]
    : [10, 50, 100, 250, 500, 1000]
  return steps.find(step => step * scale >= 7) ?? steps.at(-1) ?? 1000
}

export interface Typed {
  readonly value: number | null
  readonly problem: string
}

export class Drafting {
  on = $state(false)
  draft = $state.raw<Draft>(emptyDraft)
  length = $state('')
  corner = $state('')
  problem = $state('')
  snapping = $state(true)
  pointer = $state.raw<Point | null>(null)
  /** The outline is closed and waits for its name. */
  drawn = $state.raw<Drawn | null>(null)
  private readonly scale: () => number
  private readonly walls: () => readonly SnapWall[]
  private readonly centre: () => Point

  readonly last = $derived(this.draft.corners.at(-1)?.at ?? null)
  readonly first = $derived(this.draft.corners[0]?.at ?? null)
  readonly typedLength = $derived.by((): Typed => {
    const text = this.length.trim()
    if (text === '') return { value: null, problem: '' }
    const read = parseLength(text, desk.unit)
    if (!read.ok) return { value: null, problem: `“${read.piece}”: ${read.message}` }
    return read.mm > 0 ? { value: read.mm, problem: '' } : { value: null, problem: 'A wall is longer than nothing.' }
  })
  readonly typedCorner = $derived.by((): Typed => {
    const text = this.corner
      .trim()
      .replace(/\s*(°|deg|degrees)$/i, '')
      .replace(',', '.')
      .replace('−', '-')
    if (text === '') return { value: null, problem: '' }
    const value = Number(text)
    if (!Number.isFinite(value) || Math.abs(value) > 360)
      return { value: null, problem: `“${this.corner}” is no angle in degrees.` }
    return { value, problem: '' }
  })
  /** The way of the next side where it was typed. */
  private readonly heading = $derived(
    this.typedCorner.value === null ? null : headingBy(this.draft, this.typedCorner.value),
  )
  /** Where the hand would set the corner. */
  private readonly held = $derived.by((): DraftSnap | null => {
    if (this.pointer === null) return null
    return snapDraft({
      draft: this.draft,
      pointer: this.pointer,
      walls: this.walls(),
      reach: this.snapping ? reach / this.scale() : 0,
      grid: roundStep(this.scale()),
      heading: this.heading,
    })
  })
  /** Where the next corner goes; null before anything says so. */
  readonly next = $derived.by((): Point | null => {
    const { last } = this
    if (last === null) return this.held?.at ?? null
    const run = this.typedLength.value
    if (run === null) return this.held?.at ?? null
    const heading =
      this.heading ?? (this.held === null ? this.straight : (cornerWay(this.draft, this.held.at) ?? this.straight))
    return pointBy(last, heading, run)
  })
  readonly says = $derived(this.typedLength.value === null ? (this.held?.says ?? []) : [])
  readonly guides = $derived(this.typedLength.value === null ? (this.held?.guides ?? []) : [])
  readonly nextLength = $derived(
    this.last === null || this.next === null
      ? null
      : Math.hypot(this.next[0] - this.last[0], this.next[1] - this.last[1]),
  )
  readonly nextCorner = $derived(this.next === null ? null : cornerTo(this.draft, this.next))

  constructor(scale: () => number, walls: () => readonly SnapWall[], centre: () => Point) {
    this.scale = scale
    this.walls = walls
    this.centre = centre
  }

  /** By figures alone: the first side to the right, then each at a right angle. */
  private get straight(): number {
    return lastHeading(this.draft) === null ? 0 : headingBy(this.draft, 90)
  }

  /** Begins, or goes on where it was left. */
  begin(): void {
    this.on = true
    this.pointer = null
  }

  /** Puts the drawing aside; what was drawn so far stays for the next time. */
  leave(): void {
    this.on = false
    this.problem = ''
  }

  /** It has become a room. */
  end(): void {
    this.on = false
    this.draft = emptyDraft
    this.drawn = null
    this.pointer = null
    this.forget()
  }

  move(to: Point): void {
    if (this.drawn === null) this.pointer = to
  }

  /** Sets the corner that is shown; without one, the first in the middle of what is seen. */
  set(): void {
    const wrong = this.typedLength.problem || this.typedCorner.problem
    if (wrong !== '') {
      this.problem = wrong
      return
    }
    const typed = this.typedLength.value !== null
    if (this.last === null) this.put(this.next ?? this.centre(), '')
    else if (this.next === null) this.problem = 'Type how long the side is, or point to where it ends.'
    else if (this.held?.closes === true && !typed) this.close()
    else this.put(this.next, typed ? this.length.trim() : '')
  }

  private put(at: Point, text: string): void {
    const { first } = this
    const near = text === '' ? 1 : rules.figure('closesWithin')
    const off = first === null ? Number.POSITIVE_INFINITY : Math.hypot(at[0] - first[0], at[1] - first[1])
    if (this.draft.corners.length > 2 && off <= near) {
      this.close(text, off)
      return
    }
    const step = addCorner(this.draft, at, text)
    if (!step.ok) {
      this.problem = step.problem
      return
    }
    this.draft = step.draft
    // Where the hand was says nothing of the next side until it moves again.
    this.pointer = null
    this.forget()
  }

  /** Lets go of what was typed. */
  forget(): void {
    this.length = ''
    this.corner = ''
    this.problem = ''
  }

  /** Closes with a last side; one that was typed and fails by a little is told, and drawn as it closes. */
  close(text = '', off = 0): void {
    const closed = close(this.draft, off < 1 ? text : '')
    if (!closed.ok) {
      this.problem = closed.problem
      return
    }
    this.forget()
    this.drawn = closed.drawn
    if (off >= 1)
      this.problem = `The last side, typed as ${text}, ends ${desk.lengthWithUnit(off)} from the first corner. It is drawn as it closes; measure it again in the room.`
  }

  /** Takes the last corner back, or opens the outline again. */
  back(): void {
    this.problem = ''
    if (this.drawn !== null) this.drawn = null
    else if (this.length !== '' || this.corner !== '') this.forget()
    else this.draft = takeBack(this.draft)
  }
}

function cornerWay(draft: Draft, to: Point): number | null {
  const corner = cornerTo(draft, to)
  return corner === null ? null : headingBy(draft, corner)
}
