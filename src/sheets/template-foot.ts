/**
 * The foot of a template's sheet: a bar to check that the printer kept the size, what the template is of, how the
 * sheets go together, and a map with this sheet in it.
 */

import { INCH } from '../hang/physics.ts'
import { figure } from './figures.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import type { Sketch } from './sketch.ts'
import type { TemplateQuestion } from './template.ts'
import type { TemplateMark } from './template-drawing.ts'
import { type Tile, type Tiling, templateMargin } from './tiles.ts'

export interface FootQuestion {
  readonly question: TemplateQuestion
  readonly marks: readonly TemplateMark[]
  readonly page: { readonly width: number; readonly height: number }
  readonly tile: Tile
  readonly tiling: Tiling
  /** Sheets that are printed; the others are empty. */
  readonly names: ReadonlySet<string>
  readonly at: number
  readonly of: number
}

/** Length of the bar along the foot and up the side. */
export const barLength = 100

export function drawTemplateFoot(sketch: Sketch, foot: FootQuestion): void {
  const { page, tile, tiling, question, at, of } = foot
  const { left, right } = templateMargin
  const y = page.height - templateMargin.foot + 6
  bar(sketch, left, y, question)
  const mapWidth = map(sketch, page.width - right, y - 3, foot)
  const from = left + barLength + 6
  const room = page.width - right - mapWidth - 5 - from
  const { called, place, time, by } = question.heading
  const sheet = `sheet ${tile.name}, ${at + 1} of ${of}`
  const size = sizeWithin(called, 'strong', 4.2, room, sketch.measure)
  sketch.text('called', from, y + 1, size, 'strong', called)
  const under = [sheet, place, time, by].filter(text => text !== '').join(' · ')
  sketch.text('sheet', from, y + 5.2, sizeWithin(under, 'plain', 2.8, room, sketch.measure), 'plain', under)
  const { datum } = question.answer
  const lineShown = tiling.tiles.some(each => each.bottom <= datum && datum <= each.top)
  const how = [
    `Print at 100 %, not fitted to the page: the bars measure 100 mm and 4 in.`,
    ...(of > 1 ? ['Lay the frame of each sheet on the dashed line of the one before, cross on cross.'] : []),
    lineShown
      ? 'Tape it up with its level line on the wall’s and the middle upright.'
      : 'Tape it up level, at the heights that stand beside the marks.',
    'Look for pipes and cables before drilling.',
  ].join(' ')
  wrap(how, 'plain', 2.4, room, sketch.measure).forEach((line, index) => {
    sketch.text(`how ${index}`, from, y + 9 + index * 2.9, 2.4, 'plain', line, { colour: ink.ink2 })
  })
}

/** 100 mm along the foot with every 10 mm, 4 in under it with every inch, and 100 mm up the side. */
function bar(sketch: Sketch, x: number, y: number, question: TemplateQuestion): void {
  sketch.line(x, y, x + barLength, y, 0.3)
  for (let mm = 0; mm <= barLength; mm += 10) sketch.line(x + mm, y, x + mm, y - (mm % 50 === 0 ? 3 : 2), 0.2)
  sketch.text('bar', x + barLength / 2, y + 4, 2.8, 'plain', '100 mm', { anchor: 'middle' })
  const under = y + 9
  sketch.line(x, under, x + 4 * INCH, under, 0.3)
  for (let inch = 0; inch <= 4; inch++) sketch.line(x + inch * INCH, under, x + inch * INCH, under - 2, 0.2)
  sketch.text('bar in', x + 2 * INCH, under + 4, 2.8, 'plain', '4 in', { anchor: 'middle' })
  const side = templateMargin.left - 4
  const top = templateMargin.top + 5
  sketch.line(side, top, side, top + barLength, 0.3)
  for (let mm = 0; mm <= barLength; mm += 10) sketch.line(side, top + mm, side - 1.5, top + mm, 0.2)
  sketch.text('bar side', side - 2, top + barLength / 2, 2.6, 'plain', '100 mm', { anchor: 'middle', upright: true })
  const { between } = question.answer.printed
  if (between === null) return
  const apart = figure(between, question.units)
  sketch.text('between', x, under + 9, 2.8, 'plain', `outer marks ${apart.main} apart (${apart.other})`)
}

/** The sheets as they lie together, this one filled, those that are not printed only dashed. Answers its width. */
function map(sketch: Sketch, right: number, top: number, { tile, tiling, names, page }: FootQuestion): number {
  const { left, right: r, top: t, foot } = templateMargin
  const shape = (page.height - t - foot) / (page.width - left - r)
  const height = Math.min(20, 8 * tiling.rows, (36 * shape * tiling.rows) / tiling.columns)
  const cell = { h: height / tiling.rows, w: height / tiling.rows / shape }
  const width = cell.w * tiling.columns
  for (const each of tiling.tiles) {
    const x = right - width + each.column * cell.w
    const y = top + each.row * cell.h
    const here = each.name === tile.name
    sketch.add({
      kind: 'rect',
      x,
      y,
      w: cell.w,
      h: cell.h,
      stroke: ink.ink2,
      width: 0.15,
      ...(here ? { fill: ink.ink2 } : {}),
      ...(names.has(each.name) ? {} : { dash: [0.6, 0.6] as const }),
    })
    const size = Math.min(2.6, cell.h * 0.6, cell.w * 0.4)
    if (size < 1.2) continue
    sketch.text(`map ${each.name}`, x + cell.w / 2, y + cell.h / 2 + size * 0.35, size, 'plain', each.name, {
      anchor: 'middle',
      colour: here ? ink.paper : ink.ink2,
    })
  }
  return width
}
