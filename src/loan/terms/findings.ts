/** Findings of a wall and of loans beside one another: nothing is told twice. */
import type { Finding } from '../../contract/shared.ts'
import { ofAir, type TermKind, termKinds } from './term.ts'

/**
 * Findings of a wall without those of its light that a broken term of the same work says too, in the lender's words and
 * at the same figure or a lower one. `terms` are findings whose subject is a work.
 */
export function withoutSaid(
  wall: readonly Finding[],
  works: readonly { readonly placement: string; readonly work: string }[],
  terms: readonly Finding[],
): Finding[] {
  const lowest = new Map<string, number>()
  for (const { code, subject, figures } of terms) {
    if (code !== 'term-light' || typeof figures.planned !== 'number') continue
    lowest.set(subject.id, Math.min(Number(figures.most), lowest.get(subject.id) ?? Number.POSITIVE_INFINITY))
  }
  if (lowest.size === 0) return [...wall]
  const workOf = new Map(works.map(({ placement, work }) => [placement, work]))
  return wall.filter(({ code, subject, figures }) => {
    const said = lowest.get(workOf.get(subject.id) ?? '')
    return code !== 'light-over-limit' || said === undefined || said > Number(figures.limit)
  })
}

/** What a finding of a term is called. */
export const termCode = (kind: TermKind, state: 'broken' | 'asked') =>
  `term-${kind}${state === 'asked' ? '-asked' : ''}`

/** Whether a wall sheet leaves it out: the air of a room, and what a person is still asked. Nobody at the wall settles it. */
export function isOffSheet({ code }: Finding): boolean {
  return termKinds.some(kind => code === termCode(kind, 'asked') || (ofAir(kind) && code === termCode(kind, 'broken')))
}
