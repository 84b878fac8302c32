/** The program's version, from its package: the nearest one above, since the desktop's bundle lies deeper than the sources. */
import { existsSync, readFileSync } from 'node:fs'

function packageAbove(from: URL): URL {
  const here = new URL('package.json', from)
  if (existsSync(here)) return here
  const above = new URL('..', from)
  if (above.href === from.href) throw new Error('the program has no package.json above it')
  return packageAbove(above)
}

// The one field that is read; the file is ours.
const own = JSON.parse(readFileSync(packageAbove(new URL('.', import.meta.url)), 'utf8')) as { version: string }
export const version = own.version
