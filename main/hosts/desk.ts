/** Procedures about the host itself: which catalogue is open, who is at the desk, recent catalogues, handles. */
import { copyFileSync, existsSync, mkdirSync } from 'node:fs'
import { basename, extname, join } from 'node:path'
import type { NameOf, Output, Received } from '../../src/contract/contract.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { restoreBackup } from '../database/backup.ts'
import { createCatalogue } from '../database/catalogue.ts'
import { placeIn, prepareMove } from '../database/move.ts'
import { forgetCatalogue, recentCatalogues, rememberCatalogue } from '../database/recent.ts'
import { personOf } from '../services/people.ts'
import type { Host } from './host.ts'
import { version } from './version.ts'

type DeskName = NameOf<'desk'>
type DeskServices = {
  readonly [N in DeskName]: (host: Host, input: Received<N>, job?: string) => Output<N> | Promise<Output<N>>
}

export const demoName = 'demo.hangwright'

function nameOf(file: string): string {
  return basename(file, extname(file))
}

function openedNow(file: string): { name: string; file: string } {
  return { name: nameOf(file), file }
}

/** Opens a catalogue and remembers it, with who sat at it last. */
export function openAndRemember(host: Host, file: string): void {
  host.openFile(file)
  rememberCatalogue(host.data, file, host.clock.now())
  const last = recentCatalogues(host.data).find(recent => recent.file === file)?.person
  if (last !== undefined && host.open !== null) host.sit(personOf(host.open.catalogue.db, last))
  // Nobody waits for the backup; a disk that is full for it is reported and the work goes on.
  host.run('catalogue.keepBackup', {}).catch((error: unknown) => {
    const stopped = error instanceof Refusal && error.code === 'cancelled'
    if (!stopped) host.report(error)
  })
}

const services: DeskServices = {
  'desk.state': host => ({
    host: host.kind,
    catalogue:
      host.open === null
        ? null
        : { ...openedNow(host.open.catalogue.file), demo: basename(host.open.catalogue.file) === demoName },
    person: host.person,
    version,
  }),
  'desk.recent': host => ({
    catalogues: recentCatalogues(host.data).map(({ file, openedAt, key }) => ({
      key,
      name: nameOf(file),
      file,
      openedAt,
      missing: !existsSync(file),
    })),
  }),
  'desk.open': (host, { key }) => {
    const recent = recentCatalogues(host.data).find(each => each.key === key)
    if (recent === undefined)
      throw new Refusal('not-found', 'This catalogue is not among the recent ones.', { field: 'key' })
    openAndRemember(host, recent.file)
    return openedNow(recent.file)
  },
  'desk.new': (host, { name }) => {
    const plain = name.replace(/[^\p{L}\p{N} ._-]/gu, '').trim()
    if (plain === '' || plain.startsWith('.')) {
      throw new Refusal('bad-input', 'A catalogue’s name needs letters or figures.', { field: 'name' })
    }
    const folder = join(host.data, 'catalogues')
    mkdirSync(folder, { recursive: true })
    const file = join(folder, `${plain}.hangwright`)
    createCatalogue(file, host.clock).close()
    openAndRemember(host, file)
    return openedNow(file)
  },
  'desk.sit': (host, { person }) => {
    if (host.open === null) throw new Refusal('no-catalogue', 'No catalogue is open. Open one, or make a new one.')
    const who = personOf(host.open.catalogue.db, person)
    if (who === null) throw new Refusal('not-found', 'There is no such person any more.', { field: 'person' })
    host.sit(who)
    rememberCatalogue(host.data, host.open.catalogue.file, host.clock.now(), who.id)
    return who
  },
  'desk.cancel': (host, { job }) => ({ cancelled: host.cancel(job) }),
  'catalogue.restore': (host, { key }) =>
    host.alone(async () => {
      if (host.open === null) throw new Refusal('no-catalogue', 'No catalogue is open. Open one, or make a new one.')
      const { file } = host.open.catalogue
      host.closeFile()
      try {
        return { file, putAside: await restoreBackup(file, key, host.clock.now()) }
      } finally {
        host.openFile(file)
      }
    }),
  'catalogue.move': (host, { folder, name }, job) =>
    host.underWay(job, (signal, progress) =>
      host.alone(async () => {
        if (host.open === null) throw new Refusal('no-catalogue', 'No catalogue is open. Open one, or make a new one.')
        const { file: from } = host.open.catalogue
        const { person } = host
        const to = placeIn(folder, name)
        const { files, missing, finish, drop } = await prepareMove(from, to, { signal, progress })
        host.closeFile()
        let file = from
        try {
          await finish()
          file = to
        } catch (error) {
          drop()
          throw error
        } finally {
          host.openFile(file)
        }
        const left = recentCatalogues(host.data).find(recent => recent.file === from)
        if (left !== undefined) forgetCatalogue(host.data, left.key)
        rememberCatalogue(host.data, file, host.clock.now(), person?.id)
        return { ...openedNow(file), files, missing: [...missing] }
      }),
    ),
  'file.take': (host, { hash, name }) => {
    if (host.open === null) throw new Refusal('no-catalogue', 'No catalogue is open. Open one, or make a new one.')
    const kept = host.open.store.path(hash)
    if (!existsSync(kept))
      throw new Refusal('not-found', 'This file is missing from the catalogue’s folder.', { field: 'hash' })
    const { handle, path } = host.handles.create(name)
    copyFileSync(kept, path)
    return { handle, name: host.handles.name(handle) }
  },
  'file.describe': (host, { handle }) => ({ name: host.handles.name(handle), bytes: host.handles.bytes(handle) }),
}

export function runDesk<N extends DeskName>(
  host: Host,
  name: N,
  input: unknown,
  job?: string,
): Output<N> | Promise<Output<N>> {
  // answer.ts has put the input through this procedure's schema.
  return services[name](host, input as Received<N>, job)
}
