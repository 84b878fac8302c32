/** The paper that is seen as it prints, over whatever screen asked for it: a screen that lays itself out anew keeps it. */
import type { RecordPaper } from '../../src/contract/areas/sheets.ts'

class Seen {
  of = $state.raw<RecordPaper | null>(null)
}

export const seen = new Seen()

export function seePaper(of: RecordPaper): void {
  seen.of = of
}
