/**
 * A drawn signature: strokes of a pen, each its points one after the other, across and down, in a field 1000 wide and
 * 320 high whatever the screen.
 */

/** Less of the field's width than this is a slip of the pen, no name; from practice with the field itself, no source. */
const least = 50

/** Whether all strokes together are too short to be a signature. */
export function isSlip(strokes: readonly (readonly number[])[]): boolean {
  let long = 0
  for (const stroke of strokes) {
    for (let at = 2; at + 1 < stroke.length; at += 2) {
      long += Math.hypot((stroke[at] ?? 0) - (stroke[at - 2] ?? 0), (stroke[at + 1] ?? 0) - (stroke[at - 1] ?? 0))
    }
  }
  return long < least
}

/** Nearer to the last point than this, in the field's own measure, nothing is seen of it. */
const step = 2
/** Numbers of one stroke at most, as the contract has it. */
const most = 2000

/** A stroke gone on to a point. One that is as long as can be kept loses every other point, never its end. */
export function drawnTo(stroke: readonly number[], x: number, y: number): readonly number[] {
  const [lastX, lastY] = stroke.slice(-2)
  if (lastX !== undefined && lastY !== undefined && Math.hypot(x - lastX, y - lastY) < step) return stroke
  const thinned = stroke.length + 2 > most ? stroke.filter((_, at) => at % 4 < 2) : stroke
  return [...thinned, x, y]
}

/** A stroke whose pen was lifted: one that never moved is a dot, two points on one spot. */
export function lifted(stroke: readonly number[]): readonly number[] {
  return stroke.length === 2 ? [...stroke, ...stroke] : stroke
}

/** Whether nothing but a spot was drawn. */
export function isDot(stroke: readonly number[]): boolean {
  return stroke.every((value, at) => value === stroke[at % 2])
}
