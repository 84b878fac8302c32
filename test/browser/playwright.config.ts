import { defineConfig } from '@playwright/test'

/** The whole program in a real browser, over the loopback host. One worker a core: the machine is shared. */
export default defineConfig({
  testDir: '.',
  outputDir: '../out/browser',
  globalSetup: './setup.ts',
  // A shared machine may take ten times what a quiet one does; what never comes fails all the same.
  timeout: 120_000,
  expect: { timeout: 30_000 },
  // One more try: a machine may stop for a minute. What needed it is named at the end of the suite, to be looked into.
  retries: 1,
  fullyParallel: false,
  workers: 2,
  reporter: [['list'], ['json']],
  use: {
    viewport: { width: 1440, height: 900 },
    launchOptions: {
      ...(process.env.HANGWRIGHT_BROWSER ? { executablePath: process.env.HANGWRIGHT_BROWSER } : {}),
      // Chromium as root needs it; the switches after it keep it from asking for hosts it can't reach.
      args: [
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
})
