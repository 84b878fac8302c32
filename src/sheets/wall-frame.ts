/** What frames every page of a wall sheet: which wall, which revision, which sheet; at the foot the cautions of all. */
import { print } from '../hang/printing.ts'
import { figure, otherUnit, type Units } from './figures.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import type { Sketch } from './sketch.ts'
import type { TableStyle } from './wall-columns.ts'
import { atFoot } from './wall-notes.ts'
import { titleOf, type WallSheetQuestion } from './wall-question.ts'

export const headerHeight = 13
export const footHeight = 11

export const margin = 10

export interface Place {
  readonly at: number
  readonly of: number
  readonly paper: { readonly width: number; readonly height: number }
}

export function drawHeader(
  sketch: Sketch,
  question: WallSheetQuestion,
  { k, units, measure }: TableStyle,
  { at, of, paper }: Place,
): void {
  const { elevation, revision, voids, time, by, set } = question
  const right = paper.width - margin
  const base = margin + 3.5 * k
  const page = `sheet ${(set?.before ?? 0) + at + 1} of ${set?.total ?? of}`
  const above = [elevation.exhibitionTitle, page].filter(text => text !== '').join(' · ')
  const below = [time, by, voidWords(voids, 'wall')].filter(text => text !== '').join(' · ')
  const most = (right - margin) * 0.48
  const aboveSize = sizeWithin(above, 'plain', 3 * k, most, measure)
  const belowSize = sizeWithin(`revision ${revision} · ${below}`, 'plain', 3 * k, most, measure)
  sketch.text('sheet', right, base - 1.2 * k, aboveSize, 'plain', above, { anchor: 'end' })
  const belowWidth = sketch.text('revision time', right, base + 3.2 * k, belowSize, 'plain', ` · ${below}`, {
    anchor: 'end',
  })
  const revisionWidth = sketch.text(
    'revision',
    right - belowWidth,
    base + 3.2 * k,
    belowSize,
    'strong',
    `revision ${revision}`,
    { anchor: 'end' },
  )
  const facts = factsOf(question, units)
  const taken = Math.max(measure.width('plain', aboveSize, above), belowWidth + revisionWidth) + 6 * k
  const room = right - margin - taken
  const title = titleOf(elevation)
  const titleSize = sizeWithin(title, 'strong', 6.2 * k, room * 0.72, measure)
  const titleWidth = sketch.text('title', margin, base + 3 * k, titleSize, 'strong', title)
  const factSize = sizeWithin(facts, 'plain', 2.9 * k, room - titleWidth - 3 * k, measure)
  if (factSize >= 2 * k) sketch.text('wall', margin + titleWidth + 3 * k, base + 3 * k, factSize, 'plain', facts)
  else {
    wrap(facts, 'plain', 2.2 * k, room - titleWidth - 3 * k, measure)
      .slice(0, 3)
      .forEach((line, index) => {
        sketch.text(
          `wall ${index}`,
          margin + titleWidth + 3 * k,
          base + (3 - 2.8 * (1 - index)) * k,
          2.2 * k,
          'plain',
          line,
        )
      })
  }
  const rule = margin - 4 + headerHeight * k - 1.5 * k
  sketch.line(margin, rule, right, rule, 0.5 * k)
}

/** Which prints are no longer good, in words; '' where none. */
export function voidWords(voids: readonly number[], of: 'wall' | 'plan'): string {
  const sorted = [...voids].sort((a, b) => a - b)
  const [first] = sorted
  const last = sorted.at(-1)
  if (first === undefined || last === undefined) return ''
  if (sorted.length === 1) return `revision ${first} of this ${of} is void`
  if (last - first + 1 === sorted.length) return `revisions ${first} to ${last} of this ${of} are void`
  return `revisions ${sorted.join(', ')} of this ${of} are void`
}

function factsOf({ elevation }: WallSheetQuestion, units: Units): string {
  const { wall } = elevation
  const say = (mm: number) => figure(print(mm, units.steps), units).main
  const backing =
    wall.backingFrom === null && wall.backingTo === null
      ? []
      : [
          wall.backingTo === null
            ? `backing from ${say(wall.backingFrom ?? 0)}`
            : `backing ${say(wall.backingFrom ?? 0)} to ${say(wall.backingTo)}`,
        ]
  return [`${say(wall.length)} long`, `${say(wall.height)} high`, wall.wallType, ...backing].join(' · ')
}

export function drawFoot(
  sketch: Sketch,
  question: WallSheetQuestion,
  { k, measure }: TableStyle,
  { paper }: Place,
): void {
  const y = paper.height - margin + 4 - footHeight * k
  const right = paper.width - margin
  sketch.line(margin, y, right, y, 0.3 * k)
  const units = `${question.unit} large, ${otherUnit(question.unit)} small · ticked boxes: done when printed`
  const line = sketch.text('units', right, y + 4 * k, 2.4 * k, 'plain', units, { anchor: 'end' })
  const sign = sketch.text('initials', right, y + 8.4 * k, 2.4 * k, 'plain', 'second check: initials ____________', {
    anchor: 'end',
  })
  const room = right - margin - Math.max(line, sign) - 6 * k
  wrap(atFoot.join(' '), 'plain', 2.2 * k, room, measure).forEach((text, index) => {
    sketch.text(`foot ${index}`, margin, y + (3.4 + 2.9 * index) * k, 2.2 * k, 'plain', text, { colour: ink.ink2 })
  })
}
