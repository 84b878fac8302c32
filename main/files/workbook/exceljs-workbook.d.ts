/** exceljs types its root alone; its workbook module is what is imported, so that no streaming code comes along. */
declare module 'exceljs/lib/doc/workbook.js' {
  import type { Workbook } from 'exceljs'

  const WorkbookClass: new () => Workbook
  export default WorkbookClass
}
