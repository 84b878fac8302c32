/**
 * A record of damage: whether it is open, how long its owner has waited to be told, and what is missing before it can be
 * closed. The rule it keeps: a record is only added to, so all of this follows from what was said of it, in the order in
 * which it was said. What is done first (photographs before it is moved, its owner at once): common practice, no source.
 */

/** What is said of a damage by hand, one entry each. */
export const factKinds = ['owner told', 'insurer told', 'action', 'report', 'note'] as const
export type FactKind = (typeof factKinds)[number]
/** `struck`: an earlier entry was wrong. */
export const wordKinds = [...factKinds, 'struck', 'closed', 'reopened'] as const
export type WordKind = (typeof wordKinds)[number]

/** One entry of a record of damage. Moments are ISO 8601 in UTC. */
export interface DamageWord {
  readonly id: string
  readonly kind: WordKind
  readonly at: string
  /** The entry that this one says was wrong. */
  readonly strikes: string | null
}

/** What can be struck: who closed or reopened it says so by doing the other. */
export function canBeStruck({ kind }: Pick<DamageWord, 'kind'>): boolean {
  return factKinds.some(each => each === kind)
}

/** Entries that count, in their order: neither struck nor saying that another is. */
export function inForce<W extends DamageWord>(words: readonly W[]): readonly W[] {
  const struck = new Set(words.map(({ strikes }) => strikes))
  return words.filter(({ id, kind }) => kind !== 'struck' && !struck.has(id))
}

/** When it was closed; null while it is open. `words` in the order in which they were recorded. */
export function closedAt(words: readonly DamageWord[]): string | null {
  const last = words.findLast(({ kind }) => kind === 'closed' || kind === 'reopened')
  return last?.kind === 'closed' ? last.at : null
}

export interface OwnerClock {
  /** By then its owner is to be told. */
  readonly due: string
  /** When its owner was told; null while nobody has. */
  readonly toldAt: string | null
  /** Hours from when it was found until its owner was told, or until now. */
  readonly waited: number
  /** Hours beyond what is due; 0 in time. */
  readonly late: number
}

const hour = 3_600_000

/**
 * How long an owner has waited, from when it was found. @param toldAt null while nobody has told the owner
 * @param ownerHours by the house rule, within which an owner is told
 */
export function waitOf(foundAt: string, toldAt: string | null, ownerHours: number, now: string): OwnerClock {
  const found = Date.parse(foundAt)
  const waited = Math.max(0, (Date.parse(toldAt ?? now) - found) / hour)
  const due = new Date(found + ownerHours * hour).toISOString()
  return { due, toldAt, waited, late: Math.max(0, waited - ownerHours) }
}

/** When its owner was told first, by the entries that count; null while nobody has. */
export function ownerToldAt(words: readonly DamageWord[]): string | null {
  const told = inForce(words).filter(({ kind }) => kind === 'owner told')
  return told.map(({ at }) => at).sort()[0] ?? null
}

export interface DamageFacts {
  /** A lender's: its owner is to be told. */
  readonly lent: boolean
  /** Condition reports that belong to it, those of them that are not complete, and the photographs in all. */
  readonly reports: number
  readonly drafts: number
  readonly photographs: number
  readonly words: readonly DamageWord[]
}

export type DamageLackCode = 'no-report' | 'no-photograph' | 'report-draft' | 'owner-not-told' | 'no-action'

export interface DamageLack {
  readonly code: DamageLackCode
  readonly text: string
}

/** What is missing before it can be closed, in the order in which it is done. */
export function damageLacks({ lent, reports, drafts, photographs, words }: DamageFacts): readonly DamageLack[] {
  const kinds = new Set(inForce(words).map(({ kind }) => kind))
  const lacks: DamageLack[] = []
  if (reports === 0)
    lacks.push({
      code: 'no-report',
      text: 'No condition report belongs to it: begin one, or link one, and put its photographs there.',
    })
  else if (photographs === 0)
    lacks.push({ code: 'no-photograph', text: 'Its condition report has no photograph: take them before it is moved.' })
  if (photographs > 0 && drafts > 0) lacks.push({ code: 'report-draft', text: draftSaid(reports, drafts) })
  if (lent && !kinds.has('owner told'))
    lacks.push({ code: 'owner-not-told', text: 'Nobody has told its owner: say when, whom and how.' })
  if (!kinds.has('action')) lacks.push({ code: 'no-action', text: 'Nobody has said what was done about it.' })
  return lacks
}

/** A draft can still lose what it shows; what two have signed cannot. */
function draftSaid(reports: number, drafts: number): string {
  const which =
    reports === 1
      ? 'Its condition report is'
      : drafts === 1
        ? 'One of its condition reports is'
        : `${drafts} of its condition reports are`
  return `${which} still a draft: two sign it and it is made complete, so that no photograph is lost from it.`
}

/**
 * Since when at the earliest it can be closed or opened again: when that was last done, and to close it, when the last
 * thing was done that is on record. Null where nothing bars it.
 */
export function turnedSince(words: readonly DamageWord[], to: 'closed' | 'reopened'): DamageWord | null {
  const counts: readonly WordKind[] =
    to === 'closed' ? ['reopened', 'owner told', 'insurer told', 'action'] : ['closed']
  return inForce(words)
    .filter(({ kind }) => counts.includes(kind))
    .reduce<DamageWord | null>((last, each) => (last === null || each.at > last.at ? each : last), null)
}

/**
 * When it was first moved after it was found, if no photograph is known to be older than that; null where all is as it
 * should be or it has not been moved. `takenAt` null: nobody knows when.
 */
export function movedBeforePhotograph(
  foundAt: string,
  photographs: readonly { readonly takenAt: string | null }[],
  movedAt: readonly string[],
): string | null {
  const first = movedAt.filter(at => at > foundAt).sort()[0]
  if (first === undefined || photographs.some(({ takenAt }) => takenAt !== null && takenAt <= first)) return null
  return first
}
