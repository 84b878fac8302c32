/**
 * Terms of people: in whose hands a work may be, and that the lender's courier is there. The rule it keeps: of whoever
 * the record does not name nothing is told to hold.
 */
import { plainWords } from '../../checklist/plain-text.ts'
import { daySaid } from '../../light/day.ts'
import { asked, broken, holds, type LentWork, type LoanPeople, type TermTold, unknown } from './planned.ts'
import type { Term } from './term.ts'

const nobody: LoanPeople = { contacts: [], moves: [], signed: [] }

/** Names as people write them one after the other. */
export const namesIn = (text: string): string[] =>
  text
    .split(/[,;&\n]|\s(?:and|with)\s/u)
    .map(each => each.trim())
    .filter(each => each !== '')

const listed = (names: readonly string[]) => [...new Set(names)].join(' and ')

/** Whoever signs for the lender is of the lender's own people. */
const lenders = new Set(['courier', 'lender'])

/** Everybody on record who hung, moved or examined it, against the names of the term and those whose role in the loan it names. */
export function handlingTerm({ choice }: Term, { hung, people }: LentWork): TermTold {
  const { contacts, moves, signed } = people ?? nobody
  const named = new Set(choice.split(/[,;\n]/u).map(plainWords))
  for (const { name, role } of contacts) if (named.has(plainWords(role))) named.add(plainWords(name))
  const acts = [
    { said: 'It was hung by', names: hung?.hands ?? [] },
    ...moves.map(each => ({ said: `On ${daySaid(each.day)} it was moved by`, names: namesIn(each.people) })),
    ...signed
      .filter(({ role }) => !lenders.has(role))
      .map(each => ({ said: `On ${daySaid(each.day)} its condition report was signed by`, names: [each.name] })),
  ]
  const hands = acts.flatMap(({ names }) => names)
  if (hands.length === 0) return unknown('Nobody is on record who moved, hung or examined it.')
  const stranger = (name: string) => !named.has(plainWords(name))
  const others = [...new Set(hands.filter(stranger))]
  if (others.length === 0) return holds(`It was in the hands of ${listed(hands)}.`)
  const text = acts.flatMap(({ said, names }) => {
    const found = names.filter(stranger)
    return found.length === 0 ? [] : [`${said} ${listed(found)}, whom the agreement does not name.`]
  })
  return broken(text.join(' '), { by: others.join(', ') })
}

interface Act {
  readonly days: readonly string[]
  readonly names: readonly string[]
}

/** When it was put on a wall, and by whom; null before that. */
function hanging({ hung }: LentWork, { moves }: LoanPeople): Act | null {
  const put = moves.filter(({ onWall }) => onWall)
  const days = [...(hung?.hungOn ?? []), ...put.map(({ day }) => day)]
  const names = [...(hung?.hands ?? []), ...put.flatMap(each => namesIn(each.people))]
  return days.length === 0 ? null : { days, names }
}

/** The last time that it went from a wall to somewhere else; null before that. */
function takingDown({ moves }: LoanPeople): Act | null {
  const last = moves.findLastIndex(({ onWall }, at) => !onWall && moves[at - 1]?.onWall === true)
  const move = moves[last]
  return move === undefined ? null : { days: [move.day], names: namesIn(move.people) }
}

/** On record are a tick, a movement, and a signature of the same day; who stood by without any of them a person tells. */
export function courierTerm({ choice }: Term, work: LentWork): TermTold {
  const people = work.people ?? nobody
  const couriers = people.contacts.filter(({ role }) => plainWords(role).includes('courier')).map(({ name }) => name)
  if (couriers.length === 0)
    return broken('Nobody among the people of the loan is its courier: write who comes, with the role “courier”.')
  const down = choice === 'taking-down'
  const act = down ? takingDown(people) : hanging(work, people)
  if (act === null)
    return unknown(`${listed(couriers)} comes for the lender; it ${down ? 'was not taken down' : 'does not hang'} yet.`)
  const known = new Set(couriers.map(plainWords))
  const seen = [
    ...act.names,
    ...people.signed.filter(({ day }) => act.days.includes(day)).map(({ name }) => name),
  ].find(name => known.has(plainWords(name)))
  const when = `when it was ${down ? 'taken down' : 'hung'} on ${daySaid(act.days.at(-1) ?? '')}`
  return seen === undefined
    ? asked(`No record names ${listed(couriers)} ${when}: who was there confirms it.`)
    : holds(`${seen} is on record ${when}.`)
}
