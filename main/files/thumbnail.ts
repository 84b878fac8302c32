/** A picture made small for paper and tables: turned upright, on white, as a JPEG. */
import sharp from 'sharp'

export interface Thumbnail {
  readonly bytes: Buffer
  readonly extension: 'jpeg' | 'png'
  readonly width: number
  readonly height: number
}

/** Null for what no decoder here can read: such a picture is kept and shown as none. */
export async function thumbnailOf(bytes: Buffer): Promise<Thumbnail | null> {
  try {
    const small = sharp(bytes)
      .rotate()
      .resize(220, 160, { fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
    const { data, info } = await small.jpeg({ quality: 82 }).toBuffer({ resolveWithObject: true })
    return { bytes: data, extension: 'jpeg', width: info.width, height: info.height }
  } catch {
    return null
  }
}
