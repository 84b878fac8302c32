/**
 * Whether a nail or screw is long enough for what it goes through: the face of the wall first, then stud or backing.
 * What is too long for the work is said by the methods, which know what is behind a bar. Every figure is at most what a
 * screw can reach, since some of it stands out of the wall.
 */
import type { Mark } from './marks-shape.ts'
import type { Fixing, HangRules, PlainFinding } from './method.ts'
import { calledMark } from './steps.ts'
import type { WallFacts } from './wall.ts'

/** Which rule says how thick the face of a wall is; of other walls nothing is known. */
const faces: Readonly<Record<string, 'boardFace' | 'plasterFace'>> = {
  drywall: 'boardFace',
  'drywall on ply': 'boardFace',
  plaster: 'plasterFace',
}

/** What a nail or screw finds behind the face, at most, mm; null where its length or the face is not known. */
function reachBehind({ kind, length }: Fixing, wallType: string, rules: HangRules): number | null {
  const face = faces[wallType]
  if (face === undefined || (kind !== 'nail' && kind !== 'screw') || length == null) return null
  return length - rules[face]
}

/** One finding for each kind of fixing that is too short for stud or backing. */
export function lengthFindings(
  marks: readonly Mark[],
  fixings: readonly Fixing[],
  wall: Pick<WallFacts, 'wallType'>,
  rules: HangRules,
  say: (mm: number) => string,
): readonly PlainFinding[] {
  const found = new Map<string, PlainFinding>()
  marks.forEach((mark, index) => {
    const fixing = fixings[index]
    if (fixing === undefined || mark.on !== 'wall' || (mark.onStud !== true && mark.backed !== true)) return
    const behind = reachBehind(fixing, wall.wallType, rules)
    if (behind === null || behind >= rules.leastBehind || found.has(fixing.name)) return
    const length = fixing.length ?? 0
    found.set(fixing.name, {
      severity: 'settle',
      code: 'fixing-too-short',
      text: `${fixing.name} is ${say(length)} long: at the ${calledMark(mark)} it finds at most ${say(Math.max(0, behind))} of what is behind the face of the wall, ${say(length - behind)} thick. It should find ${say(rules.leastBehind)}.`,
      figures: { side: mark.side, length, face: length - behind, behind, least: rules.leastBehind },
    })
  })
  return [...found.values()]
}
