/**
 * A drawing of 20 MB opened in a worker, as a person waits for it: 60 rooms of double walls with doors, and furniture in
 * 140,000 lines; then other layers of the same drawing, which is kept. Wanted: a few seconds, and less than 600 MB of
 * the whole process. A general tool beside it: the time that Node takes to read and split the same file into lines.
 */
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { createCatalogue } from '../../main/database/catalogue.ts'
import { answer } from '../../main/hosts/answer.ts'
import { createHost } from '../../main/hosts/host.ts'
import { clockFrom } from '../../main/services/clock.ts'

const megabytes = 20
const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))

function drawing(): string {
  const parts = [
    '0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n',
  ]
  let size = 0
  let handle = 256
  function line(layer: string, x1: number, y1: number, x2: number, y2: number): void {
    handle += 1
    const text = `0\nLINE\n5\n${handle.toString(16)}\n100\nAcDbEntity\n8\n${layer}\n100\nAcDbLine\n10\n${x1.toFixed(4)}\n20\n${y1.toFixed(4)}\n30\n0.0\n11\n${x2.toFixed(4)}\n21\n${y2.toFixed(4)}\n31\n0.0\n`
    parts.push(text)
    size += text.length
  }
  const [wide, deep, thick] = [7000, 5500, 300]
  for (let room = 0; room < 60; room++) {
    const [x, y] = [(room % 10) * (wide + thick), Math.floor(room / 10) * (deep + thick)]
    line('A-WALL', x, y, x + wide, y)
    line('A-WALL', x, y + deep, x + wide, y + deep)
    for (const side of [x, x + wide]) {
      line('A-WALL', side, y, side, y + 2000)
      line('A-WALL', side, y + 3000, side, y + deep)
    }
    for (const at of [2000, 3000]) line('A-WALL', x + wide, y + at, x + wide + thick, y + at)
  }
  for (let at = 0; size < megabytes * 1e6; at++) {
    const [x, y] = [(at % 400) * 180, Math.floor(at / 400) * 95]
    line('A-FURN', x, y, x + 90, y + (at % 7) * 10)
  }
  parts.push('0\nENDSEC\n0\nEOF\n')
  return parts.join('')
}

async function timed<T>(work: () => Promise<T> | T): Promise<readonly [number, T]> {
  const from = performance.now()
  const value = await work()
  return [Math.round(performance.now() - from), value]
}

try {
  const file = join(folder, 'a.hangwright')
  createCatalogue(file, clockFrom(undefined)).close()
  const host = createHost({ kind: 'command line', data: join(folder, 'data') })
  try {
    host.openFile(file)
    const { handle, path } = host.handles.create('large.dxf')
    writeFileSync(path, drawing())
    const ask = async (input: object) => {
      const answered = await answer(host, 'drawing.read', { handle, ...input })
      if (!answered.ok) throw new Error(JSON.stringify(answered.refusal))
      return answered.value as { outlines: readonly unknown[]; lines: readonly unknown[] } // the service gave it
    }
    const [first, read] = await timed(() => ask({}))
    const [again] = await timed(() => ask({ layers: ['A-WALL'], widest: 1500 }))
    const peak = Math.round(process.resourceUsage().maxRSS / 1024)
    // Last: it takes more memory than all the rest.
    const [plain] = await timed(() => readFileSync(path, 'latin1').split('\n').length)
    console.log(`load ${loadavg()[0]?.toFixed(1)}, ${(statSync(path).size / 1e6).toFixed(1)} MB of DXF`)
    console.log(`read and proposed in a worker   ${first} ms, ${read.outlines.length} rooms found`)
    console.log(`again with other answers        ${again} ms`)
    console.log(`Node alone, split into lines    ${plain} ms`)
    console.log(`peak memory of the process      ${peak} MB`)
  } finally {
    await host.close()
  }
} finally {
  rmSync(folder, { recursive: true, force: true })
}
