/**
 * The one way to begin, run as a program in a copy of its own: what it installs and says, which Node goes on, and that
 * arguments, output, exit status and signals pass through. npm is an outside program; a small one stands in for it.
 */
import { spawn, spawnSync } from 'node:child_process'
import {
  chmodSync,
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { describe, expect, onTestFinished, test } from 'vitest'

const begin = fileURLToPath(new URL('../../../main/begin.mjs', import.meta.url))

interface Sandbox {
  readonly root: string
  /** A folder of programs that stands alone on the path. */
  readonly bin: string
  readonly ownNode: string
  /** What npm was asked, a line each. */
  readonly npmCalls: () => readonly string[]
}

/** Tells its arguments and which Node runs it; ends, waits or dies as its first argument says. */
const script = `
const [what, ...args] = process.argv.slice(2)
console.log(JSON.stringify({ args, execPath: process.execPath, path: process.env.PATH, compiled: process.env.NODE_COMPILE_CACHE }))
console.error('script on standard error')
if (what === 'status') process.exit(7)
if (what === 'die') process.kill(process.pid, 'SIGKILL')
if (what === 'wait') {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => { console.log(signal); process.exit(3) })
  setInterval(() => {}, 1000)
}
`

/** As npm ci does: node_modules anew, the runtime in it where there is one for this platform. */
const npm = (root: string, own: 'runtime' | 'no runtime' | 'failure') => `
const { appendFileSync, mkdirSync, symlinkSync, rmSync } = require('node:fs')
appendFileSync(${JSON.stringify(join(root, 'npm-calls'))}, process.cwd() + ' ' + process.argv.slice(2).join(' ') + '\\n')
console.log('words of npm')
${own === 'failure' ? "console.error('npm has no network'); process.exit(1)" : ''}
rmSync('node_modules', { recursive: true, force: true })
mkdirSync('node_modules/node/bin', { recursive: true })
${own === 'runtime' ? `symlinkSync(${JSON.stringify(process.execPath)}, 'node_modules/node/bin/node')` : ''}
`

function sandbox(own: 'runtime' | 'no runtime' | 'failure' = 'runtime'): Sandbox {
  const root = mkdtempSync(join(tmpdir(), 'hangwright-begin-'))
  onTestFinished(() => rmSync(root, { recursive: true, force: true }))
  mkdirSync(join(root, 'main'))
  copyFileSync(begin, join(root, 'main', 'begin.mjs'))
  writeFileSync(join(root, 'main', 'script.mjs'), script)
  writeFileSync(join(root, 'package-lock.json'), '{ "lockfileVersion": 3 }')
  const bin = join(root, 'bin')
  mkdirSync(bin)
  writeFileSync(join(bin, 'npm.cjs'), npm(root, own))
  writeFileSync(join(bin, 'npm'), `#!/bin/sh\nexec "${process.execPath}" "${join(bin, 'npm.cjs')}" "$@"\n`)
  chmodSync(join(bin, 'npm'), 0o755)
  const calls = join(root, 'npm-calls')
  return {
    root,
    bin,
    ownNode: join(root, 'node_modules', 'node', 'bin', 'node'),
    npmCalls: () => (existsSync(calls) ? readFileSync(calls, 'utf8').trim().split('\n') : []),
  }
}

/** A Node that says it is another version, as an older one would; everything else about it stays. */
function saying(version: string): readonly string[] {
  const code = `Object.defineProperty(process,'versions',{value:{...process.versions,node:'${version}'}});Object.defineProperty(process,'version',{value:'v${version}'})`
  return ['--import', `data:text/javascript,${encodeURIComponent(code)}`]
}

function environment({ bin }: Sandbox, more: Readonly<Record<string, string>> = {}): Record<string, string> {
  return { PATH: bin, ...more }
}

interface Options {
  readonly version?: string
  readonly env?: Readonly<Record<string, string>>
  readonly node?: string
}

function run(box: Sandbox, args: readonly string[], { version = '18.20.0', env = {}, node }: Options = {}) {
  const { status, signal, stdout, stderr } = spawnSync(
    node ?? process.execPath,
    [...saying(version), join(box.root, 'main', 'begin.mjs'), ...args],
    { encoding: 'utf8', timeout: 60_000, env: environment(box, env) },
  )
  return { status, signal, stdout, stderr }
}

function told(stdout: string): {
  readonly args: string[]
  readonly execPath: string
  readonly path: string
  readonly compiled: string
} {
  return JSON.parse(stdout.split('\n')[0] ?? '')
}

const installing = 'First start: installing …'
/** A sentence for people and nothing of the program's inside. */
function expectOneLine(stderr: string, words: string): void {
  expect(stderr.trim().split('\n').at(-1)).toContain(words)
  expect(stderr).not.toMatch(/^\s+at |node:internal|Error:/m)
}

describe('on a fresh copy', () => {
  test('it installs, says so on standard error alone, and goes on with the project’s own Node', () => {
    const box = sandbox()
    const first = run(box, ['main/script.mjs', 'end', 'two words', '--flag'])
    expect(first.status).toBe(0)
    expect(box.npmCalls()).toEqual([`${box.root} ci --no-audit --no-fund --loglevel=error`])
    expect(first.stderr.split('\n').slice(0, 2)).toEqual([installing, 'words of npm'])
    // What the script prints is all of standard output: others read it as JSON.
    expect(first.stdout.trim().split('\n')).toHaveLength(1)
    expect(told(first.stdout)).toMatchObject({ args: ['two words', '--flag'], execPath: process.execPath })
    expect(told(first.stdout).path.startsWith(join(box.root, 'node_modules', '.bin'))).toBe(true)
    expect(told(first.stdout).compiled).toBe(join(box.root, 'node_modules', '.compiled'))
    expect(
      told(run(box, ['main/script.mjs', 'end'], { env: { NODE_COMPILE_CACHE: '/elsewhere' } }).stdout).compiled,
    ).toBe('/elsewhere')
  })

  test('it installs once, and again when the lock file has changed', () => {
    const box = sandbox()
    run(box, ['main/script.mjs', 'end'])
    const second = run(box, ['main/script.mjs', 'end'])
    expect(second.stderr).toBe('script on standard error\n')
    expect(box.npmCalls()).toHaveLength(1)
    writeFileSync(join(box.root, 'package-lock.json'), '{ "lockfileVersion": 4 }')
    const third = run(box, ['main/script.mjs', 'end'])
    expect(third.stderr).toContain(installing.replace('First start', 'The lock file changed'))
    expect(third.status).toBe(0)
    expect(box.npmCalls()).toHaveLength(2)
  })

  test('it installs nothing through a link, behind which another copy may stand', () => {
    const [box, other] = [sandbox(), sandbox()]
    run(other, ['main/script.mjs', 'end'])
    const stamp = join(other.root, 'node_modules', '.installed')
    rmSync(stamp)
    symlinkSync(join(other.root, 'node_modules'), join(box.root, 'node_modules'))
    const { status, stderr } = run(box, ['main/script.mjs', 'end'])
    expect(status).not.toBe(0)
    expectOneLine(stderr, 'node_modules is a link')
    expect([existsSync(other.ownNode), box.npmCalls()]).toEqual([true, []])
    // With what is wanted behind it, the link is as good as a folder.
    rmSync(join(box.root, 'node_modules'))
    run(other, ['main/script.mjs', 'end'])
    symlinkSync(join(other.root, 'node_modules'), join(box.root, 'node_modules'))
    expect(run(box, ['main/script.mjs', 'end']).status).toBe(0)
  })

  test('under npm it takes the npm that started it', () => {
    const box = sandbox()
    rmSync(join(box.bin, 'npm'))
    const env = { npm_execpath: join(box.bin, 'npm.cjs'), npm_node_execpath: process.execPath }
    expect(run(box, ['main/script.mjs', 'end'], { env }).status).toBe(0)
    expect(box.npmCalls()).toHaveLength(1)
  })

  test('an install that fails is told in one line after npm’s own words, and tried again next time', () => {
    const box = sandbox('failure')
    for (const count of [1, 2]) {
      const failed = run(box, ['main/script.mjs', 'end'])
      expect([failed.status, failed.stdout]).toEqual([1, ''])
      expect(failed.stderr).toContain('npm has no network')
      expectOneLine(failed.stderr, 'npm ci failed; its reason stands above.')
      expect(box.npmCalls()).toHaveLength(count)
    }
  })

  test('without npm it says so', () => {
    const box = sandbox()
    rmSync(join(box.bin, 'npm'))
    const failed = run(box, ['main/script.mjs', 'end'])
    expect([failed.status, failed.stdout]).toEqual([1, ''])
    expectOneLine(failed.stderr, 'npm could not be started')
  })

  test('run by the Node that an install would replace, it steps out to npm’s own first', () => {
    const box = sandbox()
    mkdirSync(join(box.root, 'node_modules', 'node', 'bin'), { recursive: true })
    // A link by name alone would be seen through.
    try {
      linkSync(process.execPath, box.ownNode)
    } catch {
      copyFileSync(process.execPath, box.ownNode)
    }
    const env = { npm_node_execpath: process.execPath, npm_execpath: join(box.bin, 'npm.cjs') }
    const done = run(box, ['main/script.mjs', 'end', 'kept'], { node: box.ownNode, env })
    expect(done.status).toBe(0)
    expect(box.npmCalls()).toHaveLength(1)
    expect(told(done.stdout).args).toEqual(['kept'])
  })
})

describe('where the project’s Node could not be installed', () => {
  test('a caller that is new enough goes on', () => {
    const box = sandbox('no runtime')
    // better-sqlite3 13 needs Node-API 10, which came with 22.14 (Node's own table of Node-API versions).
    for (const version of ['22.14.0', '24.0.0']) {
      expect(run(box, ['main/script.mjs', 'end'], { version }).status).toBe(0)
    }
  })

  test('an older one is told in one line which Node to get', () => {
    for (const version of ['18.20.0', '20.19.5', '22.13.1']) {
      const failed = run(sandbox('no runtime'), ['main/script.mjs', 'end'], { version })
      expect([failed.status, failed.stdout]).toEqual([1, ''])
      expectOneLine(failed.stderr, `This Node is v${version}`)
      expectOneLine(failed.stderr, 'get Node 24')
    }
  })

  test('one that does not run here is named in one line', () => {
    const box = sandbox()
    run(box, ['main/script.mjs', 'end'])
    rmSync(box.ownNode)
    writeFileSync(box.ownNode, 'not for this machine')
    const failed = run(box, ['main/script.mjs', 'end'])
    expect(failed.status).toBe(1)
    expectOneLine(failed.stderr, 'did not start')
  })
})

describe('what the script does passes through', () => {
  test('its exit status', () => {
    const box = sandbox()
    expect(run(box, ['main/script.mjs', 'status']).status).toBe(7)
  })

  test('its death by a signal', () => {
    const box = sandbox()
    expect(run(box, ['main/script.mjs', 'die']).signal).toBe('SIGKILL')
  })

  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('%s to it', async signal => {
    const box = sandbox()
    run(box, ['main/script.mjs', 'end'])
    const child = spawn(process.execPath, [join(box.root, 'main', 'begin.mjs'), 'main/script.mjs', 'wait'], {
      stdio: ['ignore', 'pipe', 'ignore'],
      env: environment(box),
    })
    const lines: string[] = []
    const ended = new Promise<number | null>(resolve => child.once('close', resolve))
    createInterface({ input: child.stdout }).on('line', line => {
      lines.push(line)
      if (lines.length === 1) setTimeout(() => child.kill(signal), 50)
    })
    expect(await ended).toBe(3)
    expect(lines.slice(1)).toEqual([signal])
  })

  test('no script, or one that is not there, is one line', () => {
    const box = sandbox()
    run(box, ['main/script.mjs', 'end'])
    expectOneLine(run(box, []).stderr, 'needs the script to run')
    const failed = run(box, ['main/none.ts'])
    expect([failed.status, failed.stdout]).toEqual([1, ''])
    expectOneLine(failed.stderr, 'There is no script main/none.ts')
  })
})

test('a real Node of an older line runs it too, where the machine has one', () => {
  const older = ['/usr/bin/node', '/usr/local/bin/node'].find(path => {
    const { status, stdout } = spawnSync(path, ['--version'], { encoding: 'utf8' })
    return status === 0 && /^v(18|20)\./.test(stdout)
  })
  const box = sandbox()
  const done = spawnSync(older ?? process.execPath, [join(box.root, 'main', 'begin.mjs'), 'main/script.mjs', 'end'], {
    encoding: 'utf8',
    env: environment(box),
  })
  expect(done.status).toBe(0)
  expect(told(done.stdout).execPath).toBe(process.execPath)
})
