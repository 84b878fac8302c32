/** The papers that `sheets` writes: of a show or of a loan, all of them or one kind. */
import type { SheetFile } from '../../../src/contract/areas/sheets.ts'
import type { Output } from '../../../src/contract/contract.ts'
import type { Host } from '../host.ts'
import { call, callByName } from './asked.ts'

/** Of one work, one loan, two reports or a day: of a loan by `--loan`, the others by `call`. */
export const notOfShow: ReadonlySet<SheetFile['kind']> = new Set([
  'paper template',
  'condition comparison',
  'damage report',
  'movement sheet',
  'object file',
  'insured values',
  'loan file',
  'receipt',
])

/** Papers of a whole show that are no wall sheets, by the procedure that makes them. */
const listSheets = {
  checklist: 'sheet.checklist',
  'hang list': 'sheet.hangList',
  'label list': 'sheet.labels',
  'hardware list': 'sheet.hardware',
  'hanging order': 'sheet.hangingOrder',
  'back tags': 'sheet.hangingOrder',
  'patch list': 'sheet.patchList',
  'lock register': 'sheet.locks',
  'outgoing list': 'sheet.outgoing',
} as const

function isListed(kind: string): kind is keyof typeof listSheets {
  return Object.hasOwn(listSheets, kind)
}

/** Papers of one kind, or the whole set. Paper and unit are checked where every other host's are. */
export async function makeSheets(
  host: Host,
  only: string | undefined,
  wishes: { readonly exhibition: string },
  withValues: boolean,
): Promise<Output<'sheet.set'>> {
  async function make(name: 'sheet.set' | 'sheet.wall' | (typeof listSheets)[keyof typeof listSheets], input: object) {
    return (await callByName(host, name, input)) as Output<'sheet.set'> // they answer alike
  }
  if (only === undefined) return make('sheet.set', { ...wishes, withValues })
  if (only === 'plan') {
    const { storeys } = await call(host, 'plan.get', { exhibition: wishes.exhibition })
    const made: { files: SheetFile[]; findings: [] } = { files: [], findings: [] }
    for (const storey of storeys) {
      const { files } = await call(host, 'sheet.plan', { ...wishes, storey, formats: ['pdf', 'svg', 'dxf'] })
      made.files.push(...files)
    }
    return made
  }
  if (only === 'condition report') return conditionReports(host, wishes)
  if (isListed(only)) {
    const made = await make(listSheets[only], only === 'checklist' ? { ...wishes, withValues } : wishes)
    return { ...made, files: made.files.filter(file => file.kind === only) }
  }
  const { faces } = await call(host, 'sheet.state', { exhibition: wishes.exhibition })
  const used = faces.filter(({ works }) => works > 0).map(({ face }) => face)
  return used.length === 0 ? { files: [], findings: [] } : make('sheet.wall', { ...wishes, faces: used })
}

/** Every condition report of the show's works, drafts too; one that another sets right says so itself. */
async function conditionReports(
  host: Host,
  { exhibition, ...wishes }: { readonly exhibition: string },
): Promise<Output<'sheet.set'>> {
  const files: SheetFile[] = []
  for (let offset = 0; ; ) {
    const { reports, total } = await call(host, 'condition.list', { exhibition, offset })
    for (const { id } of reports) files.push(...(await call(host, 'sheet.condition', { ...wishes, report: id })).files)
    offset += reports.length
    if (offset >= total || reports.length === 0) return { files, findings: [] }
  }
}

/** What `--only` takes beside `--loan`. */
export const loanPapers = ['loan file', 'receipt'] as const

/** The whole file of a loan and a paper for each of its receipts that counts, or one kind of these. */
export async function makeLoanPapers(
  host: Host,
  only: string | undefined,
  { loan, ...wishes }: { readonly loan: string },
  withValues: boolean,
): Promise<Output<'sheet.set'>> {
  const files: SheetFile[] = []
  if (only !== 'receipt') files.push(...(await call(host, 'sheet.loanFile', { ...wishes, loan, withValues })).files)
  if (only !== 'loan file') {
    const { receipts } = await call(host, 'receipt.list', { loan })
    for (const { id, correctedBy, struck } of receipts) {
      if (correctedBy === null && !struck)
        files.push(...(await call(host, 'sheet.receipt', { ...wishes, receipt: id })).files)
    }
  }
  return { files, findings: [] }
}
