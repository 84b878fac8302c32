/** What the crew's plans look like: who hangs what when, the hardware, the order up and down, what is patched. */
import * as z from 'zod'
import { accessKinds, handlingClasses } from '../../crew/handling.ts'
import { orderReasons } from '../../crew/hanging-order.ts'
import { taskKinds } from '../../crew/schedule.ts'
import { finding, id } from '../shared.ts'
import { placementState } from './walls.ts'

const minutes = z.number().min(0)
export const count = z.int().min(0).max(100_000)

/** Hands in front of the ankles and above the floor, mm; how far the load is turned out of the middle, degrees. */
export const liftPoint = z.strictObject({
  /** Left out, it is estimated from the load's reach. */
  horizontal: z.number().min(0).max(5000).optional(),
  /** How far the load stands out in front of the body, mm. */
  reach: z.number().min(0).max(5000).optional(),
  vertical: z.number().min(0).max(10_000),
  asymmetry: z.number().min(0).max(180).optional(),
})

const multipliers = z.strictObject({
  horizontal: z.number(),
  vertical: z.number(),
  distance: z.number(),
  asymmetry: z.number(),
  frequency: z.number(),
  coupling: z.number(),
})
export const liftLimit = z.strictObject({
  multipliers,
  /** kg or lb, as the system has it. */
  limit: z.number(),
  limitKg: z.number(),
})

export const equipmentRow = z.strictObject({
  id,
  name: z.string(),
  /** As its plate says; null where nobody has said, and then it is not counted on. */
  carriesKg: z.number().nullable(),
  reaches: z.number().nullable(),
  count: z.int(),
  /** Who is needed to run it. */
  people: z.int(),
  note: z.string(),
})

const stepTime = z.strictObject({
  key: z.string(),
  label: z.string(),
  minutes,
  least: minutes,
  most: minutes,
  source: z.string(),
  own: z.boolean(),
})

/** A work of the plan, as people find it. */
const called = {
  placement: id,
  entry: id,
  work: id,
  running: z.string(),
  number: z.string(),
  title: z.string(),
  face: id,
  faceName: z.string(),
} as const

/** Of a set, each part as it hangs: its tag is on its own back. Empty for any other work. */
const parts = z.array(z.strictObject({ work: id, running: z.string(), number: z.string(), title: z.string() }))

const crewFacts = z.strictObject({
  teams: z.int(),
  teamsFrom: z.enum(['house rule', 'this show']),
  hours: z.number(),
  hoursFrom: z.enum(['house rule', 'this show']),
  /** Part of the hardware that is taken along as spare. */
  spare: z.number(),
  spareFrom: z.enum(['house rule', 'this show']),
  /** Part of the estimate that is set aside on top. */
  contingency: z.number(),
})

export const crewPlan = z.strictObject({
  crew: crewFacts,
  times: z.array(stepTime),
  equipment: z.array(equipmentRow),
  /** In the order in which they hang; `tag` is that place, from 1. Minutes from the beginning. */
  works: z.array(
    z.strictObject({
      ...called,
      tag: z.int(),
      state: placementState,
      mass: z.number().nullable(),
      method: z.string().nullable(),
      class: z.enum(handlingClasses),
      /** What makes it so: `heavier than 30 kg`. */
      why: z.array(z.string()).readonly(),
      people: z.int(),
      equipment: id.nullable(),
      /** From what its fixings are reached. */
      access: z.enum(accessKinds).nullable(),
      /** Of what is left to do: none of a work that is checked, which no team and no time is given to. */
      minutes,
      start: minutes,
      end: minutes,
      teams: z.array(z.int()).readonly(),
      after: z.array(z.strictObject({ placement: id, why: z.enum(orderReasons), gap: z.number() })),
    }),
  ),
  /** In the order in which they begin. */
  tasks: z.array(
    z.strictObject({
      /** `finish` is what is left at a work that hangs: level, lock, check. */
      kind: z.enum(taskKinds),
      face: id,
      faceName: z.string(),
      placement: id.nullable(),
      minutes,
      start: minutes,
      end: minutes,
      teams: z.array(z.int()).readonly(),
    }),
  ),
  /** What each team lifts by hand in a day, as the composite lifting index of one of its people. */
  lifting: z.array(
    z.strictObject({
      day: z.int(),
      team: z.int(),
      lifts: z.int(),
      covered: z.int(),
      perMinute: z.number(),
      duration: z.enum(['short', 'moderate', 'long']),
      index: z.number().nullable(),
      most: z.strictObject({ placement: id, index: z.number() }).nullable(),
      beyond: z.array(z.strictObject({ placement: id, why: z.string() })).readonly(),
    }),
  ),
  /** Until the last is done, nothing set aside. */
  makespan: minutes,
  idle: minutes,
  idleByTeam: z.array(minutes).readonly(),
  teamMinutes: minutes,
  allHandsMinutes: minutes,
  /** Team minutes over teams and all hands. */
  plainMinutes: minutes,
  leastMinutes: minutes,
  mostMinutes: minutes,
  /** The day's plan and the estimate, with what is set aside. */
  elapsedMinutes: minutes,
  days: z.number().min(0),
  findings: z.array(finding),
})
export type CrewPlanAnswer = z.output<typeof crewPlan>

