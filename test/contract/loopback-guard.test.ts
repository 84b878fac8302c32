/** Who the loopback host refuses: each rule by a request that breaks it alone, through a raw socket where fetch would not. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { type Loopback, serveLoopback } from '../../main/hosts/loopback/server.ts'
import { contentPolicy } from '../../main/hosts/pages.ts'
import { makeFixture } from './fixture.ts'

let folder = ''
let host: Host
let served: Loopback
let cookie = ''

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-guard-'))
  const { file } = await makeFixture(folder)
  host = createHost({ kind: 'loopback', data: join(folder, 'data') })
  host.openFile(file)
  served = await serveLoopback(host)
  cookie = (await fetch(served.address)).headers.get('set-cookie')?.split(';')[0] ?? ''
}, 60_000)

afterAll(async () => {
  await served.close()
  await host.close()
  rmSync(folder, { recursive: true, force: true })
})

const body = JSON.stringify({ name: 'exhibition.list', input: {} })

interface Raw {
  readonly status: number
  readonly headers: string
  readonly body: string
}

function raw(lines: readonly string[], sent = ''): Promise<Raw> {
  return new Promise((resolve, reject) => {
    const socket = connect(served.port, '127.0.0.1')
    let text = ''
    socket.setTimeout(5000, () => socket.destroy(new Error('no answer')))
    socket.on('data', chunk => {
      text += chunk.toString('utf8')
    })
    socket.on('error', error => (text === '' ? reject(error) : done()))
    socket.on('close', () => done())
    function done() {
      const [head = '', ...rest] = text.split('\r\n\r\n')
      resolve({ status: Number(head.split(' ')[1]), headers: head, body: rest.join('\r\n\r\n') })
    }
    socket.write(`${lines.join('\r\n')}\r\nConnection: close\r\n\r\n${sent}`)
  })
}

/** A good call, with lines replaced or left out. */
function callLines(change: Readonly<Record<string, string | null>> = {}): string[] {
  const headers: Record<string, string | null> = {
    Host: `127.0.0.1:${served.port}`,
    Origin: served.origin,
    Cookie: cookie,
    'Content-Type': 'application/json',
    'Content-Length': String(body.length),
    ...change,
  }
  return [
    'POST /call HTTP/1.1',
    ...Object.entries(headers).flatMap(([name, value]) => (value === null ? [] : [`${name}: ${value}`])),
  ]
}

function getLines(path: string, change: Readonly<Record<string, string | null>> = {}): string[] {
  const headers: Record<string, string | null> = { Host: `127.0.0.1:${served.port}`, Cookie: cookie, ...change }
  return [
    `GET ${path} HTTP/1.1`,
    ...Object.entries(headers).flatMap(([name, value]) => (value === null ? [] : [`${name}: ${value}`])),
  ]
}

