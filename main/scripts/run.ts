/** Small help for the scripts: the project's folder, and running a tool of node_modules on this Node. */
import { type StdioOptions, spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../..', import.meta.url))

/** The program file of a package, run by this Node instead of by whatever `env node` finds. */
export function toolOf(name: string, bin = name): string {
  // By folder: many packages have no entry that could be resolved.
  const folder = join(root, 'node_modules', name)
  const { bin: bins } = packageOf(folder)
  const file = typeof bins === 'string' ? bins : bins?.[bin]
  if (file === undefined) throw new Error(`${name} has no program ${bin}`)
  return join(folder, file)
}

function packageOf(folder: string): { bin?: string | Record<string, string> } {
  // Read, not imported: many packages do not export their package.json.
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
}

export interface RunOptions {
  readonly stdio?: StdioOptions
  readonly env?: NodeJS.ProcessEnv
  readonly cwd?: string
}

/** Runs a program to its end; its exit status. */
export function run(program: string, args: readonly string[], options: RunOptions = {}): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: options.cwd ?? root,
      stdio: options.stdio ?? 'inherit',
      env: { ...process.env, ...options.env },
    })
    child.on('error', reject)
    child.on('exit', (code, signal) => resolve(signal === null ? (code ?? 1) : 1))
  })
}

export function runNode(args: readonly string[], options: RunOptions = {}): Promise<number> {
  return run(process.execPath, args, options)
}
