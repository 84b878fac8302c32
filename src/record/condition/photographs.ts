/** Photographs as files: which files count as such, how large one may be, and how a kept one is told. */

/** Bytes: larger than any camera's file, smaller than what a disk copies while somebody waits. */
export const largestPhotograph = 2 ** 28

/** Endings that a system knows no kind for: what phones, scanners and cameras write. */
const endings = 'heic heif tif tiff dng cr2 cr3 nef arw orf rw2 raf pef srw raw'.split(' ')
const ending = new RegExp(`\\.(${endings.join('|')})$`, 'i')

/** For a choice of files, as a browser wants it. */
export const photographsWanted = `image/*,${endings.map(each => `.${each}`).join(',')}`

/** By its kind or its name alone; whether it is one is seen when it is read. @param type as the browser knows it, or '' */
export const isPhotograph = ({ name, type }: { readonly name: string; readonly type: string }): boolean =>
  type.startsWith('image/') || ending.test(name)

/** Why a file of so many bytes can't be taken, before one of them is read; empty where it can. */
export function sizeRefused(name: string, bytes: number): string {
  if (bytes === 0) return `${name} is empty: there is not one byte in it. Copy it from the camera’s card again.`
  if (bytes <= largestPhotograph) return ''
  return `${name} has ${megabytes(bytes)} MB; a report takes photographs of up to ${megabytes(largestPhotograph)} MB. Bring it as .jpg.`
}

const megabytes = (bytes: number) => Math.round(bytes / 1e6)

/** Of a photograph that was cut off or damaged on its way. */
export const partialSaid = (name: string): string =>
  `${name} was taken, but part of its picture cannot be read: it is cut off or damaged. Copy it from the camera’s card again, or say what is missing.`

interface KeptFile {
  readonly name: string
  readonly widthPx: number
  readonly heightPx: number
  readonly preview: boolean
}

/** Its name and how large it is; of a camera's own form what of it is shown. */
export function fileSaid({ name, widthPx, heightPx, preview }: KeptFile): string {
  const pixels = `${widthPx} × ${heightPx} px`
  return preview ? `${name}, kept whole; shown by its preview of ${pixels}` : `${name}, ${pixels}`
}
