/** The file itself: backups, check, clean-up. Each runs in a worker, so that a large catalogue stays usable meanwhile. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Output, Received } from '../../src/contract/contract.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { backupIfChanged, backupTo, listBackups } from '../database/backup.ts'
import { backupFolder } from '../database/backup-files.ts'
import { checkCatalogue } from '../database/check.ts'
import { placeIn } from '../database/move.ts'
import { tidyFiles } from '../database/tidy.ts'
import type { Job, Reading } from './service.ts'

export function backups({ store }: Reading): Output<'catalogue.backups'> {
  return { backups: listBackups(store.catalogue).map(({ key, at, bytes, why }) => ({ key, at, bytes, why })) }
}

/** A whole copy with its files, under a name, beside the automatic ones. */
export async function backup(job: Job, { name }: Received<'catalogue.backup'>): Promise<Output<'catalogue.backup'>> {
  const plain = (name ?? `copy ${job.now().slice(0, 10)}`).replace(/[^\p{L}\p{N} ._-]/gu, '').trim()
  if (plain === '' || plain.startsWith('.')) {
    throw new Refusal('bad-input', 'A backup’s name needs letters or figures.', { field: 'name' })
  }
  const folder = join(backupFolder(job.store.catalogue), 'copies')
  mkdirSync(folder, { recursive: true })
  return job.alone(() => backupTo({ file: job.store.catalogue }, join(folder, `${plain}.hangwright`), job))
}

/** The same into a folder of the person's choice, under its own name. */
export async function saveCopy(
  job: Job,
  { folder, name }: Received<'catalogue.saveCopy'>,
): Promise<Output<'catalogue.saveCopy'>> {
  const place = placeIn(folder, name)
  return job.alone(() => backupTo({ file: job.store.catalogue }, place, job))
}

export async function keepBackup(job: Job): Promise<Output<'catalogue.keepBackup'>> {
  return { key: await job.alone(() => backupIfChanged(job.store.catalogue, job.now(), job)) }
}

export async function check(job: Job): Promise<Output<'catalogue.check'>> {
  const integrity = await checkCatalogue(job.store.catalogue, job)
  return { ok: integrity.length === 0, integrity }
}

export async function tidy(job: Job): Promise<Output<'catalogue.tidy'>> {
  return job.alone(() => tidyFiles(job.store.catalogue, Date.parse(job.now()), job))
}
