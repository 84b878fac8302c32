/** What a record of damage says in words: how long its owner waits, and what each entry is. */
import type { OwnerClock, WordKind } from './damage.ts'

/** Hours as people say them: `35 min`, `2 h 5 min`, `3 days 4 h`. Minutes are cut, not rounded up. */
export function waitSaid(hours: number): string {
  const minutes = Math.floor(hours * 60 + 1e-6)
  const [whole, rest] = [Math.floor(minutes / 60), minutes % 60]
  if (whole === 0) return `${rest} min`
  if (whole < 48) return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`
  const [days, more] = [Math.floor(whole / 24), whole % 24]
  return more === 0 ? `${days} days` : `${days} days ${more} h`
}

/** The owner's clock in a sentence without its full stop. */
export function clockSaid({ toldAt, waited, late }: OwnerClock, ownerHours: number): string {
  const over = `, ${waitSaid(late)} late`
  if (toldAt !== null) return `owner told ${waitSaid(waited)} after it was found${late > 0 ? over : ''}`
  if (late > 0) return `owner not told${over}`
  return `owner to be told within ${waitSaid(ownerHours - waited)}`
}

/** What each kind of entry says. */
export const wordTitles: Readonly<Record<WordKind, string>> = {
  'owner told': 'Owner told',
  'insurer told': 'Insurer told',
  action: 'What was done',
  report: 'Condition report',
  note: 'Note',
  struck: 'Struck',
  closed: 'Closed',
  reopened: 'Opened again',
}
