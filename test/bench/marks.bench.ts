/**
 * Marks and all planning checks of a show of 300 works on 20 walls: reckoned anew from what the catalogue gave (wanted:
 * under 50 ms), and as the program asks for them, over the host from the catalogue to the answer: the key plan with its
 * counts, and the list of findings. Nothing here passes or fails.
 */
import { cpus, loadavg } from 'node:os'
import type { Host } from '../../main/hosts/host.ts'
import { faceFindings } from '../../src/model/face-findings.ts'
import { marksOfFace } from '../../src/model/marks-of-face.ts'
import { callOn } from '../contract/fixture.ts'
import { addShow, demoWall, times, wallOf, withDemo } from './many-works.ts'

const [walls, each, runs] = [20, 15, 30]
const style = { unit: 'mm' as const, steps: { mm: 1, fraction: 16 } as const }

async function bench(host: Host): Promise<void> {
  const model = await demoWall(host)
  const show = Array.from({ length: walls }, (_, at) => wallOf(model, `w${at}`, each, 0))
  console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, load ${loadavg()[0]?.toFixed(1)}`)
  console.log(`  marks: ${await times(runs, () => show.map(wall => marksOfFace(wall, style).size))}`)
  console.log(`  marks and all checks: ${await times(runs, () => show.map(wall => faceFindings(wall, style).length))}`)
  let marked = 0
  for (const wall of show) for (const marks of marksOfFace(wall, style).values()) if ('answer' in marks) marked += 1
  const found = show.reduce((sum, wall) => sum + faceFindings(wall, style).length, 0)
  console.log(`  ${marked} works with marks, ${found} findings`)

  const exhibition = await addShow(host, model, walls, each)
  const { findings } = await callOn(host, 'finding.list', { exhibition })
  console.log(`  of the catalogue, ${findings.length} findings`)
  console.log(`  key plan with its counts: ${await times(runs, () => callOn(host, 'room.plan', { exhibition }))}`)
  console.log(`  list of findings: ${await times(runs, () => callOn(host, 'finding.list', { exhibition }))}`)
}

await withDemo(bench)
