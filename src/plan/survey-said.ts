/** What an adjustment says, in sentences: how it closes, which number to look at again, what to measure next. */
import { crossesSaid } from '../model/outline.ts'
import type { Adjusted } from './adjust.ts'
import type { Candidate } from './adjust-next.ts'
import type { Problem } from './adjust-problems.ts'
import type { Suspect } from './adjust-suspect.ts'
import { cornerLetter, type Measure, measureName } from './survey.ts'

type Say = (mm: number) => string
type Named = Pick<Measure, 'key' | 'kind' | 'from' | 'to'>

interface Told extends Pick<Adjusted, 'closes' | 'gap' | 'suspects' | 'bySquare' | 'open' | 'redundancy' | 'problems'> {
  readonly measures: readonly Named[]
  /** Names of the walls in order. */
  readonly walls: readonly string[]
}

function inMillimetres(mm: number): string {
  return `${mm.toFixed(mm < 10 ? 1 : 0)} mm`
}

/** How the measures close and what to do about it. */
export function surveyNote(told: Told, say: Say = inMillimetres): string {
  const problems = told.problems.map(problem => problemSaid(problem, told, say)).filter(one => one !== '')
  if (problems.length > 0) return problems.join(' ')
  const suspect = suspectSaid(told, say)
  if (!told.closes) return `The measures fail to close by ${say(told.gap)}. ${suspect}`
  // A gap that is said as 0 is none.
  const closes = `The measures close ${say(told.gap) === say(0) ? 'exactly' : `within ${say(told.gap)}`}.`
  if (suspect !== '') return `${closes} ${suspect}`
  if (told.open > 0) return 'The measures do not fix the outline yet; corners nobody measured are drawn square.'
  if (told.redundancy === 0) return 'The measures just fix the outline; nothing checks them yet.'
  return closes
}

/** `B–D was read 340 mm long; measure it again.` Empty where nothing stands out. */
export function suspectSaid(
  { suspects, bySquare, measures }: Pick<Told, 'suspects' | 'bySquare' | 'measures'>,
  say: Say = inMillimetres,
): string {
  const [first, ...others] = suspects
  if (first === undefined) return ''
  const read = readSaid(first, measures, say)
  if (others.length === 0) return `${capital(read)}; measure it again.`
  if (bySquare) {
    return `${capital(read)}, if the corners nobody measured are square; measure it again first. By the lengths alone it could be ${listed(others, measures)}.`
  }
  const all = suspects.map(one => readSaid(one, measures, say))
  if (suspects.length > 3) {
    return `One of these was misread, and the measures cannot tell which: ${suspects.map(one => nameOf(one.key, measures)).join(', ')}. Measure them again, ${nameOf(first.key, measures)} first.`
  }
  return `${capital(all.join(', or '))}; the measures cannot tell which. Measure ${suspects.length === 2 ? 'both' : 'all three'} again.`
}

function listed(suspects: readonly Suspect[], measures: readonly Named[]): string {
  const names = suspects.map(({ key }) => nameOf(key, measures))
  return names.length === 1 ? `${names[0]}` : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`
}

export function nameOf(key: string, measures: readonly Named[]): string {
  const measure = measures.find(one => one.key === key)
  return measure === undefined ? 'a measure' : measureName(measure)
}

/** `B–D was read 340 mm long`, `corner C was read 3.2° too wide`. */
export function readSaid({ key, over }: Suspect, measures: readonly Named[], say: Say): string {
  const name = nameOf(key, measures)
  const angle = measures.find(one => one.key === key)?.kind === 'angle'
  if (angle) return `${name} was read ${Math.abs(over).toFixed(1)}° too ${over > 0 ? 'wide' : 'narrow'}`
  return `${name} was read ${say(Math.abs(over))} ${over > 0 ? 'long' : 'short'}`
}

export function problemSaid(problem: Problem, { measures, walls }: Pick<Told, 'measures' | 'walls'>, say: Say): string {
  switch (problem.code) {
    case 'no-size':
      return `${capital(nameOf(problem.key, measures))} has no length that a room can have; it is left out.`
    case 'no-angle':
      return `${capital(nameOf(problem.key, measures))} is no angle of a corner; it is left out.`
    case 'no-corner':
      return 'A measure between corners that this room does not have is left out.'
    case 'impossible': {
      const way = problem.by.map(key => nameOf(key, measures)).join(' and ')
      return `${nameOf(problem.key, measures)} is ${say(problem.over)} longer than ${way} together, which no room can have. Measure them again.`
    }
    case 'crosses': {
      const [a, b] = problem.sides
      const name = (side: number) => walls[side] || `wall ${side + 1}`
      return crossesSaid(name(a), name(b))
    }
    case 'unsettled':
      return 'The measures contradict each other too much to draw the room by them.'
  }
}

/** `Measure A–C next: …`; empty where nothing more is needed. */
export function nextSaid(next: Candidate | null, open: number): string {
  if (next === null) return ''
  const what = next.kind === 'angle' ? `the angle at ${cornerLetter(next.from)}` : measureName(next)
  if (open > 1) return `Measure ${what} next; ${open} measures are wanting before the outline is fixed.`
  if (open === 1) return `Measure ${what} next; it fixes the outline.`
  return `Measure ${what} next; it checks what nothing checks yet.`
}

function capital(text: string): string {
  return text === '' ? text : `${text[0]?.toUpperCase()}${text.slice(1)}`
}