export const crewHardware = z.strictObject({
  spare: z.number(),
  lines: z.array(
    z.strictObject({
      what: z.string(),
      fixing: id.nullable(),
      needed: z.int(),
      spare: z.int(),
      /** For each work that needs it, or a tool that each team has once, of which no spare is taken. */
      per: z.enum(['work', 'team']),
      inStock: z.int().nullable(),
      toGet: z.int(),
      bit: z.string(),
      tool: z.string(),
      /** False where it stands in for a fixing that nobody has chosen. */
      chosen: z.boolean(),
      /** Locks are counted twice: here by the marks on the walls. Null for anything else. */
      secondCount: z.int().nullable(),
    }),
  ),
  /** One a wall, with exactly what hangs from it; spares lie apart. */
  boxes: z.array(
    z.strictObject({
      face: id,
      faceName: z.string(),
      lines: z.array(z.strictObject({ what: z.string(), count: z.int(), works: z.int() })).readonly(),
    }),
  ),
  bits: z.array(z.strictObject({ bit: z.string(), fixings: z.array(z.string()).readonly() })),
  locks: z.strictObject({ byWorks: z.int(), byMarks: z.int(), agree: z.boolean() }),
  /** Works whose hardware is not known yet, and why. */
  unknown: z.array(z.strictObject({ ...called, why: z.string() })),
  findings: z.array(finding),
})
export type CrewHardware = z.output<typeof crewHardware>

const patch = {
  /** Holes that were made and are open, and holes that are only planned yet. */
  made: z.int(),
  planned: z.int(),
  filled: z.int(),
  /** Holes to fill: made and planned. */
  count: z.int(),
  fillerMl: z.number(),
  paintM2: z.number(),
  minutes,
} as const

export const crewOrders = z.strictObject({
  /** First to hang first; the tag goes on the back. */
  hanging: z.array(
    z.strictObject({
      ...called,
      parts,
      tag: z.int(),
      people: z.int(),
      class: z.enum(handlingClasses),
      equipment: z.string(),
      access: z.enum(accessKinds).nullable(),
      /** Tags of works that must hang before. */
      after: z.array(z.int()),
      state: placementState,
    }),
  ),
  /** First to come down first, with the same tags. */
  down: z.array(
    z.strictObject({
      ...called,
      parts,
      tag: z.int(),
      people: z.int(),
      equipment: z.string(),
      /** Tags of works that must be down before. */
      after: z.array(z.int()),
      /** How it hangs; empty where nobody has measured its back. */
      method: z.string(),
      locks: z.int(),
      tool: z.string(),
      steps: z.array(z.string()).readonly(),
    }),
  ),
  patches: z.array(z.strictObject({ face: id, faceName: z.string(), ...patch })),
  total: z.strictObject(patch),
  findings: z.array(finding),
})
export type CrewOrders = z.output<typeof crewOrders>
