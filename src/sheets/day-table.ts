/**
 * The crew's days as a table: what each team does when, from the morning of its day. It is the plan as the screen draws
 * it, without what is set aside on top, so that whoever holds it sees what comes next, not when it must be done.
 */
import type { CrewPlanAnswer } from '../contract/areas/crew-shape.ts'
import { EMPTY, numberCell, type TableSheet, textCell, withoutEmptyColumns } from './columns.ts'
import { number, type TableHead, text, workCells, workColumns } from './crew-columns.ts'

type Task = CrewPlanAnswer['tasks'][number]

const words = {
  'set out': 'set the wall out',
  hang: 'hang',
  finish: 'level, lock, check',
  labels: 'labels of the wall',
  light: 'light on the wall',
} as const satisfies Record<Task['kind'], string>

export function daySheets({ exhibitionTitle, lines }: TableHead, plan: CrewPlanAnswer): readonly TableSheet[] {
  const works = new Map(plan.works.map(work => [work.placement, work]))
  const minutesADay = plan.crew.hours * 60
  const dayOf = (task: Task) => Math.floor(task.start / minutesADay + 1e-9) + 1
  const each = plan.tasks
    .flatMap(task => task.teams.map(team => ({ task, team, day: dayOf(task) })))
    .sort((a, b) => a.day - b.day || a.team - b.team || a.task.start - b.task.start)
  const percent = Math.round(plan.crew.contingency * 1000) / 10
  return [
    withoutEmptyColumns({
      name: 'Days',
      title: `${exhibitionTitle}: the days, team by team`,
      lines: [
        ...lines,
        `Teams of two, ${plan.crew.hours} hours a day. Times count from the morning; nothing is set aside in them: plan ${percent} % on top.`,
        ...(each.length === 0 ? ['Nothing is left to do.'] : []),
      ],
      grouped: true,
      columns: [
        text('team', 'Day and team', 14),
        text('begins', 'Begins', 7),
        number('minutes', 'Minutes', 8),
        text('what', 'What', 18),
        ...workColumns,
        number('people', 'People'),
        text('with', 'Together with', 10),
        text('tick', 'Done', 7),
      ],
      rows: each.map(({ task, team, day }) => {
        const work = works.get(task.placement ?? '')
        const others = task.teams.filter(one => one !== team)
        return [
          textCell(`Day ${day}, team ${team}`),
          textCell(clock(task.start - (day - 1) * minutesADay)),
          numberCell(Math.round(task.minutes)),
          textCell(words[task.kind]),
          ...workCells(work ?? { faceName: task.faceName, running: '', number: '', title: '' }),
          numberCell(work?.people ?? null),
          textCell(others.length === 0 ? '' : `team ${others.join(', ')}`),
          EMPTY,
        ]
      }),
    }),
  ]
}

/** `2:07` into the day. */
function clock(minutes: number): string {
  const whole = Math.round(minutes)
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}
