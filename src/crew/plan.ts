/**
 * The crew's plan of a show: every work with its people, equipment and minutes in the order in which it hangs, the day
 * cut into what each team does, and the estimate. Walls are set out before their works, labels come when a wall hangs,
 * light after its labels.
 */
import type { Finding } from '../contract/shared.ts'
import { handlingFindings, needsEquipment, type Say, sayMetric } from './handling.ts'
import { type Before, hangingOrder } from './hanging-order.ts'
import { type Estimate, estimate, type StepTime, timeOf } from './minutes.ts'
import { type Schedule, schedule, type Task, type TaskKind } from './schedule.ts'
import { type CrewWork, orderedWork } from './show.ts'

export interface CrewPlanQuestion {
  readonly works: readonly CrewWork[]
  readonly times: readonly StepTime[]
  readonly teams: number
  readonly hoursADay: number
  readonly contingency: number
  readonly liftOn: number
  /** How many of each equipment there are, by id. */
  readonly counts: ReadonlyMap<string, number>
  readonly say?: Say
}

export interface PlannedTask extends Task {
  readonly kind: TaskKind
  readonly face: string
  /** Null for what is done to a whole wall. */
  readonly placement: string | null
}

export interface CrewPlan {
  /** Placements, first to hang first. */
  readonly order: readonly string[]
  readonly before: readonly Before[]
  readonly tasks: readonly PlannedTask[]
  readonly schedule: Schedule
  readonly teamMinutes: number
  readonly allHandsMinutes: number
  readonly estimate: Estimate
  /** The same with every step at its least and at its most, nothing set aside. Minutes. */
  readonly leastMinutes: number
  readonly mostMinutes: number
  readonly findings: readonly Finding[]
}

export function crewPlan(question: CrewPlanQuestion): CrewPlan {
  const { works, teams, times, say = sayMetric } = question
  const byId = new Map(works.map(work => [work.placed.placement, work]))
  const { order, before, against } = hangingOrder(works.map(orderedWork), question)
  const inOrder = order.flatMap(id => byId.get(id) ?? [])
  const tasks = tasksOf(inOrder, before, times)
  const effort = (minutes: (task: PlannedTask) => number) => {
    const shared = tasks.filter(task => task.teams < teams)
    return {
      teamMinutes: shared.reduce((sum, task) => sum + minutes(task) * task.teams, 0),
      allHandsMinutes: tasks.filter(task => task.teams >= teams).reduce((sum, task) => sum + minutes(task), 0),
    }
  }
  const spread = (which: 'least' | 'most') => {
    const at = effort(task => minutesOf(task, byId, times, which))
    return at.teamMinutes / teams + at.allHandsMinutes
  }
  // With one team everything is all hands; the sum is the same.
  const { teamMinutes, allHandsMinutes } = effort(task => task.minutes)
  return {
    order,
    before,
    tasks,
    schedule: schedule(tasks, teams, question.counts),
    teamMinutes,
    allHandsMinutes,
    estimate: estimate({
      teamMinutes,
      allHandsMinutes,
      teams,
      contingency: question.contingency,
      hoursADay: question.hoursADay,
    }),
    leastMinutes: spread('least'),
    mostMinutes: spread('most'),
    findings: [
      ...inOrder.flatMap(work => workFindings(work, teams, say)),
      ...against.map(each => ringFinding(each, byId, say)),
    ],
  }
}

/** Teams of two that a work takes. */
export function teamsFor(people: number): number {
  return Math.max(1, Math.ceil(people / 2))
}

/** People for a work: by its class, and by what its equipment is run by. */
export function peopleFor(work: CrewWork): number {
  return needsEquipment(work.handling)
    ? Math.max(work.handling.people, work.equipment?.people ?? 0)
    : work.handling.people
}

/**
 * What is timed at a work: all of its hanging, or what is left of it. Nothing once it is checked. The parts of a set come
 * one after the other.
 */
export function stepsLeft({ placed, hung }: CrewWork): readonly (string | null)[] {
  const { state } = placed
  if (state === 'planned') return hung.map(part => part.placed.back?.method ?? null)
  const done = { hung: 0, level: 1, locked: 2, checked: 3 }[state]
  return hung.flatMap(({ answer }) => {
    const locks = answer?.marks.some(mark => mark.does === 'keeps') ?? false
    return ['level', 'lock', 'check'].filter((step, index) => index >= done && (step !== 'lock' || locks))
  })
}

function minutesLeft(work: CrewWork, times: readonly StepTime[], which: 'minutes' | 'least' | 'most'): number {
  return stepsLeft(work).reduce((sum, step) => sum + timeOf(times, step)[which], 0)
}

