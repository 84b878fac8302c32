import { builtinModules } from 'node:module'
import { defineConfig } from 'vite'

const folder = new URL('.', import.meta.url).pathname
const worker = new URL('../../workers/long.ts', import.meta.url).pathname
const pictures = new URL('../../demo/pictures/picture-thread.ts', import.meta.url).pathname

/** Main process and worker as ES modules. Native packages stay in node_modules, named here and not found by a plugin. */
export default defineConfig({
  root: folder,
  publicDir: false,
  build: {
    outDir: 'built',
    emptyOutDir: true,
    target: 'node24',
    minify: false,
    ssr: true,
    rollupOptions: {
      input: { main: `${folder}main.ts`, long: worker, 'picture-thread': pictures },
      output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'part-[name]-[hash].js' },
      external: [
        'electron',
        'better-sqlite3',
        'sharp',
        ...builtinModules,
        ...builtinModules.map(name => `node:${name}`),
      ],
    },
  },
  ssr: { noExternal: true, external: ['electron', 'better-sqlite3', 'sharp'] },
})
