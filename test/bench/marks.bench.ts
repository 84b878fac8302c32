/**
 * Marks and all planning checks of a show of 300 works on 20 walls, reckoned anew from what the catalogue gave. Wanted:
 * under 50 ms. Nothing here passes or fails.
 */
import { cpus, loadavg } from 'node:os'
import { faceFindings } from '../../src/model/face-findings.ts'
import { marksOfFace } from '../../src/model/marks-of-face.ts'
import { demoWall, times, wallOf } from './many-works.ts'

const model = await demoWall()
const walls = Array.from({ length: 20 }, (_, at) => wallOf(model, `w${at}`, 15, 8))
const style = { unit: 'mm' as const, steps: { mm: 1, fraction: 16 } as const }

console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, load ${loadavg()[0]?.toFixed(1)}`)
let marked = 0
for (const wall of walls) for (const marks of marksOfFace(wall, style).values()) if ('answer' in marks) marked += 1
const found = walls.reduce((sum, wall) => sum + faceFindings(wall, style).length, 0)
console.log(`  ${marked} works with marks, ${found} findings`)
console.log(`  marks of the show: ${times(30, () => walls.map(wall => marksOfFace(wall, style).size))}`)
console.log(
  `  marks and all checks of the show: ${times(30, () => walls.map(wall => faceFindings(wall, style).length))}`,
)
