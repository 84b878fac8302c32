/** The rules of the hang in front of a person: which are looked for, which is chosen, and one that is being given. */
import type { Input, Output } from '../../src/contract/contract.ts'
import { type PlaceKind, type RuleKind, ruleNeeds, type Within } from '../../src/sequence/hang-rule.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { ask, call } from '../host/client.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'

export type HangRule = Output<'sequence.rules'>['rules'][number]
export type Note = Output<'sequence.rules'>['notes'][number]
export type Term = Note['terms'][number]
type Place = { readonly kind: PlaceKind; readonly id: string }

export interface PlaceOffered extends Place {
  readonly name: string
}

/** As a coordinator says them. */
export const kindWords: Readonly<Record<RuleKind, string>> = {
  stays: 'stays on its wall',
  'side by side': 'side by side',
  'in this order': 'side by side, in this order',
  'one wall': 'on one wall',
  'not beside': 'not beside',
  'not facing': 'not facing',
  'only on': 'only on …',
  'not on': 'not on …',
  first: 'the first of …',
  last: 'the last of …',
  axis: 'on the axis of …',
}

export const stateWords: Readonly<Record<HangRule['state'], string>> = {
  held: '● held',
  broken: '▲ broken today',
  open: 'not all hung yet',
  rests: 'rests',
  off: 'switched off',
}

const changedMeanwhile =
  'Somebody else changed this rule meanwhile; theirs is shown. Change it again if yours is right.'

function saidOf({ work, field }: Note, quoted: string | null) {
  return { work, field, ...(quoted === null ? {} : { quoted }) }
}

function differ({ was, to }: { readonly was: unknown; readonly to: unknown }): boolean {
  return JSON.stringify(was) !== JSON.stringify(to)
}

export class Rules {
  readonly read = watch('sequence.rules', () => (show.id === null ? null : { exhibition: show.id }))
  private readonly partitions = watch('partition.list', () =>
    show.id === null || !this.writing ? null : { exhibition: show.id },
  )
  private readonly stands = watch('standing.list', () =>
    show.id === null || !this.writing ? null : { exhibition: show.id },
  )
  open = $state(false)
  find = $state('')
  /** The one whose works are shown. */
  chosen = $state<string | null>(null)
  adding = $state(false)
  /** The one that is being changed where it stands in the list, as it was when that began. */
  changing = $state.raw<HangRule | null>(null)
  readonly writing = $derived(this.adding || this.changing !== null)
  kind = $state<RuleKind>('not beside')
  within = $state<Within>('show')
  places = $state.raw<readonly Place[]>([])
  reason = $state('')
  /** What a work says, whole or one sentence of it, that the rule being given is made from. */
  note = $state.raw<{ readonly note: Note; readonly quoted: string | null } | null>(null)

  readonly all = $derived.by((): readonly HangRule[] => this.read.value?.rules ?? [])
  readonly broken = $derived.by(() => this.all.filter(rule => rule.state === 'broken').length)
  readonly contradiction = $derived.by(() => this.read.value?.contradiction ?? null)
  /** Made from words that the work no longer says. */
  readonly outdated = $derived.by(() => this.all.filter(rule => rule.said?.still === false).length)
  /** What works say that nobody has made a rule of or settled, with its sentences. */
  readonly notes = $derived.by(() =>
    (this.read.value?.notes ?? []).flatMap(note => {
      const terms = note.terms.filter(
        ({ kept, rules, settled }) => kept === '' && rules.length === 0 && settled === null,
      )
      return note.rules.length > 0 || terms.length === 0 ? [] : [{ ...note, terms }]
    }),
  )
  /** Sentences settled without a rule. */
  readonly settled = $derived.by(() =>
    (this.read.value?.notes ?? []).flatMap(note =>
      note.terms.flatMap(({ quoted, settled }) => (settled === null ? [] : [{ note, quoted, ...settled }])),
    ),
  )
  /** Sentences that ask nothing, or what is so already. */
  readonly kept = $derived.by(() =>
    (this.read.value?.notes ?? []).flatMap(note =>
      note.terms.flatMap(({ quoted, kept }) => (kept === '' ? [] : [{ note, quoted, kept }])),
    ),
  )
  readonly needs = $derived.by(() => ruleNeeds[this.kind])

