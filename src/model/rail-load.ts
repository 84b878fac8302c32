/**
 * What hangs from one picture rail is summed, work beside work. The rule it keeps: each hook's share counts where the
 * hook is, and no metre of rail, wherever it is laid, may carry more than the rail is rated for on each metre, divided
 * by the house factor. Derived: the heaviest metre begins at a hook, so the metres from each hook are all there is to try.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { Finding } from '../contract/shared.ts'
import { sayIn, sayKgIn } from '../hang/marks.ts'
import { calledOn } from './called.ts'
import type { MarksOrWhy, MarksStyle } from './marks-of-face.ts'
import { answersOf } from './marks-of-set.ts'

const METRE = 1000

export interface RailHook {
  readonly placement: string
  readonly name: string
  readonly x: number
  /** Null while nobody has weighed its work. */
  readonly kg: number | null
}

/** The hooks on one metre of rail and what they carry. */
export interface RailMetre {
  readonly from: number
  readonly hooks: readonly RailHook[]
  readonly kg: number
}

/** The metre that carries most; null without hooks. Hooks just a metre apart are on one. What is not weighed counts nothing. */
export function heaviestMetre(hooks: readonly RailHook[]): RailMetre | null {
  let worst: RailMetre | null = null
  for (const { x } of hooks) {
    const on = hooks.filter(hook => hook.x >= x - 1e-6 && hook.x <= x + METRE + 1e-6)
    const kg = on.reduce((sum, hook) => sum + (hook.kg ?? 0), 0)
    if (worst === null || kg > worst.kg + 1e-9 || (kg > worst.kg - 1e-9 && x < worst.from))
      worst = { from: x, hooks: on, kg }
  }
  return worst
}

function hooksOf(work: PlacedWork, marks: MarksOrWhy | undefined): readonly RailHook[] {
  return answersOf(work, marks).flatMap(({ answer }) => {
    const carrying = answer?.marks.filter(mark => mark.on === 'rail' && mark.does === 'carries') ?? []
    return carrying.map((mark, index) => ({
      placement: work.placement,
      name: calledOn(work),
      x: mark.bearing.x,
      kg: answer?.loads?.shares[index]?.shareKg ?? null,
    }))
  })
}

/** Nothing for a rail that one work alone hangs from, or whose rating nobody knows: each work's own findings say that. */
export function railFindings(
  elevation: Elevation,
  marks: ReadonlyMap<string, MarksOrWhy>,
  style: MarksStyle,
): Finding[] {
  const rated = elevation.wall.railKgPerMetre
  const hooks = elevation.works.flatMap(work => hooksOf(work, marks.get(work.placement)))
  const works = new Set(hooks.map(hook => hook.placement))
  const worst = heaviestMetre(hooks)
  if (rated === null || worst === null || works.size < 2) return []
  const say = sayIn(style.unit, style.steps)
  const sayKg = sayKgIn(style.unit)
  const factor = elevation.rules.hang.houseFactor
  const needed = worst.kg * factor
  const names = [...new Set(worst.hooks.map(hook => hook.name))]
  const figures = {
    from: worst.from,
    to: worst.from + METRE,
    kg: worst.kg,
    neededKgPerMetre: needed,
    ratedKgPerMetre: rated,
    factor,
    works: [...new Set(worst.hooks.map(hook => hook.placement))],
  }
  const about = (severity: Finding['severity'], code: string, text: string): Finding[] => [
    { severity, code, subject: { kind: 'wall', id: elevation.wall.id }, text, figures },
  ]
  const where = `from ${say(worst.from)} to ${say(worst.from + METRE)}`
  if (needed > rated * (1 + 1e-9)) {
    return about(
      'stop',
      'rail-overloaded-together',
      `The metre of rail ${where} carries ${sayKg(worst.kg)} of ${listed(names)}; with the house factor ${factor} that needs ${sayKg(needed)}, and the rail is rated ${sayKg(rated)} on each metre. Hang them further apart, or one of them elsewhere.`,
    )
  }
  const unweighed = [...new Set(hooks.filter(hook => hook.kg === null).map(hook => hook.name))]
  if (unweighed.length > 0) {
    return about(
      'settle',
      'rail-not-summed',
      `Nobody has weighed ${listed(unweighed)}: what hangs from this rail cannot be summed. Weigh first.`,
    )
  }
  return about(
    'fits',
    'rail-holds-together',
    `The heaviest metre of rail, ${where}, carries ${sayKg(worst.kg)} of ${listed(names)} and needs ${sayKg(needed)} of the ${sayKg(rated)} that it is rated, with the house factor ${factor}.`,
  )
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
