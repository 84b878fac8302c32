/** How a report and its findings are said in words, on the screen as on paper. Lengths are written by who asks. */
import type { Age, ReportKind, Severity, Stability } from './report.ts'
import { boxOf, type Extent, type Form, type Shape, type Side } from './shape.ts'
import { onSide } from './sides.ts'

/** A length of so many mm as the reader likes it, with its unit. */
type Length = (mm: number) => string

export const titles: Readonly<Record<ReportKind, string>> = {
  incoming: 'Incoming report',
  check: 'Check in between',
  outgoing: 'Outgoing report',
}

/** Its greatest measure, of an outline its length; empty for a mark that no rule was laid on. */
export function sizeSaid(
  { form, reach, along }: { readonly form: Form } & Pick<Extent, 'reach' | 'along'>,
  length: Length,
): string {
  if (form === 'outline') return `${length(along)} long`
  return reach === null ? '' : `${length(reach)} across`
}

/** Where its upper left end is, as a rule is laid. */
export function placeSaid(finding: Pick<Shape, 'points'> & ThirdOfSide, length: Length): string {
  const { left, top } = boxOf(finding)
  return `${thirdSaid(finding)}, ${length(left)} from the left, ${length(top)} from the top`
}

interface ThirdOfSide {
  readonly third: string
  readonly side: Side
}

/** Its third of the side that it lies on; the front goes without saying. */
export const thirdSaid = ({ third, side }: ThirdOfSide) => (onSide[side] === '' ? third : `${onSide[side]}, ${third}`)

interface Judged {
  readonly age: Age | ''
  readonly severity: Severity | ''
  readonly stable: Stability | ''
}

/** Age, seriousness, whether it holds; what nobody said is left out. */
export function judgedSaid({ age, severity, stable }: Judged): string {
  const old = age === 'unsure' ? 'old or new unsure' : age
  const holds = stable === 'unsure' ? 'stable or not unsure' : stable
  return [old, severity, holds].filter(each => each !== '').join(', ')
}

interface Taken {
  readonly takenAt: string | null
  readonly takenFrom: '' | 'camera' | 'file' | 'person'
}

const says = { '': '', camera: 'says the camera', file: 'as its file was last changed', person: 'as somebody said' }

/** When a photograph was taken and who says so. @param when writes a moment */
export function takenSaid({ takenAt, takenFrom }: Taken, when: (at: string) => string): string {
  if (takenAt === null) return 'nobody says when it was taken'
  return [when(takenAt), says[takenFrom]].filter(each => each !== '').join(', ')
}
