/**
 * A late change while it is asked about: what changes, as typed; the ways out as the catalogue sees them now; which of
 * them is looked at. The last answer stays on show until the next is there, and only an answer to what is asked now can
 * be taken.
 */
import { getContext, setContext } from 'svelte'
import type { LateChange, LateOffer } from '../../src/contract/areas/marks.ts'
import type { Elevation, PlacedWork } from '../../src/contract/areas/walls.ts'
import type { Output } from '../../src/contract/contract.ts'
import { lateSeen } from '../../src/model/late-seen.ts'
import { hungOf } from '../../src/model/parts-of-set.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { call, refusalOf } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import type { Wall } from '../walls/wall.svelte.ts'
import { Measuring } from '../works/measuring.svelte.ts'
import { takenWords } from './words.ts'

export type Kind = LateChange['kind']
export type Reach = 'wall' | 'room' | 'show'
type Different = Extract<LateChange, { kind: 'different' }>

export class Late {
  readonly wall: Wall
  open = $state(false)
  kind = $state<Kind>('different')
  /** The entry of the work that it is about, and of the one that it changes places with. */
  one = $state('')
  other = $state('')
  /** Of a set, the work of the part that came otherwise. */
  part = $state('')
  /** As typed; empty for as it is. */
  width = $state('')
  height = $state('')
  depth = $state('')
  by = $state('')
  down = $state(true)
  reach = $state<Reach>('wall')
  /** The back is typed anew. */
  turned = $state(false)
  readonly measuring = new Measuring()
  /** Why what was chosen could not be taken. */
  why = $state('')
  taking = $state(false)
  private key = $state('')
  /** The last change that could be read: half a figure typed asks nothing. */
  private asked = $state.raw<LateChange | null>(null)

  readonly subject = $derived.by((): PlacedWork | null => this.wall.works.find(work => work.entry === this.one) ?? null)
  /** The parts of a set; none of any other work. */
  readonly parts = $derived.by(() => (this.subject === null || this.subject.set === null ? [] : hungOf(this.subject)))
  /** What has a frame of its own: the work, or the part of a set. */
  readonly framed = $derived.by(
    (): PlacedWork | null => this.parts.find(part => part.work === this.part) ?? this.parts[0] ?? this.subject,
  )
  private readonly read = $derived.by(() => this.readAll())
  readonly problems = $derived.by(() => this.read.problems)
  readonly query = watch('late.offer', () => {
    const { asked } = this
    return !this.open || asked === null || show.id === null
      ? null
      : { exhibition: show.id, change: asked, unit: desk.unit }
  })
  /** The newest answer, with the change that it answers. */
  private shown = $state.raw<{ readonly change: LateChange; readonly answer: Output<'late.offer'> } | null>(null)
  readonly answer = $derived.by(() => (this.open && this.shown?.change.kind === this.kind ? this.shown : null))
  readonly offers = $derived.by((): readonly LateOffer[] => this.answer?.answer.offers ?? [])
  readonly chosen = $derived.by(
    (): LateOffer | null => this.offers.find(offer => offer.key === this.key) ?? this.offers[0] ?? null,
  )
  /** What is on show answers what is asked now. */
  readonly settled = $derived.by(
    () => this.read.change !== null && !this.query.stale && this.answer?.change === this.asked,
  )
  readonly elevation = $derived.by((): Elevation | undefined => this.wall.elevation)
  /** The way that is looked at, on the wall one stands in front of. */
  readonly seen = $derived.by(() => {
    const { elevation, answer, chosen } = this
    return elevation === undefined || answer === null || chosen === null
      ? null
      : lateSeen(elevation, answer.change, chosen, this.wall.steps)
  })
  /** Printed sheets of the walls that the chosen way touches. */
  readonly voids = $derived.by(() => {
    const { chosen, answer } = this
    if (chosen === null || answer === null) return []
    const { voids } = answer.answer
    return answer.change.kind === 'lower'
      ? voids.filter(sheet => chosen.moves.some(move => move.face === sheet.face))
      : voids
  })

  constructor(wall: Wall) {
    this.wall = wall
    $effect(() => {
      const { change } = this.read
      if (this.open && change !== null) this.asked = change
    })
    $effect(() => {
      const { value, stale } = this.query
      const { asked } = this
      if (value === undefined || asked === null) this.shown = null
      else if (!stale) this.shown = { change: asked, answer: value }
    })
    $effect(() => {
      const subject = this.framed
      const figure = (typed: string, was: number | null | undefined) => {
        const read = this.lengthOf(typed, was)
        return typeof read === 'number' ? read : null
      }
      const [width, height] = [figure(this.width, subject?.size?.width), figure(this.height, subject?.size?.height)]
      const depth = figure(this.depth, subject?.size?.depth)
      this.measuring.size =
        subject === null || width === null || height === null ? null : { width, height, depth, mass: subject.mass }
    })
  }

  /** Begins with what is selected: two works change places, one gets another frame, none means all of them. */
  begin(): void {
    const chosen = this.wall.selected
    const [first, second] = chosen
    this.kind = chosen.length === 1 ? 'different' : chosen.length === 2 ? 'swap' : 'lower'
    this.about(first?.entry ?? this.wall.works[0]?.entry ?? '')
    this.other = chosen.length === 2 ? (second?.entry ?? '') : ''
    this.by = ''
    this.reach = 'wall'
    this.open = true
  }

