/** How deep a work is in a report: as it was when it began; of a draft that did not know it, as it is measured now. */
import type { ReadHandle } from '../../../database/handles.ts'
import { value } from '../../sql.ts'
import type { ReportRow } from './rows.ts'

export function depthOf(db: ReadHandle, report: ReportRow): number | null {
  if (report.depth !== null || report.completeAt !== null) return report.depth
  return value<number | null>(db, 'SELECT hang_depth FROM work WHERE id = :work', { work: report.work }) ?? null
}
