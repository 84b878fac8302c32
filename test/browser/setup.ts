/** Before the browser tests: the demo, written once and copied by each test. */
import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { writeDemo } from '../../main/demo/write.ts'
import { machineClock } from '../../main/services/clock.ts'

export default async function setup(): Promise<void> {
  const folder = fileURLToPath(new URL('../out/demo', import.meta.url))
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  await writeDemo(join(folder, 'demo.hangwright'), machineClock)
}
