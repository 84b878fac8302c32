/** Reasons as sentences: what a place gains, what bars a work, what another place would cost. */
import type { Output } from '../../src/contract/contract.ts'
import { type Term, terms } from '../../src/sequence/problem.ts'
import { desk } from '../host/desk.svelte.ts'

export type WorkTold = NonNullable<Output<'sequence.explain'>['work']>
export type WallTold = NonNullable<Output<'sequence.explain'>['wall']>
type Place = NonNullable<WorkTold['next']>
type Named = (id: string) => string

export const termWords = {
  order: 'order kept',
  balance: 'balance',
  evenness: 'evenness',
  light: 'light kept apart',
  sight: 'sightlines',
  rhythm: 'rhythm',
} as const satisfies Record<Term, string>

/** Two places after the point; nothing that would read as nothing. */
export const points = (value: number) => Math.abs(value).toFixed(2)
const counts = (value: number) => Math.abs(value) >= 0.005

/** Such as "order kept 0.30 and sightlines 0.12", the greatest first. */
export function shares(lost: Place['lost'], sign: 1 | -1): string {
  const own = terms
    .filter(term => counts(lost[term]) && Math.sign(lost[term]) === sign)
    .sort((a, b) => sign * (lost[b] - lost[a]))
    .map(term => `${termWords[term]} ${points(lost[term])}`)
  return list(own)
}

export function list(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** What going there would cost, in one or two sentences. */
export function placeSaid(place: Place, wall: Named, work: Named): string {
  const where = `${wall(place.face)}, at ${desk.lengthWithUnit(place.x)}`
  const how = place.swapped === null ? where : `${where}, in exchange with ${work(place.swapped)}`
  const [loses, gains] = [shares(place.lost, 1), shares(place.lost, -1)]
  const why = [loses === '' ? '' : `it loses ${loses}`, gains === '' ? '' : `it gains ${gains}`].filter(
    text => text !== '',
  )
  const told = why.length === 0 ? '' : `: ${why.join('; ')}`
  if (!counts(place.price)) return `${how} is as good${told}.`
  return place.price > 0
    ? `${how} costs ${points(place.price)} points${told}.`
    : `${how} would be better by ${points(place.price)} points${told}.`
}

/** Why it is where it is, against the best other wall. */
export function gainsSaid({ elsewhere }: WorkTold): string {
  if (elsewhere === null) return ''
  const here = shares(elsewhere.lost, 1)
  return here === '' ? '' : `Beside the best place on another wall it gains ${here} here.`
}

const inHundred = (share: number) => `${Math.round(100 * share)} in 100`

export function servedSaid({ served: { here, most } }: WorkTold): string {
  if (here === null) return most === null ? '' : `At its best it serves ${inHundred(most)} of the least served viewers.`
  const best =
    most !== null && most > here + 0.005
      ? `; on the best wall for it ${inHundred(most)}`
      : '; no wall serves them better'
  return `It serves ${inHundred(here)} of the least served viewers${best}.`
}

export function lightSaid({ light: { limit, planned, beside } }: WorkTold, work: Named): string {
  if (limit === null) return 'Nobody has said how much light it may receive.'
  const level =
    planned === null
      ? `It may receive ${limit} lux; no level is planned for the wall.`
      : `It may receive ${limit} lux, and ${planned} are planned.`
  const known = beside.filter(one => one.limit !== null && one.limit !== limit)
  if (beside.length === 0) return level
  if (known.length === 0)
    return `${level} ${beside.some(one => one.limit === null) ? 'Nothing beside it is known to differ.' : 'What stands beside it may receive the same.'}`
  return `${level} Beside it ${list(known.map(one => `${work(one.entry)} may receive ${one.limit}`))}.`
}

export function barredSaid({ stretches, barred }: WorkTold): string {
  const why = [
    [barred.tooWide, 'too short for it'],
    [barred.tooMuchLight, 'too bright'],
    [barred.tooHigh, 'too low for its height'],
    [barred.tooLow, 'its lower edge in the skirting'],
    [barred.byRule, 'closed by a rule'],
  ] as const
  const told = why.filter(([count]) => count > 0).map(([count, words]) => `${count} ${words}`)
  const all = why.reduce((sum, [count]) => sum + count, 0)
  return all === 0
    ? `All ${stretches} free stretches of wall are open to it.`
    : `Of ${stretches} free stretches of wall ${all} are closed to it: ${list(told)}.`
}

export function stretchSaid(one: WallTold['stretches'][number], work: Named): string {
  const length = (mm: number) => desk.lengthWithUnit(Math.round(mm))
  const many = one.works === 1 ? 'one work' : `${one.works} works`
  if (one.works === 0) return `It is empty; an even hang would put ${length(one.share)} of works there.`
  const off =
    Math.abs(one.off) < 1
      ? 'Its weight is centred.'
      : `Its weight lies ${length(Math.abs(one.off))} to the ${one.off > 0 ? 'right' : 'left'} of the middle.`
  const seen = one.served === null ? '' : ` It serves ${inHundred(one.served)} of the least served viewers.`
  const axes = one.axes.map(({ x, entry }) =>
    entry === null
      ? ` Nothing stands on the axis of the doorway at ${length(x)}.`
      : ` ${work(entry)} stands on the axis of the doorway at ${length(x)}.`,
  )
  return `${many}, ${length(one.width)} wide, where an even hang has ${length(one.share)}; ${length(one.left)} left over. ${off}${seen}${axes.join('')}`
}

/** What would help, each with its figures; nothing of it is done. */
export function helps({ drop, longer, cleared, partition }: WallTold, work: Named): readonly string[] {
  const length = (mm: number) => desk.lengthWithUnit(Math.round(mm))
  const gain = (value: number) =>
    !counts(value)
      ? 'changes nothing by itself'
      : value > 0
        ? `gains ${points(value)} points`
        : `costs ${points(value)} points`
  return [
    drop === null || !counts(drop.gain) ? '' : `Leaving out ${work(drop.entry)} ${gain(drop.gain)}.`,
    partition === null || !counts(partition.gain)
      ? ''
      : `Moving ${partition.name} by ${length(partition.by)} ${partition.way} ${gain(partition.gain)}: ${partition.axes.moved} axes of doorways meet walls of the room, now ${partition.axes.now}.`,
    cleared === null
      ? ''
      : `Without what ${cleared.label} keeps clear a stretch would be ${length(cleared.gives)} long instead of ${length(cleared.was)}; that ${gain(cleared.gain)}.`,
    longer === null
      ? ''
      : `${length(longer.by)} more wall at its right end, the works there in equal gaps, ${gain(longer.gain)}${longer.fits.length === 0 ? '' : `, and would take ${longer.fits.length === 1 ? work(longer.fits[0] ?? '') : `one of ${list(longer.fits.map(work))}`}`}.`,
  ].filter(text => text !== '')
}
