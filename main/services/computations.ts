/** The pure procedures, answered from src alone. */
import type { computationsArea } from '../../src/contract/areas/computations.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { marksFor } from '../../src/hang/marks.ts'
import { nearestMoves } from '../../src/hang/nearest.ts'
import { solveWire } from '../../src/hang/wire.ts'
import { nailWithdrawal } from '../../src/hang/withdrawal.ts'
import { layGrid } from '../../src/layout/grid.ts'
import { layLabels } from '../../src/layout/labels.ts'
import { layRow } from '../../src/layout/row.ts'
import { laySalon } from '../../src/layout/salon.ts'
import { laySet } from '../../src/layout/set.ts'
import { layStack } from '../../src/layout/stack.ts'
import { readDimensions } from '../../src/measure/dimensions.ts'
import { formatLength } from '../../src/measure/format.ts'
import { parseLength } from '../../src/measure/length.ts'
import type { PureServices } from './service.ts'

export const computations: Pick<PureServices, keyof typeof computationsArea> = {
  'measure.length': ({ text, defaultUnit }) => {
    const read = parseLength(text, defaultUnit)
    if (!read.ok)
      throw new Refusal(read.problem, read.message, { field: 'text', details: { piece: read.piece, at: read.at } })
    const { mm, unit, inferred } = read
    return {
      mm,
      unit,
      inferred,
      written: { mm: formatLength(mm, { unit: 'mm' }), in: formatLength(mm, { unit: 'in' }) },
    }
  },
  'measure.dimensions': ({ text, ...options }) => readDimensions(text, defined(options)),
  'hang.marks': marksFor,
  'hang.nearest': ({ marks, others }) => nearestMoves(marks, others),
  'hang.withdrawal': nailWithdrawal,
  'hang.wire': solveWire,
  'layout.row': layRow,
  'layout.stack': layStack,
  'layout.grid': layGrid,
  'layout.salon': laySalon,
  'layout.set': laySet,
  'layout.labels': layLabels,
}

/** Options that were left out stay out, as the exact types of src want it. */
function defined<T extends object>(options: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>
  } // what fromEntries cannot say
}
