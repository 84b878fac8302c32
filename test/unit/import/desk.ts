/** A real catalogue in a folder of its own, with a host over it, for the tests of imports. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createCatalogue } from '../../../main/database/catalogue.ts'
import { createHost } from '../../../main/hosts/host.ts'
import { clockFrom } from '../../../main/services/clock.ts'
import type { Input, Name, Output } from '../../../src/contract/contract.ts'

export interface Desk {
  readonly call: <N extends Name>(name: N, input: Input<N>) => Promise<Output<N>>
  readonly give: (name: string, bytes: string | Uint8Array) => string
  /** All rows of the tables that an import writes, for comparing two states. */
  readonly dump: () => string
  readonly rows: <R>(sql: string) => R[]
  readonly close: () => Promise<void>
}

const tables = [
  'work',
  'work_number',
  'work_size',
  'work_mass',
  'work_value',
  'entry',
  'section',
  'party',
  'import_run',
  'import_value',
  'import_question',
  'import_mapping',
  'journal',
]

export function openDesk(): Desk {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-import-'))
  const file = join(folder, 'test.hangwright')
  createCatalogue(file, clockFrom(undefined)).close()
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), checksOutput: true })
  host.openFile(file)
  function rows<R>(sql: string): R[] {
    return (host.open?.catalogue.db.prepare(sql).all() ?? []) as R[] // the caller's select list is the type
  }
  return {
    // The service of that name gave it.
    call: async (name, input) => (await host.run(name, input)) as Output<typeof name>,
    give(name, bytes) {
      const { handle, path } = host.handles.create(name)
      writeFileSync(path, bytes)
      return handle
    },
    rows,
    dump: () => JSON.stringify(tables.map(table => rows(`SELECT * FROM ${table} ORDER BY 1`))),
    async close() {
      await host.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
