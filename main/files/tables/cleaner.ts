/**
 * Takes control characters out of cells and remembers where it did. The catalogue holds none: a NUL cuts a text in
 * SQLite, the others have no meaning in a list. The vertical tab is a line break in what some programs write.
 */
import { someRows } from './table.ts'

// biome-ignore lint/suspicious/noControlCharactersInRegex: finding control characters is what this file is for
const controls = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/

export function hasControls(text: string): boolean {
  return controls.test(text) || !text.isWellFormed()
}

export interface Cleaner {
  readonly clean: (text: string, row: number) => string
  readonly remarks: () => readonly string[]
}

export function makeCleaner(): Cleaner {
  const rows: number[] = []
  let count = 0
  const lost: number[] = []
  let lostCount = 0
  function note(list: number[], row: number): boolean {
    if (list.at(-1) === row) return false
    if (list.length < 5) list.push(row)
    return true
  }
  return {
    clean(text, row) {
      let out = text
      if (hasControls(out)) {
        if (note(rows, row)) count++
        out = out.toWellFormed().replaceAll('\u000b', '\n').replace(new RegExp(controls, 'g'), '')
      }
      if (out.includes('\ufffd') && note(lost, row)) lostCount++
      return out
    },
    remarks() {
      const says: string[] = []
      if (count > 0) says.push(`Control characters were left out in ${someRows(rows, count)}.`)
      if (lostCount > 0) {
        says.push(
          `Characters in ${someRows(lost, lostCount)} could not be read in this encoding. Choose another encoding, or save the list as UTF-8.`,
        )
      }
      return says
    },
  }
}
