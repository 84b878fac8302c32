/** Terms of how a work is made up and hung: glazing, frame, size and mass as hung, lock, height, barrier. */
import { asksPerson } from './asked.ts'
import { asked, broken, holds, type LentWork, type TermTold, unknown } from './planned.ts'
import { massBoth, type Say } from './said.ts'
import type { Term } from './term.ts'

export function glazingTerm({ choice }: Term, { glazing }: LentWork): TermTold {
  if (glazing === '') return unknown('Nobody said whether and how it is glazed.')
  const is = glazing === 'none' ? 'It is not glazed' : `It is glazed with ${glazing}`
  const good = choice === 'any' ? glazing !== 'none' : glazing === choice
  return good ? holds(`${is}.`, { glazing }) : broken(`${is}.`, { glazing })
}

/** It hangs in its frame where the size that hangs is that of the frame. */
export function framingTerm({ choice }: Term, { part, glazing }: LentWork): TermTold {
  if (choice === 'glazing-stays') {
    if (glazing === '') return unknown('Nobody said whether and how it is glazed.')
    if (glazing === 'none') return broken('It is not glazed.', { glazing })
    return asked(`It is glazed with ${glazing}; that this is the glazing it came with a named person confirms.`)
  }
  if (part === null) return unknown('No size of it is known.')
  const framed = part === 'framed'
  const is = framed
    ? 'The size it hangs by is that of its frame'
    : `The size it hangs by is that of its ${part}, without a frame`
  if (framed && choice === 'frame-stays')
    return asked(`${is}; that this is the frame it came in a named person confirms.`)
  return framed === (choice !== 'none') ? holds(`${is}.`, { part }) : broken(`${is}.`, { part })
}

const sides = {
  'hung-width': ['width', 'wide'],
  'hung-height': ['height', 'high'],
  'hung-depth': ['depth', 'deep'],
} as const

/** How large it may be as it hangs, frame and all. mm */
export function sizeTerm({ kind, high }: Term & { readonly kind: keyof typeof sides }, { size }: LentWork, say: Say) {
  const [side, word] = sides[kind]
  const is = size[side]
  if (is === null) return unknown(`Its ${side} as hung is not known.`)
  const figures = { most: high, is: Math.round(is) }
  // Rounded as a tape reads it.
  return high !== null && is > high + 0.5
    ? broken(`As hung it is ${say(is)} ${word}, ${say(is - high)} too much.`, figures)
    : holds(`As hung it is ${say(is)} ${word}.`, figures)
}

/** kg */
export function massTerm({ high }: Term, { mass }: LentWork): TermTold {
  if (mass === null) return unknown('What it weighs is not known.')
  const figures = { most: high, is: mass }
  return high !== null && mass > high
    ? broken(`It weighs ${massBoth(mass)}, ${massBoth(mass - high)} too much.`, figures)
    : holds(`It weighs ${massBoth(mass)}.`, figures)
}

/** These hold the work so that it is opened with a tool of its own. */
const locked = new Set(['security-hangers', 'case'])

export function fixingTerm({ choice }: Term, { hung }: LentWork): TermTold {
  if (hung === null) return unknown('It stands on no wall yet.')
  const { wall, method, kept } = hung
  if (choice === '' && (kept || (method !== null && locked.has(method)))) return holds(`On ${wall} a lock keeps it.`)
  if (method === null) return unknown('Nobody has measured its back: how it hangs is not known.')
  if (choice === '')
    return broken(`On ${wall} nothing locks it: choose a fixing that does, or a lock besides.`, { method })
  const by = `On ${wall} it hangs by ${method.replaceAll('-', ' ')}.`
  return method === choice ? holds(by, { method }) : broken(by, { method })
}

/** Out of a visitor's reach: in a case, or behind a barrier that covers its whole width. */
export function securityTerm(term: Term, work: LentWork, say: Say): TermTold {
  const { hung } = work
  if (asksPerson(term)) return asked('No plan tells it: a named person confirms it.')
  if (term.choice === 'locked') return fixingTerm({ ...term, choice: '' }, work)
  if (hung === null) return unknown('It stands on no wall yet.')
  const { wall, method } = hung
  if (method === 'case') return holds(`On ${wall} it stands in a case.`)
  if (term.choice === 'out-of-reach') {
    const barrier = barrierTerm({ ...term, low: 0 }, work, say)
    if (barrier.state !== 'broken') return barrier
    return broken(`${barrier.text} Nor is it in a case.`, barrier.figures)
  }
  if (method === null) return unknown('Nobody has measured its back: whether it is in a case is not known.')
  return broken(`On ${wall} it is in no case: it hangs by ${method.replaceAll('-', ' ')}.`, { method })
}

/** Edges above the floor under the work. mm */
export function heightTerm({ low, high }: Term, { hung }: LentWork, say: Say): TermTold {
  if (hung === null) return unknown('It stands on no wall yet.')
  if (hung.lower === null || hung.upper === null) return unknown('No size of it is known.')
  const { lower, upper } = hung
  const figures = { low, high, lower: Math.round(lower), upper: Math.round(upper) }
  // Rounded as a tape reads it: a tenth of a millimetre breaks no agreement.
  if (low !== null && lower < low - 0.5)
    return broken(
      `On ${hung.wall} its lower edge is ${say(lower)} above the floor, ${say(low - lower)} too low.`,
      figures,
    )
  if (high !== null && upper > high + 0.5)
    return broken(
      `On ${hung.wall} its upper edge is ${say(upper)} above the floor, ${say(upper - high)} too high.`,
      figures,
    )
  return holds(`On ${hung.wall} its edges are ${say(lower)} and ${say(upper)} above the floor.`, figures)
}

/** What stands further off than twice the distance asked for, or 2 m, belongs to another wall. mm */
const farthest = (asked: number) => Math.max(2 * asked, 2000)

/** A barrier before the whole width of the work, its near edge far enough from the wall. mm */
export function barrierTerm({ low }: Term, { hung }: LentWork, say: Say): TermTold {
  const asked = low ?? 0
  if (hung === null) return unknown('It stands on no wall yet.')
  if (hung.span === null) return unknown('No size of it is known.')
  const [from, to] = hung.span
  const before = hung.barriers
    .filter(each => each.away <= farthest(asked) && each.to > from && each.from < to)
    .sort((a, b) => a.from - b.from)
  if (before.length === 0) return broken(`No barrier stands before it on ${hung.wall}.`, { asked, away: null })
  const away = Math.min(...before.map(each => each.away))
  const figures = { asked, away: Math.round(away) }
  if (away < asked - 0.5)
    return broken(`The barrier stands ${say(away)} before ${hung.wall}, ${say(asked - away)} too near.`, figures)
  let reached = from
  let open = 0
  for (const each of before) {
    open += Math.max(0, each.from - reached)
    reached = Math.max(reached, each.to)
  }
  open += Math.max(0, to - reached)
  if (open > 1)
    return broken(`The barrier leaves ${say(open)} of its width open on ${hung.wall}.`, {
      ...figures,
      open: Math.round(open),
    })
  return holds(`A barrier stands ${say(away)} before ${hung.wall}.`, figures)
}
