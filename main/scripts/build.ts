/** `npm run build`: the fonts, the renderer, and the bundles for Electron. */
import { cpSync } from 'node:fs'
import { build } from 'vite'
import { buildFonts, builtFonts } from '../fonts/build.ts'
import { root } from './run.ts'

export async function buildRenderer(): Promise<void> {
  await build({ configFile: `${root}renderer/vite.config.ts`, logLevel: 'warn' })
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
