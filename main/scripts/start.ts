/**
 * `npm start`: builds what is old and opens the last catalogue, at first the demo, in Electron; where Electron's
 * runtime cannot be had or there is no display, says so in one line and serves the loopback host.
 * `npm start -- FILE` opens another catalogue.
 */
import { existsSync, mkdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { recentCatalogues } from '../database/recent.ts'
import { writeDemo } from '../demo/write.ts'
import { dataFolder } from '../files/data-folder.ts'
import { buildFonts } from '../fonts/build.ts'
import { demoName } from '../hosts/desk.ts'
import { serveUntilStopped } from '../hosts/loopback/serve.ts'
import { machineClock } from '../services/clock.ts'
import { buildDesktop, buildRenderer } from './build.ts'
import { electronProgram } from './electron-program.ts'
import { buildWhenOld } from './fresh.ts'
import { root, run } from './run.ts'

const said = (words: string) => console.error(words)

/** The catalogue asked for, else the last one, else the demo, written once to the user's data folder and kept. */
async function catalogueToOpen(asked: string | undefined): Promise<string> {
  if (asked !== undefined) return resolve(asked)
  const data = dataFolder()
  const last = recentCatalogues(data).find(recent => existsSync(recent.file))
  if (last !== undefined) return last.file
  const demo = join(data, demoName)
  if (!existsSync(demo)) {
    mkdirSync(data, { recursive: true })
    said('Writing the demo catalogue …')
    await writeDemo(demo, machineClock)
  }
  return demo
}

const file = await catalogueToOpen(process.argv[2])
await buildWhenOld('main/fonts/built', ['main/fonts'], async () => {
  said('Cutting the fonts for paper …')
  await buildFonts()
})
await buildWhenOld('renderer/built', ['renderer', 'src'], async () => {
  said('Building the screens …')
  await buildRenderer()
})

const electron = await electronProgram()
if (electron.program === null) {
  said(`${electron.why} Serving in the browser instead; open this address:`)
  await serveUntilStopped({ file, port: 0, onAddress: address => console.log(address) })
} else {
  await buildWhenOld('main/hosts/desktop/built', ['main', 'src'], async () => {
    said('Building the desktop program …')
    await buildDesktop()
  })
  process.exitCode = await run(electron.program, [root, file])
}
