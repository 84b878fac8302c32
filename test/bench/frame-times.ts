/**
 * What a frame costs the page's main thread, read from the browser's own trace: processor time by kind of work. Unlike
 * the times from frame to frame it hardly changes with what else the machine does.
 */

/** One record of a trace; times in microseconds, `tdur` of the thread's own processor time. */
export interface TraceRecord {
  readonly name: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  readonly ts: number
  readonly dur?: number
  readonly tdur?: number
  readonly args?: { readonly name?: string }
}

export const categories = ['devtools.timeline', 'disabled-by-default-devtools.timeline', 'toplevel', 'blink', 'cc']

const kinds: Readonly<Record<string, string>> = {
  EventDispatch: 'script',
  FunctionCall: 'script',
  FireAnimationFrame: 'script',
  RunMicrotasks: 'script',
  MajorGC: 'script',
  MinorGC: 'script',
  UpdateLayoutTree: 'style',
  Layout: 'layout',
  PrePaint: 'paint',
  Paint: 'paint',
  Layerize: 'paint',
  Commit: 'paint',
}

/** What the page's main thread did, in the order it began. */
function ofMain(records: readonly TraceRecord[]): TraceRecord[] {
  const main = records.find(
    record =>
      record.name === 'thread_name' &&
      record.args?.name === 'CrRendererMain' &&
      records.some(other => other.pid === record.pid && other.name === 'FireAnimationFrame'),
  )
  if (main === undefined) throw new Error('the trace has no main thread')
  return records
    .filter(({ pid, tid, ph }) => pid === main.pid && tid === main.tid && ph === 'X')
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0))
}

/** Milliseconds of processor time of each task of the main thread: nothing else is answered while one runs. */
export function tasksOf(records: readonly TraceRecord[]): number[] {
  return (
    ofMain(records)
      // One within another is told with it.
      .filter(({ name }) => name === 'RunTask')
      .map(({ tdur, dur }) => (tdur ?? dur ?? 0) / 1000)
  )
}

/** Milliseconds of processor time for one frame, by kind; what lies within another record counts there. */
export function perFrame(records: readonly TraceRecord[], frames: number): ReadonlyMap<string, number> {
  const own = ofMain(records)
  const sums = new Map<string, number>()
  const add = (kind: string, micro: number) => sums.set(kind, (sums.get(kind) ?? 0) + micro / 1000 / frames)
  const open: { readonly kind: string; readonly end: number }[] = []
  for (const record of own) {
    const kind = kinds[record.name] ?? (record.name.endsWith('RunTask') ? 'whole' : undefined)
    if (kind === undefined) continue
    while ((open.at(-1)?.end ?? Number.POSITIVE_INFINITY) <= record.ts) open.pop()
    const within = open.at(-1)?.kind
    const time = record.tdur ?? record.dur ?? 0
    if (kind !== within) {
      add(kind, time)
      // A layout that a script forces is layout, not script.
      if (within !== undefined && within !== 'whole') add(within, -time)
    }
    open.push({ kind, end: record.ts + (record.dur ?? 0) })
  }
  return sums
}
