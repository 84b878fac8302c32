/** `npm run setup:electron`: fetches Electron's runtime once. */
import { electronHere, installElectron } from './electron-program.ts'

if (electronHere() === null && !(await installElectron())) {
  console.error('Electron’s runtime could not be fetched. Check the network and try again.')
  process.exitCode = 1
} else console.error('Electron’s runtime is here.')
