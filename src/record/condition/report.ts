/**
 * What a condition report says, and when it is complete: every finding has a word, a place, an age and a severity, and
 * two different people have signed the same contents in two different roles. One signature proves little (common
 * practice, no source).
 */
import { isPlaced, type Shape, type Side } from './shape.ts'
import { type Body, faceOfSide } from './sides.ts'

/** `incoming` when a work arrives, `outgoing` before it is packed, `check` in between. */
export const reportKinds = ['incoming', 'check', 'outgoing'] as const
export type ReportKind = (typeof reportKinds)[number]

/** Whether the examiner takes it to be older than this report; `unsure` says so rather than guessing. */
export const ages = ['old', 'new', 'unsure'] as const
export type Age = (typeof ages)[number]

/** From the least to the most serious. */
export const severities = ['slight', 'marked', 'severe'] as const
export type Severity = (typeof severities)[number]

/** Whether it will stay as it is if nobody touches it. */
export const stabilities = ['stable', 'unstable', 'unsure'] as const
export type Stability = (typeof stabilities)[number]

export const roles = ['registrar', 'courier', 'conservator', 'lender', 'technician'] as const
export type Role = (typeof roles)[number]

/** A field that is not said yet is empty. */
export interface ConditionFinding extends Shape {
  readonly id: string
  readonly side: Side
  /** As it is numbered in its report, from 1. */
  readonly number: number
  readonly term: string
  readonly word: string
  readonly age: Age | ''
  readonly severity: Severity | ''
  readonly stable: Stability | ''
  /** The finding of an earlier report that a person says it goes on from. */
  readonly follows: string | null
}

export interface Signature {
  readonly role: Role
  readonly name: string
  /** The hash of what was signed. */
  readonly content: string
}

export interface Lack {
  readonly code:
    | 'no-examiner'
    | 'nothing-said'
    | 'no-word'
    | 'no-place'
    | 'no-age'
    | 'no-severity'
    | 'goes-on-twice'
    | 'one-person'
    | 'signatures'
  readonly finding: string | null
  readonly text: string
}

interface Said extends Body {
  readonly examiner: string
  readonly note: string
}

/** What the contents still lack; the first thing first. Signatures are told by `lacksSignatures`. */
export function lacksOf(report: Said, findings: readonly ConditionFinding[]): Lack[] {
  const lacks: Lack[] = []
  const say = (code: Lack['code'], text: string, finding: string | null = null) => lacks.push({ code, finding, text })
  if (report.examiner.trim() === '') say('no-examiner', 'Say who examined it.')
  if (findings.length === 0 && report.note.trim() === '') {
    say('nothing-said', 'No finding is marked. If nothing was found, say so in the note.')
  }
  const goneOn = new Map<string, number>()
  for (const each of findings) {
    const { id, number, follows } = each
    if (each.word.trim() === '') say('no-word', `${number} has no word: say what it is.`, id)
    const face = faceOfSide(report, each.side)
    if (face === null || !isPlaced(each, face)) say('no-place', `${number} has no place on the work: mark it.`, id)
    if (each.age === '') say('no-age', `${number}: say whether it is old or new, or that you are unsure.`, id)
    if (each.severity === '') say('no-severity', `${number}: say how serious it is.`, id)
    if (follows === null) continue
    const first = goneOn.get(follows)
    if (first === undefined) goneOn.set(follows, number)
    else say('goes-on-twice', `${first} and ${number} go on from the same earlier finding: one of them is another.`, id)
  }
  return lacks
}

const asOne = (name: string) => name.trim().replace(/\s+/g, ' ').toLocaleLowerCase('en')

/** The signatures that count: of each role the last, and only under what the report says now. */
export function signaturesInForce<S extends Signature>(signatures: readonly S[], content: string): S[] {
  const last = new Map<Role, S>()
  for (const each of signatures) last.set(each.role, each)
  return [...last.values()].filter(each => each.content === content && each.name.trim() !== '')
}

/** What is missing of two signatures; null where two different people have signed this in different roles. */
export function lacksSignatures(signatures: readonly Signature[], content: string): Lack | null {
  const inForce = signaturesInForce(signatures, content)
  const say = (code: Lack['code'], text: string): Lack => ({ code, finding: null, text })
  if (new Set(inForce.map(({ name }) => asOne(name))).size > 1) return null
  const [only] = inForce
  if (inForce.length > 1) {
    return say(
      'one-person',
      `${only?.name} signed in ${inForce.length} roles. The second signature is another person’s.`,
    )
  }
  const gone = signatures.some(each => each.content !== content)
  const changed = gone ? ' What was signed before was changed since, so that signature no longer counts.' : ''
  if (only === undefined) return say('signatures', `Nobody has signed this. It takes two people.${changed}`)
  return say('signatures', `Signed by ${only.name}, ${only.role}, alone. A second person signs too.${changed}`)
}

/** The whole as one word: as serious as the most serious finding (so Spectrum's Condition); empty where nothing is said. */
export function overall(findings: readonly Pick<ConditionFinding, 'severity'>[]): Severity | '' {
  return severities.findLast(severity => findings.some(each => each.severity === severity)) ?? ''
}
