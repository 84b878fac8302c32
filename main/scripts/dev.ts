/** `npm run dev [FILE]`: the loopback host on the sources, the screens rebuilt as they change. */
import { existsSync, mkdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'
import { writeDemo } from '../demo/write.ts'
import { dataFolder } from '../files/data-folder.ts'
import { demoName } from '../hosts/desk.ts'
import { serveUntilStopped } from '../hosts/loopback/serve.ts'
import { machineClock } from '../services/clock.ts'
import { root } from './run.ts'

const file = process.argv[2] === undefined ? join(dataFolder(), demoName) : resolve(process.argv[2])
if (!existsSync(file) && process.argv[2] === undefined) {
  mkdirSync(dataFolder(), { recursive: true })
  await writeDemo(file, machineClock)
}
await build({ configFile: `${root}renderer/vite.config.ts`, build: { watch: {} }, logLevel: 'info' })
await serveUntilStopped({ file, port: 0, onAddress: address => console.log(address) })
process.exit()