describe('a call', () => {
  test('from our own page is answered', async () => {
    const answered = await raw(callLines(), body)
    expect(answered.status).toBe(200)
    expect(answered.body).toContain('Low Water')
  })

  const refusals: readonly (readonly [string, Readonly<Record<string, string | null>>, number, string])[] = [
    ['under another name', { Host: 'localhost.evil.example' }, 421, 'wrong-host'],
    ['under localhost', { Host: `localhost:PORT` }, 421, 'wrong-host'],
    ['under our name and another port', { Host: '127.0.0.1:1' }, 421, 'wrong-host'],
    ['without the cookie', { Cookie: null }, 401, 'no-secret'],
    ['with a wrong secret', { Cookie: 'hangwright-PORT=AAAA' }, 401, 'no-secret'],
    ["with another port's cookie", { Cookie: 'hangwright-1=SECRET' }, 401, 'no-secret'],
    ['from a foreign page', { Origin: 'https://evil.example' }, 403, 'foreign-origin'],
    ['from a page that names us in its address', { Origin: 'http://127.0.0.1.evil.example' }, 403, 'foreign-origin'],
    ['from a sandboxed page', { Origin: 'null' }, 403, 'foreign-origin'],
    ['without an origin', { Origin: null }, 403, 'foreign-origin'],
    ['that the browser calls cross-site', { 'Sec-Fetch-Site': 'cross-site' }, 403, 'foreign-page'],
    ['that the browser calls same-site', { 'Sec-Fetch-Site': 'same-site' }, 403, 'foreign-page'],
    ['as a form would send it', { 'Content-Type': 'text/plain' }, 415, 'wrong-type'],
  ]
  for (const [about, change, status, code] of refusals) {
    test(`${about} is refused`, async () => {
      const filled = Object.fromEntries(
        Object.entries(change).map(([name, value]) => [
          name,
          value?.replace('PORT', String(served.port)).replace('SECRET', cookie.split('=')[1] ?? '') ?? null,
        ]),
      )
      const answered = await raw(callLines(filled), body)
      expect(answered.status).toBe(status)
      expect(answered.body).toContain(`"code":"${code}"`)
      expect(answered.body).not.toContain('Low Water')
    })
  }

  test('of more than 8 MB is refused and the host goes on', async () => {
    const large = JSON.stringify({ name: 'measure.length', input: { text: 'x'.repeat(9 * 1024 * 1024) } })
    const answered = await raw(callLines({ 'Content-Length': String(large.length) }), large)
    expect(answered.status).toBe(413)
    expect((await raw(callLines(), body)).status).toBe(200)
  })

  test('that is no JSON is refused as data', async () => {
    const answered = await raw(callLines({ 'Content-Length': '3' }), 'not')
    expect(answered.status).toBe(200)
    expect(JSON.parse(answered.body)).toMatchObject({ ok: false, refusal: { code: 'bad-json' } })
  })
})

describe('the start address', () => {
  test('with a wrong key sets no cookie', async () => {
    const answered = await raw(getLines('/start?key=wrong', { Cookie: null }))
    expect(answered.status).toBe(401)
    expect(answered.headers).not.toMatch(/set-cookie/i)
  })

  test('sets a cookie that scripts and other sites cannot use, and is a page, not a redirect', async () => {
    const answered = await fetch(served.address, { redirect: 'manual' })
    expect(answered.status).toBe(200)
    expect(answered.headers.get('set-cookie')).toMatch(
      new RegExp(`^hangwright-${served.port}=[^;]+; HttpOnly; SameSite=Strict; Path=/$`),
    )
  })
})

describe('paths', () => {
  const tricks = [
    '/../package.json',
    '/%2e%2e/package.json',
    '/..%2fpackage.json',
    '/..%5cpackage.json',
    '/assets/../../package.json',
    '/%00index.html',
    '//etc/passwd',
    '/etc/passwd',
    '/.made-from',
    '/%E0%A4%A',
    '/picture/../../package.json',
    '/download/..%2f..%2fpackage.json',
    '/download/0123456789abcdef-..',
  ]
  for (const trick of tricks) {
    test(`${trick} gives nothing`, async () => {
      const answered = await raw(getLines(trick))
      expect([400, 404]).toContain(answered.status)
      const own = readFileSync(new URL('../../package.json', import.meta.url), 'utf8')
      expect(answered.body).not.toContain(own.slice(0, 40))
      expect(answered.body).not.toContain('root:')
    })
  }

  test('every answer carries the policy', async () => {
    for (const path of ['/', '/start', '/nothing-here', '/picture/none']) {
      const answered = await raw(getLines(path))
      expect(answered.headers).toContain(contentPolicy)
      expect(answered.headers).toContain('Cross-Origin-Resource-Policy: same-origin')
      expect(answered.headers).toContain('X-Content-Type-Options: nosniff')
      expect(answered.headers).not.toMatch(/access-control-allow/i)
    }
  })
})

