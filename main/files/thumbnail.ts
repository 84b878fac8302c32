/** A picture made small for paper and tables: turned upright, on white, as a JPEG. */
import sharp from 'sharp'
import { previewIn } from './preview.ts'

export interface Thumbnail {
  readonly bytes: Buffer
  readonly extension: 'jpeg' | 'png'
  readonly width: number
  readonly height: number
}

/** In a row of a table. */
const usual = { width: 220, height: 160 }

/** At most so large, px. By the preview inside where the picture itself can't be decoded; null where there is none. */
export async function thumbnailOf(bytes: Buffer, most = usual): Promise<Thumbnail | null> {
  const whole = await small(bytes, most)
  if (whole !== null) return whole
  const preview = await previewIn(bytes)
  return preview && small(preview, most)
}

async function small(bytes: Buffer, { width, height }: typeof usual): Promise<Thumbnail | null> {
  try {
    const upright = sharp(bytes)
      .rotate()
      .resize(width, height, { fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
    const { data, info } = await upright.jpeg({ quality: 82 }).toBuffer({ resolveWithObject: true })
    return { bytes: data, extension: 'jpeg', width: info.width, height: info.height }
  } catch {
    return null
  }
}
