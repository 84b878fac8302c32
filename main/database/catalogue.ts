/**
 * An open catalogue: one connection with a handle for reading, and edits as the only way to write. It has no busy
 * timeout, which would stop its thread; edits wait for other programs on their own.
 */
import { existsSync, linkSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname, extname, join, resolve } from 'node:path'
import Database from 'better-sqlite3'
import { Refusal } from '../../src/contract/refusal.ts'
import { refuseNoFolder } from '../files/named-places.ts'
import { backupBeforeMigration } from './backup-files.ts'
import { type Edited, runEdit, type Who } from './edit.ts'
import { asRefusal, busy, isBusy } from './faults.ts'
import { type ReadHandle, readHandle, type WriteHandle, writeHandle } from './handles.ts'
import { identify, refuseNetworkShare } from './identify.ts'
import { type Migration, migrate, newestVersion } from './migrate.ts'
import { migrations as ours } from './migrations/list.ts'
import { type TakingBack, undoOrRedo } from './undo.ts'

export interface CatalogueClock {
  readonly now: () => string
  readonly newId: () => string
}

export interface OpenOptions {
  /** For long work in a worker: more memory for pages. */
  readonly forWork?: boolean
  /** For tests of the migrations themselves. */
  readonly migrations?: readonly Migration[]
}

export interface EditOptions {
  readonly procedure: string
  readonly person: Who
  /** What it does, in words for people; or `setLabel` says it inside. */
  readonly label?: string
  /** Since when somebody waits for this edit, by `performance.now()`; else since now. */
  readonly askedAt?: number
}

export interface Edit {
  readonly db: WriteHandle
  readonly newId: () => string
  readonly now: () => string
  readonly setLabel: (text: string) => void
}

export interface TakenBack extends Omit<Edited<string>, 'value' | 'edit'> {
  readonly edit: number
  /** What was undone or redone, in words. */
  readonly label: string
}

export interface Catalogue {
  readonly file: string
  /** The files folder beside it. */
  readonly folder: string
  readonly db: ReadHandle
  /**
   * What `read` gives, all of it from one state of the file, whatever other programs write meanwhile. It also locks the
   * file once instead of once a statement, which halves the time of many small ones.
   */
  readonly snapshot: <T>(read: () => T) => T
  /** The same for work that waits in between; nothing is written by this connection meanwhile. */
  readonly held: <T>(read: () => Promise<T>) => Promise<T>
  /** Changes whenever another connection has written. */
  readonly dataVersion: () => number
  readonly edit: <T>(options: EditOptions, change: (edit: Edit) => T) => Promise<Edited<T>>
  /** Takes back the person's newest edit. Refuses `nothing-to-undo`, `undo-blocked`. */
  readonly undo: (person: Who, telling?: TakingBack) => Promise<TakenBack>
  /** Does again what the person undid last. Refuses `nothing-to-redo`, `undo-blocked`. */
  readonly redo: (person: Who, telling?: TakingBack) => Promise<TakenBack>
  readonly close: () => void
}

/** The folder of pictures and documents: `<name>.hangwright-files`. */
export function filesFolder(file: string): string {
  return join(dirname(file), `${basename(file, extname(file))}.hangwright-files`)
}

const cacheKib = { screen: 16 * 1024, work: 256 * 1024 } as const

function connect(file: string): Database.Database {
  const db = new Database(file, { fileMustExist: true, timeout: 0 })
  try {
    db.pragma('journal_mode = WAL')
    db.pragma('synchronous = FULL')
    // Each insert that a trigger may refuse keeps a statement journal; on disk that is ten small writes a row.
    db.pragma('temp_store = MEMORY')
    db.pragma('foreign_keys = ON')
    db.pragma('trusted_schema = OFF')
    return db
  } catch (error) {
    db.close()
    throw error
  }
}

/** Opening may meet another program's opening or closing for a moment; both are short. */
function patiently<T>(step: () => T): T {
  const until = performance.now() + 3000
  for (;;) {
    try {
      return step()
    } catch (error) {
      if (!isBusy(error)) throw error
      if (performance.now() > until) throw busy()
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20)
    }
  }
}

