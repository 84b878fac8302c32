/**
 * The renderer's files and their headers, the same for the desktop's own protocol and the loopback host: a path must
 * stay inside the built folder, and nothing is loaded from anywhere else.
 */
import { readFile } from 'node:fs/promises'
import { extname, join, resolve, sep } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Nothing by default; scripts, styles, fonts and calls only from ourselves; pictures also from memory. */
export const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "object-src 'none'",
].join('; ')

export const safeHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': contentPolicy,
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.woff2': 'font/woff2',
  '.svg': 'image/svg+xml',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
}

export const rendererFolder = fileURLToPath(new URL('../../renderer/built/', import.meta.url))

export interface PageFile {
  readonly type: string
  readonly bytes: Buffer
}

/** The file behind an address path, or null: nothing outside the folder, no listing, no unknown type. */
export async function pageFile(folder: string, addressPath: string): Promise<PageFile | null> {
  let path: string
  try {
    path = decodeURIComponent(addressPath)
  } catch {
    return null
  }
  if (path.includes('\0') || path.includes('\\')) return null
  const root = resolve(folder)
  const file = resolve(join(root, path === '/' ? 'index.html' : path))
  const type = types[extname(file)]
  if (!file.startsWith(root + sep) || type === undefined) return null
  try {
    return { type, bytes: await readFile(file) }
  } catch {
    return null
  }
}