  readonly found = $derived.by((): readonly HangRule[] => {
    const words = this.find
      .toLowerCase()
      .split(/\s+/)
      .filter(word => word !== '')
    return this.all.filter(rule => {
      const text =
        `${rule.says} ${stateWords[rule.state]} ${rule.reason} ${rule.works.map(work => work.title).join(' ')}`.toLowerCase()
      return words.every(word => text.includes(word))
    })
  })

  /** Rules that name one of the works chosen. */
  readonly ofChosen = $derived.by(() =>
    show.selected.length === 0 ? [] : this.all.filter(rule => rule.works.some(({ work }) => show.isSelected(work))),
  )

  /** Walls and rooms, or doorways and benches: what the kind asks for. */
  readonly offered = $derived.by((): readonly PlaceOffered[] => {
    const rooms = show.rooms.value?.rooms ?? []
    if (this.needs.place === 'axis')
      return rooms.flatMap(room => [
        ...room.walls.flatMap(wall =>
          wall.openings
            .filter(opening => opening.kind === 'door' || opening.kind === 'passage')
            .map(opening => ({
              kind: 'doorway' as const,
              id: opening.id,
              name: `${room.name}, ${opening.label || `doorway in ${wall.name}`}`,
            })),
        ),
        ...(this.stands.value?.things ?? [])
          .filter(thing => thing.room === room.id && thing.kind === 'bench')
          .map(({ id, name }) => ({ kind: 'bench' as const, id, name: `${room.name}, ${name || 'a bench'}` })),
      ])
    const named = rooms.map(room => ({ kind: 'room' as const, id: room.id, name: `in ${room.name}` }))
    if (this.needs.place === 'within') return named
    return [
      ...named,
      ...rooms.flatMap(room => [
        ...room.walls.map(wall => ({ kind: 'wall' as const, id: wall.face, name: `${room.name}, ${wall.name}` })),
        ...(this.partitions.value?.partitions ?? [])
          .filter(partition => partition.room === room.id)
          .flatMap(({ name, faces }) =>
            (['a', 'b'] as const).map(side => ({
              kind: 'wall' as const,
              id: faces[side],
              name: `${room.name}, ${name}, side ${side}`,
            })),
          ),
      ]),
    ]
  })

  choose(rule: HangRule): void {
    this.leave()
    this.chosen = rule.id
    show.select(rule.works.map(({ work }) => work))
  }

  begin(note: Note | null = null, quoted: string | null = null): void {
    this.open = true
    this.changing = null
    this.adding = true
    this.note = note === null ? null : { note, quoted }
    this.places = []
    this.reason = ''
    this.kind = note?.field === 'loanTerms' ? 'only on' : 'not beside'
    if (note !== null && !show.isSelected(note.work)) show.select([note.work])
  }

  /** A given rule is written anew: its works are those chosen from now on, its places and reason stand in the form. */
  change(rule: HangRule): void {
    const { kind } = rule
    if (kind === 'light' || kind === 'held') return
    this.choose(rule)
    this.kind = kind
    this.within = rule.within ?? 'show'
    this.places = kind === 'stays' ? [] : rule.places.map(({ kind: of, id }) => ({ kind: of, id }))
    this.reason = rule.reason
    this.changing = rule
  }

  leave(): void {
    this.adding = false
    this.changing = null
    this.note = null
  }

  /** One of the works chosen goes one place towards the first. */
  earlier(work: string): void {
    const at = show.selected.indexOf(work)
    if (at > 0) show.select(show.selected.toSpliced(at, 1).toSpliced(at - 1, 0, work))
  }

