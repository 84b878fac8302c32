/**
 * What the facts of one work leave to settle, apart from any wall: nothing to hang by, a sight size alone, measured
 * against listed. The rule it keeps: figures are millimetres and hold only what speaks; the words are in the reader's
 * unit, so that a settlement made in inches holds in millimetres.
 */
import type { Finding } from '../contract/shared.ts'
import { sayIn } from '../hang/marks.ts'
import type { LengthUnit } from '../hang/marks-shape.ts'
import type { Steps } from '../hang/printing.ts'
import { turned } from '../measure/order-doubt.ts'
import { hangingSize, measuredAgainstListed, type SizeFact } from './in-force.ts'

export interface Reader {
  readonly unit: LengthUnit
  readonly steps: Steps
}

/** A picture of the work as it is seen, pixels. */
export interface PictureShape {
  readonly width: number
  readonly height: number
}

/** Findings of a work with these sizes; `differsBy` is the house rule in mm over which a difference is told. */
export function workFindings(
  work: string,
  sizes: readonly SizeFact[],
  differsBy: number,
  reader: Reader,
  picture?: PictureShape,
): Finding[] {
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
  if (picture !== undefined) findings.push(...pictureFinding(subject, sizes, picture, reader))
  return findings
}

/**
 * Sides written the wrong way round: every size known is on the other side of the square than the picture, each by
 * more than 2 % (common practice, no source). One part that agrees is enough to say nothing.
 */
function pictureFinding(
  subject: Finding['subject'],
  sizes: readonly SizeFact[],
  picture: PictureShape,
  reader: Reader,
): Finding[] {
  const hanging = hangingSize(sizes)
  if (hanging === undefined || picture.width <= 0 || picture.height <= 0) return []
  const aspect = picture.width / picture.height
  const flat = sizes.flatMap(({ width, height }) => (width === null || height === null ? [] : [width / height]))
  if (flat.length === 0 || !flat.every(one => turned(one, aspect))) return []
  const say = sayIn(reader.unit, reader.steps)
  const shape = aspect < 1 ? 'taller than wide' : 'wider than tall'
  const text = `The picture is ${shape}, the size says ${say(hanging.height)} high and ${say(hanging.width)} wide. Look which is the height.`
  const figures = { height: hanging.height, width: hanging.width }
  return [{ severity: 'settle', code: 'picture-turned', subject, text, figures }]
}
