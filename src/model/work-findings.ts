/**
 * What the facts of one work leave to settle, apart from any wall: nothing to hang by, a sight size alone, measured
 * against listed. The rule it keeps: figures are millimetres and hold only what speaks; the words are in the reader's
 * unit, so that a settlement made in inches holds in millimetres.
 */
import type { Finding } from '../contract/shared.ts'
import { sayIn } from '../hang/marks.ts'
import type { LengthUnit } from '../hang/marks-shape.ts'
import type { Steps } from '../hang/printing.ts'
import { hangingSize, measuredAgainstListed, type SizeFact } from './in-force.ts'

export interface Reader {
  readonly unit: LengthUnit
  readonly steps: Steps
}

/** Findings of a work with these sizes; `differsBy` is the house rule in mm over which a difference is told. */
export function workFindings(work: string, sizes: readonly SizeFact[], differsBy: number, reader: Reader): Finding[] {
  const subject = { kind: 'work', id: work }
  const hanging = hangingSize(sizes)
  if (hanging === undefined) {
    const text = 'No size is known yet: measure the work, or settle what the list says.'
    return [{ severity: 'settle', code: 'no-size', subject, text, figures: {} }]
  }
  const findings: Finding[] = []
  if (hanging.part === 'sight') {
    findings.push({
      severity: 'settle',
      code: 'sight-only',
      subject,
      text: 'Only the sight size is known. The frame is larger: measure it before marking.',
      figures: { height: hanging.height, width: hanging.width },
    })
  }
  const differs = measuredAgainstListed(sizes)
  const over = (mm: number | undefined) => (mm !== undefined && Math.abs(mm) > differsBy ? mm : null)
  const [width, height] = [over(differs?.width), over(differs?.height)]
  if (width !== null || height !== null) {
    const say = sayIn(reader.unit, reader.steps)
    const says = [
      ...(width === null ? [] : [`${say(Math.abs(width))} ${width > 0 ? 'wider' : 'narrower'}`]),
      ...(height === null ? [] : [`${say(Math.abs(height))} ${height > 0 ? 'higher' : 'lower'}`]),
    ]
    findings.push({
      severity: 'settle',
      code: 'differs-from-list',
      subject,
      text: `Measured ${says.join(' and ')} than listed. The measured size hangs; its wall may want a new sheet.`,
      figures: { ...(width === null ? {} : { width }), ...(height === null ? {} : { height }) },
    })
  }
  return findings
}
