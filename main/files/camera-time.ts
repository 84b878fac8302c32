/**
 * When a photograph was taken, as the camera wrote it into its EXIF block (Exif 3.0, CIPA DC-008: a TIFF whose tag
 * 0x8769 points to the camera's own directory, with DateTimeOriginal 0x9003 and OffsetTimeOriginal 0x9011).
 */

const cameraDirectory = 0x8769
const takenTag = 0x9003
const offsetTag = 0x9011
const ascii = 2
/** No camera writes as many entries; more are damage. */
const mostEntries = 1000

interface Entry {
  readonly type: number
  readonly count: number
  /** Where the value stands, or where it is pointed to from. */
  readonly at: number
}

/**
 * `exif` as sharp gives it, with or without its name before it. Without an offset the camera's clock is taken to go as
 * this machine's does. ISO 8601 in UTC; null where nothing, or no date, is written.
 */
export function cameraTime(exif: Uint8Array | undefined): string | null {
  if (exif === undefined) return null
  const named = String.fromCharCode(...exif.subarray(0, 4)) === 'Exif' ? 6 : 0
  const view = new DataView(exif.buffer, exif.byteOffset + named, Math.max(0, exif.byteLength - named))
  try {
    const little = view.getUint16(0) === 0x4949
    const camera = entryOf(view, view.getUint32(4, little), cameraDirectory, little)
    if (camera === null) return null
    const directory = view.getUint32(camera.at, little)
    const taken = textOf(view, entryOf(view, directory, takenTag, little), little)
    const parts = /^(\d{4}):(\d\d):(\d\d) (\d\d):(\d\d):(\d\d)$/.exec(taken)
    if (parts === null) return null
    const [, year, month, day, hour, minute, second] = parts
    const offset = textOf(view, entryOf(view, directory, offsetTag, little), little)
    const zone = /^[+-]\d\d:\d\d$/.test(offset) ? offset : ''
    const moment = new Date(`${year}-${month}-${day}T${hour}:${minute}:${second}${zone}`)
    return Number.isNaN(moment.getTime()) ? null : moment.toISOString()
  } catch (error) {
    // A pointer past the end: the block is damaged, and says nothing.
    if (error instanceof RangeError) return null
    throw error
  }
}

function entryOf(view: DataView, directory: number, tag: number, little: boolean): Entry | null {
  const entries = Math.min(view.getUint16(directory, little), mostEntries)
  for (let index = 0; index < entries; index++) {
    const at = directory + 2 + index * 12
    if (view.getUint16(at, little) !== tag) continue
    return { type: view.getUint16(at + 2, little), count: view.getUint32(at + 4, little), at: at + 8 }
  }
  return null
}

function textOf(view: DataView, entry: Entry | null, little: boolean): string {
  if (entry === null || entry.type !== ascii || entry.count > 64) return ''
  // Up to four bytes stand in the entry itself.
  const from = entry.count <= 4 ? entry.at : view.getUint32(entry.at, little)
  const codes = Array.from({ length: entry.count }, (_, index) => view.getUint8(from + index))
  return String.fromCharCode(...codes.filter(code => code !== 0))
}
