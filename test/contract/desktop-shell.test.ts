/** The desktop host's decisions without Electron: who may speak, what an address answers, what the bundle holds. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Ajv from 'ajv'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { createPieces } from '../../main/hosts/desktop/pieces.ts'
import {
  answerAddress,
  answerMessage,
  callChannel,
  eventChannel,
  isOurAddress,
  type Sender,
  tellWindows,
  uploadChannel,
  windowPreferences,
} from '../../main/hosts/desktop/shell.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { rendererFolder } from '../../main/hosts/pages.ts'
import { makeFixture } from './fixture.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const built = join(root, 'main', 'hosts', 'desktop', 'built')
let folder = ''
let host: Host

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-shell-'))
  const { file } = await makeFixture(folder)
  host = createHost({ kind: 'desktop', data: join(folder, 'data') })
  host.openFile(file)
}, 60_000)

afterAll(async () => {
  await host.close()
  rmSync(folder, { recursive: true, force: true })
})

const ours: Sender = { senderFrame: { url: 'hangwright://app/', parent: null }, sender: { id: 7 } }
const text = JSON.stringify({ name: 'exhibition.list', input: {} })

async function ask(event: Sender): Promise<string> {
  return answerMessage(host, new Set([7]), event, text, () => {})
}

describe('a message', () => {
  test('from our window is answered', async () => {
    expect(await ask(ours)).toContain('Low Water')
  })

  const strangers: readonly (readonly [string, Sender])[] = [
    ['a subframe', { ...ours, senderFrame: { url: 'hangwright://app/', parent: {} } }],
    ['a frame that is gone', { ...ours, senderFrame: null }],
    ['another window', { ...ours, sender: { id: 8 } }],
    ['a web page', { ...ours, senderFrame: { url: 'https://evil.example/?hangwright://app/', parent: null } }],
    ['a look-alike host', { ...ours, senderFrame: { url: 'hangwright://app.evil.example/', parent: null } }],
    ['a file', { ...ours, senderFrame: { url: 'file:///hangwright://app/', parent: null } }],
    ['a blank address', { ...ours, senderFrame: { url: '', parent: null } }],
    ['about:blank', { ...ours, senderFrame: { url: 'about:blank', parent: null } }],
    ['an address with a user in it', { ...ours, senderFrame: { url: 'hangwright://app@evil/', parent: null } }],
  ]
  for (const [about, event] of strangers) {
    test(`from ${about} is refused, not ignored`, async () => {
      expect(JSON.parse(await ask(event))).toMatchObject({ ok: false, refusal: { code: 'foreign-sender' } })
    })
  }

  test('that is no text is refused as data', async () => {
    expect(JSON.parse(await answerMessage(host, new Set([7]), ours, { name: 'x' }, () => {}))).toMatchObject({
      ok: false,
      refusal: { code: 'bad-json' },
    })
  })
})

describe('a file', () => {
  const bytes = new Uint8Array([1, 2, 3, 4])
  const put = (...given: readonly unknown[]) => JSON.parse(createPieces(host, new Set([7]))(ours, given))

  test('comes in pieces and lies there whole', () => {
    const uploads = createPieces(host, new Set([7]))
    const answered = (...given: readonly unknown[]) => JSON.parse(uploads(ours, given)).value
    const { handle } = answered('IMG_1.jpg', bytes, 'more', 0)
    answered('IMG_1.jpg', bytes, 'more', 4, handle)
    expect(answered('IMG_1.jpg', bytes, 'last', 8, handle)).toEqual({ handle, name: 'IMG_1.jpg', bytes: 12 })
    expect([...readFileSync(host.handles.path(handle))]).toEqual([...bytes, ...bytes, ...bytes])
    // What has ended grows no more.
    expect(JSON.parse(uploads(ours, ['IMG_1.jpg', bytes, 'last', 12, handle]))).toMatchObject({
      refusal: { code: 'unknown-handle' },
    })
  })

  test('that is stopped on its way is gone', () => {
    const uploads = createPieces(host, new Set([7]))
    const { handle } = JSON.parse(uploads(ours, ['IMG_2.jpg', bytes, 'more', 0])).value
    uploads(ours, ['IMG_2.jpg', bytes, 'stop', 4, handle])
    expect(() => host.handles.path(handle)).toThrow('not here any more')
  })

  test('from a stranger, or that is no bytes, is refused', () => {
    const foreign = { ok: false, refusal: { code: 'foreign-sender' } }
    expect(put('IMG_3.jpg', 'text', 'last', 0)).toMatchObject(foreign)
    const stranger = { ...ours, sender: { id: 8 } }
    expect(JSON.parse(createPieces(host, new Set([7]))(stranger, ['x', bytes, 'last', 0]))).toMatchObject(foreign)
  })
})

describe('addresses', () => {
  const decoys = [
    'https://evil.example/hangwright://app/',
    'hangwright://app.evil.example/',
    'hangwright://evil/?hangwright://app',
    'hangwright:app',
    'HANGWRIGHT-X://app/',
    'javascript:alert(1)',
    'file:///etc/passwd',
  ]
  test('that only look like ours are not ours', () => {
    for (const decoy of decoys) expect(isOurAddress(decoy), decoy).toBe(false)
    expect(isOurAddress('hangwright://app/#/walls')).toBe(true)
  })

  test('give files of the built folder alone', async () => {
    for (const path of [
      '/../package.json',
      '/%2e%2e/package.json',
      '/..%5c..%5cpackage.json',
      '/etc/passwd',
      '/picture/../x',
    ]) {
      const made = await answerAddress(host, rendererFolder, `hangwright://app${path}`)
      expect(made.status, path).toBe(404)
      expect(made.bytes).toHaveLength(0)
    }
    const page = await answerAddress(host, rendererFolder, 'hangwright://app/')
    expect(page.status).toBe(200)
    expect(page.headers['Content-Security-Policy']).toContain("default-src 'none'")
  })
})

test('events cross as their payload alone', () => {
  const sent: unknown[][] = []
  tellWindows({ kind: 'opened', file: 'x' }, (...args) => sent.push(args))
  expect(sent).toEqual([[eventChannel, '{"kind":"opened","file":"x"}']])
})

test('windows are made with every wall up', () => {
  expect(windowPreferences).toMatchObject({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    webviewTag: false,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
  })
})

describe('the bundle', () => {
  const preload = () => readFileSync(join(built, 'preload.cjs'), 'utf8')

  test('has a preload that is CommonJS, requires electron alone and brings no installer', () => {
    expect(existsSync(join(built, 'preload.cjs'))).toBe(true)
    const required = [...preload().matchAll(/require\((["'`])([^"'`]+)\1\)/g)].map(([, , name]) => name)
    expect(required).toEqual(['electron'])
    expect(preload()).not.toMatch(/^\s*(import|export)\s/m)
    expect(preload()).not.toMatch(/install-electron|electron\/path/)
  })

  test('has a preload that speaks on the same channels as the host', () => {
    for (const channel of [callChannel, eventChannel, uploadChannel]) expect(preload()).toContain(channel)
  })

  test('has a preload that hands out three functions and no Electron object', () => {
    const given: Record<string, Record<string, unknown>> = {}
    const electron = {
      contextBridge: {
        exposeInMainWorld: (name: string, api: Record<string, unknown>) => {
          given[name] = api
        },
      },
      ipcRenderer: { invoke: () => Promise.resolve('{}'), on: () => {}, off: () => {} },
    }
    new Function('require', 'module', 'exports', preload())(
      (name: string) => (name === 'electron' ? electron : undefined),
      {},
      {},
    )
    expect(Object.keys(given)).toEqual(['hangwright'])
    expect(Object.entries(given.hangwright ?? {}).map(([name, value]) => [name, typeof value])).toEqual([
      ['call', 'function'],
      ['subscribe', 'function'],
      ['piece', 'function'],
    ])
  })

  test('has main and worker, with native packages left outside', () => {
    const main = readFileSync(join(built, 'main.js'), 'utf8')
    expect(existsSync(join(built, 'long.js'))).toBe(true)
    expect(main).toMatch(/from ["']electron["']/)
    expect(main).not.toMatch(/install-electron/)
  })
})

describe('packing', () => {
  test('follows the schema of electron-builder, with every fuse set and nothing rebuilt', async () => {
    const require = createRequire(import.meta.url)
    const schema = JSON.parse(readFileSync(join(root, 'node_modules', 'app-builder-lib', 'scheme.json'), 'utf8'))
    const { load } = require(require.resolve('js-yaml', { paths: [join(root, 'node_modules', 'app-builder-lib')] }))
    const config = load(readFileSync(join(root, 'electron-builder.yml'), 'utf8'))
    const ajv = new Ajv({ strict: false, allErrors: true })
    const valid = ajv.validate(schema, config)
    expect(ajv.errors ?? []).toEqual([])
    expect(valid).toBe(true)
    expect(config.npmRebuild).toBe(false)
    expect(config.asarUnpack).toContain('node_modules/better-sqlite3/prebuilds/**')
    expect(config.electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    })
  })
})
