/**
 * Files and folders that a person names by their path. Whatever is wrong with one is a refusal that says it by name,
 * before anything is made or written.
 */
import { accessSync, constants, existsSync, mkdirSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import { Refusal } from '../../src/contract/refusal.ts'

/** A file to read. Refuses `no-such-file`, `not-a-file` and `unreadable-file`. */
export function refuseUnreadable(file: string): void {
  const found = statSync(file, { throwIfNoEntry: false })
  if (found === undefined) throw new Refusal('no-such-file', `There is no file ${file}.`)
  if (found.isDirectory()) throw new Refusal('not-a-file', `${file} is a folder. Name a file in it.`)
  // A pipe or a device could be read for ever.
  if (!found.isFile()) throw new Refusal('not-a-file', `${file} is not a file.`)
  try {
    accessSync(file, constants.R_OK)
  } catch {
    throw new Refusal('unreadable-file', `${file} cannot be read. Have its rights changed, or copy it.`)
  }
}

/** A folder that must be there already. Refuses `no-such-folder`. */
export function refuseNoFolder(folder: string, field: string): void {
  if (isFolder(folder)) return
  const says = existsSync(folder)
    ? `${folder} is a file, not a folder. Name another.`
    : `There is no folder ${folder}. Make it first, or name another.`
  throw new Refusal('no-such-folder', says, { field })
}

/** Makes a folder, and those above it. Refuses `no-such-folder` where a file is in the way, or `folder-closed`. */
export function makeFolder(folder: string, field: string): void {
  for (let above = folder; ; above = dirname(above)) {
    // What is there under a file's name is told by the file, the first that exists on the way up.
    if (existsSync(above)) {
      refuseNoFolder(above, field)
      break
    }
    if (dirname(above) === above) break
  }
  try {
    mkdirSync(folder, { recursive: true })
    accessSync(folder, constants.W_OK)
  } catch {
    throw new Refusal('folder-closed', `Nothing can be written to ${folder}. Name another folder.`, { field })
  }
}

function isFolder(folder: string): boolean {
  return statSync(folder, { throwIfNoEntry: false })?.isDirectory() === true
}
