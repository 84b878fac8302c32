/**
 * What a picture rail's hangers come to: lengths, links and what the adjuster takes up, the pull in each, the load on
 * the rail, how far the work leans out; and what speaks against them. An unknown rail or rating is a finding.
 */
import type { HangerPair } from './measures.ts'
import type { Hanger, HangQuestion, PlainFigure, PlainFinding } from './method.ts'
import type { RailBack } from './method-picture-rail.ts'
import { newtons } from './physics.ts'
import { leanOf, linksFor, padForPlumb, twoLegs } from './rail.ts'

/** A lean that people see. From memory; a house rule. */
const LEAN_SEEN = 1

/** Lengths, links, pulls, the load on the rail and the lean. */
export function railFigures(
  back: RailBack,
  pair: HangerPair,
  hangers: readonly Hanger[],
  question: HangQuestion,
): readonly PlainFigure[] {
  const { work, say, sayKg } = question
  const found: PlainFigure[] = []
  const mass = work.mass ?? null
  hangers.forEach((hanger, index) => {
    const side = index === 0 ? 'left' : 'right'
    const way =
      back.way === 'one-point'
        ? `√(${say(Math.abs(hanger.from.x - hanger.to.x))}² + ${say(hanger.from.y - hanger.to.y)}²)`
        : `${say(hanger.from.y)} − ${say(hanger.to.y)}`
    found.push({
      key: `hanger-${side}`,
      label: `Length of the ${side} ${back.by.with}`,
      value: hanger.length,
      unit: 'mm',
      working: way,
    })
    if (back.by.with === 'chain') {
      const { count, rest } = linksFor(hanger.length, back.by.pitch, back.by.adjuster)
      const working = `${say(hanger.length)} / ${say(back.by.pitch)}`
      found.push(
        { key: `links-${side}`, label: `Links on the ${side}`, value: count, unit: '', working },
        {
          key: `rest-${side}`,
          label: `The ${side} adjuster takes up`,
          value: rest,
          unit: 'mm',
          working: `${say(hanger.length)} − ${count} × ${say(back.by.pitch)}`,
        },
      )
    }
  })
  const [left, right] = hangers
  if (left === undefined || right === undefined) return found
  if (back.way === 'loop') {
    const across = right.from.x - left.from.x + Math.hypot(right.to.x - left.to.x, right.to.y - left.to.y)
    const length = left.length + right.length + across
    found.push({
      key: 'loop',
      label: 'Length of the cord, knot to knot',
      value: length,
      unit: 'mm',
      working: `${say(left.length)} + ${say(right.length)} + ${say(across)} across`,
    })
  }
  if (mass !== null) found.push(...pullFigures(back, pair, left, right, mass, question))
  if (mass !== null) {
    const span = Math.max(1000, right.from.x - left.from.x)
    found.push({
      key: 'rail-load',
      label: 'Load on the rail',
      value: (mass * 1000) / span,
      unit: 'kg/m',
      working: `${sayKg(mass)} on ${say(span)} of rail, this work alone`,
    })
  }
  return [...found, ...leanFigures(back, hangers, question)]
}

/** Pull in each hanger, newtons. */
function pullFigures(
  back: RailBack,
  pair: HangerPair,
  left: Hanger,
  right: Hanger,
  mass: number,
  { work, sayKg }: HangQuestion,
): readonly PlainFigure[] {
  const at = work.massFromLeft ?? (pair.left + pair.right) / 2
  const lever = (pair.right - at) / (pair.right - pair.left)
  const parts =
    back.way === 'loop'
      ? ([0.5, 0.5] as const)
      : back.way === 'upright'
        ? ([lever, 1 - lever] as const)
        : twoLegs(
            { down: left.from.y - left.to.y, aside: left.from.x - left.to.x },
            { down: right.from.y - right.to.y, aside: right.to.x - right.from.x },
          )
  return (['left', 'right'] as const).map((side, index) => ({
    key: `pull-${side}`,
    label: `Pull in the ${side} ${back.by.with}`,
    value: newtons(mass * (parts[index] ?? 0)),
    unit: 'N' as const,
    working: `${((parts[index] ?? 0) * 100).toFixed(1)} % of ${sayKg(mass)}`,
  }))
}

