/**
 * A drawing on its way in: what the host found in it and what a person chose of it. Nothing is written until rooms are
 * taken; another unit or other layers ask the host anew, which has kept what it read.
 */
import type { Input, Output } from '../../src/contract/contract.ts'
import { type DrawingUnit, drawingUnits } from '../../src/plan/drawing-units.ts'
import { Brought } from '../host/brought.svelte.ts'
import { type Refused, refusalOf } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'

export type Proposed = Output<'drawing.read'>
export type Found = Proposed['outlines'][number]
type Asked = Input<'drawing.read'>
type Taking = Input<'drawing.take'>

export class DrawingReading {
  proposed = $state.raw<Proposed | null>(null)
  refused = $state.raw<Refused | null>(null)
  taken = $state.raw<Output<'drawing.take'> | null>(null)
  unit = $state<DrawingUnit | null>(null)
  /** Null while the layers that are called walls are taken. */
  layers = $state.raw<readonly string[] | null>(null)
  /** Millimetres; null as is usual. */
  thickest = $state<number | null>(null)
  widest = $state<number | null>(null)
  /** Outlines to take, by key. */
  chosen = $state.raw<ReadonlySet<string>>(new Set())
  /** What a person calls them, where it is not what the drawing says. */
  private named = $state.raw<ReadonlyMap<string, string>>(new Map())
  /** The outline under the hand, in the list and in the drawing. */
  near = $state<string | null>(null)
  readonly brought: Brought | undefined
  private reading = new AbortController()

  constructor(file: File | undefined) {
    this.brought = file && new Brought(file)
  }

  private asked(): Asked {
    return {
      handle: this.brought?.handle ?? '',
      ...(this.unit === null ? {} : { unit: this.unit }),
      ...(this.layers === null ? {} : { layers: [...this.layers] }),
      ...(this.thickest === null ? {} : { thickest: this.thickest }),
      ...(this.widest === null ? {} : { widest: this.widest }),
    }
  }

  async read(): Promise<void> {
    this.reading.abort()
    const mine = new AbortController()
    this.reading = mine
    this.refused = null
    try {
      await this.brought?.whole()
      if (mine.signal.aborted) return
      const proposed = await jobs.run('drawing.read', 'Reading the drawing', this.asked(), mine.signal)
      if (mine.signal.aborted) return
      this.proposed = proposed
      this.chosen = new Set(proposed.outlines.filter(one => !one.about && one.refused === '').map(one => one.key))
      this.named = new Map()
    } catch (thrown) {
      if (!mine.signal.aborted) this.refused = refusalOf(thrown)
    }
  }

  /** Nobody waits for a reading any more. */
  leave(): void {
    this.reading.abort()
    this.brought?.leave()
  }

  setUnit(unit: string): void {
    this.unit = drawingUnits.find(each => each === unit) ?? null
    void this.read()
  }

  toggleLayer(name: string): void {
    const now = this.proposed?.layers.filter(layer => layer.chosen).map(layer => layer.name) ?? []
    this.layers = now.includes(name) ? now.filter(each => each !== name) : [...now, name]
    void this.read()
  }

  toggle(key: string): void {
    const next = new Set(this.chosen)
    if (!next.delete(key)) next.add(key)
    this.chosen = next
  }

  /** What a room will be called: as typed, as the drawing says, or by its place in the list. */
  nameOf(found: Found): string {
    return this.named.get(found.key) ?? (found.name || (found.number === '' ? `Room ${found.key}` : found.number))
  }

  rename(key: string, name: string): void {
    this.named = new Map(this.named).set(key, name)
  }

  async take(how: Pick<Taking, 'height' | 'storey' | 'openings'>): Promise<void> {
    this.refused = null
    const rooms = (this.proposed?.outlines ?? [])
      .filter(found => this.chosen.has(found.key))
      .map(found => ({ outline: found.key, name: this.nameOf(found), number: found.number }))
    try {
      this.taken = await jobs.run('drawing.take', 'Taking rooms in', { ...this.asked(), ...how, rooms })
    } catch (thrown) {
      this.refused = refusalOf(thrown)
    }
  }
}