/** Opens a catalogue, bringing it to this program's form after a backup. Refuses with the file untouched. */
export function openCatalogue(given: string, clock: CatalogueClock, options: OpenOptions = {}): Catalogue {
  const file = resolve(given)
  const migrations = options.migrations ?? ours
  const version = patiently(() => identify(file, newestVersion(migrations)))
  try {
    const db = patiently(() => connect(file))
    try {
      db.pragma(`cache_size = ${-(options.forWork ? cacheKib.work : cacheKib.screen)}`)
      if (version < newestVersion(migrations)) {
        patiently(() => backupBeforeMigration(db, file, version, clock.now()))
        patiently(() => migrate(db, migrations, clock.now))
        db.pragma('wal_checkpoint(TRUNCATE)')
      }
      return opened(db, file, clock)
    } catch (error) {
      db.close()
      throw error
    }
  } catch (error) {
    throw asRefusal(error, file)
  }
}

function opened(db: Database.Database, file: string, clock: CatalogueClock): Catalogue {
  let editing = false
  const reading = readHandle(db)
  const writing = writeHandle(db, () => editing)

  async function takeBack(way: 'undo' | 'redo', person: Who, telling?: TakingBack): Promise<TakenBack> {
    const { value, edit, tables, keys } = await undoOrRedo(db, file, way, person, clock.now(), telling)
    if (edit === null) throw new Error(`${way} wrote nothing`)
    return { edit, label: value, tables, keys }
  }

  function snapshot<T>(read: () => T): T {
    // An edit that has just begun is a state of the file too.
    if (db.inTransaction) return read()
    db.exec('BEGIN')
    try {
      return read()
    } finally {
      // SQLite may have rolled back already, when the disk gave up, say.
      if (db.inTransaction) db.exec('COMMIT')
    }
  }

  async function held<T>(read: () => Promise<T>): Promise<T> {
    db.exec('BEGIN')
    try {
      // A state is taken with the first read, not with BEGIN.
      db.prepare('SELECT 1 FROM schema_step').get()
      return await read()
    } finally {
      if (db.inTransaction) db.exec('COMMIT')
    }
  }

  return {
    file,
    folder: filesFolder(file),
    db: reading,
    snapshot,
    held,
    dataVersion: () => Number(db.pragma('data_version', { simple: true })),
    edit(given, change) {
      let label = given.label ?? ''
      const edit: Edit = {
        db: writing,
        newId: clock.newId,
        now: clock.now,
        setLabel(text) {
          label = text
        },
      }
      function inside() {
        editing = true
        try {
          return change(edit)
        } finally {
          editing = false
        }
      }
      const row = {
        procedure: given.procedure,
        person: given.person,
        at: clock.now(),
        undoes: null,
        label: () => label,
        askedAt: given.askedAt,
      }
      return runEdit(db, file, row, inside)
    },
    undo: (person, telling) => takeBack('undo', person, telling),
    redo: (person, telling) => takeBack('redo', person, telling),
    close() {
      db.close()
    },
  }
}

/** Makes an empty catalogue and opens it. Refuses `catalogue-exists`, `no-such-folder`; a file that could not be finished is not left. */
export function createCatalogue(given: string, clock: CatalogueClock, options: OpenOptions = {}): Catalogue {
  const file = resolve(given)
  if (existsSync(file)) {
    throw new Refusal('catalogue-exists', 'There is a file of this name already. Choose another name.', {
      details: { file },
    })
  }
  refuseNoFolder(dirname(file), 'file')
  refuseNetworkShare(file)
  const making = `${file}.${clock.newId()}.making`
  try {
    const db = new Database(making, { timeout: 0 })
    try {
      // An import writes its pages twice, into the log and out of it: larger ones in half as many steps.
      db.pragma('page_size = 8192')
      db.pragma('synchronous = FULL')
      migrate(db, options.migrations ?? ours, clock.now)
    } finally {
      db.close()
    }
    place(making, file)
  } catch (error) {
    throw asRefusal(error, file)
  } finally {
    for (const side of ['', '-journal']) rmSync(`${making}${side}`, { force: true })
  }
  return openCatalogue(file, clock, options)
}

/** A link refuses to replace a file that somebody made meanwhile; where there are no links, the check has to do. */
function place(making: string, file: string): void {
  try {
    linkSync(making, file)
  } catch (error) {
    if (existsSync(file)) throw error
    renameSync(making, file)
  }
}
