/** What is to be said of planned movements: what stands in their way by the plan, by the record or by one another. */
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { sayIn } from '../../../src/hang/marks.ts'
import type { Reader } from '../../../src/model/work-findings.ts'
import { shortWay } from '../../../src/record/way-words.ts'
import { listed } from '../../../src/sequence/rule-sentence.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { dateAt, endOf, momentAt } from '../days.ts'
import { partIdsOf } from '../sets/figures.ts'
import { sheetTime } from '../sheets/wishes.ts'
import { workName } from '../works/facts.ts'
import { carriedOf } from './carried.ts'
import { type Carry, nameOf, type Thing, wordsOf } from './carry.ts'
import { refuseDamaged } from './damage/stays.ts'
import { notesOf } from './notes.ts'
import { locationOf, placeOf } from './places.ts'
import { type Planned, placeSaid, whenSaid } from './planned-rows.ts'
import { type Stood, standingOf } from './standing.ts'
import { wayTeller } from './ways.ts'
import { setOf } from './wholes.ts'

/** What is planned, before it has a key of its own. */
export type Asked = Pick<Planned, 'id' | 'kind' | 'thing' | 'place' | 'placeWords' | 'day' | 'hour'>

export interface PlanTold {
  readonly fromWords: string
  readonly way: string
  readonly findings: readonly Finding[]
}

/**
 * Of any of them, where it leaves from, how it passes and what is to settle.
 * @param open all open plans in the order of their time; the plan asked about may be none of them
 */
export function planTeller(db: ReadHandle, reader: Reader, now: string, open: readonly Asked[]) {
  const tell = wayTeller(db, reader)
  const length = sayIn(reader.unit, reader.steps)
  const today = dateAt(now)
  const families = new Map<string, readonly string[]>()
  /** A set with its parts, a part with its set: what one plan says, it says of these too. */
  const familyOf = ({ kind, thing }: Pick<Asked, 'kind' | 'thing'>): readonly string[] => {
    const known = families.get(thing)
    if (known !== undefined) return known
    const set = kind === 'work' ? setOf(db, thing) : null
    const family = kind === 'crate' ? [thing] : [thing, ...(set === null ? [] : [set]), ...partIdsOf(db, thing)]
    families.set(thing, family)
    return family
  }
  const byThing = Map.groupBy(open, ({ thing }) => thing)
  const othersOf = (plan: Asked) =>
    familyOf(plan)
      .flatMap(thing => byThing.get(thing) ?? [])
      .filter(({ id }) => id !== plan.id)

  /** The plan before this one that says where a thing is then. */
  function earlier(plan: Asked, family: readonly string[]): Asked | undefined {
    return family
      .flatMap(thing => byThing.get(thing) ?? [])
      .filter(other => other.id !== plan.id && isBefore(other, plan))
      .sort((a, b) => (isBefore(a, b) ? -1 : 1))
      .at(-1)
  }
  function standsBefore(plan: Asked, kind: Thing['kind'], id: string): Stood | undefined {
    const set = kind === 'work' ? setOf(db, id) : null
    const planned = earlier(plan, set === null ? [id] : [id, set])
    if (planned === undefined) return standingOf(db, kind, id, now)
    return { thing: id, movement: '', at: momentOf(planned, now), place: planned.place, from: '' }
  }

  return (plan: Asked): PlanTold => {
    const findings: Finding[] = []
    const name = nameOf(db, plan.kind, plan.thing, 'thing')
    const say = (code: string, text: string, figures: Finding['figures'] = {}) =>
      findings.push({ severity: 'settle', code, subject: { kind: plan.kind, id: plan.thing }, text, figures })
    const to = placeOf(db, plan.place)
    const words = placeSaid(db, plan)
    if (plan.day < today) say('overdue', `Planned for ${whenSaid(plan)}, and not done. Record it, or plan another day.`)
    for (const text of contradictions(db, plan, othersOf(plan))) say('plans-contradict', text)
    if (to === undefined) {
      say('place-gone', `${words} is not there any more. Plan another place.`)
      return { fromWords: '', way: '', findings }
    }
    const at = momentOf(plan, now)
    const asked = plan.kind === 'work' ? { works: [plan.thing] } : { crates: [plan.thing] }
    // What else goes with it there is planned or carried by itself.
    const carried = carriedOf(db, asked, plan.place, now).filter(
      ({ id, partOf }) => id === plan.thing || partOf === plan.thing,
    )
    const things = carried.map((each): Thing => {
      const from = standsBefore(plan, each.kind, each.id)
      const called = nameOf(db, each.kind, each.id, 'thing')
      return { ...each, name: called, from, fromWords: from === undefined ? '' : wordsOf(db, from) }
    })
    const carry: Carry = { things, to, at, spot: '' }
    const [whole] = things
    // A set that never moved as one is where its parts are.
    const known = things.filter(({ from }) => from !== undefined)
    const from = whole?.from ?? (known.length === things.length - 1 && sameFrom(known) ? known[0]?.from : undefined)
    if (from?.place === plan.place) {
      const since = from.movement === '' ? 'by the plan before this one' : `since ${sheetTime(from.at)}`
      say('there-already', `${name} is at ${words} already, ${since}. Take this off the plan, or plan where it goes.`)
    } else if (from === undefined && known.length === 0 && plan.kind === 'work') {
      say('not-arrived', `${name} has not arrived: the record has it in no place. Record its arrival first.`)
    } else if (from !== undefined && locationOf(db, from.place)?.kind === 'elsewhere' && to.room !== null) {
      say('not-arrived', `${name} has not arrived: it is at ${wordsOf(db, from)}. Plan or record its arrival first.`)
    }
    try {
      refuseDamaged(db, carry)
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown
      say(thrown.code, thrown.message)
    }
    const there = new Set(
      open.filter(other => other.place === plan.place && other.day <= plan.day).map(one => one.thing),
    )
    for (const note of notesOf(db, carry, reader, tell)) {
      const staying = note.code === 'part-stays' ? (note.figures.parts as readonly string[]) : [''] // as its note has them
      if (!staying.every(part => there.has(part))) findings.push(note)
    }
    return { fromWords: from === undefined ? '' : wordsOf(db, from), way: wayOf(carry), findings }
  }

  /** Of a set each part goes by itself: said once where all pass alike. */
  function wayOf({ things, to, at }: Carry): string {
    const own = things.filter(({ id }) => !things.some(({ partOf }) => partOf === id))
    const ways = Map.groupBy(own, thing => shortWay(tell(thing, thing.from?.place ?? null, to.place, at), length))
    if (ways.size < 2) return [...ways.keys()][0] ?? ''
    return [...ways]
      .flatMap(([way, of]) => (way === '' ? [] : [`${listed(of.map(one => one.name))}: ${way}`]))
      .join('. ')
  }
}

