/**
 * Salon hangs of 7, 25 and 60 works of very different sizes, as the screen asks for them at every figure that is typed,
 * and one of 25 that does not fit. Wanted: under 300 ms for 25. Nothing here passes or fails.
 */
import { cpus, loadavg } from 'node:os'
import { laySalon } from '../../src/layout/salon.ts'
import type { SalonQuestion } from '../../src/layout/salon-shape.ts'
import { times } from './many-works.ts'

/** Sizes by a fixed rule: each figure is the same in every run. */
function hang(count: number, length: number): SalonQuestion {
  let state = 7
  const next = () => {
    state = (state * 16_807) % 2_147_483_647
    return state / 2_147_483_647
  }
  const side = () => Math.round(200 + next() ** 2 * 900)
  const works = Array.from({ length: count }, (_, index) => ({ id: `w${index}`, width: side(), height: side() }))
  return { from: 0, to: length, bottom: 300, top: 3200, works, gap: 60, centre: { x: length / 2, y: 1600 } }
}

console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, load ${loadavg()[0]?.toFixed(1)}`)
for (const [count, length] of [
  [7, 9000],
  [25, 9000],
  [60, 18_000],
  [25, 2600],
] as const) {
  const question = hang(count, length)
  const { fits, mean, shortBy } = laySalon(question)
  const said = fits ? `gaps of ${mean?.toFixed(0)} mm on the mean` : `${shortBy} mm too long`
  console.log(`  ${count} works on ${length / 1000} m: ${await times(5, () => laySalon(question))}; ${said}`)
}
