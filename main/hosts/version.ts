/** The program's version, from its package. */
import { readFileSync } from 'node:fs'

// The one field that is read; the file is ours.
const own = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string }
export const version = own.version
