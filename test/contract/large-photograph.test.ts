/**
 * Half a gigabyte brought as a photograph, through the real host as a program of its own: it is refused by its name,
 * the host's memory stays as it was, and nothing of it stays on the disk, whether it came whole or was cancelled.
 */
import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { expect, onTestFinished, test } from 'vitest'
import { makeFixture } from './fixture.ts'

const commandLine = fileURLToPath(new URL('../../main/hosts/command-line/main.ts', import.meta.url))
const million = 1e6

async function served() {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-large-'))
  const { file, known } = await makeFixture(folder)
  // What is uploaded lies in the system's folder for passing files: here one of its own.
  const passing = join(folder, 'passing')
  mkdirSync(passing)
  const env = { ...process.env, HANGWRIGHT_DATA: join(folder, 'data'), TMPDIR: passing, TEMP: passing, TMP: passing }
  const child = spawn(process.execPath, [commandLine, 'serve', file], { env, stdio: ['ignore', 'pipe', 'inherit'] })
  const line = await new Promise<string>((resolve, reject) => {
    createInterface({ input: child.stdout }).once('line', resolve)
    child.once('exit', code => reject(new Error(`the host ended with ${code}`)))
  })
  const { address } = JSON.parse(line) as { address: string } // as `serve` prints it
  const { origin } = new URL(address)
  const cookie = (await fetch(address)).headers.get('set-cookie')?.split(';')[0] ?? ''
  const headers = { cookie, origin }
  onTestFinished(async () => {
    const ended = new Promise(resolve => child.once('exit', resolve))
    child.kill('SIGTERM')
    await ended
    rmSync(folder, { recursive: true, force: true })
  })
  return {
    file,
    known,
    pid: child.pid ?? 0,
    /** Bytes that lie in passing, of files larger than a note. */
    passed: () =>
      readdirSync(passing, { recursive: true, encoding: 'utf8' })
        .map(name => statSync(join(passing, name)))
        .filter(each => each.isFile() && each.size > million)
        .reduce((sum, { size }) => sum + size, 0),
    async call(name: string, input: unknown) {
      const sent = { ...headers, 'content-type': 'application/json' }
      const answered = await fetch(`${origin}/call`, {
        method: 'POST',
        headers: sent,
        body: JSON.stringify({ name, input }),
      })
      return answered.json()
    },
    async put(name: string, body: ReadableStream<Uint8Array>, signal?: AbortSignal) {
      const sent = { ...headers, 'content-type': 'application/octet-stream' }
      const asked = { method: 'PUT', headers: sent, body, duplex: 'half', signal: signal ?? null } as const
      return (await fetch(`${origin}/upload?name=${encodeURIComponent(name)}`, asked)).json()
    },
  }
}

/** Noughts by the million, made as they are asked for. */
function noughts(millions: number, after: (sent: number) => void = () => {}): ReadableStream<Uint8Array> {
  let sent = 0
  return new ReadableStream({
    pull(to) {
      if (sent === millions) return to.close()
      to.enqueue(new Uint8Array(million))
      sent += 1
      after(sent)
    },
  })
}

/** MB that a process has ever held; null where the system does not tell. */
function mostHeld(pid: number): number | null {
  const status = `/proc/${pid}/status`
  if (!existsSync(status)) return null
  return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(status, 'utf8'))?.[1] ?? Number.NaN) / 1000
}

const until = async (holds: () => boolean) => {
  const end = Date.now() + 20_000
  while (!holds() && Date.now() < end) await new Promise(resolve => setTimeout(resolve, 50))
}

test('a photograph of 500 MB is refused by its name, and nothing of it stays', { timeout: 120_000 }, async () => {
  const host = await served()
  const { value: begun } = await host.call('condition.add', { work: host.known.pans, kind: 'incoming' })
  const { value: before } = await host.call('condition.get', { id: begun.id })
  const kept = () => readdirSync(`${host.file}-files`, { recursive: true }).length
  const files = kept()
  const held = mostHeld(host.pid)
  const { value: given } = await host.put('IMG_0500.tif', noughts(500))
  expect(given).toMatchObject({ name: 'IMG_0500.tif', bytes: 500 * million })
  expect(host.passed()).toBe(500 * million)
  const answered = await host.call('condition.addPhoto', { report: begun.id, handle: given.handle })
  expect(answered.refusal).toMatchObject({
    code: 'file-too-large',
    field: 'handle',
    message: 'IMG_0500.tif has 500 MB; a report takes photographs of up to 268 MB. Bring it as .jpg.',
  })
  expect(host.passed()).toBe(0)
  expect(kept()).toBe(files)
  expect((await host.call('condition.get', { id: begun.id })).value).toEqual(before)
  // A worker is some 60 MB; the file would be 500.
  if (held !== null) expect((mostHeld(host.pid) ?? 0) - held).toBeLessThan(250)
})

test('cancelled on its way it leaves nothing, and the host goes on', { timeout: 120_000 }, async () => {
  const host = await served()
  const stop = new AbortController()
  const under = host.put(
    'IMG_0500.tif',
    noughts(500, sent => sent === 120 && stop.abort()),
    stop.signal,
  )
  await expect(under).rejects.toThrow()
  await until(() => host.passed() === 0)
  expect(host.passed()).toBe(0)
  const { ok } = await host.call('desk.state', {})
  expect(ok).toBe(true)
})
