/**
 * Runs the built main process with the stand-in in Electron's place, as a window would use it, and prints what came of
 * it as JSON. Arguments: the bundle's main.js.
 */
import { registerHooks } from 'node:module'
import { setTimeout as sleep } from 'node:timers/promises'
import { pathToFileURL } from 'node:url'
import { app, type BrowserWindow, whatWasAsked } from './stand-in.ts'

const standIn = new URL('./stand-in.ts', import.meta.url).href
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron' ? { url: standIn, shortCircuit: true } : next(specifier, context),
})

async function until<T>(look: () => T | undefined): Promise<T> {
  for (let tries = 0; tries < 2400; tries++) {
    const found = look()
    if (found !== undefined) return found
    await sleep(50)
  }
  throw new Error('it never came')
}

await import(pathToFileURL(process.argv[2] ?? '').href)
const window = await until<BrowserWindow>(() => whatWasAsked.windows.find(({ address }) => address !== ''))
const event = { senderFrame: { url: window.address, parent: null }, sender: { id: window.webContents.id } }

async function handled(channel: string, ...args: unknown[]): Promise<{ ok: boolean; value: never; refusal: unknown }> {
  const handler = whatWasAsked.handlers.get(channel)
  if (handler === undefined) throw new Error(`nobody handles ${channel}`)
  return JSON.parse(String(await handler(event, ...structuredClone(args))))
}

async function call(name: string, input: unknown): Promise<Record<string, never>> {
  const answered = await handled('hangwright:call', JSON.stringify({ name, input }))
  if (!answered.ok) throw new Error(`${name}: ${JSON.stringify(answered.refusal)}`)
  return answered.value
}

async function fetched(address: string): Promise<{ status: number; type: string; named: string; bytes: Uint8Array }> {
  const response = await whatWasAsked.protocol?.({ url: address })
  if (response === undefined) throw new Error('nobody handles the scheme')
  const { headers, status } = response
  return {
    status,
    type: headers.get('content-type') ?? '',
    named: headers.get('content-disposition') ?? '',
    bytes: new Uint8Array(await response.arrayBuffer()),
  }
}

const state = await call('desk.state', {})
const { works } = (await call('work.list', { limit: 1 })) as unknown as { works: { id: string }[] } // the answer of that name
const { exhibitions } = (await call('exhibition.list', {})) as unknown as {
  exhibitions: { id: string; works: number }[]
} // likewise
const exhibition = exhibitions.find(one => one.works > 0)?.id
const name = 'Leihvertrag für Ödön.txt'
const bytes = new TextEncoder().encode('no daylight')
const given = await handled('hangwright:upload', name, bytes, 'last')
const { handle } = given.value as { handle: string } // the answer of an upload
const document = await call('work.addDocument', { work: works[0]?.id, handle })
const { faces } = (await call('sheet.state', { exhibition })) as unknown as { faces: { face: string; works: number }[] } // likewise
const face = faces.find(one => one.works > 0)?.face
const printed = (await call('sheet.wall', { exhibition, faces: [face] })) as unknown as { files: { handle: string }[] } // likewise
const checklist = (await call('sheet.checklist', { exhibition })) as unknown as { files: { handle: string }[] } // likewise
const origin = new URL('/', window.address).href
const start = await fetched(origin)
const pdf = await fetched(`${origin}download/${printed.files[0]?.handle}`)
const xlsx = await fetched(`${origin}download/${checklist.files[0]?.handle}`)
const text = await fetched(`${origin}download/${handle}`)
const stranger = await whatWasAsked.handlers.get('hangwright:call')?.(
  { ...event, senderFrame: { ...event.senderFrame, parent: {} } },
  JSON.stringify({ name: 'desk.state', input: {} }),
)
window.emit('close')
app.emit('window-all-closed')
const begin = (bytes: Uint8Array) => Buffer.from(bytes.subarray(0, 5)).toString('latin1')
process.stdout.write(
  JSON.stringify({
    state,
    document,
    errors: whatWasAsked.errors,
    sandboxed: whatWasAsked.sandboxed,
    schemes: whatWasAsked.schemes.length,
    menu: whatWasAsked.menu.length,
    told: whatWasAsked.sent.some(line => line.startsWith('hangwright:event {"kind":"changed"')),
    progress: whatWasAsked.sent.some(line => line.startsWith('hangwright:event {"kind":"progress"')),
    stranger: JSON.parse(String(stranger)),
    options: window.options,
    start: { status: start.status, type: start.type },
    text: { status: text.status, named: text.named, text: Buffer.from(text.bytes).toString('utf8') },
    pdf: { status: pdf.status, begins: begin(pdf.bytes), size: pdf.bytes.length },
    xlsx: { status: xlsx.status, begins: begin(xlsx.bytes) },
  }),
)
