/** The order up with its tags, the order down, and the walls afterwards. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { needsEquipment } from '../../../src/crew/handling.ts'
import { comingDown } from '../../../src/crew/hanging-order.ts'
import { timeOf } from '../../../src/crew/minutes.ts'
import { type Hole, patchOf } from '../../../src/crew/patch.ts'
import { peopleFor } from '../../../src/crew/plan.ts'
import { type CrewWork, holesOfWork, partsOf } from '../../../src/crew/show.ts'
import { wallCalled } from '../rooms/called.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'
import type { Wishes } from '../sheets/wishes.ts'
import { rows } from '../sql.ts'
import { planOf } from './plan.ts'
import { calledWork, crewShow, faceNameOf, stockedFixings } from './show.ts'

interface MadeHole extends Hole {
  readonly face: string
  readonly placement: string | null
  readonly filled: 0 | 1
}

export function orders(
  reading: Reading,
  { exhibition }: Received<'crew.orders'>,
  wishes: Wishes = {},
): Output<'crew.orders'> {
  const { db } = reading
  const show = crewShow(reading, exhibition, wishes)
  const { order, before, findings } = planOf(reading, show)
  const byId = new Map(show.works.map(work => [work.placed.placement, work]))
  const tags = new Map(order.map((id, index) => [id, index + 1]))
  const library = stockedFixings(db)
  const tagsOf = (ids: readonly string[]) => ids.flatMap(id => tags.get(id) ?? []).sort((a, b) => a - b)
  const inOrder = (ids: readonly string[]) =>
    ids.flatMap(id => {
      const work = byId.get(id)
      return work === undefined ? [] : [{ id, work, common: common(work, tags.get(id) ?? 0) }]
    })
  const patches = patchesOf(reading, exhibition, show.works)
  const perHole = timeOf(show.times, 'patch').minutes
  const timed = patches.map(each => ({ ...each, minutes: each.count * perHole }))
  const sum = (of: (each: (typeof timed)[number]) => number) => timed.reduce((total, each) => total + of(each), 0)
  return {
    hanging: inOrder(order).map(({ id, work, common }) => ({
      ...common,
      class: work.handling.class,
      access: work.access,
      after: tagsOf(before.filter(each => each.last === id).map(each => each.first)),
      state: work.placed.state,
    })),
    down: inOrder(comingDown(order)).map(({ id, work, common }) => ({
      ...common,
      after: tagsOf(before.filter(each => each.first === id).map(each => each.last)),
      ...locksOf(work, library),
      method: work.answer?.methodName ?? '',
      steps: work.answer?.comesDown ?? [],
    })),
    patches: timed,
    total: {
      made: sum(each => each.made),
      planned: sum(each => each.planned),
      filled: sum(each => each.filled),
      count: sum(each => each.count),
      fillerMl: sum(each => each.fillerMl),
      paintM2: sum(each => each.paintM2),
      minutes: sum(each => each.minutes),
    },
    findings: [...findings],
  }
}

function common(work: CrewWork, tag: number) {
  const { handling, equipment } = work
  return {
    ...calledWork(work),
    parts: partsOf(work).map(({ placed: { work: id, running, number, title } }) => ({
      work: id,
      running,
      number,
      title,
    })),
    tag,
    people: peopleFor(work),
    equipment: needsEquipment(handling) ? (equipment?.name ?? handling.class) : '',
  }
}

/**
 * What keeps a work when it hangs, and the tools that free it: as the placement says, the library, the method. Of a set,
 * what keeps each part.
 */
function locksOf({ hung }: CrewWork, library: ReturnType<typeof stockedFixings>) {
  const each = hung.map(({ answer, placed }) => {
    const keeping = answer?.marks.filter(mark => mark.does === 'keeps') ?? []
    const names = new Set(keeping.map(mark => mark.fixing.name))
    const known = library.filter(fixing => names.has(fixing.name) && fixing.tool !== '').map(fixing => fixing.tool)
    const tools = known.length > 0 ? known : (answer?.locks.map(lock => lock.tool) ?? [])
    return { locks: keeping.length, tools: placed.lockTool === '' ? tools : [placed.lockTool] }
  })
  return {
    locks: each.reduce((sum, { locks }) => sum + locks, 0),
    tool: [...new Set(each.flatMap(({ tools }) => tools))].join(', '),
  }
}

/** What is to patch on each wall, in the order of the walls: holes as they were made, else as they are planned. */
function patchesOf({ db }: Pick<Reading, 'db'>, exhibition: string, works: readonly CrewWork[]) {
  const made = rows<MadeHole>(
    db,
    `SELECT mark.face, mark.placement, mark.x, mark.y, fixing_kind.shank AS diameter, fixing_kind.length AS depth,
      mark.filled_at <> '' AS filled
     FROM mark LEFT JOIN fixing_kind ON fixing_kind.id = mark.fixing
     WHERE mark.exhibition = :exhibition AND mark.state = 'drilled' ORDER BY mark.face, mark.x, mark.id`,
    { exhibition },
  )
  const walls = new Map(
    rows<{ face: string; name: string; length: number; height: number }>(
      db,
      `SELECT face.id AS face, room.name || ', ' || ${wallCalled} AS name, wall.length, wall.height
       FROM face JOIN wall ON wall.id = face.wall JOIN room ON room.id = wall.room ORDER BY face.id`,
    ).map(wall => [wall.face, wall]),
  )
  const side = ruleNumber(db, 'patchSide')
  const onFace = Map.groupBy(works, work => work.elevation.wall.face)
  const faces = [...new Set([...onFace.keys(), ...made.map(each => each.face)])]
  return faces.flatMap(face => {
    const wall = walls.get(face)
    if (wall === undefined) return []
    const here = made.filter(each => each.face === face)
    const open = here.filter(each => each.filled === 0)
    const planned = (onFace.get(face) ?? []).flatMap(work => stillPlanned(work, here))
    if (here.length === 0 && planned.length === 0) return []
    const first = onFace.get(face)?.[0]
    return [
      {
        face,
        faceName: first === undefined ? wall.name : faceNameOf(first.elevation),
        made: open.length,
        planned: planned.length,
        filled: here.length - open.length,
        ...patchOf([...open, ...planned], side, wall),
      },
    ]
  })
}

/** Nearer than this a made hole is the planned one. mm. */
const SAME_HOLE = 3

/** Holes of a work that are planned and not made: as many as are left, those that no made one stands in for first. */
function stillPlanned(work: CrewWork, made: readonly MadeHole[]): readonly Hole[] {
  const own = made.filter(each => each.placement === work.placed.placement)
  const planned = holesOfWork(work)
  const free = planned.filter(hole => !own.some(each => Math.hypot(each.x - hole.x, each.y - hole.y) <= SAME_HOLE))
  const fixings = new Map(
    work.hung.flatMap(({ placed: { fixing } }) => (fixing === null ? [] : [[fixing.name, fixing]])),
  )
  return free.slice(0, Math.max(0, planned.length - own.length)).map(({ x, y, fixing: name }) => ({
    x,
    y,
    diameter: fixings.get(name)?.shank ?? null,
    depth: fixings.get(name)?.length ?? null,
  }))
}
