/// <reference path="./exceljs-workbook.d.ts" />
/**
 * The one place that knows exceljs. It takes the workbook module alone: the package's root would bring streaming,
 * archiving and unzipping code that is never used. Another library would be a change of this folder.
 */
import type { Workbook } from 'exceljs'
import WorkbookClass from 'exceljs/lib/doc/workbook.js'

export type { Cell, CellValue, PaperSize, Row, Workbook, Worksheet } from 'exceljs'

/** An empty workbook, to fill or to load a file into. */
export function newWorkbook(): Workbook {
  return new WorkbookClass()
}
