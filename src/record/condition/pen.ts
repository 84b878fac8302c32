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
