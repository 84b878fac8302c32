/** Whether what was built is older than what it is built from, so that a start builds only when it must. */
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './run.ts'

function hashOf(folders: readonly string[]): string {
  const hash = createHash('sha256')
  for (const folder of folders) {
    for (const entry of readdirSync(join(root, folder), { recursive: true, withFileTypes: true })) {
      if (!entry.isFile() || entry.parentPath.includes('built') || entry.parentPath.includes('node_modules')) continue
      const file = join(entry.parentPath, entry.name)
      hash.update(file).update(readFileSync(file))
    }
  }
  return hash.update(readFileSync(join(root, 'package-lock.json'))).digest('hex')
}

/** Runs `build` when the sources under `folders` are not those that `built` was made from. */
export async function buildWhenOld(
  built: string,
  folders: readonly string[],
  build: () => Promise<void>,
): Promise<boolean> {
  const stamp = join(root, built, '.made-from')
  const wanted = hashOf(folders)
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return false
  await build()
  mkdirSync(join(root, built), { recursive: true })
  writeFileSync(stamp, wanted)
  return true
}
