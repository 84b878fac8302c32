/**
 * The air of a room as a page: relative humidity above temperature over one time, limits as dashed lines, what is
 * beyond them hatched. All of it is lines, in ink that a copier keeps.
 */
import { reduced } from '../climate/reduce.ts'
import { gapsOf, type Series } from '../climate/series.ts'
import { fahrenheit } from '../measure/temperature.ts'
import type { ClimateQuestion } from './climate-question.ts'
import { limitsSaid, summarySaid } from './climate-words.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import { type Page, papers, type TextMeasure } from './shapes.ts'
import { newSketch, type Sketch } from './sketch.ts'

const margin = 10
/** Of the rules at the left and the limits at the right, mm. */
const [left, right] = [22, 18]
/** A pen drawn on paper is no finer: so many columns a mm. */
const columnsPerMm = 4
const hatchStep = 1.6

interface Panel {
  readonly of: 'humidity' | 'celsius'
  readonly called: string
  readonly top: number
  readonly high: number
  readonly step: number
  readonly low: number | null
  readonly most: number | null
  readonly onRule: (value: number) => string
}

/** The page, sheet 1 of `count`. */
export function climateChart(question: ClimateQuestion, measure: TextMeasure, count: number): Page {
  const size = papers[question.paper]
  const sketch = newSketch(measure)
  const room = size.width - 2 * margin
  const page = `sheet 1 of ${count}`
  const taken = sketch.text('page', size.width - margin, margin + 4, 3, 'plain', page, { anchor: 'end' })
  const title = `Climate of ${question.room}, ${question.period}`
  sketch.text('title', margin, margin + 5, sizeWithin(title, 'strong', 5.5, room - taken - 6, measure), 'strong', title)
  const lines = [question.made, limitsSaid(question), ...summarySaid(question)].flatMap(line =>
    wrap(line, 'plain', 3, room, measure),
  )
  lines.forEach((line, at) => {
    sketch.text(`line ${at}`, margin, margin + 10.5 + at * 4, 3, 'plain', line, { colour: ink.ink2 })
  })
  const top = margin + 16 + lines.length * 4
  const foot = size.height - margin - 6
  const tall = (foot - top - 14) * 0.58
  const { limits, imperial } = question
  const panels: readonly Panel[] = [
    {
      ...{ of: 'humidity', called: 'relative humidity, %', top, high: tall, step: 10 },
      ...{ low: limits.humidityLow, most: limits.humidityHigh, onRule: String },
    },
    {
      ...{ of: 'celsius', called: `temperature, ${imperial ? '°F' : '°C'}`, top: top + tall + 14, step: 5 },
      ...{ high: foot - top - tall - 14, low: limits.celsiusLow, most: limits.celsiusHigh },
      onRule: value => (imperial ? String(Math.round(fahrenheit(value))) : String(Number(value.toFixed(1)))),
    },
  ]
  for (const panel of panels) drawPanel(sketch, panel, question, size.width)
  drawDays(sketch, panels, question, size.width)
  return { ...size, shapes: sketch.shapes }
}

function scaleOf(question: ClimateQuestion, { of, low, most, step }: Panel): readonly [number, number] {
  const given = [low, most].filter(each => each !== null)
  const all = question.loggers.flatMap(({ told }) => {
    const reach = told[of]
    return reach === null ? [] : [reach.least, reach.most]
  })
  const [least, greatest] = [Math.min(...all, ...given), Math.max(...all, ...given)]
  if (!Number.isFinite(least)) return [0, step]
  return [Math.floor((least - step / 5) / step) * step, Math.ceil((greatest + step / 5) / step) * step]
}

