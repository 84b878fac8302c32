/**
 * What the wall's own checks would stop if a late change were made: overlaps, ceiling, marks in an opening, light, labels.
 * The rule it keeps: a way out makes no stop that was not there. A stop that a new frame would have on a bare wall too
 * is the frame's, not the place's, and bars nothing: it is to be seen and cured where the work hangs then.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { Finding } from '../contract/shared.ts'
import { calledOn, faceFindings } from './face-findings.ts'
import type { Changed } from './late-changed.ts'
import { type MarksOrWhy, type MarksStyle, marksOfFace, marksOfPlaced } from './marks-of-face.ts'

/** Where works stand after the change, by entry. mm. */
export type Places = readonly { readonly id: string; readonly x: number; readonly y: number }[]

/** Asks of places, in words, for the first stop that they would bring; empty where there is none. */
export function newStops(elevation: Elevation, changed: Changed, style: MarksStyle): (places: Places) => string {
  let ground: Ground | null = null
  return places => {
    ground ??= groundOf(elevation, changed, style)
    const at = new Map(places.map(place => [place.id, place]))
    const works = changed.works.map(work => {
      const place = at.get(work.entry)
      if (place === undefined) return work
      // What comes from another wall leaves its own rule behind.
      const rule = elevation.works.some(each => each.entry === work.entry) ? {} : { rule: 'hand' as const, y: place.y }
      return { ...work, x: place.x, centreY: place.y, ...rule }
    })
    const after: Elevation = { ...elevation, works }
    const marks = new Map(
      works.map(work => {
        const known = at.has(work.entry) ? undefined : ground?.marks.get(work.placement)
        return [work.placement, known ?? marksOfPlaced(after, work, style)]
      }),
    )
    const found = faceFindings(after, style, marks).find(
      each => isStop(each) && ground?.known.has(keyOf(each)) !== true,
    )
    return found === undefined ? '' : said(found, works)
  }
}

/** What does not hang on where works go; reckoned once for a wall, when first asked. */
interface Ground {
  readonly known: ReadonlySet<string>
  /** Marks of works that nothing changes. */
  readonly marks: ReadonlyMap<string, MarksOrWhy>
}

function groundOf(elevation: Elevation, { works, anew, walls }: Changed, style: MarksStyle): Ground {
  const marks = marksOfFace(elevation, style)
  const before = walls.flatMap(wall => faceFindings(wall, style, wall === elevation ? marks : marksOfFace(wall, style)))
  const bare = { ...elevation, wall: bareWall(elevation.wall), works: works.filter(work => anew.has(work.entry)) }
  return {
    known: new Set([...before, ...faceFindings(bare, style)].filter(isStop).map(keyOf)),
    marks: new Map([...marks].filter(([id]) => !bare.works.some(work => work.placement === id))),
  }
}

/** Of the same build, without anything on it, and higher than any work. */
function bareWall(wall: Elevation['wall']): Elevation['wall'] {
  return { ...wall, height: 1e5, ceiling: [], floor: [], skirting: null, openings: [], keepClears: [], rail: [] }
}

function isStop({ severity }: Finding): boolean {
  return severity === 'stop'
}

/** The same stop before and after, whatever its figures: about this work, with that one or that thing, on this side. */
function keyOf({ code, subject, figures }: Finding): string {
  const { opening, keepClear, side, end, hole } = figures
  return [code, subject.id, figures.with, opening, keepClear, side, end, hole].join('\n')
}

/** Findings of marks don't name their work. */
function said({ subject, text }: Finding, works: readonly PlacedWork[]): string {
  const work = works.find(each => each.placement === subject.id)
  const name = work === undefined ? '' : calledOn(work)
  return name === '' || text.includes(name) ? text : `${name}: ${text}`
}
