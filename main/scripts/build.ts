/** `npm run build`: the fonts, the renderer, and the bundles for Electron. */
import { cpSync } from 'node:fs'
import { build } from 'vite'
import { buildFonts, builtFonts } from '../fonts/build.ts'
import { root, runNode, toolOf } from './run.ts'

/** In a process of its own: what a build takes (about 800 MB) is given back before the program is served. */
export async function buildRenderer(): Promise<void> {
  const code = await runNode([toolOf('vite'), 'build', '--config', 'renderer/vite.config.ts', '--logLevel', 'warn'])
  if (code !== 0) throw new Error('the screens could not be built; what stands above says why')
}

export async function buildDesktop(): Promise<void> {
  await build({ configFile: `${root}main/hosts/desktop/vite.main.config.ts`, logLevel: 'warn' })
  await build({ configFile: `${root}main/hosts/desktop/vite.preload.config.ts`, logLevel: 'warn' })
  // Bundled code looks for the faces beside itself, as the sources do.
  await buildFonts()
  cpSync(builtFonts, `${root}main/hosts/desktop/built/built`, { recursive: true })
}

if (import.meta.main) {
  await buildFonts()
  await buildRenderer()
  await buildDesktop()
}