  takePlace(text: string): void {
    const place = this.offered.find(one => one.id === text)
    if (place === undefined || this.places.some(one => one.id === place.id)) return
    const more = this.needs.place === 'walls' || this.needs.place === 'axis'
    this.places = [...(more ? this.places : []), { kind: place.kind, id: place.id }]
  }

  async add(): Promise<void> {
    const exhibition = show.id
    if (exhibition === null) return
    const { place } = this.needs
    const asksRoom = place === 'within' && this.within === 'room'
    const input: Input<'sequence.addRule'> = {
      ...{ exhibition, kind: this.kind, works: [...show.selected], reason: this.reason },
      ...(place === 'walls' || place === 'axis' || asksRoom
        ? { places: this.places.map(({ kind, id }) => ({ kind, id })) }
        : {}),
      ...(place === 'within' ? { within: this.within } : {}),
      ...(this.note === null ? {} : { said: saidOf(this.note.note, this.note.quoted) }),
    }
    await this.give(input)
  }

  /** What a term would be as a rule, as it is offered. */
  async take(note: Note, quoted: string, { kind, works, places }: Term['offers'][number]): Promise<void> {
    const exhibition = show.id
    if (exhibition === null) return
    await this.give({
      ...{ exhibition, kind, works, said: saidOf(note, quoted) },
      ...(places.length === 0 ? {} : { places }),
    })
  }

  /** The lux that a term names become the work's own limit. */
  async takeLimit({ work }: Note, limit: number): Promise<void> {
    await frame.attempt(async () => {
      const { facts } = await ask('work.get', { id: work })
      await call('work.update', { id: work, changes: { lightLimit: { was: facts.lightLimit, to: limit } } })
    })
  }

  /** A term needs no rule: a person says why. */
  async settle({ entry, field }: Note, quoted: string, reason: string): Promise<void> {
    const figures = JSON.stringify({ field, quoted })
    await frame.attempt(() => call('finding.settle', { code: 'loan-term', subject: entry, figures, reason }))
  }

  private async give(input: Input<'sequence.addRule'>): Promise<void> {
    await frame.attempt(async () => {
      const { id, says, contradiction } = await call('sequence.addRule', input)
      this.leave()
      this.chosen = id
      frame.say(contradiction === null ? says : `▲ ${contradiction.says}`)
    })
  }

  async turn(rule: HangRule): Promise<void> {
    const was = rule.state !== 'off'
    await frame.attempt(() => call('sequence.changeRule', { id: rule.id, changes: { inForce: { was, to: !was } } }))
  }

  /** What differs from the rule as it was, as one edit. */
  async save(): Promise<void> {
    const rule = this.changing
    if (rule === null) return
    const works = { was: rule.works.map(({ work }) => work), to: [...show.selected] }
    const asPlaces = (list: readonly Place[]) => list.map(({ kind, id }) => ({ kind, id }))
    const places = { was: asPlaces(rule.places), to: asPlaces(this.places) }
    const reason = { was: rule.reason, to: this.reason.trim() }
    const changes = {
      ...(differ(works) ? { works } : {}),
      ...(rule.kind !== 'stays' && differ(places) ? { places } : {}),
      ...(differ(reason) ? { reason } : {}),
    }
    if (Object.keys(changes).length === 0) {
      this.leave()
      return
    }
    await frame.attempt(async () => {
      const { clashes } = await call('sequence.changeRule', { id: rule.id, changes })
      this.leave()
      if (clashes.length > 0) frame.said = { text: changedMeanwhile, refused: true }
    })
  }

  async remove(rule: HangRule): Promise<void> {
    await frame.attempt(async () => {
      await call('sequence.removeRules', { rules: [rule.id] })
      this.leave()
      frame.say('The rule is gone. Undo brings it back.')
    })
  }

  async except(entry: string, reason: string): Promise<void> {
    await frame.attempt(() => call('sequence.exceptLight', { entry, reason }))
  }

  async takeBack(id: string): Promise<void> {
    await frame.attempt(() => call('finding.unsettle', { id }))
  }
}
