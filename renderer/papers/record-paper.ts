/** Papers of the record as the screen asks for them: how each is called, and how it is made. */
import type { RecordPaper } from '../../src/contract/areas/sheets.ts'
import type { Making } from './made.svelte.ts'

/** What `save` gives: reports are PDF alone, tables come as a workbook too. */
export const saved = (kind: RecordPaper['kind']): string =>
  kind === 'condition report' || kind === 'condition comparison' ? 'save as PDF' : 'save as PDF and spreadsheet'

export function make(making: Making, of: RecordPaper): Promise<void> {
  switch (of.kind) {
    case 'condition report':
      return making.make('sheet.condition', 'Printing the report', { report: of.report })
    case 'condition comparison':
      return making.make('sheet.compared', 'Printing both reports', { before: of.before, after: of.after })
    case 'damage report':
      return making.make('sheet.damage', 'Making the damage report', { damage: of.damage })
    case 'object file':
      return making.make('sheet.objectFile', 'The whole file of a work', { work: of.work, withValues: of.withValues })
    case 'loan file':
      return making.make('sheet.loanFile', 'The whole file of a loan', { loan: of.loan, withValues: of.withValues })
    case 'movement sheet':
      return making.make('sheet.movements', 'Making the movement sheet', { from: of.from, to: of.to })
    case 'climate':
      return making.make('sheet.climate', 'Making the sheet of the air', {
        room: of.room,
        from: of.from,
        until: of.until,
      })
  }
}
