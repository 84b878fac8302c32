/** `npm run build`: the fonts, the renderer, and the bundles for Electron. */
import { build } from 'vite'
import { buildFonts } from '../fonts/build.ts'
import { root } from './run.ts'

export async function buildRenderer(): Promise<void> {
  await build({ configFile: `${root}renderer/vite.config.ts`, logLevel: 'warn' })
}

export async function buildDesktop(): Promise<void> {
  await build({ configFile: `${root}main/hosts/desktop/vite.main.config.ts`, logLevel: 'warn' })
  await build({ configFile: `${root}main/hosts/desktop/vite.preload.config.ts`, logLevel: 'warn' })
}

if (import.meta.main) {
  await buildFonts()
  await buildRenderer()
  await buildDesktop()
}