const sameFrom = (things: readonly Thing[]) => new Set(things.map(({ from }) => from?.place)).size === 1

/** In time; of two on one day those without an hour come first, as they were planned. */
function isBefore(a: Asked, b: Asked): boolean {
  const [one, other] = [`${a.day} ${a.hour}`, `${b.day} ${b.hour}`]
  // What is planned now is after all that was.
  return one < other || (one === other && (b.id === '' || (a.id !== '' && a.id < b.id)))
}

/** When it is to be there; of a day without an hour its end. What is overdue would be done now. */
function momentOf({ day, hour }: Pick<Asked, 'day' | 'hour'>, now: string): string {
  const at = hour === '' ? endOf(day) : new Date(momentAt(Date.parse(`${day}T${hour}:00Z`))).toISOString()
  return at < now ? now : at
}

/** Other plans of the same day that no hour puts before or after this one. */
function contradictions(db: ReadHandle, plan: Asked, others: readonly Asked[]): string[] {
  return others
    .filter(({ day, hour }) => day === plan.day && (hour === '' || plan.hour === '' || hour === plan.hour))
    .map(other => {
      const name = nameOf(db, plan.kind, plan.thing, 'thing')
      const [here, there] = [placeSaid(db, plan), placeSaid(db, other)]
      const self = other.thing === plan.thing
      const also = self ? '' : `${workName(db, other.thing)} `
      return other.place === plan.place
        ? `${name} is planned to go to ${here} twice that day${self ? '' : `, once with ${also.trim()}`}. Take one of the two off.`
        : `${name} is planned to go to ${here}, and that day ${also}to ${there}: no hour says which comes first. Give both their hours, or take one off.`
    })
}
