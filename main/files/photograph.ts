/** A photograph looked at before it is kept: whether it is one, whether it can be held, and when it was taken. */
import { statSync } from 'node:fs'
import sharp from 'sharp'
import { Refusal } from '../../src/contract/refusal.ts'
import { sizeRefused } from '../../src/record/condition/photographs.ts'
import { isRaw } from './camera-raw.ts'
import { cameraTime } from './camera-time.ts'
import { isPhone, mostPixels, seenOf } from './store.ts'

export interface Looked {
  /** When the camera says that it was taken, ISO 8601 in UTC; null where it says nothing. */
  readonly takenAt: string | null
  /** Cut off or damaged; what there is of it can be shown. */
  readonly partial: boolean
}

/** Nothing is kept. Refuses `no-picture`, `file-too-large`, `too-many-pixels`. */
export async function lookAt(path: string, name: string): Promise<Looked> {
  const { size } = statSync(path)
  const refused = sizeRefused(name, size)
  if (refused !== '') throw new Refusal(size === 0 ? 'no-picture' : 'file-too-large', refused, { field: 'handle' })
  const header = await sharp(path, { limitInputPixels: false, pages: 1 })
    .metadata()
    .catch(() => null)
  // The form of a phone may be closed to us, and that of a sensor is; both may hold a picture that can be shown.
  if ((await isRaw(path)) || (header === null && (await isPhone(path)))) {
    if ((await seenOf(path)) === null) throw withoutPreview(name)
    return { takenAt: cameraTime(header?.exif), partial: false }
  }
  if (header === null) throw notShown(name)
  const pixels = header.width * header.height
  if (pixels > mostPixels) {
    const sentence = `${name} has ${Math.round(pixels / 1e6)} megapixels; at most ${mostPixels / 1e6} can be shown. Make it smaller and bring that.`
    throw new Refusal('too-many-pixels', sentence, { field: 'handle' })
  }
  // A header proves no picture behind it.
  if ((await seenOf(path)) === null) throw notShown(name)
  return { takenAt: cameraTime(header.exif), partial: await isPartial(path) }
}

async function isPartial(path: string): Promise<boolean> {
  const whole = sharp(path, { limitInputPixels: mostPixels, failOn: 'truncated', pages: 1 }).resize(8, 8)
  return whole.toBuffer().then(
    () => false,
    () => true,
  )
}

export const notShown = (name: string): Refusal =>
  new Refusal('no-picture', `${name} is no picture that can be shown. Bring it as .jpg, .png, .webp or .tiff.`, {
    field: 'handle',
  })

function withoutPreview(name: string): Refusal {
  const sentence = `${name} is in a camera’s own form and holds no preview that could be shown. Bring it as .jpg, .png, .webp or .tiff.`
  return new Refusal('no-picture', sentence, { field: 'handle' })
}
