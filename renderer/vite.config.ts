/** Builds the screens into renderer/built/: everything bundled, nothing inline, so that the strict policy holds. */
import { fileURLToPath } from 'node:url'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vite'

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: '/',
  publicDir: false,
  plugins: [svelte({ configFile: false })],
  build: {
    outDir: 'built',
    emptyOutDir: true,
    target: 'chrome130',
    // A font or picture as data: would be refused by the policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1500,
  },
})
