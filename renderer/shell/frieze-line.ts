/**
 * The frieze as one line: every work at one scale, standing on the ground, sections bracketed. Only positions are
 * computed here; which of them are drawn depends on how far the line is rolled.
 */
import type { Output } from '../../src/contract/contract.ts'

type Frieze = Output<'exhibition.frieze'>
export type FriezeWork = Frieze['works'][number]

export interface Standing {
  readonly work: FriezeWork
  readonly left: number
  readonly width: number
  readonly height: number
  readonly sized: boolean
}

/** With its place among all works of the show. */
export type StandingAt = Standing & { readonly at: number }

export interface Bracket {
  readonly id: string
  readonly title: string
  readonly left: number
  readonly right: number
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
/** A work is never narrower than its number. */
const narrowest = 15

/** Pixels to a millimetre, so that the tallest work is `tall` pixels high and none but it decides. */
export function friezeScale(works: readonly FriezeWork[], tall: number): number {
  const tallest = works.reduce((most, work) => Math.max(most, work.height ?? unknown.height), 900)
  return tall / Math.min(tallest, 2600)
}

export function friezeLine(frieze: Frieze, scale: number, tall: number): FriezeLine {
  const standing: Standing[] = []
  const brackets: Bracket[] = []
  const titles = new Map(frieze.sections.map(section => [section.id, section.title]))
  let at = 24
  let section: string | null | undefined
  for (const work of frieze.works) {
    if (section !== undefined && work.section !== section) at += betweenSections - between
    const width = Math.max(narrowest, (work.width ?? unknown.width) * scale)
    const height = Math.min(tall, Math.max(6, (work.height ?? unknown.height) * scale))
    standing.push({ work, left: at, width, height, sized: work.width !== null && work.height !== null })
    const last = brackets.at(-1)
    if (work.section !== section || last === undefined) {
      const title = work.section === null ? '' : (titles.get(work.section) ?? '')
      brackets.push({ id: work.section ?? '', title, left: at, right: at + width })
    } else {
      brackets[brackets.length - 1] = { ...last, right: at + width }
    }
    section = work.section
    at += width + between
  }
  return { standing, brackets, width: at + 24 }
}
