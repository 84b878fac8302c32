/** `npm run pack`: builds everything and packs it with electron-builder for this platform. */
import { buildFonts } from '../fonts/build.ts'
import { buildDesktop, buildRenderer } from './build.ts'
import { runNode, toolOf } from './run.ts'

await buildFonts()
await buildRenderer()
await buildDesktop()
process.exitCode = await runNode([
  toolOf('electron-builder'),
  '--config',
  'electron-builder.yml',
  ...process.argv.slice(2),
])
