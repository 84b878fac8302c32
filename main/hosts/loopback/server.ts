/**
 * The loopback host: the whole program over HTTP on 127.0.0.1, for machines without Electron's runtime and for the
 * browser tests. It only carries: JSON text to and from the one contract, bytes to and from handles, events one way.
 */
import { open, stat } from 'node:fs/promises'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { pipeline } from 'node:stream/promises'
import { uploadLimit } from '../../../src/contract/limits.ts'
import { Refusal, type RefusalJson } from '../../../src/contract/refusal.ts'
import { disposition } from '../../files/names.ts'
import { answerText } from '../answer.ts'
import type { Host } from '../host.ts'
import { pageFile, rendererFolder, safeHeaders } from '../pages.ts'
import { pictureFile } from '../pictures.ts'
import { tooLarge } from '../uploads.ts'
import { createGuard } from './guard.ts'
import { createReceiver } from './receive.ts'
import { startPage, startScript } from './start-page.ts'

const callLimit = 8 * 1024 * 1024

export interface Loopback {
  /** Where a person begins; carries the secret of this start. */
  readonly address: string
  readonly origin: string
  readonly port: number
  readonly close: () => Promise<void>
}

export interface LoopbackOptions {
  readonly port?: number
  readonly renderer?: string
}

export async function serveLoopback(host: Host, options: LoopbackOptions = {}): Promise<Loopback> {
  let port = 0
  const guard = createGuard(() => port)
  const receiver = createReceiver(host)
  const renderer = options.renderer ?? rendererFolder
  const streams = new Set<ServerResponse>()
  const stopEvents = host.subscribe(event => {
    for (const stream of streams) stream.write(`data: ${JSON.stringify(event)}\n\n`)
  })

  const server = createServer((request, response) => {
    handle(request, response).catch(error => {
      if (error instanceof Refusal) return refuse(response, 400, error.toJson())
      // Who cancelled an upload listens no longer.
      if (request.destroyed && !request.complete) return
      console.error(error)
      refuse(response, 500, { code: 'fault', message: 'Something went wrong here. Nothing was changed.' })
    })
  })

  async function handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const refused = guard.refuse(request)
    if (refused) {
      const { status, ...refusal } = refused
      return refuse(response, status, refusal)
    }
    const url = new URL(request.url ?? '/', `http://127.0.0.1:${port}`)
    const { method } = request
    if (method === 'POST' && url.pathname === '/call') return call(request, response)
    if (method === 'PUT' && url.pathname === '/upload') return upload(request, response, url.searchParams)
    if (method !== 'GET' && method !== 'HEAD') {
      return refuse(response, 405, { code: 'wrong-method', message: 'This address is not asked that way.' })
    }
    if (url.pathname === '/start') return start(response, url.searchParams.get('key'))
    if (url.pathname === '/start.js') return send(response, 200, 'text/javascript; charset=utf-8', startScript)
    if (url.pathname === '/events') return events(request, response)
    if (url.pathname.startsWith('/download/')) return download(response, url.pathname.slice('/download/'.length))
    if (url.pathname.startsWith('/picture/')) return picture(response, url.pathname.slice('/picture/'.length))
    // The raw target, since URL has already folded the dots that a path trick needs.
    const page = await pageFile(renderer, (request.url ?? '/').split('?')[0] ?? '/')
    if (page === null) return refuse(response, 404, { code: 'not-found', message: 'There is nothing at this address.' })
    send(response, 200, page.type, page.bytes)
  }

  async function call(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const chunks: Buffer[] = []
    let bytes = 0
    for await (const chunk of request) {
      bytes += chunk.length
      if (bytes > callLimit) {
        response.setHeader('Connection', 'close')
        return refuse(response, 413, {
          code: 'too-large',
          message: 'A call may carry 8 MB at most. Send a file as an upload.',
        })
      }
      chunks.push(chunk)
    }
    send(
      response,
      200,
      'application/json; charset=utf-8',
      await answerText(host, Buffer.concat(chunks).toString('utf8')),
    )
  }

  async function upload(request: IncomingMessage, response: ServerResponse, named: URLSearchParams): Promise<void> {
    if (Number(request.headers['content-length'] ?? 0) > uploadLimit) {
      response.setHeader('Connection', 'close')
      return refuse(response, 413, tooLarge().toJson())
    }
    const value = await receiver.receive(request, named)
    response.once('close', () => {
      if (!response.writableFinished && !named.has('under')) receiver.unheard(value)
    })
    send(response, 200, 'application/json; charset=utf-8', JSON.stringify({ ok: true, value }))
  }

  function start(response: ServerResponse, key: string | null): void {
    if (!guard.isSecret(key)) {
      refuse(response, 401, {
        code: 'no-secret',
        message: 'This address is not from this start. Open the one that the program printed.',
      })
      return
    }
    // A page and not a redirect: a cookie with SameSite=Strict is not sent on a redirect from another site's link.
    response.setHeader('Set-Cookie', `${guard.cookieName}=${guard.secret}; HttpOnly; SameSite=Strict; Path=/`)
    send(response, 200, 'text/html; charset=utf-8', startPage)
  }

  function events(request: IncomingMessage, response: ServerResponse): void {
    response.writeHead(200, { ...safeHeaders, 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' })
    response.write(': here\n\n')
    streams.add(response)
    request.on('close', () => streams.delete(response))
  }

  async function download(response: ServerResponse, handleText: string): Promise<void> {
    const path = host.handles.path(handleText)
    const file = await open(path)
    const { size } = await stat(path)
    response.writeHead(200, {
      ...safeHeaders,
      'Content-Type': 'application/octet-stream',
      'Content-Length': size,
      'Content-Disposition': disposition(host.handles.name(handleText)),
      'Cache-Control': 'no-store',
    })
    // No more than was said: a file that grows meanwhile would run over into the next answer of this connection.
    if (size === 0) {
      await file.close()
      response.end()
    } else await pipeline(file.createReadStream({ end: size - 1 }), response)
  }

  async function picture(response: ServerResponse, path: string): Promise<void> {
    const found = await pictureFile(host, path)
    if (found === null)
      return refuse(response, 404, { code: 'no-preview', message: 'There is no preview of this picture.' })
    // Named by content: it can never change.
    response.setHeader('Cache-Control', 'private, max-age=31536000, immutable')
    send(response, 200, found.type, found.bytes)
  }

  function send(response: ServerResponse, status: number, type: string, body: string | Buffer): void {
    const bytes = typeof body === 'string' ? Buffer.from(body) : body
    if (!response.hasHeader('Cache-Control')) response.setHeader('Cache-Control', 'no-store')
    response.writeHead(status, { ...safeHeaders, 'Content-Type': type, 'Content-Length': bytes.length })
    response.end(response.req.method === 'HEAD' ? undefined : bytes)
  }

  function refuse(response: ServerResponse, status: number, refusal: RefusalJson): void {
    if (response.headersSent) {
      response.destroy()
      return
    }
    send(response, status, 'application/json; charset=utf-8', JSON.stringify({ ok: false, refusal }))
  }

  await new Promise<void>((resolve, reject) => {
    server.once('error', error => reject(portRefusal(error, options.port ?? 0)))
    server.listen(options.port ?? 0, '127.0.0.1', resolve)
  })
  const where = server.address()
  if (where === null || typeof where === 'string') throw new Error('the server has no port')
  port = where.port
  const origin = `http://127.0.0.1:${port}`
  return {
    origin,
    port,
    address: `${origin}/start?key=${guard.secret}`,
    async close() {
      stopEvents()
      for (const stream of streams) stream.end()
      server.closeAllConnections()
      await new Promise<void>(resolve => server.close(() => resolve()))
    },
  }
}

function portRefusal(error: NodeJS.ErrnoException, port: number): unknown {
  if (error.code !== 'EADDRINUSE' && error.code !== 'EACCES') return error
  const why = error.code === 'EACCES' ? 'is kept for the system' : 'is in use by another program'
  return new Refusal('port-taken', `Port ${port} ${why}. Name another, or leave it out.`, { field: 'port' })
}
