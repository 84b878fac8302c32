/**
 * A DXF file as its tags: a group code on one line, its value on the next (DXF reference, "ASCII DXF files"). The file
 * is never in memory as a whole, a line has a limit, and whatever is no DXF is told at its first line that says so.
 */
import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import { Refusal } from '../../../src/contract/refusal.ts'

/** Values are bytes as Latin-1; what holds words is decoded by whoever needs them. */
export type OnTag = (code: number, value: string, line: number) => void
/** Bytes read and bytes there are; throws where the person cancelled. */
export type Watch = (done: number, total: number) => void

/** The reference allows 2,049 characters; some programs write more into one line, none so many. */
const longestLine = 65_536
const piece = 1 << 20
/** The lowest and the highest group code of the reference. */
const codes = { least: -5, most: 1071 } as const

/** Calls `onTag` for each tag up to EOF. Refuses `not-dxf`, `binary-dxf`, `damaged-dxf`. */
export function readTags(path: string, onTag: OnTag, watch: Watch): void {
  const file = openSync(path, 'r')
  try {
    const { size } = fstatSync(file)
    const bytes = Buffer.allocUnsafe(piece)
    const feed = tagFeed(onTag)
    let rest = ''
    let done = 0
    for (let read = readSync(file, bytes, 0, piece, null); read > 0; read = readSync(file, bytes, 0, piece, null)) {
      if (done === 0) refuseOtherKinds(bytes.subarray(0, read))
      done += read
      watch(done, size)
      const text = rest + bytes.toString('latin1', 0, read)
      let from = 0
      for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', from)) {
        feed.line(text, from, at)
        if (feed.ended()) return
        from = at + 1
      }
      rest = text.slice(from)
      if (rest.length > longestLine) throw notDxf(feed.lines() + 1, 'is longer than any line of a DXF')
    }
    if (rest !== '') feed.line(rest, 0, rest.length)
    feed.end()
  } finally {
    closeSync(file)
  }
}

function tagFeed(onTag: OnTag) {
  let lines = 0
  let code: number | null = null
  let begun = false
  let inSection = false
  let ended = false
  return {
    lines: () => lines,
    ended: () => ended,
    line(text: string, from: number, to: number): void {
      lines += 1
      const end = to > from && text.charCodeAt(to - 1) === 13 ? to - 1 : to
      if (code === null) {
        code = codeIn(text, from, end, lines)
        return
      }
      const value = text.slice(from, end)
      const given = code
      code = null
      if (given === 999) return
      if (given === 0) {
        const what = value.trim()
        if (!begun && what !== 'SECTION') throw notDxf(lines, 'does not begin a section')
        begun = true
        if (what === 'EOF') {
          ended = true
          return
        }
        if (what === 'SECTION') inSection = true
        if (what === 'ENDSEC') inSection = false
      } else if (!begun) throw notDxf(lines, 'does not begin a section')
      onTag(given, value, lines)
    },
    /** Without an EOF a file may still be whole, where no section is open. */
    end(): void {
      if (!begun) throw notDxf(lines + 1, 'does not begin a section')
      if (inSection || code !== null) {
        throw new Refusal(
          'damaged-dxf',
          `The file ends in the middle, after line ${lines}. Copy or save it again; nothing was taken from it.`,
          { field: 'handle', details: { line: lines } },
        )
      }
    },
  }
}

/** Whole numbers alone, with spaces about them; written out because a large file has millions. */
function codeIn(text: string, from: number, to: number, line: number): number {
  let value = 0
  let digits = 0
  let minus = false
  let closed = false
  for (let at = from; at < to; at++) {
    const letter = text.charCodeAt(at)
    if (letter >= 48 && letter <= 57 && !closed && digits < 5) {
      value = value * 10 + letter - 48
      digits += 1
    } else if (letter === 45 && digits === 0 && !minus) minus = true
    else if (letter === 32 || letter === 9) closed = digits > 0 || minus
    // A mark of the encoding may stand before the first line.
    else if (line !== 1 || digits > 0 || letter < 128) throw notDxf(line, 'should be a group code')
  }
  const code = minus ? -value : value
  if (digits === 0 || code < codes.least || code > codes.most) throw notDxf(line, 'should be a group code')
  return code
}

function notDxf(line: number, why: string): Refusal {
  return new Refusal(
    'not-dxf',
    line <= 2
      ? 'This is not a DXF drawing. Export the plan as DXF and give that file.'
      : `This is not a whole DXF drawing: line ${line} ${why}. Export the plan as DXF again.`,
    { field: 'handle', details: { line } },
  )
}

/** The sentinel of a binary DXF (DXF reference, "Binary DXF files"); and a DWG, which is taken for a DXF most often. */
function refuseOtherKinds(first: Buffer): void {
  const text = first.toString('latin1', 0, 22)
  if (text.startsWith('AutoCAD Binary DXF\r\n\x1a\0')) {
    throw new Refusal('binary-dxf', 'This is a binary DXF. Save the plan as a text (ASCII) DXF and give that file.', {
      field: 'handle',
    })
  }
  if (/^AC10\d\d/.test(text)) {
    throw new Refusal('not-dxf', 'This is a DWG drawing. Save the plan as DXF and give that file.', { field: 'handle' })
  }
}