function drawPanel(sketch: Sketch, panel: Panel, question: ClimateQuestion, width: number): void {
  const { of, called, top, high, step, low, most, onRule } = panel
  const { from, until } = question
  const [begin, end] = [margin + left, width - margin - right]
  const scale = scaleOf(question, panel)
  const y = (value: number) => top + high - ((value - scale[0]) / (scale[1] - scale[0])) * high
  const x = (moment: number) => begin + ((moment - from) / (until - from)) * (end - begin)
  sketch.text(`${of} called`, begin, top - 2, 3, 'plain', called, { colour: ink.ink2 })
  for (let value = scale[0]; value <= scale[1] + 1e-9; value += step) {
    sketch.line(begin, y(value), end, y(value), 0.1, ink.line)
    sketch.text(`${of} ${value}`, begin - 2, y(value) + 1, 2.8, 'figure', onRule(value), { anchor: 'end' })
  }
  const areas: [number, number, number, number][] = []
  for (const { told } of question.loggers)
    for (const stretch of told.out) {
      if (!stretch.limit.startsWith(of)) continue
      const [x1, x2] = [x(Date.parse(stretch.from) / 1000), x(Date.parse(stretch.until) / 1000)]
      const wide = Math.max(x1 + 0.4, x2)
      if (stretch.limit.endsWith('High')) areas.push([x1, wide, top, y(most ?? scale[1])])
      else if (stretch.limit.endsWith('Low')) areas.push([x1, wide, y(low ?? scale[0]), top + high])
      // A change too fast has no height of its own: it is hatched along the foot.
      else areas.push([x1, wide, top + high - 2.5, top + high])
    }
  hatch(sketch, areas)
  question.loggers.forEach(({ series }, n) => {
    const path = pathOf(series, of, from, until, Math.round((end - begin) * columnsPerMm), x, y)
    if (path === '') return
    const pen = n % 2 === 0 ? { stroke: ink.ink, width: 0.25 } : { stroke: ink.ink3, width: 0.45 }
    sketch.add({ kind: 'path', d: path, ...pen })
  })
  for (const [word, limit] of [
    ['least', low],
    ['most', most],
  ] as const) {
    if (limit === null) continue
    sketch.add({
      kind: 'line',
      x1: begin,
      y1: y(limit),
      x2: end,
      y2: y(limit),
      width: 0.35,
      colour: ink.ink,
      dash: [2.4, 1],
    })
    sketch.text(`${of} ${word}`, end + 2, y(limit) + 1, 2.8, 'plain', `${word} ${onRule(limit)}`)
  }
  sketch.line(begin, top, begin, top + high, 0.3)
  sketch.line(begin, top + high, end, top + high, 0.3)
}

/** Strokes at 45° through areas (x1, x2, y1, y2), on one grid, so that areas that meet are one hatching. */
function hatch(sketch: Sketch, areas: readonly (readonly [number, number, number, number])[]): void {
  const drawn: string[] = []
  for (const [x1, x2, y1, y2] of areas) {
    if (y2 - y1 < 0.05) continue
    for (let n = Math.ceil((x1 + y1) / hatchStep); n * hatchStep <= x2 + y2; n++) {
      const sum = n * hatchStep
      const [a, b] = [Math.max(x1, sum - y2), Math.min(x2, sum - y1)]
      if (a < b) drawn.push(`M${a.toFixed(2)} ${(sum - a).toFixed(2)}L${b.toFixed(2)} ${(sum - b).toFixed(2)}`)
    }
    // A short one may lie between two strokes.
    if (x2 - x1 < hatchStep) drawn.push(`M${x1.toFixed(2)} ${y1.toFixed(2)}V${y2.toFixed(2)}`)
  }
  if (drawn.length > 0) sketch.add({ kind: 'path', d: drawn.join(''), stroke: ink.settle, width: 0.25 })
}

function pathOf(
  series: Series,
  of: Panel['of'],
  from: number,
  until: number,
  columns: number,
  x: (moment: number) => number,
  y: (value: number) => number,
): string {
  const gaps = gapsOf(series.at)
  const values = series[of].map(each => each ?? Number.NaN)
  let [path, before, gap] = ['', Number.NaN, 0]
  for (const one of reduced(series.at, values, from, until, columns)) {
    while ((gaps[gap]?.until ?? Number.POSITIVE_INFINITY) <= before) gap++
    const apart = Number.isNaN(before) || (gaps[gap]?.from ?? Number.POSITIVE_INFINITY) < one.from
    path += `${apart ? 'M' : 'L'}${x(one.from).toFixed(2)} ${y(one.first).toFixed(2)}`
    if (one.most > one.least) path += `V${y(one.least).toFixed(2)}V${y(one.most).toFixed(2)}`
    path += `L${x(one.until).toFixed(2)} ${y(one.last).toFixed(2)}`
    before = one.until
  }
  return path
}

/** Days along the foot of either panel, as many as have room for their words. */
function drawDays(
  sketch: Sketch,
  panels: readonly Panel[],
  { days, from, until }: ClimateQuestion,
  width: number,
): void {
  const [begin, end] = [margin + left, width - margin - right]
  const x = (moment: number) => begin + ((moment - from) / (until - from)) * (end - begin)
  const most = Math.floor((end - begin) / 24)
  const months = days.filter(day => day.monthBegins)
  const each = [1, 2, 7, 14].find(step => days.length / step <= most)
  const shown =
    each === undefined
      ? months.filter((_, n) => n % Math.ceil(months.length / most) === 0)
      : days.filter((_, n) => n % each === 0)
  for (const { at, words } of shown) {
    if (at < from || at > until) continue
    for (const { top, high } of panels) sketch.line(x(at), top, x(at), top + high, 0.1, ink.line)
    const [upper] = panels
    if (upper === undefined || x(at) > end - 8) continue
    sketch.text(`day ${at}`, x(at), upper.top + upper.high + 4, 2.8, 'plain', words, {
      anchor: 'middle',
      colour: ink.ink2,
    })
  }
}
