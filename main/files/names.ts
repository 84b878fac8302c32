/**
 * A person's own name for a file, changed only where a system could not save it or a reader would be deceived: the rest,
 * letters of any script and spaces included, stays as they wrote it.
 */

/** Separators and signs that Windows refuses, and control characters. */
const refused = /[\p{Cc}<>:"/\\|?*]/gu
/** Marks that turn the direction of what follows: with one, `gpj.exe` reads as `exe.jpg`. */
const turning = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g
/** Names that Windows keeps for devices, with any ending. */
const devices = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])(\.|$)/i
/** Most file systems take 255 bytes; what saves a file may add to its name. */
const mostBytes = 200

/** Shortened before its ending, never inside a character. */
function shortened(name: string): string {
  const [ending = ''] = /\.[^.]{1,10}$/.exec(name) ?? []
  let stem = ''
  let bytes = Buffer.byteLength(ending)
  for (const character of name.slice(0, name.length - ending.length)) {
    bytes += Buffer.byteLength(character)
    if (bytes > mostBytes) break
    stem += character
  }
  return stem.trimEnd() + ending
}

/** Never empty, never a path, at most 200 bytes. */
export function savedName(given: string): string {
  const kept = given
    .normalize('NFC')
    .toWellFormed()
    .replace(turning, '')
    .replace(refused, '-')
    .trim()
    .replace(/^\.+|[. ]+$/g, '')
  if (kept === '') return 'file'
  return shortened(devices.test(kept) ? `_${kept}` : kept)
}

/** RFC 6266: the name as it is (RFC 8187), and in ASCII for what reads only that. */
export function disposition(name: string): string {
  const ascii = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\x20-\x7e]|["\\%]/g, '_')
  const encoded = encodeURIComponent(name).replace(
    /['()*]/g,
    sign => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  )
  return `attachment; filename="${ascii}"; filename*=UTF-8''${encoded}`
}
