/** Terms of what hangs beside a work, and of what its label says. */
import { plainWords } from '../../checklist/plain-text.ts'
import { worksNamed } from '../../sequence/terms-offered.ts'
import { broken, holds, type LentWork, type TermTold, unknown } from './planned.ts'
import type { Term } from './term.ts'

const nameOf = ({ running, title }: { readonly running: string; readonly title: string }) =>
  running || title || 'a work'

/** Works beside it that are called as the term says: by number, title or maker. */
export function apartTerm({ choice }: Term, { hung }: LentWork): TermTold {
  if (hung === null) return unknown('It stands on no wall yet.')
  const found = choice
    .split(/[,;\n]/u)
    .flatMap(named => worksNamed(named, hung.beside))
    .map(nameOf)
  if (found.length > 0)
    return broken(`On ${hung.wall} it hangs beside ${found.join(' and ')}.`, { beside: found.join(', ') })
  const beside = hung.beside.map(nameOf)
  return holds(
    beside.length === 0
      ? `On ${hung.wall} nothing hangs beside it.`
      : `On ${hung.wall} it hangs beside ${beside.join(' and ')}.`,
  )
}

/** The label as written; where nobody wrote one, the credit line that it will be made of. Capitals and marks do not count. */
export function creditTerm({ choice }: Term, { hung, creditLine }: LentWork): TermTold {
  const wanted = plainWords(choice)
  const label = hung?.label.trim() ?? ''
  if (label !== '')
    return plainWords(label).includes(wanted) ? holds('Its label says so.') : broken('Its label does not say so.')
  if (creditLine.trim() === '') return broken('Neither its label nor its page has a credit line.', { credit: '' })
  const own = `The credit line on its page, which its label is made of, is “${creditLine.trim()}”.`
  return plainWords(creditLine).includes(wanted) ? holds(own) : broken(own, { credit: creditLine })
}
