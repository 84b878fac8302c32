/** Whether a planned movement is of what the record has in no place. */
import type { PlannedLine } from '../contract/areas/planned.ts'

/** Of many works at once this is so: told once for all of them, and beside each in two words. */
export function isNowhere(
  { fromWords }: Pick<PlannedLine, 'fromWords'>,
  { code }: Pick<PlannedLine['findings'][number], 'code'>,
): boolean {
  return code === 'not-arrived' && fromWords === ''
}
