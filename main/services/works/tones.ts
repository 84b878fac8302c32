/** How pictures read, kept by the hash of their bytes, so that the same picture is read once. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { cellsAcross, type Tone } from '../../../src/sequence/tones.ts'
import type { ReadHandle, WriteHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import type { Job } from '../service.ts'
import { row, rows } from '../sql.ts'

/** Figures are kept to a hundredth. */
const step = 100
const figuresOfCell = 4

function asBlob(tones: readonly Tone[]): Buffer {
  const figures = tones.flatMap(({ l, a, b, detail }) => [l, a, b, detail])
  const blob = Buffer.alloc(figures.length * 2)
  figures.forEach((figure, at) => {
    blob.writeInt16LE(Math.round(figure * step), at * 2)
  })
  return blob
}

function fromBlob(blob: Buffer): Tone[] | null {
  if (blob.length !== cellsAcross * cellsAcross * figuresOfCell * 2) return null
  const figure = (cell: number, at: number) => blob.readInt16LE((cell * figuresOfCell + at) * 2) / step
  return Array.from({ length: cellsAcross * cellsAcross }, (_, cell) => ({
    l: figure(cell, 0),
    a: figure(cell, 1),
    b: figure(cell, 2),
    detail: figure(cell, 3),
  }))
}

/** What is known of a picture: its tones, that it can't be read (null), or nothing yet (undefined). */
export function tonesOf(db: ReadHandle, hash: string | null): readonly Tone[] | null | undefined {
  if (hash === null) return undefined
  const found = row<{ cells: Buffer | null }>(db, 'SELECT cells FROM picture_tone WHERE hash = :hash', { hash })
  return found === undefined ? undefined : found.cells === null ? null : fromBlob(found.cells)
}

/** `null` for a picture that can't be read. */
export function keepTones(db: WriteHandle, hash: string, tones: readonly Tone[] | null): void {
  const sql = 'INSERT INTO picture_tone (hash, cells) VALUES (?, ?) ON CONFLICT (hash) DO NOTHING'
  db.prepare(sql).run(hash, tones === null ? null : asBlob(tones))
}

/** Pictures that a show's works and their parts are seen by, without those that are read already. */
const toRead = `SELECT DISTINCT work.picture AS hash FROM entry JOIN work ON work.id = entry.work OR work.parent = entry.work
  WHERE entry.exhibition = :exhibition AND work.picture IS NOT NULL
    AND NOT EXISTS (SELECT 1 FROM picture_tone WHERE picture_tone.hash = work.picture)`

export async function weighPictures(
  job: Job,
  { exhibition }: Received<'picture.weigh'>,
): Promise<Output<'picture.weigh'>> {
  if (row(job.db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined)
    throw notFound('exhibition', 'exhibition')
  const hashes = rows<{ hash: string }>(job.db, `${toRead} ORDER BY hash`, { exhibition }).map(({ hash }) => hash)
  const read = new Map<string, readonly Tone[] | null>()
  for (const [at, hash] of hashes.entries()) {
    job.progress(at, hashes.length, 'Reading pictures')
    read.set(hash, await job.store.tones(hash))
  }
  job.progress(hashes.length, hashes.length, 'Reading pictures')
  if (read.size > 0) {
    await job.write(({ db, label }) => {
      label('Read how pictures look')
      for (const [hash, tones] of read) keepTones(db, hash, tones)
    })
  }
  const unreadable = [...read.values()].filter(tones => tones === null).length
  return { read: read.size - unreadable, unreadable }
}

/** How many of a face's pictures are not read yet, and how many can't be. */
export function picturesOn(db: ReadHandle, hashes: readonly string[]): { toRead: number; unreadable: number } {
  const found = [...new Set(hashes)].map(hash => tonesOf(db, hash))
  return {
    toRead: found.filter(tones => tones === undefined).length,
    unreadable: found.filter(tones => tones === null).length,
  }
}
