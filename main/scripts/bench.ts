/** `npm run bench [NAME …]`: prints figures and ratios side by side with a general tool; nothing here passes or fails. */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { root, runNode } from './run.ts'

const asked = process.argv.slice(2)
const folder = join(root, 'test', 'bench')
for (const file of readdirSync(folder).sort()) {
  const name = file.replace(/\.bench\.ts$/, '')
  if (name === file || (asked.length > 0 && !asked.includes(name))) continue
  console.log(`\n${name}`)
  process.exitCode = (await runNode([join(folder, file)])) || process.exitCode || 0
}
