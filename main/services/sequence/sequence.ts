/** Whether a show fits its walls, and proposals for what hangs where. */
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { floorAt } from '../../../src/hang/wall.ts'
import { capacityOf } from '../../../src/sequence/capacity.ts'
import { outOfOrder } from '../../../src/sequence/out-of-order.ts'
import { type Proposal, propose, usualSteps } from '../../../src/sequence/planner.ts'
import { at, centresIn, type TermWeights } from '../../../src/sequence/problem.ts'
import { stateOf } from '../../../src/sequence/rule-holds.ts'
import { staysOn } from '../../../src/sequence/stretches.ts'
import { middleOn } from '../../../src/sequence/unit-on.ts'
import { orderKept } from '../../../src/sequence/units.ts'
import type { Job, Reading, ServicesOf } from '../service.ts'
import { explain } from './explain.ts'
import { linesOf } from './lines.ts'
import { type Asked, type AskedWork, type Known, knownOf, problemOf, wallsOf } from './question.ts'
import { hungOn } from './ruling.ts'
import { sections } from './sections.ts'
import { take } from './take.ts'
import { countingOf, hungToday, judgedToday, short, shortened } from './told.ts'
import { checkRules } from './under-rules.ts'
import { hungUnits } from './units.ts'

function walls({ db }: Reading, { exhibition }: Received<'sequence.walls'>): Output<'sequence.walls'> {
  const all = wallsOf(db, exhibition)
  return {
    ordered: all.some(({ plan }) => plan.visitorOrder !== null),
    walls: all.map(elevation => {
      const { wall, room, plan, works } = elevation
      const staying = new Set(staysOn(elevation).map(work => work.entry))
      return {
        face: wall.face,
        room: room.name,
        name: wall.name,
        length: wall.length,
        height: wall.height,
        rule: plan.rule,
        centreLine: plan.centreLine,
        eyeFraction: plan.eyeFraction,
        ramp: plan.ramp,
        openings: wall.openings.map(({ x, y, width, height }) => ({ x, y, width, height })),
        works: works.map(({ entry, x, centreY, rule, y }) => ({
          entry,
          x,
          y: centreY,
          stays: staying.has(entry),
          rule,
          own: y,
        })),
      }
    }),
  }
}

function capacity(reading: Reading, { exhibition }: Received<'sequence.capacity'>): Output<'sequence.capacity'> {
  const { question, formed } = knownOf(reading, exhibition)
  const { works, sections, stretches, margin, gap, panel } = question
  const free = stretches.map(({ from, to }) => ({ length: to - from, margin, gap }))
  const within = new Set(formed.flatMap(unit => unit.entries))
  const wanted = [
    ...works
      .filter(work => !work.stays && !within.has(work.entry))
      .map(({ entry, section, width }) => ({ id: entry, section, width })),
    ...formed.map(unit => ({
      id: unit.entries[0] ?? '',
      section: unit.section,
      width: unit.width,
      works: unit.entries.length,
    })),
  ]
  const found = capacityOf(wanted, [...sections.map(({ id }) => id), null], free, panel)
  const titled = found.sections.map(one => ({
    ...one,
    title: sections.find(({ id }) => id === one.section)?.title ?? 'without a section',
  }))
  return {
    there: found.there,
    needed: found.needed,
    short: found.short,
    gap,
    labels: works.filter(work => work.labelled && !work.stays).length,
    stacked: within.size,
    panels: panel > 0 ? found.sections.filter(({ section }) => section !== null).length : 0,
    stretches: stretches.length,
    sections: titled,
    tooWide: works.flatMap(({ entry, title, width }) =>
      width !== null && found.tooWide.includes(entry) ? [{ entry, title, width }] : [],
    ),
    says: inWords(found, titled, stretches.length),
  }
}

function inWords(
  { there, needed, short }: { readonly there: number; readonly needed: number; readonly short: number },
  sections: readonly { readonly title: string; readonly short: number; readonly works: number }[],
  stretches: number,
): string {
  const metres = (mm: number) => `${(mm / 1000).toFixed(1)} m`
  if (sections.every(section => section.works === 0)) return 'The show has no works yet. Bring in a list, or add one.'
  if (stretches === 0) return 'No wall is on the visitor’s way. Draw a room, or put walls into the order.'
  if (short === 0)
    return `The works want ${metres(needed)} of ${metres(there)}: ${metres(there - needed)} are left over.`
  const first = sections.find(section => section.short > 0)
  const where = first === undefined ? '' : ` It runs out in ${first.title}.`
  return `The works want ${metres(needed)}, the walls give ${metres(there)}: ${metres(short)} are missing.${where}`
}

