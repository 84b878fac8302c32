import { defineConfig } from '@playwright/test'

/** The real Electron, wherever its runtime is; elsewhere these tests are counted as skipped. */
export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: '../out/desktop',
  timeout: 60_000,
  workers: 1,
  reporter: [['list'], ['json']],
})
