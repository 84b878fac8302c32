/** The demo's record: what a logger read in a room; places agreed, a crate moved in, a work looked at when it came and again before it hangs. */
import { writeFileSync } from 'node:fs'
import type { Output } from '../../src/contract/contract.ts'
import type { Handles } from '../files/handles.ts'
import { air, airCsv } from './museum/air.ts'
import { check, crate, crated, incoming, moved, packing, signatures, store } from './museum/record.ts'
import type { Do, Session } from './session.ts'
import type { ShowIds } from './write-checklist.ts'

/** A logger's file of the last weeks, as its program wrote it. */
export async function writeAir(session: Session, handles: Handles, today: string, daysAgo: number): Promise<void> {
  const room = session.read('climate.rooms', {}).rooms.find(({ name }) => name === air.room)?.id ?? ''
  const { handle, path } = handles.create(air.name)
  writeFileSync(path, airCsv(today, daysAgo))
  await session.long('climate.takeFile', { handle, room, logger: air.logger }, daysAgo)
}

/** @param today ISO 8601, from which the days of movements count back */
export async function writeRecord(session: Session, show: ShowIds, today: string, daysAgo: number): Promise<void> {
  const works = crated.map(key => show.works.get(key)?.work ?? '')
  const [looked = ''] = works
  const at = (days: number) => new Date(Date.parse(today) - days * 86_400_000).toISOString()
  await session.edit('Take a crate in and look at what came', 'condition.complete', daysAgo, act => {
    const { id: into } = act('location.add', store)
    const { id: box } = act('location.add', crate)
    const carried = { people: 'Maud Ellersby, Dov Hasterley', reason: 'loan in' }
    act('movement.add', { works, to: box, at: at(moved.packed), method: 'packed, each in a slot', ...carried })
    act('movement.add', { crates: [box], to: into, at: at(moved.stored), method: 'pallet truck', ...carried })
    const condition = 'as packed; incoming report made'
    const spot = 'rack 3'
    act('movement.add', { works: [looked], to: into, spot, at: at(moved.opened), method: 'two people', condition })
    const first = write(act, looked, 'incoming', at(moved.opened), incoming, [])
    act('condition.update', { id: first.report, changes: { packing: { was: '', to: packing } } })
    for (const { strokes, ...one } of signatures) {
      act('condition.sign', { report: first.report, ...one, strokes: strokes.map(stroke => [...stroke]) })
    }
    act('condition.complete', { report: first.report })
    // A draft: one person has looked, the second has not come yet.
    write(act, looked, 'check', at(daysAgo), check, first.findings)
  })

  function write(
    act: Do,
    work: string,
    kind: 'incoming' | 'check',
    examinedAt: string,
    found: typeof incoming,
    before: readonly string[],
  ) {
    const { size } = session.read('work.get', { id: work })
    const { id: report } = act('condition.add', { work, kind, examinedAt, place: store.name })
    const findings = found.map(({ at: spots, goesOnFrom, ...said }): Output<'condition.addFinding'> => {
      const points = spots.map(([x, y]) => ({
        x: Math.round(x * (size?.width ?? 0)),
        y: Math.round(y * (size?.height ?? 0)),
      }))
      const follows = goesOnFrom === undefined ? null : (before[goesOnFrom - 1] ?? null)
      return act('condition.addFinding', { report, ...said, points, follows })
    })
    return { report, findings: findings.map(({ id }) => id) }
  }
}
