/** In which order the works of one wall go up where they stand above or close beside each other, and in words why. */
import type { Elevation } from '../contract/areas/walls.ts'
import { calledOn } from '../model/called.ts'
import { rectOf } from '../model/hung-rect.ts'
import type { MarksOrWhy } from '../model/marks-of-face.ts'
import { answersOf } from '../model/marks-of-set.ts'
import { toolWorkOf } from '../model/tools-of-work.ts'
import { type Before, type HangingOrder, hangingOrder } from './hanging-order.ts'

/** The order on one wall; what needs equipment is not told apart here, the crew's order does. `marks` by placement. */
export function orderOfWall(elevation: Elevation, marks: ReadonlyMap<string, MarksOrWhy>): HangingOrder {
  return hangingOrder(
    elevation.works.map(placed => {
      const rect = rectOf(placed) ?? null
      const tools = toolWorkOf(answersOf(placed, marks.get(placed.placement)), elevation.rules.tools)
      return {
        id: placed.placement,
        face: elevation.wall.face,
        faceOrder: 0,
        rect,
        x: placed.x,
        class: 'by hand',
        tools: tools.flatMap(({ areas }) => areas.map(area => area.rect)),
      }
    }),
    elevation.rules,
  )
}

/**
 * Sentences of an order: for works that wait for each other in which order they hang, and each reason that must be
 * kept. Of `only` where it is given. Nothing where no work waits.
 */
export function orderSaid(
  { order, before, against }: HangingOrder,
  works: Elevation['works'],
  say: (mm: number) => string,
  only?: ReadonlySet<string>,
): readonly string[] {
  const names = new Map(works.map(work => [work.placement, calledOn(work)]))
  const name = (id: string) => names.get(id) ?? id
  const asked = before.filter(({ first, last }) => only === undefined || (only.has(first) && only.has(last)))
  const groups = joined(asked).map(ids => order.filter(id => ids.has(id)))
  return [
    ...groups.map(ids => `Hang in this order: ${ids.map(name).join(', ')}.`),
    ...asked
      .filter(({ why }) => why !== 'reach-over')
      .map(each => `${name(each.first)} before ${name(each.last)}: ${reason(each, say)}.`),
    ...against
      .filter(({ first, last }) => only === undefined || (only.has(first) && only.has(last)))
      .map(
        each =>
          `Not to be kept: ${name(each.first)} before ${name(each.last)}, though ${reason(each, say)}. Give them more room.`,
      ),
  ]
}

function reason({ why, gap }: Before, say: (mm: number) => string): string {
  if (why === 'lock-tool') return `the tool of its lock needs the ${say(gap)} between them`
  if (why === 'lift-on') return `it is lifted into the ${say(gap)} between them`
  return 'nobody reaches over a hung work'
}

/** Works that wait for each other, straight or by others. */
function joined(before: readonly Before[]): readonly ReadonlySet<string>[] {
  const groups: Set<string>[] = []
  for (const { first, last } of before) {
    const touched = groups.filter(group => group.has(first) || group.has(last))
    const all = new Set([first, last, ...touched.flatMap(group => [...group])])
    for (const group of touched) groups.splice(groups.indexOf(group), 1)
    groups.push(all)
  }
  return groups
}
