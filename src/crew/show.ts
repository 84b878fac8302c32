/**
 * The works of a show as the crew sees them: each with its marks or why it has none, its mass and size, how it is
 * lifted. Everything else of the crew is computed from these, so that plan, order and hardware cannot differ.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { MarksAnswer } from '../hang/marks-shape.ts'
import { defaultSteps } from '../hang/printing.ts'
import { calledOn } from '../model/face-findings.ts'
import { rectOf } from '../model/hung-rect.ts'
import { type MarksOrWhy, type MarksStyle, marksOfFace } from '../model/marks-of-face.ts'
import { answersOf } from '../model/marks-of-set.ts'
import { hungOf } from '../model/parts-of-set.ts'
import { toolWorkOf } from '../model/tools-of-work.ts'
import {
  type Access,
  accessTo,
  type Equipment,
  equipmentFor,
  type Handling,
  type HandlingRules,
  handlingOf,
  type Say,
} from './handling.ts'
import type { OrderedWork } from './hanging-order.ts'
import type { HardwareWork, WorkHole } from './hardware.ts'

export interface CrewWork {
  readonly elevation: Elevation
  readonly placed: PlacedWork
  /** Where its face comes on the way from the entrance, from 0. */
  readonly faceOrder: number
  readonly called: string
  readonly answer: MarksAnswer | null
  /** What hands hang, one after the other: the parts of a set, else the work; each with its marks. */
  readonly hung: readonly HungWork[]
  /** The one that is hardest to lift; a team is as large as it wants. */
  readonly heaviest: PlacedWork
  /** Why it has no marks, in words; empty where it has. */
  readonly problem: string
  readonly handling: Handling
  readonly equipment: Equipment | null
  /** From what its highest fixing is reached; null without marks. */
  readonly access: Access | null
}

export interface HungWork {
  readonly placed: PlacedWork
  readonly answer: MarksAnswer | null
}

export interface ShowQuestion {
  /** Faces with works, on the way from the entrance. */
  readonly elevations: readonly Elevation[]
  readonly rules: HandlingRules
  readonly equipment: readonly Equipment[]
  readonly style?: MarksStyle
  readonly say?: Say
}

export function crewWorks({ elevations, rules, equipment, style, say }: ShowQuestion): readonly CrewWork[] {
  return elevations.flatMap((elevation, faceOrder) => {
    const marks = marksOfFace(elevation, style ?? { unit: 'mm', steps: defaultSteps })
    return elevation.works.map((placed): CrewWork => {
      const found = marks.get(placed.placement)
      const answer = found !== undefined && 'answer' in found ? found.answer : null
      const hung = hungWorks(placed, found)
      const heaviest = heaviestOf(hung, rules, say)
      const height = heaviest.size?.height ?? null
      const topAt = placed.size === null ? null : placed.centreY + placed.size.height / 2
      const highest = answer === null ? null : highestOf(answer)
      return {
        elevation,
        placed,
        faceOrder,
        called: calledOn(placed),
        answer,
        hung,
        heaviest,
        problem: found !== undefined && 'problem' in found ? found.problem : '',
        handling: handlingOf({ mass: heaviest.mass, height, width: heaviest.size?.width ?? null }, rules, say),
        equipment: equipmentFor(heaviest.mass, topAt, equipment),
        access: accessTo(highest, rules),
      }
    })
  })
}

/** A set that cannot be laid hangs as what is known of the whole. */
function hungWorks(placed: PlacedWork, found: MarksOrWhy | undefined): readonly HungWork[] {
  const known = found === undefined ? [] : answersOf(placed, found)
  if (known.length > 0) return known
  const parts = hungOf(placed)
  return (parts.length === 0 ? [placed] : parts).map(one => ({ placed: one, answer: null }))
}

/** By people first, then by mass, then by size. */
function heaviestOf(hung: readonly HungWork[], rules: HandlingRules, say: Say | undefined): PlacedWork {
  const ranked = hung.map(({ placed }) => {
    const { mass, size } = placed
    const { people } = handlingOf({ mass, height: size?.height ?? null, width: size?.width ?? null }, rules, say)
    return { placed, people, mass: mass ?? 0, area: (size?.height ?? 0) * (size?.width ?? 0) }
  })
  const [first] = ranked.sort((a, b) => b.people - a.people || b.mass - a.mass || b.area - a.area)
  if (first === undefined) throw new Error('a work of which nothing hangs')
  return first.placed
}

function highestOf({ marks }: MarksAnswer): number | null {
  const heights = marks.flatMap(mark => (mark.on === 'floor' ? [] : [mark.holeFromFloor]))
  return heights.length === 0 ? null : Math.max(...heights)
}

/** Where a drill or a nail goes into the wall for a work; a cleat's holes are its screws, not the ends of its edge. */
export interface PlannedHole extends WorkHole {
  readonly x: number
  readonly y: number
}

export function holesOf(answer: MarksAnswer | null): readonly PlannedHole[] {
  if (answer === null) return []
  const marks = answer.marks.filter(mark => mark.on === 'wall')
  const [edge] = marks.filter(mark => mark.fixing.kind === 'cleat')
  return [
    ...marks
      .filter(mark => answer.cleat === null || mark.fixing.kind !== 'cleat')
      .map(mark => ({
        fixing: mark.fixing.name,
        kind: mark.fixing.kind,
        keeps: mark.does === 'keeps',
        onStud: mark.onStud,
        backed: mark.backed,
        x: mark.hole.x,
        y: mark.hole.y,
      })),
    ...(answer.cleat?.screws ?? []).map(screw => ({
      fixing: cleatScrew,
      kind: 'screw',
      keeps: false,
      onStud: screw.onStud,
      backed: edge?.backed ?? null,
      x: screw.x,
      y: edge?.hole.y ?? answer.edges.top,
    })),
  ]
}

/** Of a set, those of each part; nothing before the marks of all of them are known. */
export function holesOfWork({ answer, hung }: CrewWork): readonly PlannedHole[] {
  return answer === null ? [] : hung.flatMap(part => holesOf(part.answer))
}

/** The parts of a set as a hand hangs them; none of a work that hangs by itself. */
export function partsOf({ placed, hung }: CrewWork): readonly HungWork[] {
  return hung.filter(part => part.placed.placement !== placed.placement)
}

/** What a cleat's method calls its screws. */
export const cleatScrew = 'screw for the wall part'

export function hardwareWork(work: CrewWork): HardwareWork {
  return {
    id: work.placed.placement,
    face: work.elevation.wall.face,
    wallType: work.elevation.wall.wallType,
    needs: work.answer?.needs ?? [],
    // What stands on the floor is fixed by nothing.
    fixings: [...new Set(work.answer?.marks.filter(mark => mark.on !== 'floor').map(mark => mark.fixing.name))],
    holes: holesOfWork(work),
    locks: work.answer?.locks.length ?? 0,
  }
}

export function orderedWork(work: CrewWork): OrderedWork {
  const { placed, hung, elevation } = work
  return {
    id: placed.placement,
    face: work.elevation.wall.face,
    faceOrder: work.faceOrder,
    rect: rectOf(placed) ?? null,
    x: placed.x,
    class: work.handling.class,
    tools: toolWorkOf(hung, elevation.rules.tools).flatMap(({ areas }) => areas.map(area => area.rect)),
  }
}
