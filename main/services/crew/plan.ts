/** The crew's plan of a show, and the lifting limit that needs no show. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { handsAt, liftingLimit } from '../../../src/crew/lifting.ts'
import { liftingDays, liftingFindings } from '../../../src/crew/lifting-days.ts'
import { crewPlan, peopleFor } from '../../../src/crew/plan.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'
import { type CrewShow, calledWork, crewShow, faceNameOf } from './show.ts'

export function lifting(input: Received<'crew.lifting'>): Output<'crew.lifting'> {
  const system = input.system ?? 'metric'
  const origin = handsAt(input.origin, 'origin', system)
  return liftingLimit({
    mass: input.mass,
    origin,
    destination: input.destination === undefined ? origin : handsAt(input.destination, 'destination', system),
    perMinute: input.perMinute ?? 0.2,
    duration: input.duration ?? 'short',
    coupling: input.coupling ?? 'fair',
    people: input.people ?? 1,
    system,
    from: input.from ?? 'formula',
  })
}

/** The pure plan of a show as the catalogue has it. */
export function planOf(reading: Pick<Reading, 'db'>, show: CrewShow) {
  return crewPlan({
    works: show.works,
    times: show.times,
    teams: show.crew.teams,
    hoursADay: show.crew.hours,
    contingency: show.crew.contingency,
    liftOn: ruleNumber(reading.db, 'liftOn'),
    counts: new Map(show.equipment.map(each => [each.id, each.count])),
    say: show.say,
  })
}

export function plan(reading: Reading, { exhibition }: Received<'crew.plan'>): Output<'crew.plan'> {
  const show = crewShow(reading, exhibition)
  const made = planOf(reading, show)
  const byId = new Map(show.works.map(work => [work.placed.placement, work]))
  const slots = new Map(made.schedule.slots.map(slot => [slot.id, slot]))
  const tasks = new Map(made.tasks.map(task => [task.id, task]))
  const names = new Map(show.works.map(({ elevation }) => [elevation.wall.face, faceNameOf(elevation)]))
  const before = Map.groupBy(made.before, each => each.last)
  const lifting = liftingDays({
    works: show.works,
    slots: made.schedule.slots,
    minutesADay: show.crew.hours * 60,
    people: peopleFor,
    system: show.system,
  })
  return {
    crew: show.crew,
    times: [...show.times],
    equipment: [...show.equipment],
    works: made.order.flatMap((id, index) => {
      const work = byId.get(id)
      if (work === undefined) return []
      const slot = slots.get(id) ?? { start: 0, end: 0, teams: [] }
      return [
        {
          ...calledWork(work),
          tag: index + 1,
          state: work.placed.state,
          mass: work.placed.mass,
          method: work.placed.back?.method ?? null,
          class: work.handling.class,
          why: work.handling.why,
          people: peopleFor(work),
          equipment:
            work.equipment !== null && tasks.get(id)?.equipment === work.equipment.id ? work.equipment.id : null,
          access: work.access,
          minutes: slot.end - slot.start,
          start: slot.start,
          end: slot.end,
          teams: slot.teams,
          after:
            work.placed.state !== 'planned'
              ? []
              : (before.get(id) ?? []).map(({ first, why, gap }) => ({ placement: first, why, gap })),
        },
      ]
    }),
    tasks: made.schedule.slots.flatMap(slot => {
      const task = tasks.get(slot.id)
      if (task === undefined) return []
      return [
        {
          kind: task.kind,
          face: task.face,
          faceName: names.get(task.face) ?? '',
          placement: task.placement,
          minutes: task.minutes,
          start: slot.start,
          end: slot.end,
          teams: slot.teams,
        },
      ]
    }),
    lifting: [...lifting],
    makespan: made.schedule.makespan,
    idle: made.schedule.idle,
    idleByTeam: made.schedule.idleByTeam,
    teamMinutes: made.teamMinutes,
    allHandsMinutes: made.allHandsMinutes,
    plainMinutes: made.estimate.plainMinutes,
    leastMinutes: made.leastMinutes,
    mostMinutes: made.mostMinutes,
    elapsedMinutes: made.estimate.elapsedMinutes,
    days: made.estimate.days,
    findings: [...made.findings, ...liftingFindings(lifting, exhibition, id => byId.get(id)?.called ?? id)],
  }
}
