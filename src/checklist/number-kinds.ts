/** What the kinds of number are called, and what a doubt about numbers says. */
import type { NumberKind } from '../contract/areas/works-shape.ts'
import type { HeldNumber, NumberDoubt } from './number-doubts.ts'

export const numberKindWords: Readonly<Record<NumberKind, string>> = {
  permanent: 'permanent',
  lender: 'lender’s',
  loan: 'loan',
  entry: 'entry',
  exhibition: 'exhibition',
  former: 'former',
}

/** As in `the loan number of “Nets”`. */
export function kindOfNumber(kind: NumberKind): string {
  return `${numberKindWords[kind]} number`
}

/**
 * The doubt as a sentence beside one of its numbers. `called` names a work; beyond the first other number the rest are
 * counted.
 */
export function doubtSaid(doubt: NumberDoubt, beside: HeldNumber, called: (work: string) => string): string {
  const others = doubt.numbers.filter(one => one.id !== beside.id)
  const other = others.find(one => one.work !== beside.work) ?? others[0]
  if (other === undefined) return ''
  const rest = others.length - 1
  const more = rest === 0 ? '' : `, and of ${rest} more`
  const there = other.work === beside.work
  switch (doubt.code) {
    case 'number-twice':
      return there
        ? 'It stands twice at this work.'
        : `It is the ${kindOfNumber(other.kind)} of ${called(other.work)} too${more}.`
    case 'number-kinds':
      return `It is the ${kindOfNumber(other.kind)} of ${called(other.work)}${more}.`
    case 'number-two':
      return `${other.text} is a permanent number of this work too. The one it has no more is a former number.`
    case 'number-near':
      return `It is nearly ${other.text}, the ${kindOfNumber(other.kind)} of ${called(other.work)}.`
  }
}
