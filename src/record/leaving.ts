/**
 * The end of a show, work by work: what is done before a work goes, what comes next and what stands in the way. It reads
 * the records alone; nothing here is ticked a second time. Order of the steps: common practice, no source (the registrar
 * looks at each work before it is wrapped; it goes back in the crate that it came in).
 */
export const leavingSteps = ['off its wall', 'looked at', 'packed', 'gone', 'receipt back'] as const
export type LeavingStep = (typeof leavingSteps)[number]

/** What the records say of one work of a show. Moments are ISO 8601 in UTC. */
export interface LeavingFacts {
  /** A lender's: it goes back. A work of the house goes to its store. */
  readonly lent: boolean
  /** Said to hang, and moved nowhere since. */
  readonly hangs: boolean
  /** Said to be locked. */
  readonly locked: boolean
  /** Its last complete incoming report was made then. */
  readonly cameAt: string | null
  /** Its last outgoing report: whether it is complete, and what it lacks. */
  readonly outgoing: { readonly at: string; readonly complete: boolean } | null
  /** What that report found against the incoming one; null where the two cannot be compared. */
  readonly found: { readonly new: number; readonly grown: number } | null
  /** References of records of damage that are not closed. */
  readonly damage: readonly string[]
  /** Of those that were closed, what its outgoing report found being known by then. */
  readonly settled: readonly string[]
  /** The crate that it came in, and the one that it lies in. */
  readonly cameIn: string | null
  readonly liesIn: string | null
  /** Where the record has it: nowhere, in the building, in a vehicle, at an address outside. */
  readonly place: 'nowhere' | 'here' | 'on the way' | 'outside'
  /** Its owner has acknowledged that it is back. */
  readonly acknowledged: boolean
}

export type LackCode =
  | 'nowhere'
  | 'locked'
  | 'no-report'
  | 'not-signed'
  | 'changed'
  | 'damage'
  | 'other-crate'
  | 'left-without-report'
  | 'no-receipt'

export interface Leaving {
  /** By step; one that this work does not need is left out. */
  readonly steps: readonly { readonly step: LeavingStep; readonly done: boolean }[]
  /** The first that is not done; null where all are. */
  readonly next: LeavingStep | null
  /** What is to be said about it, the gravest first. */
  readonly lacks: readonly { readonly code: LackCode; readonly stops: boolean; readonly text: string }[]
}

/** What is done, what is next, what stands in the way. `stops`: it may not go before this is settled. */
export function leavingOf(facts: LeavingFacts): Leaving {
  const { lent, hangs, outgoing, cameAt, liesIn, place } = facts
  // An outgoing report of an earlier stay says nothing of this one.
  const report = outgoing !== null && (cameAt === null || outgoing.at >= cameAt) ? outgoing : null
  const gone = place === 'outside' || place === 'on the way'
  const done: Readonly<Record<LeavingStep, boolean>> = {
    // Of what nobody knows where it is nobody knows that it is down.
    'off its wall': !hangs && place !== 'nowhere',
    'looked at': report?.complete ?? false,
    packed: gone || liesIn !== null,
    gone,
    'receipt back': facts.acknowledged,
  }
  const steps = leavingSteps
    .filter(step => lent || step === 'off its wall' || step === 'looked at')
    .map(step => ({ step, done: done[step] }))
  const lacks = [...stopsOf(facts, report), ...says(facts, report, gone)]
  return { steps, next: steps.find(each => !each.done)?.step ?? null, lacks }
}

type Lack = Leaving['lacks'][number]

function stopsOf({ found, damage, settled }: LeavingFacts, report: LeavingFacts['outgoing']): Lack[] {
  const lacks: Lack[] = []
  if (damage.length > 0)
    lacks.push({
      code: 'damage',
      stops: true,
      text: `Damage ${damage.join(', ')} is not closed: it stays until it is.`,
    })
  const { new: fresh, grown } = report === null ? { new: 0, grown: 0 } : (found ?? { new: 0, grown: 0 })
  if (damage.length === 0 && fresh + grown > 0) {
    const changed = [fresh > 0 ? `${fresh} new` : '', grown > 0 ? `${grown} grown` : ''].filter(each => each !== '')
    const known = settled.length > 0
    lacks.push({
      code: 'changed',
      stops: !known,
      text: `${changed.join(' and ')} since it came: ${known ? `damage ${settled.join(', ')} is on record and closed.` : 'keep it here, record the damage and tell its owner.'}`,
    })
  }
  return lacks
}

function says(facts: LeavingFacts, report: LeavingFacts['outgoing'], gone: boolean): Lack[] {
  const { lent, hangs, locked, cameIn, liesIn, place, acknowledged } = facts
  const lacks: Lack[] = []
  const say = (code: LackCode, text: string) => lacks.push({ code, stops: false, text })
  if (place === 'nowhere') say('nowhere', 'No movement of it is on record: nobody can say where it is.')
  if (gone && lent && report?.complete !== true)
    say('left-without-report', 'It left without a complete outgoing report: nobody can say how it was when it went.')
  if (hangs && locked) say('locked', 'It is locked: open it with its own tool before it is lifted.')
  if (!hangs && !gone && place !== 'nowhere' && report === null && lent)
    say('no-report', 'Its outgoing report is made before it is wrapped.')
  if (report !== null && !report.complete)
    say('not-signed', 'Its outgoing report is a draft: two sign it before it is packed.')
  if (!gone && liesIn !== null && cameIn !== null && liesIn !== cameIn)
    say('other-crate', 'It lies in another crate than it came in.')
  if (gone && lent && !acknowledged) say('no-receipt', 'Nobody has acknowledged that it is back.')
  return lacks
}

/** What came in a crate against what lies in it, by the keys of works. */
export interface CrateReckoned {
  readonly crate: string
  /** Came in it and lies elsewhere. */
  readonly missing: readonly string[]
  /** Lies in it and came otherwise. */
  readonly strange: readonly string[]
  readonly inIt: readonly string[]
}

/** Crates by key with what came and what lies in each; of works without either nothing is said. */
export function cratesReckoned(
  works: readonly { readonly work: string; readonly cameIn: string | null; readonly liesIn: string | null }[],
): readonly CrateReckoned[] {
  const crates = new Set(works.flatMap(({ cameIn, liesIn }) => [cameIn, liesIn].filter(each => each !== null)))
  return [...crates].map(crate => {
    const of = (keep: (work: (typeof works)[number]) => boolean) => works.filter(keep).map(({ work }) => work)
    return {
      crate,
      inIt: of(each => each.liesIn === crate),
      missing: of(each => each.cameIn === crate && each.liesIn !== crate),
      strange: of(each => each.liesIn === crate && each.cameIn !== crate),
    }
  })
}
