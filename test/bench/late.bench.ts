/**
 * Offers for a wall of 40 works with 25 drilled, every change once, as the screen asks for them: marks of every work,
 * holes, all ways out, their prices. Wanted: under 300 ms each. Nothing here passes or fails.
 */
import { cpus, loadavg } from 'node:os'
import type { LateChange } from '../../src/contract/areas/marks.ts'
import { lateOfShow } from '../../src/model/late-of-show.ts'
import { latePricesFrom, lateRules } from '../../src/model/late-rules.ts'
import { demoWall, times, wallOf, withDemo } from './many-works.ts'

const wall = wallOf(await withDemo(demoWall), 'north', 40, 25)
const style = {
  unit: 'mm' as const,
  steps: { mm: 1, fraction: 16 } as const,
  prices: latePricesFrom(key => lateRules[key].value),
}
const entry = (at: number) => wall.works[at]?.entry ?? ''
const size = wall.works[12]?.size
const width = (size?.width ?? 0) + 52
const height = size?.height ?? 0
const changes: readonly (readonly [string, LateChange])[] = [
  ['a frame 52 mm wider', { kind: 'different', entry: entry(12), width, height }],
  ['two works swapped', { kind: 'swap', one: entry(5), other: entry(31) }],
  ['one dropped', { kind: 'drop', entry: entry(20) }],
  ['the wall 50 mm lower', { kind: 'lower', by: 50, faces: [wall.wall.face] }],
]

console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, load ${loadavg()[0]?.toFixed(1)}`)
for (const [name, change] of changes) {
  const first = lateOfShow([wall], change, style)
  console.log(
    `  ${name}: ${await times(20, () => lateOfShow([wall], change, style))}; ${first.offers.length} ways out offered`,
  )
}
