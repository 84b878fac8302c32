/**
 * The crew's days as a drawing: one band a day, one line a team, a bar as long as its work takes. What lasts over the
 * evening is drawn on both days. The rule it keeps: a minute is as long everywhere, and time in which nobody works shows.
 */
import type { CrewPlanAnswer } from '../../src/contract/areas/crew-shape.ts'

type Task = CrewPlanAnswer['tasks'][number]

export const lineHeight = 30
export const dayHead = 26
const dayGap = 22

export interface Bar {
  readonly key: string
  /** Place of its task in the plan. */
  readonly task: number
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /** Goes on from the day before, or on the day after. */
  readonly begun: boolean
  readonly goesOn: boolean
}

export interface Idle {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly minutes: number
}

export interface Day {
  readonly day: number
  readonly y: number
  readonly height: number
  /** Where the working day ends. */
  readonly end: number
  /** Full hours since morning. */
  readonly hours: readonly { readonly x: number; readonly hour: number }[]
}

export interface ScheduleDrawing {
  readonly days: readonly Day[]
  readonly bars: readonly Bar[]
  readonly idle: readonly Idle[]
  readonly height: number
}

interface Question {
  readonly tasks: readonly Task[]
  readonly teams: number
  readonly minutesADay: number
  readonly makespan: number
  /** Where the lines begin and how wide the longest day is. */
  readonly left: number
  readonly width: number
}

export function scheduleDrawing({ tasks, teams, minutesADay, makespan, left, width }: Question): ScheduleDrawing {
  const count = Math.max(1, Math.ceil(makespan / minutesADay - 1e-9))
  const scale = width / Math.min(minutesADay, Math.max(makespan, 60))
  const height = dayHead + teams * lineHeight
  const top = (day: number) => day * (height + dayGap)
  const days = Array.from({ length: count }, (_, day): Day => {
    const minutes = Math.min(minutesADay, makespan - day * minutesADay)
    return {
      day: day + 1,
      y: top(day),
      height,
      end: left + minutes * scale,
      hours: Array.from({ length: Math.floor(minutes / 60 + 1e-9) + 1 }, (_each, hour) => ({
        x: left + hour * 60 * scale,
        hour,
      })),
    }
  })
  /** A span of time cut at the evenings. */
  const cut = (start: number, end: number) =>
    days.flatMap((_, day) => {
      const from = Math.max(start, day * minutesADay)
      const to = Math.min(end, (day + 1) * minutesADay)
      return to - from <= 1e-9 ? [] : [{ day, from, to, x: left + (from - day * minutesADay) * scale }]
    })
  const bars = tasks.flatMap((task, index) =>
    runs(task.teams).flatMap(({ first, lines }) =>
      cut(task.start, task.end).map(
        ({ day, from, to, x }): Bar => ({
          key: `${index} ${first} ${day}`,
          task: index,
          x,
          y: top(day) + dayHead + (first - 1) * lineHeight,
          width: (to - from) * scale,
          height: lines * lineHeight,
          begun: from > task.start,
          goesOn: to < task.end,
        }),
      ),
    ),
  )
  const idle = Array.from({ length: teams }, (_, index) => index + 1).flatMap(team =>
    gaps(
      tasks.filter(task => task.teams.includes(team)),
      makespan,
    ).flatMap(([start, end]) =>
      cut(start, end).map(({ day, from, to, x }) => ({
        x,
        y: top(day) + dayHead + (team - 0.5) * lineHeight,
        width: (to - from) * scale,
        minutes: to - from,
      })),
    ),
  )
  return { days, bars, idle, height: top(count) - dayGap }
}

/** Teams that stand beside one another share a bar: [1, 2, 4] is two. */
function runs(teams: readonly number[]): readonly { readonly first: number; readonly lines: number }[] {
  const made: { first: number; lines: number }[] = []
  for (const team of teams.toSorted((a, b) => a - b)) {
    const last = made.at(-1)
    if (last !== undefined && last.first + last.lines === team) last.lines += 1
    else made.push({ first: team, lines: 1 })
  }
  return made
}

function gaps(tasks: readonly Task[], makespan: number): readonly (readonly [number, number])[] {
  const found: [number, number][] = []
  let free = 0
  for (const { start, end } of tasks.toSorted((a, b) => a.start - b.start)) {
    if (start - free > 1e-6) found.push([free, start])
    free = Math.max(free, end)
  }
  if (makespan - free > 1e-6) found.push([free, makespan])
  return found
}
