/** Starts a child on this program's own Node and gathers its whole lines. */
import { type ChildProcess, spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

export interface Child {
  readonly process: ChildProcess
  /** Whole lines so far. */
  readonly lines: () => string[]
  readonly errors: () => string
  readonly firstLine: Promise<void>
  readonly ended: Promise<void>
}

export function startWriter(args: readonly string[], as: { readonly uid?: number; readonly gid?: number } = {}): Child {
  const script = fileURLToPath(new URL('./writer.ts', import.meta.url))
  const child = spawn(process.execPath, [script, ...args], { stdio: ['ignore', 'pipe', 'pipe'], ...as })
  let text = ''
  let errors = ''
  let begun = () => {}
  const firstLine = new Promise<void>(resolve => {
    begun = resolve
  })
  child.stdout.on('data', data => {
    text += data
    begun()
  })
  child.stderr.on('data', data => {
    errors += data
  })
  return {
    process: child,
    lines: () => text.split('\n').slice(0, -1),
    errors: () => errors,
    firstLine,
    ended: new Promise((resolve, reject) => {
      child.on('error', reject)
      child.on('close', () => resolve())
    }),
  }
}
