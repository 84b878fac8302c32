/**
 * The small picture that a camera puts into a file whose main picture no decoder here reads, such as HEIC from a phone
 * (ISO/IEC 23008-12; its Exif item may hold a JPEG, Exif 2.32, 4.5.8). The rule it keeps: what begins like a JPEG is
 * one only once it has been decoded, and the largest counts.
 */
import sharp from 'sharp'

const mostTried = 40
/** Smaller ones are no pictures for people. */
const leastSide = 64
const begins = Buffer.from([0xff, 0xd8, 0xff])

/** The largest JPEG inside, or null. */
export async function previewIn(bytes: Buffer): Promise<Buffer | null> {
  let best: { readonly bytes: Buffer; readonly pixels: number } | null = null
  let at = bytes.indexOf(begins)
  for (let tried = 0; at >= 0 && tried < mostTried; tried++) {
    const piece = bytes.subarray(at)
    const pixels = await pixelsOf(piece)
    if (pixels > (best?.pixels ?? 0)) best = { bytes: piece, pixels }
    at = bytes.indexOf(begins, at + 1)
  }
  return best?.bytes ?? null
}

async function pixelsOf(piece: Buffer): Promise<number> {
  try {
    const { width, height, format } = await sharp(piece).metadata()
    if (format !== 'jpeg' || Math.min(width, height) < leastSide || width * height > 50_000_000) return 0
    // Chance can write a header, but not a picture behind it.
    await sharp(piece, { failOn: 'error' }).resize(16, 16).toBuffer()
    return width * height
  } catch {
    return 0
  }
}