/** Whether `last` still waits: a work that hangs is in nobody's way, but a lock that is open needs its room. */
function waitsFor({ first, why }: Before, byId: ReadonlyMap<string, CrewWork>): boolean {
  const state = byId.get(first)?.placed.state ?? 'planned'
  return state === 'planned' || (why === 'lock-tool' && (state === 'hung' || state === 'level'))
}

/**
 * Works in hanging order, each wall set out right before its first work unless something hangs or is marked there, its
 * labels and light at the end.
 */
function tasksOf(
  works: readonly CrewWork[],
  before: readonly Before[],
  times: readonly StepTime[],
): readonly PlannedTask[] {
  const byId = new Map(works.map(work => [work.placed.placement, work]))
  const waits = Map.groupBy(
    before.filter(each => waitsFor(each, byId)),
    each => each.last,
  )
  const begun = new Set(
    works
      .filter(({ placed, elevation }) => placed.state !== 'planned' || elevation.made.length > 0)
      .map(work => work.elevation.wall.face),
  )
  const seen = new Set<string>()
  const hang = works.flatMap((work): PlannedTask[] => {
    const face = work.elevation.wall.face
    const { placement, state } = work.placed
    const minutes = minutesLeft(work, times, 'minutes')
    if (state !== 'planned') {
      if (stepsLeft(work).length === 0) return []
      return [{ id: placement, kind: 'finish', face, placement, minutes, teams: 1, after: [], equipment: null }]
    }
    const wall: PlannedTask = { ...wallTask('set out', face, timeOf(times, 'first-on-wall').minutes), after: [] }
    const own: PlannedTask = {
      id: placement,
      kind: 'hang',
      face,
      placement,
      minutes,
      teams: teamsFor(peopleFor(work)),
      after: [...(begun.has(face) ? [] : [wall.id]), ...(waits.get(placement) ?? []).map(each => each.first)],
      equipment: needsEquipment(work.handling) ? (work.equipment?.id ?? work.handling.class) : null,
    }
    const first = !seen.has(face) && !begun.has(face)
    seen.add(face)
    return first ? [wall, own] : [own]
  })
  const onWalls = [...Map.groupBy(works, work => work.elevation.wall.face)].flatMap(([face, onFace]) => {
    const labels: PlannedTask = {
      ...wallTask('labels', face, timeOf(times, 'label').minutes * onFace.length),
      after: onFace.map(work => work.placed.placement),
    }
    const light: PlannedTask = {
      ...wallTask('light', face, timeOf(times, 'light').minutes * onFace.length),
      after: [labels.id],
    }
    return [labels, light]
  })
  return [...hang, ...onWalls]
}

function wallTask(kind: TaskKind, face: string, minutes: number): Omit<PlannedTask, 'after'> {
  return { id: `${kind} ${face}`, kind, face, placement: null, minutes, teams: 1, equipment: null }
}

function minutesOf(
  task: PlannedTask,
  works: ReadonlyMap<string, CrewWork>,
  times: readonly StepTime[],
  which: 'least' | 'most',
): number {
  switch (task.kind) {
    case 'set out':
      return timeOf(times, 'first-on-wall')[which]
    case 'hang':
    case 'finish': {
      const work = works.get(task.placement ?? '')
      return work === undefined ? 0 : minutesLeft(work, times, which)
    }
    case 'labels':
    case 'light': {
      const step = timeOf(times, task.kind === 'labels' ? 'label' : 'light')
      // As many works as the minutes in force were summed from.
      return step.minutes === 0 ? 0 : (task.minutes / step.minutes) * step[which]
    }
  }
}

function workFindings(work: CrewWork, teams: number, say: Say): readonly Finding[] {
  const { placed, heaviest, called, handling, equipment } = work
  const subject = { kind: 'placement', id: placed.placement }
  const people = peopleFor(work)
  const found = [
    ...handlingFindings(
      { mass: heaviest.mass, height: heaviest.size?.height ?? null, width: heaviest.size?.width ?? null, called },
      subject,
      handling,
      equipment,
      say,
    ),
  ]
  if (teamsFor(people) > teams) {
    found.push({
      severity: 'stop',
      code: 'too-few-people',
      subject,
      text: `${called} needs ${people} people; the crew has ${teams * 2}. It cannot start without more.`,
      figures: { people, crew: teams * 2 },
    })
  }
  return found
}

function ringFinding({ first, last, why, gap }: Before, works: ReadonlyMap<string, CrewWork>, say: Say): Finding {
  const name = (id: string) => works.get(id)?.called ?? id
  const must =
    why === 'lock-tool'
      ? `${name(first)} must be locked before ${name(last)} hangs beside it, and the other way round`
      : `${name(first)} must be lifted in before ${name(last)}, and after it, since the lock of ${name(last)} needs the room`
  return {
    severity: 'stop',
    code: 'hang-order-ring',
    subject: { kind: 'placement', id: last },
    text: `${must}: give them more than ${say.length(gap)} between.`,
    figures: { gap, other: first },
  }
}