/** How it would lean without pads, and the pads that keep it plumb. Only from a measured depth and rail. */
function leanFigures(back: RailBack, hangers: readonly Hanger[], { work }: HangQuestion): readonly PlainFigure[] {
  const { depth } = work
  const off = back.off ?? null
  if (depth === null || depth === undefined || off === null || hangers.length < 2) return []
  const drop = (back.left.drop + back.right.drop) / 2
  const hanger = hangers.reduce((sum, one) => sum + (one.from.y - one.to.y), 0) / hangers.length
  const asked = { off, hanger, ringUp: work.height - drop, massOut: depth / 2 }
  return [
    {
      key: 'lean',
      label: 'Leans out at its top without pads',
      value: leanOf({ ...asked, massDown: work.height / 2 - drop, pad: 0 }),
      unit: '°',
      working: 'the mass in the middle of height and depth; the bottom edge on the wall',
    },
    {
      key: 'pad',
      label: 'Bottom pads that keep it plumb',
      value: padForPlumb(asked),
      unit: 'mm',
      working: 'as thick as its rings then stand off the wall',
    },
  ]
}

/** What speaks against this rail or these hangers. */
export function railFindings(
  back: RailBack,
  pair: HangerPair,
  hangers: readonly Hanger[],
  question: HangQuestion,
): readonly PlainFinding[] {
  const { work, wall, placed, rules, say, sayKg } = question
  const found: PlainFinding[] = []
  if (placed && hangers.length < 2) {
    found.push({
      severity: 'settle',
      code: 'rail-unknown',
      text: 'Nobody has measured this wall’s rail: measure its height at both ends, above the level line. Then each hanger has its length.',
      figures: {},
    })
  }
  for (const hanger of hangers) {
    if (hanger.from.y > hanger.to.y) continue
    found.push({
      severity: 'stop',
      code: 'ring-above-rail',
      text: `A ring would come ${say(hanger.to.y - hanger.from.y)} above the rail's hook: hang the work lower, or measure the rail again.`,
      figures: { ring: hanger.to.y, hook: hanger.from.y },
    })
  }
  if (back.by.with === 'chain') {
    const { pitch, adjuster, reach } = back.by
    const most = hangers.reduce(
      (worst, { length }) => Math.max(worst, Math.abs(linksFor(length, pitch, adjuster).rest)),
      0,
    )
    if (reach !== null && reach !== undefined && most > reach) {
      found.push({
        severity: 'settle',
        code: 'adjuster-too-short',
        text: `The links leave ${say(most)} and the adjuster takes up ${say(reach)}: take a longer one, or a finer chain.`,
        figures: { rest: most, reach, pitch },
      })
    }
  }
  if (back.way === 'one-point') {
    found.push({
      severity: 'settle',
      code: 'one-hook',
      text: 'One rail hook carries everything, and the work turns easily. Two upright hangers are safer.',
      figures: {},
    })
  }
  const mass = work.mass ?? null
  const rated = wall.railKgPerMetre ?? null
  if (placed && mass !== null) {
    const span = Math.max(1, (pair.right - pair.left) / 1000)
    const needed = (mass / span) * rules.houseFactor
    const figures = {
      kgPerMetre: mass / span,
      neededKgPerMetre: needed,
      ratedKgPerMetre: rated,
      factor: rules.houseFactor,
    }
    if (rated === null) {
      found.push({
        severity: 'settle',
        code: 'rail-rating-unknown',
        text: `Nobody has said what the rail is rated for: ask its maker. With the house factor it must be at least ${sayKg(needed)} on each metre.`,
        figures,
      })
    } else if (needed > rated * (1 + 1e-9)) {
      found.push({
        severity: 'stop',
        code: 'rail-overloaded',
        text: `This work alone puts ${sayKg(mass / span)} on each metre of rail; with the house factor ${rules.houseFactor} that needs ${sayKg(needed)}, and the rail is rated ${sayKg(rated)}.`,
        figures,
      })
    } else {
      found.push({
        severity: 'fits',
        code: 'rail-holds',
        text: `The rail is rated ${sayKg(rated)} on each metre and this work alone needs ${sayKg(needed)}, with the house factor. What hangs beside it is summed on the wall.`,
        figures,
      })
    }
  }
  const lean = leanFigures(back, hangers, question).find(figure => figure.key === 'lean')
  if (lean !== undefined && lean.value > LEAN_SEEN) {
    found.push({
      severity: 'settle',
      code: 'leans-out',
      text: `Without pads it leans out by ${lean.value.toFixed(1)}° at its top: higher rings or bottom pads keep it plumb.`,
      figures: { degrees: lean.value },
    })
  }
  return found
}
