/**
 * Cuts text into records and cells: RFC 4180, and what spreadsheets write beside it – any of `, ; tab`, any line end, a
 * quotation mark inside a cell that no mark opens. The text comes in pieces; a record that is not whole yet waits for
 * the next one, and one that grows beyond any row of a list is told, so that memory stays bounded.
 */

export type Fault = 'record-too-long' | 'quote-not-closed'

export interface RecordCutter {
  /** The records that are whole now. After a fault nothing more comes; those before it still count. */
  readonly cut: (text: string, last: boolean) => { readonly records: string[][]; readonly fault: Fault | null }
}

const quote = 34
const lineFeed = 10
const carriageReturn = 13

export function makeRecordCutter(separator: string, longest: number): RecordCutter {
  const parting = separator.charCodeAt(0)
  let waiting = ''

  return {
    cut(more, last) {
      const text = waiting === '' ? more : waiting + more
      const records: string[][] = []
      let at = 0
      let whole = 0
      let fault: Fault | null = null

      /** Whether a mark at this place closes its cell. */
      function closes(next: number): boolean {
        if (next >= text.length) return last
        const code = text.charCodeAt(next)
        return code === parting || code === lineFeed || code === carriageReturn
      }

      /** After the opening mark: the cell's text; undefined where the text ends before the cell does. */
      function quoted(): string | undefined {
        let cell = ''
        for (let from = at + 1; ; ) {
          const mark = text.indexOf('"', from)
          if (mark === -1 || (mark === text.length - 1 && !last)) return undefined
          cell += text.slice(from, mark)
          if (text.charCodeAt(mark + 1) === quote) {
            cell += '"'
            from = mark + 2
          } else if (closes(mark + 1)) {
            at = mark + 1
            return cell
          } else {
            // More follows the mark: then it closed nothing, and both marks belong to what the cell says.
            at = mark
            return `"${cell}${plain()}`
          }
        }
      }

      function plain(): string {
        const from = at
        for (; at < text.length; at++) {
          const code = text.charCodeAt(at)
          if (code === parting || code === lineFeed || code === carriageReturn) break
        }
        return text.slice(from, at)
      }

      while (whole < text.length) {
        const record: string[] = []
        let ended = false
        for (;;) {
          if (text.charCodeAt(at) === quote) {
            const cell = quoted()
            if (cell === undefined) {
              if (last) fault = 'quote-not-closed'
              break
            }
            record.push(cell)
          } else record.push(plain())
          if (at >= text.length) {
            ended = last
            break
          }
          const code = text.charCodeAt(at)
          if (code === parting) {
            at++
            continue
          }
          // Of `\r\n` the second half may stand in the next piece.
          if (code === carriageReturn && at + 1 >= text.length && !last) break
          at += code === carriageReturn && text.charCodeAt(at + 1) === lineFeed ? 2 : 1
          ended = true
          break
        }
        const length = (ended ? at : text.length) - whole
        if (length > longest) fault = 'record-too-long'
        if (!ended || fault !== null) break
        records.push(record)
        whole = at
      }
      waiting = text.slice(whole)
      return { records, fault }
    },
  }
}
