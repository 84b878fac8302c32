/** What stands beside a row's marks in words: the working, proved line by line, and what the fixings bear. */
import type { MarksAnswer, WorkingLine } from '../hang/marks-shape.ts'
import { figure, massText, type Units } from './figures.ts'
import { figureLines } from './wall-others.ts'

export interface WorkingText {
  readonly text: string
  /** For the line that proves another: whether the two agree. */
  readonly agrees: boolean | null
  /** The same with a line for each side, for where one line does not hold it; empty where there is one side only. */
  readonly sides: readonly WorkingText[]
}

/** The share of each fixing beside what it is rated for, and what is left when one goes. */
export interface LoadText {
  readonly text: string
  /** Null where a rating is not known. */
  readonly holds: boolean | null
}

/** Lines that a technician checks by; positions that the row shows anyway are left out. */
const leftOut = /^(from-line|left-edge|floor-|x-right)/

export function workingOf(answer: MarksAnswer, units: Units): readonly WorkingText[] {
  function agrees(key: string): boolean | null {
    if (key === 'set-right')
      return answer.secondRoute.filter(route => route.side === 'set').every(route => route.agrees)
    if (!key.startsWith('from-below')) return null
    const side = key.replace(/^from-below-?/, '')
    return answer.secondRoute.filter(route => side === '' || route.side === side).every(route => route.agrees)
  }
  const all = answer.working.filter(line => !leftOut.test(line.key))
  const lines = all.flatMap(line => {
    const stem = /^(.+)-right$/.exec(line.key)?.[1]
    if (stem !== undefined && all.some(({ key }) => key === `${stem}-left`)) return []
    const right = all.find(({ key }) => key === line.key.replace(/-left$/, '-right') && key !== line.key)
    const one = (each: WorkingLine): WorkingText => ({
      text: oneSide(each, units),
      agrees: agrees(each.key),
      sides: [],
    })
    if (right === undefined) return [one(line)]
    const sides = [one(line), one(right)]
    const both = agrees(line.key) === null ? null : sides.every(each => each.agrees)
    return [{ text: bothSides(line, right, units), agrees: both, sides }]
  })
  const more = figureLines(answer, units).map((text): WorkingText => ({ text, agrees: null, sides: [] }))
  return answer.cleat === null ? [...lines, ...more] : [...lines, ...more, screwsOf(answer.cleat, units)]
}

function oneSide({ label, mm, in: inches }: WorkingLine, { unit }: Units): string {
  const { expression, value } = unit === 'in' ? inches : mm
  return `${label} ${expression} = ${value}`
}

/** Both sides in one line: what the right one begins like the left is not written again. */
function bothSides(line: WorkingLine, right: WorkingLine, { unit }: Units): string {
  const of = (each: WorkingLine) => (unit === 'in' ? each.in : each.mm)
  const { expression, value } = of(line)
  const [mine, theirs] = [expression.split(' '), of(right).expression.split(' ')]
  let alike = 0
  while (alike < theirs.length && mine[alike] === theirs[alike]) alike++
  // A sum goes on with its sign.
  while (alike > 0 && !/^[+−]$/.test(theirs[alike] ?? '')) alike--
  const rest = alike === 0 ? of(right).expression : `… ${theirs.slice(alike).join(' ')}`
  // The sum itself says whether it is above or below.
  const label = line.label.replace(/, left$/, '').replace(/ (above|below) the bearing point$/, '')
  return `${label} ${expression} = ${value} left, ${rest} = ${of(right).value} right`
}

/** Screws of a cleat's wall part, each place once. */
function screwsOf({ screws }: NonNullable<MarksAnswer['cleat']>, units: Units): WorkingText {
  const places = [...new Set(screws.map(screw => figure(screw.printed, units).main))]
  const each = places.length < screws.length ? `, ${screws.length / places.length} at each` : ''
  return { text: `screws of the wall part at ${places.join(' · ')}${each}`, agrees: null, sides: [] }
}

export function loadOf({ loads, marks }: MarksAnswer, { unit }: Units): LoadText | null {
  // What stands puts its load on the floor; its findings say so.
  if (marks.every(mark => mark.on === 'floor')) return null
  if (loads === null) return { text: 'Not weighed: nobody can say what it holds.', holds: null }
  const worst = loads.shares.reduce((a, b) => (b.neededKg > a.neededKg ? b : a))
  const bare = (kg: number) => massText(kg, unit, false)
  const rated =
    worst.ratedKg === null ? `${unit === 'in' ? 'lb' : 'kg'}, rating not known` : `of ${massText(worst.ratedKg, unit)}`
  const each = `${marks.length === 1 ? 'carries' : 'each'} ${bare(worst.shareKg)} × ${loads.houseFactor} = ${bare(worst.neededKg)} ${rated}`
  const gone = loads.oneGone
  const rest =
    gone === null
      ? 'one fixing only'
      : `one gone ${bare(gone.wholeKg)}${gone.leftKg === null ? '' : ` of ${bare(gone.leftKg)}`}`
  const verdict = loads.holds === null ? 'not known' : loads.holds ? 'holds' : 'DOES NOT HOLD'
  return { text: `${each} · ${rest}: ${verdict}`, holds: loads.holds }
}
