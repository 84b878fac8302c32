import { defineConfig } from 'vite'

const folder = new URL('.', import.meta.url).pathname

/** The preload: CommonJS under a fixed name, since a sandboxed preload can be nothing else. */
export default defineConfig({
  root: folder,
  publicDir: false,
  build: {
    outDir: 'built',
    emptyOutDir: false,
    target: 'node24',
    minify: false,
    lib: { entry: `${folder}preload.ts`, formats: ['cjs'], fileName: () => 'preload.cjs' },
    rollupOptions: { external: ['electron'] },
  },
})
