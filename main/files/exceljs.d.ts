/** The workbook module alone: the package's root would bring its streaming reader and writer along. */
declare module 'exceljs/lib/doc/workbook.js' {
  import type { Workbook } from 'exceljs'

  const WorkbookClass: new () => Workbook
  export default WorkbookClass
}
