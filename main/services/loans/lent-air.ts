/**
 * The air that lent works had over their loans: in which rooms, by the record, and by the plan where it has no word yet;
 * and what loggers read there meanwhile. The period is the loan's, where it leaves a day open the show's.
 */
import { type AirSpan, united } from '../../../src/climate/beyond.ts'
import { secondsOfDay } from '../../../src/climate/pack.ts'
import { dayLong, type Known, staysOf } from '../../../src/insurance/stays.ts'
import { type Day, dateOf, dayOf, daySaid } from '../../../src/light/day.ts'
import type { Climate, RoomAir } from '../../../src/loan/terms/planned.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { airOfDays } from '../climate/stored.ts'
import { dayAt, momentAt } from '../days.ts'
import { type Facts, factsOf } from '../insured/facts.ts'
import { type NamedPlace, placeOf } from '../record/places.ts'
import { sheetTime } from '../sheets/wishes.ts'
import { row } from '../sql.ts'

/** A loan without an end goes on; no catalogue has readings beyond this. */
const farOff = dayOf('2999-12-31')
const iso = (moment: number) => new Date(moment * 1000).toISOString()

interface Period {
  readonly first: Day
  readonly last: Day | null
}

/** Asked of several works and loans, it reads movements, places and days once. */
export class LentAir {
  private readonly db: ReadHandle
  private readonly works: readonly string[]
  private facts: Facts | undefined
  private readonly places = new Map<string, NamedPlace | undefined>()

  /** `works`: all that may be asked for. */
  constructor(db: ReadHandle, works: readonly string[]) {
    this.db = db
    this.works = works
  }

  /** `face` is the wall that it is planned on in the show; null for none. */
  of(work: string, loan: string, exhibition: string | null, face: string | null): Climate | null {
    this.facts ??= factsOf(this.db, { works: this.works })
    const known = this.facts.known(work)
    const lent = this.facts.agreed(work).find(each => each.loan === loan)
    const show = this.showOf(exhibition)
    const first = lent?.first ?? show?.first ?? null
    if (first === null) return null
    const last = lent?.last ?? show?.last ?? null
    const spans = this.spansOf(known, { first, last }, face)
    const said = (day: Day) => daySaid(dateOf(day))
    return {
      rooms: [...spans].map(([room, of]) => this.roomAir(room, united(of))),
      period: last === null ? `since ${said(first)}` : `from ${said(first)} to ${said(last)}`,
      days: last === null ? null : Math.max(0, last - first + 1),
      said: moment => sheetTime(iso(moment)),
      dayOf: moment => dayAt(iso(moment)),
    }
  }

  private showOf(exhibition: string | null): { first: Day; last: Day } | null {
    if (exhibition === null) return null
    const sql = 'SELECT opens, closes FROM exhibition WHERE id = :exhibition'
    const { opens = '', closes = '' } = row<{ opens: string; closes: string }>(this.db, sql, { exhibition }) ?? {}
    return opens === '' || closes < opens ? null : { first: dayOf(opens), last: dayOf(closes) }
  }

  private placed(place: string): NamedPlace | undefined {
    if (!this.places.has(place)) this.places.set(place, placeOf(this.db, place))
    return this.places.get(place)
  }

  /** `face` is where it is planned to hang: there it is taken to be while neither record nor show says otherwise. */
  private spansOf(known: Known, { first, last }: Period, face: string | null): Map<string, AirSpan[]> {
    const [from, end] = [first * dayLong, ((last ?? farOff) + 1) * dayLong]
    const spans = new Map<string, AirSpan[]>()
    const add = (places: readonly string[], since: number, to: number) => {
      const [start, until] = [Math.max(since, from), Math.min(to, end)]
      const room = places.map(place => this.placed(place)?.room ?? null).find(each => each !== null)
      if (room === undefined || start >= until) return
      const span = { from: momentAt(start) / 1000, until: momentAt(until) / 1000 }
      spans.set(room, [...(spans.get(room) ?? []), span])
    }
    // No reading is of a day to come, so the record's last word holds to the end.
    const recorded = staysOf(known, last ?? farOff, last ?? farOff)
    for (const stay of recorded) add(stay.places, stay.from, stay.to)
    const before = recorded[0]?.from ?? end
    let planned = from
    for (const { first: opens, last: closes, place } of known.shows) {
      if (place === null) continue
      // Of two shows at once the one that opened first has it.
      const until = Math.min(before, (closes + 1) * dayLong)
      const since = Math.max(planned, opens * dayLong)
      if (face !== null) add([face], planned, Math.min(since, before))
      add([place], since, until)
      planned = Math.max(planned, until)
    }
    if (face !== null) add([face], planned, before)
    return spans
  }

  private roomAir(room: string, spans: readonly AirSpan[]): RoomAir {
    const [first, last] = [spans[0]?.from ?? 0, spans.at(-1)?.until ?? 0]
    const loggers = airOfDays(this.db, room, Math.floor(first / secondsOfDay), Math.floor(last / secondsOfDay))
    return { room: this.placed(room)?.words ?? '', loggers, spans }
  }
}
