/** What the facts of one work leave to settle, apart from any wall: listed against measured, nothing to hang by. */
import type { Finding } from '../../../src/contract/shared.ts'
import { formatLength } from '../../../src/measure/format.ts'
import { measuredAgainstListed } from '../../../src/model/in-force.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import { asFact, hangingSizeOf, sizesOf } from './figures.ts'

const mm = (length: number) => formatLength(length, { unit: 'mm' })

export function workFindings(db: ReadHandle, work: string): Finding[] {
  const subject = { kind: 'work', id: work }
  const findings: Finding[] = []
  const hanging = hangingSizeOf(db, work)
  if (hanging === undefined) {
    findings.push({
      severity: 'settle',
      code: 'no-size',
      subject,
      text: 'No size is known yet: measure the work, or settle what the list says.',
      figures: {},
    })
    return findings
  }
  if (hanging.part === 'sight') {
    findings.push({
      severity: 'settle',
      code: 'sight-only',
      subject,
      text: 'Only the sight size is known. The frame is larger: measure it before marking.',
      figures: { height: hanging.height, width: hanging.width },
    })
  }
  const differs = measuredAgainstListed(sizesOf(db, work).map(asFact))
  const by = ruleNumber(db, 'differsBy')
  if (differs !== undefined && (Math.abs(differs.height) > by || Math.abs(differs.width) > by)) {
    const says = [
      ...(Math.abs(differs.width) > by
        ? [`${mm(Math.abs(differs.width))} ${differs.width > 0 ? 'wider' : 'narrower'}`]
        : []),
      ...(Math.abs(differs.height) > by
        ? [`${mm(Math.abs(differs.height))} ${differs.height > 0 ? 'higher' : 'lower'}`]
        : []),
    ]
    findings.push({
      severity: 'settle',
      code: 'differs-from-list',
      subject,
      text: `Measured ${says.join(' and ')} than listed. The measured size hangs; its wall may want a new sheet.`,
      figures: differs,
    })
  }
  return findings
}
