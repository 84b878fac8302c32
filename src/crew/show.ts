/**
 * The works of a show as the crew sees them: each with its marks or why it has none, its mass and size, how it is
 * lifted. Everything else of the crew is computed from these, so that plan, order and hardware cannot differ.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { MarksAnswer } from '../hang/marks-shape.ts'
import { defaultSteps } from '../hang/printing.ts'
import { toolAreas } from '../layout/tool-room.ts'
import { calledOn, rectOf } from '../model/face-findings.ts'
import { type MarksStyle, marksOfFace } from '../model/marks-of-face.ts'
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
  /** Why it has no marks, in words; empty where it has. */
  readonly problem: string
  readonly handling: Handling
  readonly equipment: Equipment | null
  /** From what its highest fixing is reached; null without marks. */
  readonly access: Access | null
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
      const height = placed.size?.height ?? null
      const topAt = height === null ? null : placed.centreY + height / 2
      const highest = answer === null ? null : highestOf(answer)
      return {
        elevation,
        placed,
        faceOrder,
        called: calledOn(placed),
        answer,
        problem: found !== undefined && 'problem' in found ? found.problem : '',
        handling: handlingOf({ mass: placed.mass, height, width: placed.size?.width ?? null }, rules, say),
        equipment: equipmentFor(placed.mass, topAt, equipment),
        access: accessTo(highest, rules),
      }
    })
  })
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
    holes: holesOf(work.answer),
    locks: work.answer?.locks.length ?? 0,
  }
}

export function orderedWork(work: CrewWork): OrderedWork {
  const { placed, answer, elevation } = work
  const rect = rectOf(placed) ?? null
  const areas = answer === null || rect === null ? [] : toolAreas(answer, rect, elevation.rules.tools)
  return {
    id: placed.placement,
    face: work.elevation.wall.face,
    faceOrder: work.faceOrder,
    rect,
    x: placed.x,
    class: work.handling.class,
    tools: areas.map(area => area.rect),
  }
}
