/**
 * What a loan says alike of several works is told once. The rule it keeps: laid open, it is what was told of each, and
 * what was settled of one stays settled.
 */
import type { Finding } from '../contract/shared.ts'

/** A finding of one work, by its loan. */
export interface LoanFinding {
  /** Its subject is the work. */
  readonly finding: Finding
  readonly loan: string
  readonly called: string
  /** The sentence of several, given how many: `5 works`. */
  readonly ofSeveral: (works: string) => string
}

/**
 * One finding for those of one loan that have the same code, the same figures and the same sentence, in the place of the
 * first; its subject is the loan, and `works` are those it is told of. What stops a hand stays with its work.
 */
export function grouped(all: readonly LoanFinding[]): Finding[] {
  const groups = Map.groupBy(all, ({ finding: { severity, code, subject, figures }, loan, ofSeveral }) =>
    JSON.stringify([severity, code, loan, figures, ofSeveral(''), severity === 'settle' ? '' : subject.id]),
  )
  return [...groups.values()].flatMap((found): Finding[] => {
    const [first] = found
    if (first === undefined || found.length === 1) return found.map(({ finding }) => finding)
    const { severity, code, figures } = first.finding
    const works = found.map(({ finding, called }) => ({ id: finding.subject.id, called, text: finding.text }))
    const text = first.ofSeveral(`${works.length} works`)
    return [{ severity, code, subject: { kind: 'loan', id: first.loan }, text, figures, works }]
  })
}

/** The same with each work by itself. */
export function laidOpen(findings: readonly Finding[]): Finding[] {
  return findings.flatMap(({ works, ...found }) =>
    works === undefined ? [found] : works.map(({ id, text }) => ({ ...found, subject: { kind: 'work', id }, text })),
  )
}
