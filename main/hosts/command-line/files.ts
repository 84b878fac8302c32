/** Files on the command line: given to the host as uploads are, and made files saved. */
import { copyFileSync } from 'node:fs'
import { basename, join, parse } from 'node:path'
import { Refusal } from '../../../src/contract/refusal.ts'
import { refuseUnreadable } from '../../files/named-places.ts'
import type { Host } from '../host.ts'

/** Gives a file of the machine to the host, as an upload does. */
export function give(host: Host, file: string): string {
  refuseUnreadable(file)
  const { handle, path } = host.handles.create(basename(file))
  copyFileSync(file, path)
  return handle
}

/** Saves made files under their names into a folder that is there; two of one name in one run both stay. */
export function takeAll(host: Host, handles: readonly string[], folder: string): string[] {
  const taken = new Set<string>()
  return handles.map(handle => {
    const { name: stem, ext } = parse(host.handles.name(handle))
    let name = `${stem}${ext}`
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${stem} (${n})${ext}`
    taken.add(name.toLowerCase())
    return save(host.handles.path(handle), join(folder, name))
  })
}

function save(made: string, path: string): string {
  try {
    copyFileSync(made, path)
  } catch {
    // What is in the way may be a folder of this name, a file kept from writing, or a full disk.
    throw new Refusal('not-saved', `${path} cannot be written. See what stands there, and whether the disk has room.`)
  }
  return path
}

/** "$1" anywhere in the input stands for the handle of the first --file. */
export function withHandles(input: unknown, handles: readonly string[]): unknown {
  if (typeof input === 'string') {
    const [, figure] = /^\$(\d+)$/.exec(input) ?? []
    return figure === undefined ? input : (handles[Number(figure) - 1] ?? input)
  }
  if (Array.isArray(input)) return input.map(each => withHandles(each, handles))
  if (typeof input === 'object' && input !== null) {
    return Object.fromEntries(Object.entries(input).map(([key, value]) => [key, withHandles(value, handles)]))
  }
  return input
}

export function handlesIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(handlesIn)
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, each]) =>
    key === 'handle' && typeof each === 'string' ? [each] : handlesIn(each),
  )
}
