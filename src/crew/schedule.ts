/**
 * Who does what when: tasks given to teams in the order of their importance as soon as what they wait for is done, the
 * teams are free and the lift is. List scheduling (Graham 1966): never worse than twice the best where every task needs
 * one team and no lift. The rule it keeps: no team and no lift is in two places, nothing begins before what it waits for.
 */

/** `finish` is what is left at a work that hangs: level, lock, check. */
export const taskKinds = ['set out', 'hang', 'finish', 'labels', 'light'] as const
export type TaskKind = (typeof taskKinds)[number]

export interface Task {
  readonly id: string
  readonly minutes: number
  /** How many teams it takes at once, 1 or more; more than there are counts as all of them. */
  readonly teams: number
  /** Tasks that must be done before. Ids that are no task are left out. */
  readonly after: readonly string[]
  /** A thing of which there are only some, such as a lift. */
  readonly equipment: string | null
}

export interface Slot {
  readonly id: string
  readonly start: number
  readonly end: number
  /** Teams by number, from 1. */
  readonly teams: readonly number[]
}

export interface Schedule {
  /** In the order in which they begin. */
  readonly slots: readonly Slot[]
  /** Minutes until the last is done. */
  readonly makespan: number
  /** Minutes in which a team waits, all teams together, until the last is done. */
  readonly idle: number
  readonly idleByTeam: readonly number[]
  /** Tasks that wait for one another in a ring: they are done in the given order at the end. */
  readonly rings: readonly string[]
}

/**
 * Tasks in the order of their importance. `equipment` says how many of each thing there are; what it does not name is
 * there once.
 */
export function schedule(tasks: readonly Task[], teams: number, equipment: ReadonlyMap<string, number>): Schedule {
  const known = new Set(tasks.map(task => task.id))
  const waiting = [...tasks]
  const done = new Map<string, number>()
  const freeAt = Array.from({ length: teams }, () => 0)
  const busy = Array.from({ length: teams }, () => 0)
  const inUse: { readonly equipment: string; readonly until: number }[] = []
  const slots: Slot[] = []
  const rings: string[] = []
  let now = 0
  /** The most important task that can begin. One that only lacks teams keeps them for itself: heavy works go first. */
  function nextTask(from: readonly Task[], free: number): Task | undefined {
    for (const task of from) {
      if (!task.after.every(id => !known.has(id) || (done.get(id) ?? Number.POSITIVE_INFINITY) <= now)) continue
      if (task.equipment !== null) {
        const used = inUse.filter(each => each.equipment === task.equipment && each.until > now).length
        if (used >= (equipment.get(task.equipment) ?? 1)) continue
      }
      return free >= Math.min(task.teams, teams) ? task : undefined
    }
    return undefined
  }
  while (waiting.length > 0) {
    const free = freeAt.filter(each => each <= now).length
    const task = nextTask(waiting, free)
    if (task === undefined) {
      const next = nextMoment(now, [...done.values(), ...freeAt])
      if (next !== null) {
        now = next
        continue
      }
      // Nothing runs and nothing can begin: what is left waits for itself.
      for (const left of waiting) rings.push(left.id)
      for (const left of waiting) known.delete(left.id)
      continue
    }
    waiting.splice(waiting.indexOf(task), 1)
    const end = now + task.minutes
    const taken: number[] = []
    for (let team = 0; team < teams && taken.length < Math.min(task.teams, teams); team++) {
      if ((freeAt[team] ?? 0) > now) continue
      freeAt[team] = end
      busy[team] = (busy[team] ?? 0) + task.minutes
      taken.push(team + 1)
    }
    if (task.equipment !== null) inUse.push({ equipment: task.equipment, until: end })
    done.set(task.id, end)
    slots.push({ id: task.id, start: now, end, teams: taken })
  }
  const makespan = slots.reduce((last, slot) => Math.max(last, slot.end), 0)
  const idleByTeam = busy.map(minutes => makespan - minutes)
  return { slots, makespan, idle: idleByTeam.reduce((sum, each) => sum + each, 0), idleByTeam, rings }
}

function nextMoment(now: number, moments: readonly number[]): number | null {
  let next: number | null = null
  for (const moment of moments) if (moment > now && (next === null || moment < next)) next = moment
  return next
}
