/**
 * The demo's record: what a logger read in a room; places agreed, a crate moved in, a work looked at when it came and again
 * before it hangs; two damages, one of them closed.
 */
import { writeFileSync } from 'node:fs'
import type { Output } from '../../src/contract/contract.ts'
import type { Handles } from '../files/handles.ts'
import { air, airCsv } from './museum/air.ts'
import { type DemoDamage, damages } from './museum/damage.ts'
import { check, crate, crated, type Finding, incoming, moved, packing, signatures, store } from './museum/record.ts'
import type { RenderedPicture } from './pictures/render.ts'
import type { Do, Session } from './session.ts'
import type { ShowIds } from './write-checklist.ts'

/** A logger's file of the last weeks, as its program wrote it. */
export async function writeAir(session: Session, handles: Handles, today: string, daysAgo: number): Promise<void> {
  const room = session.read('climate.rooms', {}).rooms.find(({ name }) => name === air.room)?.id ?? ''
  const { handle, path } = handles.create(air.name)
  writeFileSync(path, airCsv(today, daysAgo))
  await session.long('climate.takeFile', { handle, room, logger: air.logger }, daysAgo)
}

const momentOf = (today: string, days: number) => new Date(Date.parse(today) - days * 86_400_000).toISOString()

interface Written {
  readonly report: string
  readonly findings: readonly string[]
}

interface DamageIds extends Written {
  readonly told: DemoDamage
  readonly id: string
}

/** @param today ISO 8601, from which the days of movements count back */
export async function writeRecord(
  session: Session,
  show: ShowIds,
  today: string,
  daysAgo: number,
): Promise<readonly DamageIds[]> {
  const workOf = (key: string) => show.works.get(key)?.work ?? ''
  const works = crated.map(workOf)
  const [looked = ''] = works
  const at = (days: number) => momentOf(today, days)
  return session.edit('Take a crate in and look at what came', 'condition.complete', daysAgo, act => {
    const { id: into } = act('location.add', store)
    const { id: box } = act('location.add', crate)
    const carried = { people: 'Maud Ellersby, Dov Hasterley', reason: 'loan in' }
    act('movement.add', { works, to: box, at: at(moved.packed), method: 'packed, each in a slot', ...carried })
    act('movement.add', { crates: [box], to: into, at: at(moved.stored), method: 'pallet truck', ...carried })
    const condition = 'as packed; incoming report made'
    const spot = 'rack 3'
    act('movement.add', { works: [looked], to: into, spot, at: at(moved.opened), method: 'two people', condition })
    const first = write(act, looked, 'incoming', at(moved.opened), incoming, [])
    pack(act, first.report, packing)
    sign(act, first.report)
    // A draft: one person has looked, the second has not come yet.
    const second = write(act, looked, 'check', at(daysAgo), check, first.findings)
    return damages.map(told => {
      const { work, seenIn, found, how, circumstances, reporter } = told
      let seen = second
      if (seenIn !== 'check') {
        seen = write(act, workOf(work), seenIn.kind, at(moved.opened), seenIn.findings, [])
        pack(act, seen.report, seenIn.packing)
      }
      const moment = at(found)
      const about = { work: workOf(work), foundAt: moment, reportedAt: moment, report: seen.report }
      return { told, ...seen, id: act('damage.add', { ...about, how, circumstances, reporter }).id }
    })
  })

  function write(
    act: Do,
    work: string,
    kind: 'incoming' | 'check',
    examinedAt: string,
    found: readonly Finding[],
    before: readonly string[],
  ): Written {
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

function pack(act: Do, report: string, to: string): void {
  act('condition.update', { id: report, changes: { packing: { was: '', to } } })
}

function sign(act: Do, report: string): void {
  for (const { strokes, ...one } of signatures) {
    act('condition.sign', { report, ...one, strokes: strokes.map(stroke => [...stroke]) })
  }
  act('condition.complete', { report })
}

/** @param pictures of the damages' photographs, in their order */
export async function writeDamages(
  session: Session,
  handles: Handles,
  pictures: readonly RenderedPicture[],
  written: readonly DamageIds[],
  today: string,
  daysAgo: number,
): Promise<void> {
  const at = (days: number) => momentOf(today, days)
  let nth = 0
  const inputs = written.flatMap(({ told, report }) =>
    told.photos.map(photo => {
      const picture = pictures[nth++]
      const { handle, path } = handles.create(picture?.name ?? '')
      writeFileSync(path, picture?.bytes ?? '')
      return { report, handle, changedAt: at(photo.daysAgo) }
    }),
  )
  const say = (act: Do) => {
    for (const { told, id, report, findings } of written) {
      const { photos } = session.read('condition.get', { id: report })
      const finding = { was: [], to: findings.slice(told.finding - 1, told.finding) }
      for (const [place, photo] of told.photos.entries()) {
        const shows = { was: '', to: photo.shows }
        act('condition.updatePhoto', { id: photos[place]?.id ?? '', changes: { shows, findings: finding } })
      }
      for (const { daysAgo: days, ...word } of told.words) act('damage.say', { damage: id, at: at(days), ...word })
      if (told.closed === null) continue
      sign(act, report)
      act('damage.close', { damage: id, why: told.closed })
    }
  }
  await session.longs('Photograph two damages and close one of them', 'condition.addPhoto', inputs, daysAgo, say)
}