describe('an upload', () => {
  const put = (change: Readonly<Record<string, string | null>>, bytes = 'abc') =>
    raw(
      callLines({ 'Content-Type': 'application/octet-stream', 'Content-Length': String(bytes.length), ...change }).map(
        line => line.replace('POST /call', 'PUT /upload?name=../../evil%00name.csv'),
      ),
      bytes,
    )

  test('gets a handle that is never a path', async () => {
    const answered = await put({})
    const { value } = JSON.parse(answered.body)
    expect(value).toMatchObject({ bytes: 3, handle: expect.stringMatching(/^[0-9a-f]{16}-[0-9a-zA-Z._-]+$/) })
    expect(value.handle).not.toContain('..')
  })

  test('from a foreign page or as a form is refused', async () => {
    expect((await put({ Origin: 'https://evil.example' })).status).toBe(403)
    expect((await put({ 'Content-Type': 'multipart/form-data' })).status).toBe(415)
  })

  const piece = async (bytes: string, named: Readonly<Record<string, string>>) => {
    const put = await fetch(`${served.origin}/upload?${new URLSearchParams({ name: 'list.csv', ...named })}`, {
      method: 'PUT',
      headers: { cookie, origin: served.origin, 'content-type': 'application/octet-stream' },
      body: bytes,
    })
    return put.json()
  }
  const lies = async (handle: string) =>
    (await fetch(`${served.origin}/download/${handle}`, { headers: { cookie } })).text()

  test('comes in pieces, of which one may come again, and grows no more once it has ended', async () => {
    const { handle } = (await piece('abc', { what: 'more' })).value
    expect(await piece('def', { what: 'more', at: '3', under: handle })).toMatchObject({ value: { bytes: 6 } })
    // The answer to it was lost, so it is sent once more.
    expect(await piece('def', { what: 'more', at: '3', under: handle })).toMatchObject({ value: { bytes: 6 } })
    expect(await piece('jkl', { what: 'last', at: '9', under: handle })).toMatchObject({
      refusal: { code: 'unknown-handle' },
    })
  })

  test('that ended lies there whole; what comes after it is refused', async () => {
    const { handle } = (await piece('abc', { what: 'more' })).value
    await piece('def', { what: 'last', at: '3', under: handle })
    expect(await lies(handle)).toBe('abcdef')
    expect(await piece('ghi', { what: 'last', at: '6', under: handle })).toMatchObject({
      refusal: { code: 'unknown-handle' },
    })
    expect(await lies(handle)).toBe('abcdef')
  })

  test('that is stopped on its way is gone', async () => {
    const { handle } = (await piece('abc', { what: 'more' })).value
    await piece('', { what: 'stop', at: '3', under: handle })
    expect(JSON.parse(await lies(handle))).toMatchObject({ refusal: { code: 'unknown-handle' } })
  })

  test('cut off within a piece keeps what came before it', async () => {
    const { handle } = (await piece('abc', { what: 'more' })).value
    const cut = callLines({ 'Content-Type': 'application/octet-stream', 'Content-Length': '900' })
    const address = `PUT /upload?name=list.csv&what=more&at=3&under=${handle}`
    await raw(
      cut.map(line => line.replace('POST /call', address)),
      'de',
    ).catch(() => undefined)
    expect(await lies(handle)).toBe('abc')
    expect(await piece('def', { what: 'last', at: '3', under: handle })).toMatchObject({ value: { bytes: 6 } })
    expect(await lies(handle)).toBe('abcdef')
  })

  test('that says it is too large is refused before it is sent', async () => {
    expect((await put({ 'Content-Length': String(600 * 1024 * 1024) }, '')).status).toBe(413)
  })
})

test('a download comes under the person’s own name, as it is and in ASCII', async () => {
  const name = 'Leihvertrag für Ödön “neu”.pdf'
  const put = await fetch(`${served.origin}/upload?name=${encodeURIComponent(name)}`, {
    method: 'PUT',
    headers: { cookie, origin: served.origin, 'content-type': 'application/octet-stream' },
    body: 'no daylight',
  })
  const { value } = await put.json()
  expect(value.name).toBe(name)
  const got = await fetch(`${served.origin}/download/${value.handle}`, { headers: { cookie } })
  expect(got.headers.get('content-disposition')).toBe(
    `attachment; filename="Leihvertrag fur Odon _neu_.pdf"; filename*=UTF-8''${encodeURIComponent(name)}`,
  )
  expect(await got.text()).toBe('no daylight')
})
