/**
 * The hardware of a show: what its works need, wall box by wall box and in total, with spares, less what is in stock.
 * The rule it keeps: boxes hold exactly what hangs from them, so that what is left over on a wall is a mistake; spares
 * lie apart. What cannot be counted yet is named, never guessed.
 */

/** One need of one work, as its method says it. */
export interface WorkNeed {
  readonly what: string
  readonly count: number
  /** Into the wall, with the work, or a tool that each team has once, however many works it hangs. */
  readonly per: 'wall' | 'work' | 'team'
}

/** What is drilled or driven for a work: marks into the wall, and a cleat's screws. */
export interface WorkHole {
  readonly fixing: string
  readonly kind: string
  readonly keeps: boolean
  readonly onStud: boolean | null
  readonly backed: boolean | null
}

export interface HardwareWork {
  readonly id: string
  readonly face: string
  readonly wallType: string
  readonly needs: readonly WorkNeed[]
  /** Names of what carries and keeps it: what a person chooses from the library. */
  readonly fixings: readonly string[]
  readonly holes: readonly WorkHole[]
  /** Locks by the method's own register. */
  readonly locks: number
}

/** A row of the library of fixings can be passed as it is. */
export interface StockedFixing {
  readonly id: string
  readonly name: string
  readonly kind: string
  readonly wallType: string
  readonly inStock: number | null
  readonly bit: string
  readonly tool: string
}

export interface HardwareLine {
  readonly what: string
  /** Row of the library; null for what is no fixing of it, and for a fixing that is not chosen yet. */
  readonly fixing: string | null
  readonly needed: number
  /** None of tools: a team that loses one borrows. */
  readonly spare: number
  /** For each work that needs it, or once for each team. */
  readonly per: 'work' | 'team'
  /** Null where nobody has said; nothing is counted on then. */
  readonly inStock: number | null
  readonly toGet: number
  readonly bit: string
  readonly tool: string
  /** It stands in for a fixing that nobody has chosen. */
  readonly chosen: boolean
  /** Locks are counted by two people: their number by the marks on the walls, else null. */
  readonly secondCount: number | null
}

export interface HardwareBox {
  readonly face: string
  readonly lines: readonly { readonly what: string; readonly count: number; readonly works: number }[]
}

export interface Hardware {
  readonly lines: readonly HardwareLine[]
  readonly boxes: readonly HardwareBox[]
  readonly bits: readonly { readonly bit: string; readonly fixings: readonly string[] }[]
  /** Locks by what the works say and by the marks on the walls: both counts, which must agree. */
  readonly locks: { readonly byWorks: number; readonly byMarks: number; readonly agree: boolean }
}

const masonry: readonly string[] = ['brick', 'concrete', 'block']
const hollow: readonly string[] = ['drywall', 'drywall on ply', 'plaster']
/** Shapes that are screwed, and so want a plug or an anchor where there is no wood behind. */
const screwed: readonly string[] = ['screw', 'plate', 'lock', 'bracket', 'cleat']

