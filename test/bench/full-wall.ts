/**
 * A catalogue whose one long wall is full: works copied from the demo, each measured, with its back and a picture, in
 * three rows. It is filled over the real host by the calls that a screen would make, with no screen open meanwhile.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import type { APIRequestContext } from 'playwright-core'

const commandLine = fileURLToPath(new URL('../../main/hosts/command-line/main.ts', import.meta.url))
const tiers = 3

export interface Served {
  readonly child: ChildProcess
  /** The start address, which gives the cookie. */
  readonly address: string
}

/** The loopback host in a process of its own. */
export async function serve(file: string, data: string): Promise<Served> {
  const child = spawn(process.execPath, [commandLine, 'serve', file], {
    env: { ...process.env, HANGWRIGHT_DATA: data },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const line = await new Promise<string>((resolve, reject) => {
    createInterface({ input: child.stdout }).once('line', resolve)
    child.once('exit', code => reject(new Error(`the host ended with ${code}`)))
  })
  return { child, address: String(JSON.parse(line).address) }
}

async function answered<T>(name: string, response: { json(): Promise<unknown> }): Promise<T> {
  const answer = (await response.json()) as { ok: boolean; value: T; refusal?: unknown } // as every answer of a host
  if (answer.ok !== true) throw new Error(`${name}: ${JSON.stringify(answer.refusal)}`)
  return answer.value
}

/** A wall of 60 m in a room of its own with so many works; gives its face. `request` has been at the start address. */
export async function fillWall(request: APIRequestContext, address: string, count: number): Promise<string> {
  const { origin } = new URL(address)
  const call = async <T>(name: string, input: unknown): Promise<T> =>
    answered(name, await request.post(`${origin}/call`, { headers: { origin }, data: { name, input } }))

  const { exhibitions } = await call<{ exhibitions: readonly { id: string }[] }>('exhibition.list', {})
  const exhibition = exhibitions[0]?.id ?? ''
  const { works } = await call<{ works: readonly { work: string; picture: string | null; face: string | null }[] }>(
    'exhibition.frieze',
    { exhibition },
  )
  const sources = works.filter(work => work.picture !== null && work.face !== null).slice(0, 20)
  if (sources.length === 0) throw new Error('the demo has no pictures')
  await call('room.add', {
    name: 'Bench',
    height: 4000,
    walls: [{ length: 60_000 }, { length: 8000 }, { length: 60_000 }, { length: 8000 }],
  })
  const { rooms } = await call<{ rooms: readonly { name: string; walls: readonly { face: string }[] }[] }>(
    'room.list',
    {},
  )
  const face = rooms.find(room => room.name === 'Bench')?.walls[0]?.face ?? ''
  const pictures = new Map<string, Buffer>()
  const places: unknown[] = []
  for (let at = 0; at < count; at += 1) {
    const source = sources[at % sources.length]
    const hash = source?.picture
    if (source === undefined || hash == null) throw new Error('a source has no picture')
    const { id, entry } = await call<{ id: string; entry: string }>('work.duplicate', { id: source.work, exhibition })
    await call('work.addSize', {
      work: id,
      part: 'framed',
      height: 500 + (at % 7) * 40,
      width: 360 + (at % 5) * 40,
      raw: '',
      kind: 'measured',
    })
    const picture = pictures.get(hash) ?? (await (await request.get(`${origin}/picture/${hash}/480`)).body())
    pictures.set(hash, picture)
    const sent = await request.put(`${origin}/upload?name=work.jpg`, {
      headers: { origin, 'content-type': 'application/octet-stream' },
      data: picture,
    })
    const { handle } = await answered<{ handle: string }>('upload', sent)
    await call('work.addPicture', { work: id, handle })
    const tier = at % tiers
    places.push({ entry, face, x: 400 + Math.floor(at / tiers) * 592, rule: 'hand', y: 700 + tier * 1000, was: null })
  }
  await call('placement.put', { exhibition, places })
  return face
}