  about(entry: string, part = ''): void {
    this.one = entry
    this.part = part
    this.width = ''
    this.height = ''
    this.depth = ''
    this.turned = false
    this.reset()
    const work = this.framed
    this.measuring.load(work?.back == null ? null : { id: entry, by: '', at: '', note: '', ...work.back })
  }

  turnTo(kind: Kind): void {
    this.kind = kind
    this.reset()
  }

  /** Another question: the first way out is looked at again. */
  reset(): void {
    this.asked = null
    this.key = ''
    this.why = ''
  }

  close(): void {
    this.open = false
    this.reset()
  }

  look(offer: LateOffer): void {
    this.key = offer.key
    this.why = ''
  }

  step(by: number): void {
    const { offers, chosen } = this
    const at = chosen === null ? -1 : offers.indexOf(chosen)
    const next = offers[Math.min(offers.length - 1, Math.max(0, at + by))]
    if (next !== undefined) this.look(next)
  }

  async take(): Promise<void> {
    const { asked, chosen, framed } = this
    if (asked === null || chosen === null || show.id === null || !this.settled || this.taking) return
    const voids = this.voids
    this.taking = true
    this.why = ''
    try {
      await call('late.take', {
        exhibition: show.id,
        change: asked,
        key: chosen.key,
        moves: chosen.moves.map(({ entry, x, y }) => ({ entry, x, y })),
      })
      this.close()
      frame.say(takenWords(chosen, voids, framed))
    } catch (thrown) {
      const refused = refusalOf(thrown)
      if (refused.code === 'offer-gone') {
        this.why =
          'The wall was changed after these were reckoned, so nothing was taken. Here they are again, as the wall is now.'
        this.query.again()
      } else this.why = refused.message
    } finally {
      this.taking = false
    }
  }

  private lengthOf(typed: string, was: number | null | undefined): number | null | string {
    if (typed.trim() === '') return was ?? null
    const read = desk.parseLength(typed)
    return read.ok ? read.mm : read.message
  }

  private readAll(): { readonly change: LateChange | null; readonly problems: Readonly<Record<string, string>> } {
    const { kind, one, other } = this
    switch (kind) {
      case 'different':
        return this.readFrame()
      case 'swap':
        return { change: one === '' || other === '' || one === other ? null : { kind, one, other }, problems: {} }
      case 'drop':
        return { change: one === '' ? null : { kind, entry: one }, problems: {} }
      case 'lower': {
        if (this.by.trim() === '') return { change: null, problems: {} }
        const by = this.lengthOf(this.by, null)
        if (typeof by !== 'number') return { change: null, problems: { by: by ?? '' } }
        if (by <= 0) return { change: null, problems: { by: 'Type a length above 0.' } }
        const faces = this.facesIn(this.reach)
        return { change: faces.length === 0 ? null : { kind, by: this.down ? by : -by, faces }, problems: {} }
      }
    }
  }

  private readFrame(): { readonly change: Different | null; readonly problems: Readonly<Record<string, string>> } {
    const { subject, framed, measuring } = this
    if (subject === null || framed === null) return { change: null, problems: {} }
    const problems: Record<string, string> = {}
    const figure = (name: string, typed: string, was: number | null | undefined) => {
      const read = this.lengthOf(typed, was)
      if (typeof read === 'string') problems[name] = read
      else if (read !== null && read <= 0) problems[name] = 'Type a length above 0.'
      return typeof read === 'number' && read > 0 ? read : null
    }
    const width = figure('width', this.width, framed.size?.width)
    const height = figure('height', this.height, framed.size?.height)
    const depth = figure('depth', this.depth, framed.size?.depth)
    const back = this.turned ? this.backTyped() : undefined
    const same =
      [this.width, this.height, this.depth].every(typed => typed.trim() === '') && !(this.turned && measuring.touched)
    if (width === null || height === null || same || back === null || Object.keys(problems).length > 0)
      return { change: null, problems }
    return {
      change: {
        kind: 'different',
        entry: subject.entry,
        ...(framed === subject ? {} : { part: framed.work }),
        width,
        height,
        depth,
        ...(back === undefined ? {} : { back }),
      },
      problems,
    }
  }

  /** Null while something of it is missing or refused. */
  private backTyped(): Different['back'] | null {
    const { method, seenFrom, data, trial } = this.measuring
    if (method === '' || seenFrom === null || trial?.answer == null) return null
    return { method, seenFrom, data: data as NonNullable<Different['back']>['data'] } // numbers and words alone, as the fields give them
  }

  private facesIn(reach: Reach): string[] {
    const here = this.wall.face()
    if (reach === 'wall') return here === null ? [] : [here]
    const rooms = show.plan.value?.rooms ?? []
    return rooms
      .filter(room => reach === 'show' || room.walls.some(wall => wall.face === here))
      .flatMap(room => room.walls.filter(wall => wall.works > 0).map(wall => wall.face))
  }
}

const key = Symbol('late change')

export function shareLate(late: Late): Late {
  return setContext(key, late)
}

export function useLate(): Late {
  return getContext<Late>(key)
}
