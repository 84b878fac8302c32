/** Pictures of works, small, as sheets and workbooks show them. */
import { type Thumbnail, thumbnailOf } from '../../files/thumbnail.ts'
import type { Job } from '../service.ts'

/** Pictures that can be shown, by hash. One that cannot be decoded, or is not there, is left out. */
export async function thumbnailsOf(job: Job, wanted: readonly string[]): Promise<ReadonlyMap<string, Thumbnail>> {
  const hashes = new Set(wanted)
  const found = new Map<string, Thumbnail>()
  let done = 0
  for (const hash of hashes) {
    job.signal.throwIfAborted()
    job.progress(done, hashes.size, 'Making pictures small')
    const stored = await job.store.picture(hash, 480)
    const thumbnail = stored === null ? null : await thumbnailOf(stored.bytes)
    if (thumbnail !== null) found.set(hash, thumbnail)
    done += 1
  }
  return found
}
