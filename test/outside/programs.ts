/**
 * Programs that read what we write. A suite whose program is missing on this machine is skipped by name, never passed:
 * the name of the program stands in the name of the skipped suite.
 */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe } from 'vitest'

function answers(command: string, args: readonly string[]): boolean {
  const { error, status } = spawnSync(command, args, { stdio: 'ignore', timeout: 60_000 })
  return error === undefined && status === 0
}

/** The Python that has openpyxl: Debian's own before any other. */
export const python = ['/usr/bin/python3', 'python3'].find(each => answers(each, ['-c', 'import openpyxl']))

/** The Python that has ezdxf. */
export const pythonDxf = ['/usr/bin/python3', 'python3'].find(each => answers(each, ['-c', 'import ezdxf']))

/** Any Python 3, for what its own library reads. */
export const pythonAlone = ['/usr/bin/python3', 'python3'].find(each => answers(each, ['-c', 'import sqlite3']))

const there = {
  'poppler (pdftoppm)': answers('pdftoppm', ['-v']),
  'poppler (pdftotext)': answers('pdftotext', ['-v']),
  LibreOffice: answers('soffice', ['--version']),
  openpyxl: python !== undefined,
  ezdxf: pythonDxf !== undefined,
  Python: pythonAlone !== undefined,
} as const

export type Program = keyof typeof there

/** A suite that needs a program. */
export function withProgram(program: Program, about: string, suite: () => void): void {
  // biome-ignore-start lint/correctness/usePlaywrightValidDescribeCallback: the suite is a callback, passed on
  if (there[program]) describe(`${program}: ${about}`, suite)
  else describe.skip(`${program} is not on this machine: ${about}`, suite)
  // biome-ignore-end lint/correctness/usePlaywrightValidDescribeCallback: as above
}

/** Runs a program, with its words where it fails. */
export function run(command: string, args: readonly string[]): string {
  return execFileSync(command, args, {
    encoding: 'utf8',
    timeout: 120_000,
    maxBuffer: 64 << 20,
    stdio: ['ignore', 'pipe', 'pipe'],
  })
}

/** A folder of its own for a test; `remove` when it is done. */
export function ownFolder(): { readonly path: string; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'hangwright-outside-'))
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) }
}

/** Converts a file with LibreOffice under a profile of its own, so that a running office is left alone. */
export function convert(file: string, to: string, folder: string): void {
  const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`
  run('soffice', [profile, '--headless', '--convert-to', to, '--outdir', folder, file])
}
