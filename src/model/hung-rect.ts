/** Where a placed work is on its wall, as a rectangle with its name. */
import type { PlacedWork } from '../contract/areas/walls.ts'
import type { HungRect } from '../layout/findings.ts'
import { calledOn } from './called.ts'

/** With how far it stands out, for the wall's checks. */
export function deepRectOf(work: PlacedWork): HungRect | undefined {
  const rect = rectOf(work)
  return rect === undefined ? undefined : { ...rect, depth: work.size?.depth ?? null }
}

/** The rectangle of a placed work; undefined while its size is not known. mm. */
export function rectOf(work: PlacedWork): HungRect | undefined {
  if (work.size === null) return undefined
  const { height, width } = work.size
  return {
    id: work.placement,
    name: calledOn(work),
    x: work.x - width / 2,
    y: work.centreY - height / 2,
    width,
    height,
  }
}
