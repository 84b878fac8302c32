/**
 * Who may speak to the loopback host. Binding to 127.0.0.1 keeps the network out, not the pages of the user's own
 * browser: one of them can give its own name our address. So a request must name our exact host, come from our own
 * page where the browser says from where, and carry the secret of this start.
 */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'
import type { IncomingMessage } from 'node:http'
import type { RefusalJson } from '../../../src/contract/refusal.ts'

export interface Guard {
  readonly secret: string
  readonly cookieName: string
  /** Null when the request may go on. */
  readonly refuse: (request: IncomingMessage) => (RefusalJson & { readonly status: number }) | null
  readonly isSecret: (given: string | null) => boolean
}

function sameText(a: string, b: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest()
  return timingSafeEqual(digest(a), digest(b))
}

function cookieOf(request: IncomingMessage, name: string): string | null {
  for (const part of (request.headers.cookie ?? '').split(';')) {
    const at = part.indexOf('=')
    if (at > 0 && part.slice(0, at).trim() === name) return part.slice(at + 1).trim()
  }
  return null
}

export function createGuard(port: () => number): Guard {
  const secret = randomBytes(24).toString('base64url')
  const isSecret = (given: string | null) => given !== null && sameText(given, secret)
  const cookieName = () => `hangwright-${port()}`
  const no = (status: number, code: string, message: string) => ({ status, code, message })

  function refuse(request: IncomingMessage) {
    const ours = `127.0.0.1:${port()}`
    if (request.headers.host !== ours) return no(421, 'wrong-host', `This host answers only as ${ours}.`)
    const site = request.headers['sec-fetch-site']
    if (site !== undefined && site !== 'same-origin' && site !== 'none') {
      return no(403, 'foreign-page', 'Another page may not ask this host.')
    }
    const { origin } = request.headers
    const changes = request.method === 'POST' || request.method === 'PUT'
    if (origin !== undefined ? origin !== `http://${ours}` : changes) {
      return no(403, 'foreign-origin', 'Only this host’s own page may ask this.')
    }
    if (request.method === 'GET' && (request.url ?? '').startsWith('/start')) return null
    if (!isSecret(cookieOf(request, cookieName()))) {
      return no(401, 'no-secret', 'Open the address that the program printed when it started.')
    }
    const type = (request.headers['content-type'] ?? '').split(';')[0]?.trim().toLowerCase()
    if (request.method === 'POST' && type !== 'application/json') {
      return no(415, 'wrong-type', 'A call is JSON.')
    }
    if (request.method === 'PUT' && type !== 'application/octet-stream') {
      return no(415, 'wrong-type', 'An upload is plain bytes.')
    }
    return null
  }

  return {
    secret,
    get cookieName() {
      return cookieName()
    },
    refuse,
    isSecret,
  }
}
