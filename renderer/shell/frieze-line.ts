/**
 * The frieze as one line: every work at one scale, standing on the ground, sections bracketed. Only positions are
 * computed here; which of them are drawn depends on how far the line is rolled.
 */
import type { Output } from '../../src/contract/contract.ts'

type Frieze = Output<'exhibition.frieze'>
export type FriezeWork = Frieze['works'][number]

export interface Standing {
  readonly work: FriezeWork
  /** Its place among all works of the show. */
  readonly place: number
  readonly left: number
  readonly width: number
  readonly height: number
  readonly sized: boolean
}

/** With its place among those that stand on the line. */
export type StandingAt = Standing & { readonly at: number }

export interface Bracket {
  readonly id: string
  readonly title: string
  readonly left: number
  readonly right: number
  readonly works: number
  readonly folded: boolean
}

export interface FriezeLine {
  readonly standing: readonly Standing[]
  readonly brackets: readonly Bracket[]
  readonly width: number
}

const between = 13
const betweenSections = 34
/** Stands for a work whose size nobody knows yet. */
const unknown = { width: 500, height: 600 }
/** What a folded section takes. */
const foldedWidth = 96
/** A work is never narrower than its number. */
const narrowest = 15

/** Pixels to a millimetre, so that the tallest work is `tall` pixels high and none but it decides. */
export function friezeScale(works: readonly FriezeWork[], tall: number): number {
  const tallest = works.reduce((most, work) => Math.max(most, work.height ?? unknown.height), 900)
  return tall / Math.min(tallest, 2600)
}

/** Works of folded sections do not stand, nor those that are not looked at. */
export function friezeLine(
  frieze: Frieze,
  scale: number,
  tall: number,
  folded: ReadonlySet<string> = new Set(),
  looksAt: (work: FriezeWork) => boolean = () => true,
): FriezeLine {
  const standing: Standing[] = []
  const brackets: Bracket[] = []
  const titles = new Map(frieze.sections.map(section => [section.id, section.title]))
  let at = 24
  let last: { id: string; title: string; left: number; right: number; works: number; folded: boolean } | undefined
  for (const [place, work] of frieze.works.entries()) {
    if (!looksAt(work)) continue
    const id = work.section ?? ''
    const begins = last === undefined || last.id !== id
    if (begins && last !== undefined) at += betweenSections - between
    const away = folded.has(id)
    const width = away ? foldedWidth : Math.max(narrowest, (work.width ?? unknown.width) * scale)
    if (begins) {
      last = { id, title: titles.get(id) ?? '', left: at, right: at + width, works: 0, folded: away }
      brackets.push(last)
      if (away) at += foldedWidth + between
    }
    if (last !== undefined) last.works += 1
    if (away) continue
    const height = Math.min(tall, Math.max(6, (work.height ?? unknown.height) * scale))
    standing.push({ work, place, left: at, width, height, sized: work.width !== null && work.height !== null })
    if (last !== undefined) last.right = at + width
    at += width + between
  }
  return { standing, brackets, width: at + 24 }
}

/** Of what stands from left to right, the first and the one after the last that reach into a stretch of the line. */
export function within(standing: readonly Standing[], from: number, to: number): readonly [number, number] {
  const first = (holds: (one: Standing) => boolean) => {
    let [low, high] = [0, standing.length]
    while (low < high) {
      const middle = (low + high) >> 1
      const one = standing[middle]
      if (one !== undefined && holds(one)) high = middle
      else low = middle + 1
    }
    return low
  }
  return [first(one => one.left + one.width > from), first(one => one.left >= to)]
}
