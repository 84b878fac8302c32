/**
 * The built main process, run under Node with a stand-in for Electron: from an empty data folder it writes the demo,
 * opens a window, answers calls, does long work in its bundled workers and serves its own scheme. A bundle that misses
 * a file or looks for it in the wrong place fails here and not at somebody's desk.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const built = join(root, 'main', 'hosts', 'desktop', 'built')
const folder = mkdtempSync(join(tmpdir(), 'hangwright-bundle-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('starts on the demo, answers, prints, and ends', { timeout: 240_000 }, () => {
  const run = fileURLToPath(new URL('./run-bundle.ts', import.meta.url))
  const { status, stdout, stderr } = spawnSync(process.execPath, [run, join(built, 'main.js')], {
    encoding: 'utf8',
    timeout: 220_000,
    maxBuffer: 16 << 20,
    env: { ...process.env, HANGWRIGHT_DATA: folder, HANGWRIGHT_APP: root },
  })
  expect(stderr.replace('refused a message from a frame that is not ours\n', '')).toBe('')
  expect(status).toBe(0)
  const came = JSON.parse(stdout)
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
  expect(came).toMatchObject({
    state: { host: 'desktop', version, catalogue: { demo: true, file: join(folder, 'demo.hangwright') } },
    document: { hash: expect.stringMatching(/^[0-9a-f]{64}$/) },
    errors: [],
    sandboxed: true,
    schemes: 1,
    told: true,
    progress: true,
    stranger: { ok: false, refusal: { code: 'foreign-sender' } },
    options: { webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false } },
    start: { status: 200, type: 'text/html; charset=utf-8' },
    text: {
      status: 200,
      text: 'no daylight',
      named: expect.stringContaining("filename*=UTF-8''Leihvertrag%20f%C3%BCr"),
    },
    pdf: { status: 200, begins: '%PDF-' },
    xlsx: { status: 200, begins: expect.stringMatching(/^PK/) },
  })
  expect(came.menu).toBeGreaterThan(2)
  // A page with its faces cut and set in: without them it has a tenth of this.
  expect(came.pdf.size).toBeGreaterThan(20_000)
  expect(existsSync(came.options.webPreferences.preload)).toBe(true)
  expect(existsSync(join(folder, 'window.json'))).toBe(true)
})
