/** `npm run format`: puts every file into the one form. */
import { root, runNode, toolOf } from './run.ts'

process.exitCode = await runNode([toolOf('@biomejs/biome', 'biome'), 'check', '--write', root])
