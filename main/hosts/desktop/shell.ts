/**
 * The desktop host without Electron's own objects: what a window may do, who may speak, what an address answers. The
 * contract tests run it with a stand-in; `main.ts` gives it the real thing.
 */
import type { HostEvent } from '../../../src/contract/events.ts'
import { answerText } from '../answer.ts'
import type { Host } from '../host.ts'
import { pageFile, safeHeaders } from '../pages.ts'
import { pictureFile } from '../pictures.ts'

export const scheme = 'hangwright'
export const origin = 'hangwright://app'
export const callChannel = 'hangwright:call'
export const eventChannel = 'hangwright:event'
export const uploadChannel = 'hangwright:upload'

/** What this host needs of an Electron message event. */
export interface Sender {
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null
  readonly sender: { readonly id: number }
}

/** Only the main frame of one of our windows, on our own origin, parsed and not matched as text. */
export function isOurs(event: Sender, windows: ReadonlySet<number>): boolean {
  const { senderFrame: frame } = event
  return frame !== null && frame.parent === null && windows.has(event.sender.id) && isOurAddress(frame.url)
}

export function isOurAddress(address: string): boolean {
  try {
    const url = new URL(address)
    return (
      url.protocol === `${scheme}:` &&
      url.host === 'app' &&
      url.username === '' &&
      url.password === '' &&
      url.port === ''
    )
  } catch {
    return false
  }
}

const stranger = JSON.stringify({
  ok: false,
  refusal: { code: 'foreign-sender', message: 'Only the program’s own window may ask this.' },
})

/** Answers a call as JSON text. A stranger gets a refusal, never silence. */
export async function answerMessage(
  host: Host,
  windows: ReadonlySet<number>,
  event: Sender,
  text: unknown,
  log: (words: string) => void,
): Promise<string> {
  if (!isOurs(event, windows)) {
    log('refused a message from a frame that is not ours')
    return stranger
  }
  return answerText(host, typeof text === 'string' ? text : '')
}

export interface Made {
  readonly status: number
  readonly headers: Readonly<Record<string, string>>
  readonly bytes: Uint8Array
}

/** Our own scheme's answers: the renderer's files, pictures by hash, made files by handle. Nothing else. */
export async function answerAddress(host: Host, renderer: string, address: string): Promise<Made> {
  const nothing: Made = { status: 404, headers: safeHeaders, bytes: new Uint8Array() }
  if (!isOurAddress(address)) return nothing
  // The raw path: URL has already folded the dots that a path trick needs, encoded ones are refused below.
  const path = address.slice(origin.length).split(/[?#]/)[0] || '/'
  if (path.startsWith('/picture/')) {
    const picture = await pictureFile(host, path.slice('/picture/'.length))
    return picture === null
      ? nothing
      : { status: 200, headers: { ...safeHeaders, 'Content-Type': picture.type }, bytes: picture.bytes }
  }
  const page = await pageFile(renderer, path)
  return page === null
    ? nothing
    : { status: 200, headers: { ...safeHeaders, 'Content-Type': page.type }, bytes: page.bytes }
}

/** Tells every window; the payload alone crosses, as JSON text. */
export function tellWindows(event: HostEvent, send: (channel: string, text: string) => void): void {
  send(eventChannel, JSON.stringify(event))
}

/** What every window is made with. */
export const windowPreferences = {
  contextIsolation: true,
  sandbox: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  webviewTag: false,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  navigateOnDragDrop: false,
  spellcheck: false,
} as const
