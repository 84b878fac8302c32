/** Which groups a place belongs to, and what groups are called. Each place is looked up once. */
import type { LineKind } from '../../../src/contract/areas/insured.ts'
import { bearers, bearerWords } from '../../../src/insurance/bearer.ts'
import { type GroupKind, groupParts } from '../../../src/insurance/groups.ts'
import { type TermKind, termWords } from '../../../src/loan/terms/term.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { locationOf, namer, placeOf } from '../record/places.ts'
import { row, value } from '../sql.ts'

interface Placed {
  readonly groups: readonly string[]
  readonly outside: boolean
}

export class Places {
  private readonly known = new Map<string, Placed>()
  private readonly db: ReadHandle
  private readonly name: (place: string) => string | undefined

  constructor(db: ReadHandle) {
    this.db = db
    this.name = namer(db)
  }

  private look(place: string): Placed {
    const found = placeOf(this.db, place)
    if (found === undefined) return { groups: [`room:${place}`], outside: false }
    const { kind, room, location } = found
    if (location === null) return { groups: [`room:${room ?? place}`], outside: false }
    if (kind === 'crate' || kind === 'vehicle') return { groups: [`${kind}:${place}`], outside: false }
    const groups: string[] = []
    for (let at: typeof location | undefined = location; at !== undefined; ) {
      groups.push(`room:${at.id}`)
      at = at.parent === null ? undefined : locationOf(this.db, at.parent)
    }
    return { groups, outside: kind === 'elsewhere' }
  }

  private placed(place: string): Placed {
    const known = this.known.get(place) ?? this.look(place)
    this.known.set(place, known)
    return known
  }

  /** What stands at an address outside and is in no vehicle of ours is in nobody's sum here. */
  isOutside(places: readonly string[]): boolean {
    const outermost = places.at(-1)
    if (outermost === undefined || !this.placed(outermost).outside) return false
    return !places.some(place => this.groupsAt(place).some(group => group.startsWith('vehicle:')))
  }

  private groupsAt(place: string): readonly string[] {
    return this.placed(place).groups
  }

  /** `all`, the lender and every place around; none where it is outside. */
  groupsOf(places: readonly string[], lender: string | null): readonly string[] {
    if (this.isOutside(places)) return []
    const around = places.length === 0 ? ['room:'] : places.flatMap(place => this.groupsAt(place))
    return [...new Set(['all', `lender:${lender ?? ''}`, ...around])]
  }

  /** `Crate 5, in Van 1`: where a work is. */
  wordsOf(places: readonly string[]): string {
    return places.map(place => this.placeWords(place)).join(', in ')
  }

  private placeWords(place: string): string {
    const recorded = 'SELECT place_words FROM movement WHERE place = :place ORDER BY id DESC LIMIT 1'
    return this.name(place) ?? value<string>(this.db, recorded, { place }) ?? 'a place that is gone'
  }

  groupWords(group: string): { readonly kind: LineKind; readonly words: string } {
    const { kind, key, slice } = groupParts(group)
    const words = this.wholeWords(kind, key)
    if (slice === '') return { kind, words }
    const bearer = bearers.find(each => each === slice)
    const part = bearer === undefined ? this.termWords(slice.slice('term-'.length)) : bearerWords[bearer]
    if (kind !== 'all') return { kind, words: `${words}: ${part}` }
    return { kind: bearer === undefined ? 'loan' : 'bearer', words: part[0]?.toLocaleUpperCase('en') + part.slice(1) }
  }

  private wholeWords(kind: GroupKind, key: string): string {
    if (kind === 'all') return 'Everything'
    if (kind === 'lender') {
      const name = value<string>(this.db, 'SELECT name FROM party WHERE id = :key', { key })
      return name ?? 'No lender named'
    }
    const words = key === '' ? 'Place not known yet' : this.placeWords(key)
    return kind === 'journey' ? `${words}, one journey` : words
  }

  private termWords(term: string): string {
    const found = row<{ number: string; kind: TermKind }>(
      this.db,
      'SELECT loan.number, loan_term.kind FROM loan_term JOIN loan ON loan.id = loan_term.loan WHERE loan_term.id = :term',
      { term },
    )
    return found === undefined ? 'a loan that is gone' : `loan ${found.number}, ${termWords[found.kind]}`
  }
}
