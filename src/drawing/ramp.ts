/** A line that runs along a ramp, as high above the floor everywhere; level where there is none. */
import { bends, floorAt, type Profile } from '../hang/wall.ts'

/** Path data of a line `height` above the floor from the wall's left end to its right, `beyond` past both. mm in, by `x` and `y` out. */
export function acrossRamp(
  ramp: Profile,
  length: number,
  height: number,
  x: (mm: number) => number,
  y: (mm: number) => number,
  beyond: readonly [number, number] = [x(0), x(length)],
): string {
  const points = bends(ramp, 0, length).map(at => `${x(at)} ${y(height + floorAt(ramp, at))}`)
  const [first, last] = [y(height), y(height + floorAt(ramp, length))]
  return `M${beyond[0]} ${first}L${points.join('L')}L${beyond[1]} ${last}`
}
