/** Pictures of works, small, as sheets and workbooks show them. */
import sharp from 'sharp'
import type { Thumbnail } from '../../files/workbook/write.ts'
import type { Job } from '../service.ts'

/** Pictures that can be shown, by hash. One that cannot be decoded, or is not there, is left out. */
export async function thumbnailsOf(job: Job, wanted: readonly string[]): Promise<ReadonlyMap<string, Thumbnail>> {
  const hashes = new Set(wanted)
  const found = new Map<string, Thumbnail>()
  let done = 0
  for (const hash of hashes) {
    job.signal.throwIfAborted()
    job.progress(done, hashes.size, 'Making pictures small')
    const thumbnail = await thumbnailOf(job, hash)
    if (thumbnail !== null) found.set(hash, thumbnail)
    done += 1
  }
  return found
}

async function thumbnailOf(job: Job, hash: string): Promise<Thumbnail | null> {
  try {
    const stored = await job.store.picture(hash, 480)
    if (stored === null) return null
    const small = sharp(stored.bytes)
      .resize(220, 160, { fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
    const { data, info } = await small.jpeg({ quality: 82 }).toBuffer({ resolveWithObject: true })
    return { bytes: data, extension: 'jpeg', width: info.width, height: info.height }
  } catch {
    // A picture that no decoder here can read is kept and shown as none: the list must come all the same.
    return null
  }
}
