/** Electron's runtime: where it is, or why it can't be had here. It is fetched once, by Electron's own installer. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { root, run, toolOf } from './run.ts'

const folder = join(root, 'node_modules', 'electron')

export type ElectronProgram =
  | { readonly program: string; readonly why: '' }
  | { readonly program: null; readonly why: string }

/** The unpacked runtime, if it is there. Reading Electron's package in Node would start a download. */
export function electronHere(): string | null {
  const path = join(folder, 'path.txt')
  if (!existsSync(path)) return null
  const program = join(folder, 'dist', readFileSync(path, 'utf8').trim())
  return existsSync(program) ? program : null
}

/** The installer's own time-out is long; a machine that can't reach it should not wait for it. */
const patience = 120_000

export async function installElectron(): Promise<boolean> {
  const fetching = run(process.execPath, [toolOf('electron', 'install-electron')], {
    stdio: ['ignore', 'ignore', 'ignore'],
  })
  const late = new Promise<number>(resolve => setTimeout(resolve, patience, 1).unref())
  return (await Promise.race([fetching, late])) === 0 && electronHere() !== null
}

export async function electronProgram(): Promise<ElectronProgram> {
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) {
    return { program: null, why: 'There is no display here for a window.' }
  }
  const program = electronHere() ?? ((await installElectron()) ? electronHere() : null)
  if (program === null) return { program, why: 'Electron’s runtime could not be fetched.' }
  return { program, why: '' }
}
