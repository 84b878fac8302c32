/** Pictures and documents: the file is kept under its hash before the row that names it. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { notFound } from '../change.ts'
import type { Job, ServicesOf, Writing } from '../service.ts'
import { insert, remove, row, value } from '../sql.ts'
import { workName } from './facts.ts'
import { refreshPicture } from './figures.ts'
import { keepTones } from './tones.ts'

async function addPicture(job: Job, { work, handle }: Received<'work.addPicture'>): Promise<Output<'work.addPicture'>> {
  workName(job.db, work)
  const name = job.handles.name(handle)
  job.progress(0, 2, `Reading ${name}`)
  const kept = await job.store.addPicture(job.handles.path(handle))
  job.progress(1, 2, 'Making thumbnails')
  const tones = await job.store.tones(kept.hash)
  const id = job.newId()
  return job.write(writing => {
    writing.label(`Add a picture to ${workName(writing.db, work)}`)
    const last = value<number>(writing.db, 'SELECT max(position) FROM picture WHERE work = :work', { work })
    insert(writing.db, 'picture', {
      id,
      work,
      hash: kept.hash,
      mime: kept.mime,
      name,
      width_px: kept.widthPx,
      height_px: kept.heightPx,
      position: (last ?? 0) + 1,
      at: writing.now(),
    })
    keepTones(writing.db, kept.hash, tones)
    refreshPicture(writing.db, work)
    return { id, hash: kept.hash, widthPx: kept.widthPx, heightPx: kept.heightPx }
  })
}

function removePicture(writing: Writing, { id }: Received<'work.removePicture'>): Output<'work.removePicture'> {
  const found = row<{ work: string }>(writing.db, 'SELECT work FROM picture WHERE id = :id', { id })
  if (found === undefined) throw notFound('picture')
  writing.label(`Take a picture off ${workName(writing.db, found.work)}`)
  remove(writing.db, 'picture', id)
  refreshPicture(writing.db, found.work)
  return { done: true }
}

async function addDocument(
  job: Job,
  { work, handle }: Received<'work.addDocument'>,
): Promise<Output<'work.addDocument'>> {
  workName(job.db, work)
  const name = job.handles.name(handle)
  job.progress(0, 1, `Keeping ${name}`)
  const kept = await job.store.add(job.handles.path(handle))
  const id = job.newId()
  return job.write(writing => {
    writing.label(`Attach ${name} to ${workName(writing.db, work)}`)
    insert(writing.db, 'document', {
      id,
      subject_kind: 'work',
      subject: work,
      hash: kept.hash,
      mime: kept.mime,
      name,
      bytes: kept.bytes,
      at: writing.now(),
    })
    return { id, hash: kept.hash }
  })
}

function removeDocument(writing: Writing, { id }: Received<'work.removeDocument'>): Output<'work.removeDocument'> {
  const found = row<{ subject: string; name: string }>(
    writing.db,
    'SELECT subject, name FROM document WHERE id = :id',
    { id },
  )
  if (found === undefined) throw notFound('document')
  writing.label(`Take ${found.name} off ${workName(writing.db, found.subject)}`)
  remove(writing.db, 'document', id)
  return { done: true }
}

export const fileServices: ServicesOf<
  'work.addPicture' | 'work.removePicture' | 'work.addDocument' | 'work.removeDocument'
> = {
  'work.addPicture': addPicture,
  'work.removePicture': removePicture,
  'work.addDocument': addDocument,
  'work.removeDocument': removeDocument,
}
