/**
 * Whether a nail or screw is long enough for what it goes through: the face of the wall first, then stud or backing.
 * What is too long for the work is said by the methods, which know what is behind a bar. Every figure is at most what a
 * screw can reach, since some of it stands out of the wall.
 */
import type { Mark } from './marks-shape.ts'
import type { Fixing, PlainFinding } from './method.ts'
import { calledMark } from './steps.ts'
import type { WallFacts } from './wall.ts'

/** Thickness of a wall's face, mm: 1/2 in board; plaster on lath. From memory; measure it on the spot. */
const FACES: Readonly<Record<string, number>> = { drywall: 12.7, 'drywall on ply': 12.7, plaster: 22 }
/** Wanted in stud or backing: the thickness of 3/4 in ply, the usual backing. House rule, from memory. */
const LEAST_BEHIND = 18

/** What a nail or screw finds behind the face, at most, mm; null where its length or the face is not known. */
export function reachBehind(fixing: Pick<Fixing, 'kind' | 'length'>, wallType: string): number | null {
  const face = FACES[wallType]
  if (fixing.kind !== 'nail' && fixing.kind !== 'screw') return null
  if (face === undefined || fixing.length === null || fixing.length === undefined) return null
  return fixing.length - face
}

/** One finding for each kind of fixing that is too short for stud or backing. */
export function lengthFindings(
  marks: readonly Mark[],
  fixings: readonly Fixing[],
  wall: Pick<WallFacts, 'wallType'>,
  say: (mm: number) => string,
): readonly PlainFinding[] {
  const found = new Map<string, PlainFinding>()
  marks.forEach((mark, index) => {
    const fixing = fixings[index]
    if (fixing === undefined || mark.on !== 'wall' || (mark.onStud !== true && mark.backed !== true)) return
    const behind = reachBehind(fixing, wall.wallType)
    if (behind === null || behind >= LEAST_BEHIND || found.has(fixing.name)) return
    const length = fixing.length ?? 0
    found.set(fixing.name, {
      severity: 'settle',
      code: 'fixing-too-short',
      text: `${fixing.name} is ${say(length)} long: at the ${calledMark(mark)} it finds at most ${say(Math.max(0, behind))} of what is behind the face of the wall, ${say(length - behind)} thick. It should find ${say(LEAST_BEHIND)}.`,
      figures: { side: mark.side, length, face: length - behind, behind, least: LEAST_BEHIND },
    })
  })
  return [...found.values()]
}
