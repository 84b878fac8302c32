/// <reference path="./packages.d.ts" />
/**
 * Cuts the static faces of the sheets out of the variable fonts. Part of the build; also made on demand where nobody
 * has built yet. A stamp of what was asked for tells whether the faces that are there are the right ones; they appear
 * under their name whole or not at all.
 */
import { createHash, randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Cut, stacks } from './cuts.ts'

export const builtFonts = fileURLToPath(new URL('./built', import.meta.url))

/** Everything from the space to the arrows and marks: a font keeps what it has of it. */
const characters = Array.from({ length: 0x2600 - 0x20 }, (_, index) => String.fromCodePoint(index + 0x20)).join('')

function allCuts(): readonly Cut[] {
  return [...new Map(Object.values(stacks).flatMap(list => list.map(cut => [cut.file, cut]))).values()]
}

function stampOf(list: readonly Cut[]): string {
  return createHash('sha256').update(JSON.stringify(list)).digest('hex')
}

/** Whether the faces that are asked for are there. */
export function fontsAreBuilt(folder: string = builtFonts): boolean {
  const stamp = join(folder, 'stamp')
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === stampOf(allCuts())
}

/** Cuts the faces unless they are there already. */
export async function buildFonts(folder: string = builtFonts): Promise<void> {
  if (fontsAreBuilt(folder)) return
  const { default: subsetFont } = await import('subset-font')
  const packages = createRequire(import.meta.url)
  const list = allCuts()
  const beside = `${folder}.${randomBytes(6).toString('hex')}`
  mkdirSync(beside, { recursive: true })
  try {
    for (const cut of list) {
      const font = readFileSync(packages.resolve(cut.from))
      const options = { targetFormat: 'truetype', variationAxes: cut.axes, preserveNameIds: [1, 2, 4, 6] } as const
      writeFileSync(join(beside, cut.file), await subsetFont(font, characters, options))
    }
    writeFileSync(join(beside, 'stamp'), stampOf(list))
    rmSync(folder, { recursive: true, force: true })
    renameSync(beside, folder)
  } catch (error) {
    rmSync(beside, { recursive: true, force: true })
    // Another process may have finished first: then its faces are as good.
    if (!fontsAreBuilt(folder)) throw error
  }
}
