/** A drawing as a person sees it before anything is taken. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { sizesByUnit } from '../../../src/plan/drawing-units.ts'
import type { Drawing } from '../../files/dxf/read.ts'
import type { Job } from '../service.ts'
import { drawingOf } from './kept.ts'
import { type OnPage, proposalOf, toPage } from './proposal.ts'

type Proposed = Output<'drawing.read'>

/** Lines that are sent to be drawn: a screen shows no more of a whole plan. */
const mostDrawn = 12_000

export async function read(job: Job, { handle, ...asked }: Received<'drawing.read'>): Promise<Proposed> {
  const name = job.handles.name(handle)
  const drawing = drawingOf(job, handle)
  job.progress(0, null, 'Looking for rooms')
  const watch = () => job.progress(0, null, 'Looking for rooms')
  const { page, chosen, counted, outlines, ask } = proposalOf(drawing, asked, watch)
  const plain = 1 / page.scale
  const { lines, notDrawn } = longest(drawing, page)
  return {
    name,
    version: drawing.version,
    statedUnit: drawing.unit,
    unit: page.unit,
    sizes: sizesByUnit(page.width * plain, page.height * plain).map(size => ({ ...size })),
    layers: drawing.layers.map((layer, at) => ({
      ...layer,
      lines: counted[at]?.lines ?? 0,
      length: page.unit === null ? null : (counted[at]?.length ?? 0),
      words: counted[at]?.words ?? 0,
      chosen: chosen.includes(at),
    })),
    box: [0, 0, page.width, page.height],
    lines,
    notDrawn,
    outlines: [...outlines],
    ask,
    remarks: [...drawing.remarks],
  }
}

/** The longest lines of all, layer by layer, to a twenty-thousandth of the whole. */
function longest({ pieces, layers }: Drawing, page: OnPage): Pick<Proposed, 'lines' | 'notDrawn'> {
  const { xy, layer, count } = pieces
  const runs = new Float64Array(count)
  for (let at = 0; at < count; at++) {
    runs[at] = Math.hypot((xy[at * 4 + 2] ?? 0) - (xy[at * 4] ?? 0), (xy[at * 4 + 3] ?? 0) - (xy[at * 4 + 1] ?? 0))
  }
  const least = count <= mostDrawn ? 0 : (Float64Array.from(runs).sort().at(-mostDrawn) ?? 0)
  const step = 10 ** Math.floor(Math.log10(Math.max(page.width, page.height, 1e-6) / 20_000))
  const round = (value: number) => Number((Math.round(value / step) * step).toPrecision(12))
  const ends: number[][] = layers.map(() => [])
  let drawn = 0
  for (let at = 0; at < count && drawn < mostDrawn; at++) {
    if ((runs[at] ?? 0) < least) continue
    drawn += 1
    const from = toPage(page, xy[at * 4] ?? 0, xy[at * 4 + 1] ?? 0)
    const to = toPage(page, xy[at * 4 + 2] ?? 0, xy[at * 4 + 3] ?? 0)
    ends[layer[at] ?? 0]?.push(round(from.x), round(from.y), round(to.x), round(to.y))
  }
  return {
    lines: ends.flatMap((own, at) => (own.length > 0 ? [{ layer: at, ends: own }] : [])),
    notDrawn: count - drawn,
  }
}
