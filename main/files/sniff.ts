/** What a kept file is, told by its first bytes; a name's ending is only believed for plain documents. */
import { extname } from 'node:path'
import { rawMime } from './camera-raw.ts'

/** What phones write. */
export const phoneMime = 'image/heic'

interface Mark {
  readonly mime: string
  readonly at: number
  readonly bytes: string
}

/** Signatures as the formats' own standards give them. */
const marks: readonly Mark[] = [
  { mime: 'image/jpeg', at: 0, bytes: '\xff\xd8\xff' },
  { mime: 'image/png', at: 0, bytes: '\x89PNG\r\n\x1a\n' },
  { mime: 'image/gif', at: 0, bytes: 'GIF8' },
  { mime: 'image/webp', at: 8, bytes: 'WEBP' },
  { mime: 'image/avif', at: 4, bytes: 'ftypavif' },
  { mime: phoneMime, at: 4, bytes: 'ftyphei' },
  { mime: phoneMime, at: 4, bytes: 'ftyphev' },
  { mime: phoneMime, at: 4, bytes: 'ftypmif1' },
  { mime: 'image/tiff', at: 0, bytes: 'II*\0' },
  { mime: 'image/tiff', at: 0, bytes: 'MM\0*' },
  { mime: 'application/pdf', at: 0, bytes: '%PDF-' },
]

const endings: Readonly<Record<string, string>> = {
  '.raw': rawMime,
  '.txt': 'text/plain',
  '.csv': 'text/csv',
  '.svg': 'image/svg+xml',
  '.docx': 'application/vnd.openxmlformats-officedocument.wordprocessingml.document',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
}

/** The ending that a file of this kind has; '' for what is not known. */
export function suffixOf(mime: string): string {
  const named = Object.entries(endings).find(([, one]) => one === mime)
  if (named !== undefined) return named[0]
  if (mime === 'image/jpeg') return '.jpg'
  return marks.some(one => one.mime === mime) ? `.${mime.slice(mime.indexOf('/') + 1)}` : ''
}

export function mimeOf(first: Buffer, name: string): string {
  const text = first.toString('latin1')
  const known = marks.find(({ at, bytes }) => text.startsWith(bytes, at))
  return known?.mime ?? endings[extname(name).toLowerCase()] ?? 'application/octet-stream'
}
