/** Pictures by hash and size, for both windows and browser: `<hash>/<96|480|1600|full>`. */
import type { Host } from './host.ts'
import type { PageFile } from './pages.ts'

const form = /^([0-9a-f]{64})\/(96|480|1600|full)$/

export async function pictureFile(host: Host, path: string): Promise<PageFile | null> {
  const [, hash, size] = form.exec(path) ?? []
  await host.back()
  if (hash === undefined || size === undefined || host.open === null) return null
  return host.open.store.picture(hash, size === 'full' ? 'full' : (Number(size) as 96 | 480 | 1600)) // as the form allows
}
