/** A photograph looked at before it is kept: whether it is one, whether it can be held, and when it was taken. */
import { statSync } from 'node:fs'
import sharp from 'sharp'
import { Refusal } from '../../src/contract/refusal.ts'
import { cameraTime } from './camera-time.ts'
import { isPhone, mostPixels } from './store.ts'

/** Bytes: larger than any camera's file, smaller than what a disk copies while somebody waits. */
export const largestOfReport = 2 ** 28

export interface Looked {
  /** When the camera says that it was taken, ISO 8601 in UTC; null where it says nothing. */
  readonly takenAt: string | null
}

/** Only the header is read. Refuses `no-picture`, `file-too-large`, `too-many-pixels`. */
export async function lookAt(path: string, name: string): Promise<Looked> {
  const { size } = statSync(path)
  if (size > largestOfReport) {
    const sentence = `${name} has ${Math.round(size / 1e6)} MB; a report takes photographs of up to ${Math.round(largestOfReport / 1e6)} MB. Bring it as .jpg.`
    throw new Refusal('file-too-large', sentence, { field: 'handle' })
  }
  const header = await sharp(path, { limitInputPixels: false, pages: 1 })
    .metadata()
    .catch(() => null)
  if (header === null) {
    // The form of a phone may be closed to us and still hold a picture that can be shown.
    if (await isPhone(path)) return { takenAt: null }
    throw notShown(name)
  }
  const pixels = header.width * header.height
  if (pixels > mostPixels) {
    const sentence = `${name} has ${Math.round(pixels / 1e6)} megapixels; at most ${mostPixels / 1e6} can be shown. Make it smaller and bring that.`
    throw new Refusal('too-many-pixels', sentence, { field: 'handle' })
  }
  return { takenAt: cameraTime(header.exif) }
}

export const notShown = (name: string): Refusal =>
  new Refusal('no-picture', `${name} is no picture that can be shown. Bring it as .jpg, .png, .webp or .tiff.`, {
    field: 'handle',
  })