async function proposals(job: Job, input: Received<'sequence.propose'>): Promise<Output<'sequence.propose'>> {
  const known = knownOf(job, input.exhibition)
  const { contradiction } = checkRules(known, known.read.rulings)
  if (contradiction !== null) {
    const details = { rules: contradiction.rules }
    throw new Refusal('rules-contradict', contradiction.says, { field: 'exhibition', details })
  }
  const weights = countingOf(input.weights)
  const asked = problemOf(known, weights)
  const { problem, stretches, unsized } = asked
  if (stretches.length === 0) return noWall(asked)
  const search = propose(problem, { seed: input.seed ?? 1, steps: input.steps ?? usualSteps(problem.works.length) })
  let next = search.next()
  while (next.done !== true) {
    const { step, steps, best, bound: most } = next.value
    job.progress(step, steps, `${(100 * best).toFixed(1)} of at most ${(100 * most).toFixed(1)}`)
    next = search.next()
  }
  const stays = problem.works.filter(work => work.stays !== null).length
  const free = problem.works.flatMap((work, index) => (work.stays === null ? at(asked.members, index) : [])).length
  const { proposals: found, bound } = next.value
  return {
    works: free,
    stays,
    stretches: stretches.length,
    unsized: [...unsized],
    bound: { quality: short(bound.quality), terms: shortened(bound.values) },
    today: today(known, weights),
    proposals: found.map(one => {
      const so = told(asked, one, bound.quality, known.question.works)
      return { ...so, lines: linesOf(known, asked, one.hang), keeps: kept(known, so.faces) }
    }),
  }
}

/** Without a stretch of wall nothing is searched for. */
function noWall({ problem, members, unsized }: Asked): Output<'sequence.propose'> {
  const free = problem.works.flatMap((work, index) => (work.stays === null ? at(members, index) : []))
  const terms = { order: 1, balance: 1, evenness: 1, light: 1, sight: 1, rhythm: 1 }
  return {
    works: free.length,
    stays: problem.works.filter(work => work.stays !== null).length,
    ...{ stretches: 0, unsized: [...unsized], bound: { quality: 1, terms }, today: null, proposals: [] },
  }
}

/** What becomes of each rule in force where a hang is taken whole: with what stays, as the rules themselves have it. */
function kept(known: Known, faces: ReturnType<typeof told>['faces']) {
  const on = new Map(faces.map(({ face, works }) => [face, works] as const))
  const walls = known.question.walls.map(wall => ({
    face: wall.wall.face,
    works: [...staysOn(wall), ...(on.get(wall.wall.face) ?? [])],
  }))
  const hung = hungOn(known, walls)
  return known.read.rulings
    .filter(({ stored, rests }) => rests === '' && stored?.inForce !== false)
    .map(({ rule, says }) => ({ rule: rule.id, says, state: stateOf(rule, hung) }))
}

/** The present hang by the same terms, where it really stands; null for nothing. */
function today(known: Known, weights: TermWeights): Output<'sequence.propose'>['today'] {
  const asked = problemOf(known, weights, hungUnits(known))
  const works = hungToday(asked).flatMap(row => row.flatMap(unit => at(asked.members, unit))).length
  if (works === 0) return null
  const { quality, values } = judgedToday(asked)
  return { quality: short(quality), terms: shortened(values), works }
}

function told({ problem, members, stretches }: Asked, proposal: Proposal, bound: number, all: readonly AskedWork[]) {
  const { way, quality, proved, values, hang, out } = proposal
  const named = (works: readonly number[]) => works.flatMap(work => at(members, work).map(({ entry }) => entry))
  const faces = new Map<string, { entry: string; x: number; y?: number }[]>()
  for (const [bay, works] of hang.entries()) {
    const { elevation } = at(stretches, bay)
    const { face } = elevation.wall
    const centres = centresIn(problem, bay, works)
    const own = works.flatMap((work, index) => {
      const centre = at(centres, index)
      const middle = middleOn(elevation, at(problem.works, work).height, centre)
      return at(members, work).map(({ entry, dx, dy }) => {
        const spot = { entry, x: short(centre + dx) }
        const stands = standsAt(
          elevation,
          all.find(one => one.entry === entry),
          spot.x,
        )
        if (stands !== null) return { ...spot, y: short(stands) }
        return dy === null ? spot : { ...spot, y: short(middle + dy) }
      })
    })
    faces.set(face, [...(faces.get(face) ?? []), ...own])
  }
  return {
    way,
    quality: short(quality),
    gap: short(100 * (bound - quality)),
    proved,
    terms: shortened(values),
    faces: [...faces].filter(([, works]) => works.length > 0).map(([face, works]) => ({ face, works })),
    out: named(out.toSorted((a, b) => a - b)),
    outOfOrder: named(outOfOrder(hang, orderKept(problem))),
  }
}

/** Height of the middle of what stands on a base, whatever line its wall has; null for what hangs. */
function standsAt({ wall }: Elevation, work: AskedWork | undefined, x: number): number | null {
  if (work === undefined || work.base === null || work.height === null) return null
  return floorAt(wall.floor, x) + work.base + work.height / 2
}

export const sequenceServices: ServicesOf<
  | 'sequence.walls'
  | 'sequence.take'
  | 'sequence.sections'
  | 'sequence.capacity'
  | 'sequence.propose'
  | 'sequence.explain'
> = {
  'sequence.walls': walls,
  'sequence.take': take,
  'sequence.sections': sections,
  'sequence.capacity': capacity,
  'sequence.propose': proposals,
  'sequence.explain': explain,
}