/** `spare`: part of what the works need that is taken along besides, rounded up. `teams`: how many sets of tools. */
export function hardwareOf(
  works: readonly HardwareWork[],
  fixings: readonly StockedFixing[],
  spare: number,
  teams: number,
): Hardware {
  const all = works.map(work => ({
    work,
    needs: merged([...work.needs.filter(need => need.per !== 'team'), ...plugsOf(work)]),
  }))
  const totals = [
    ...merged(all.flatMap(({ needs }) => needs)).map(each => ({ ...each, per: 'work' as const })),
    ...toolsOf(works, teams).map(each => ({ ...each, per: 'team' as const })),
  ]
  const toChoose = new Set(works.flatMap(work => work.fixings))
  const byName = Map.groupBy(fixings, fixing => fixing.name)
  const lockMarks = countBy(
    works.flatMap(work => work.holes.filter(hole => hole.kind === 'lock').map(hole => hole.fixing)),
  )
  const lines = totals.map(({ what, count, per }): HardwareLine => {
    const known = byName.get(what) ?? []
    const [first] = known
    // One name for several wall types is one thing in one drawer.
    const stocked = known.filter(each => each.inStock !== null)
    const inStock = stocked.length === 0 ? null : Math.max(...stocked.map(each => each.inStock ?? 0))
    const extra = per === 'team' ? 0 : Math.ceil(count * spare - 1e-9)
    return {
      what,
      fixing: first?.id ?? null,
      needed: count,
      spare: extra,
      per,
      inStock,
      toGet: Math.max(0, count + extra - (inStock ?? 0)),
      bit: known.find(each => each.bit !== '')?.bit ?? '',
      tool: known.find(each => each.tool !== '')?.tool ?? '',
      chosen: first !== undefined || !toChoose.has(what),
      secondCount: lockMarks.get(what) ?? null,
    }
  })
  // Fixings of the library first, tools last, then by name, as one looks for them on a shelf.
  const rank = (line: HardwareLine) => Number(line.fixing === null) + Number(line.per === 'team')
  const sorted = [...lines].sort((a, b) => rank(a) - rank(b) || (a.what < b.what ? -1 : 1))
  const byMarks = [...lockMarks.values()].reduce((sum, count) => sum + count, 0)
  const byWorks = works.reduce((sum, work) => sum + work.locks, 0)
  // Where the lock is chosen, its line in the list is a third count.
  const listed = lines.every(line => line.secondCount === null || line.secondCount === line.needed)
  return {
    lines: sorted,
    boxes: boxesOf(all),
    bits: bitsOf(lines),
    locks: { byWorks, byMarks, agree: byWorks === byMarks && listed },
  }
}

interface Counted {
  readonly what: string
  readonly count: number
}

/** Each tool once for every team, as many as the work that wants most of it. */
function toolsOf(works: readonly HardwareWork[], teams: number): readonly Counted[] {
  const most = new Map<string, number>()
  for (const { what, count, per } of works.flatMap(work => work.needs)) {
    if (per === 'team') most.set(what, Math.max(most.get(what) ?? 0, count))
  }
  return [...most].map(([what, count]) => ({ what, count: count * teams }))
}

/** Plugs in masonry, hollow-wall anchors where a screw finds neither stud nor backing. */
function plugsOf({ wallType, holes }: HardwareWork): readonly Counted[] {
  return holes.flatMap(hole => {
    if (!screwed.includes(hole.kind)) return []
    if (masonry.includes(wallType)) return [{ what: `plug for ${hole.fixing}`, count: 1 }]
    if (!hollow.includes(wallType) || hole.onStud === true || hole.backed === true) return []
    return [{ what: `hollow-wall anchor for ${hole.fixing}`, count: 1 }]
  })
}

function boxesOf(
  all: readonly { readonly work: HardwareWork; readonly needs: readonly Counted[] }[],
): readonly HardwareBox[] {
  return [...Map.groupBy(all, ({ work }) => work.face)].map(([face, onFace]) => ({
    face,
    lines: merged(onFace.flatMap(({ needs }) => needs)).map(({ what, count }) => ({
      what,
      count,
      works: onFace.filter(({ needs }) => needs.some(need => need.what === what)).length,
    })),
  }))
}

/** Each bit once; a semicolon parts the bits of a fixing that wants another in another wall. */
function bitsOf(lines: readonly HardwareLine[]): Hardware['bits'] {
  const each = lines.flatMap(line =>
    line.bit.split(';').flatMap(bit => (bit.trim() === '' ? [] : [{ bit: bit.trim(), what: line.what }])),
  )
  return [...Map.groupBy(each, ({ bit }) => bit)]
    .map(([bit, of]) => ({ bit, fixings: of.map(({ what }) => what) }))
    .sort((a, b) => (a.bit < b.bit ? -1 : 1))
}

/** Counts of the same thing together, in the order in which they first come; nothing of which none is needed. */
function merged(needs: readonly Counted[]): readonly Counted[] {
  const counts = new Map<string, number>()
  for (const { what, count } of needs) counts.set(what, (counts.get(what) ?? 0) + count)
  return [...counts].filter(([, count]) => count > 0).map(([what, count]) => ({ what, count }))
}

function countBy(keys: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1)
  return counts
}
