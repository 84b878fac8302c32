import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

/** Everything that runs in Node alone. Forks, since tests open SQLite files and a crash must stay in its file. */
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/{unit,published,contract,faults,outside,desktop}/**/*.test.ts'],
    setupFiles: ['test/setup.ts'],
    pool: 'forks',
    // Files wait for SQLite and for other programs: one a processor keeps two processors busy.
    maxWorkers: availableParallelism(),
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
})
