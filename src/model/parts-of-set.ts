/**
 * The parts of a set on a wall: the one place where a placed set becomes works with places of their own. Marks, holes,
 * findings and sheets all begin here, so that none can lay a set otherwise.
 */
import type { PlacedPart, PlacedSet } from '../contract/areas/sets.ts'
import type { PlacedWork } from '../contract/areas/walls.ts'
import { Refusal } from '../contract/refusal.ts'
import type { Point } from '../geometry/rect.ts'
import { defaultSteps, type Steps } from '../hang/printing.ts'
import { laySet } from '../layout/set.ts'
import type { SetAnswer } from '../layout/set-shape.ts'

export interface PartPlace {
  readonly part: PlacedPart
  /** `a`, `b` … in the order of the set. */
  readonly letter: string
  /** On the wall. */
  readonly centre: Point
  /** In the set, from its left edge and down from its top edge. */
  readonly laid: SetAnswer['parts'][number]
}

export interface Problem {
  readonly problem: string
}

/** `a` to `z`, then `aa`: parts are told apart by letters behind the number of their set. */
export function letterOf(index: number): string {
  const last = String.fromCharCode(97 + (index % 26))
  return index < 26 ? last : `${letterOf(Math.floor(index / 26) - 1)}${last}`
}

/** The set as it lies, or in words what is missing for it. Never throws a refusal. */
export function layPlaced(set: PlacedSet, steps: Steps = defaultSteps): SetAnswer | Problem {
  try {
    return laySet({
      form: set.form,
      columns: set.columns,
      gapX: set.gapX,
      gapY: set.gapY,
      keeps: set.keeps,
      parts: set.parts.map(({ work, size }) => ({
        id: work,
        width: size?.width ?? null,
        height: size?.height ?? null,
      })),
      steps,
    })
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const lacking = set.parts.findIndex(part => part.size === null)
    if (error.code !== 'part-without-size' || lacking < 0) return { problem: error.message }
    const part = set.parts[lacking]
    const named = [letterOf(lacking), part?.title ?? ''].filter(text => text !== '').join(', ')
    return { problem: `Part ${named} has no size yet. Measure it with its frame.` }
  }
}

/** Places of the parts of a placed set, in order; no work, or what is missing, for anything else. */
export function placesOfParts(work: PlacedWork, steps: Steps = defaultSteps): readonly PartPlace[] | Problem {
  if (work.set === null) return []
  const laid = layPlaced(work.set, steps)
  if ('problem' in laid) return laid
  const left = work.x - laid.width / 2
  const top = work.centreY + laid.height / 2
  return work.set.parts.flatMap((part, index) => {
    const at = laid.parts[index]
    if (at === undefined) return []
    const centre = { x: left + (at.left + at.right) / 2, y: top - (at.top + at.bottom) / 2 }
    return [{ part, letter: letterOf(index), centre, laid: at }]
  })
}

/** The key of a part beside the placements of other works. */
export function partKey(placement: string, letter: string): string {
  return `${placement}/${letter}`
}

/** The placement that a part's key is of; any other key is its own. */
export function placementOfKey(key: string): string {
  return key.split('/')[0] ?? key
}

/** A part as a placed work of its own: what can be asked of any work can be asked of it. */
export function partAsPlaced(work: PlacedWork, { part, letter, centre }: PartPlace): PlacedWork {
  const named = [work.running, work.number].find(text => text !== '')
  return {
    ...work,
    placement: partKey(work.placement, letter),
    work: part.work,
    running: named === undefined ? '' : `${named} ${letter}`,
    number: part.number,
    title: part.title === '' ? `${work.title}, ${letter}` : part.title,
    size: part.size,
    mass: part.mass,
    picture: part.picture,
    back: part.back,
    fixing: part.fixing ?? work.fixing,
    keeper: part.keeper ?? work.keeper,
    lockTool: part.lockTool === '' ? work.lockTool : part.lockTool,
    hooksApart: part.hooksApart ?? work.hooksApart,
    x: centre.x,
    // A part hangs where its set puts it.
    rule: 'hand',
    y: centre.y,
    centreY: centre.y,
    labelSide: '',
    set: null,
  }
}

/** What hangs by itself: the parts of a set, else the work. Nothing where the set cannot be laid. */
export function hungOf(work: PlacedWork): readonly PlacedWork[] {
  if (work.set === null) return [work]
  const places = placesOfParts(work)
  return 'problem' in places ? [] : places.map(place => partAsPlaced(work, place))
}
