/** The light of a work day by day, from the hours lit, what was read or planned, and where the record had it. */
import { spentOf } from '../../../src/light/budget.ts'
import type { Day } from '../../../src/light/day.ts'
import { type LitDay, litDays, type ReadFrom, type ShowLit, type StoodFrom } from '../../../src/light/dose.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { dayAt } from '../days.ts'
import { inForce } from '../record/standing.ts'
import { partIdsOf } from '../sets/figures.ts'
import { rows, value } from '../sql.ts'
import { hoursOf } from './hours.ts'
import { readingsOf } from './readings.ts'

type Lighting = Omit<ShowLit, 'face' | 'uses'> & { readonly uses: ReadonlySet<string> }

/** Shows that are lit at all, each read once however many works ask. */
export class Shows {
  private readonly known = new Map<string, Lighting>()
  constructor(db: ReadHandle) {
    const lit = rows<{ exhibition: string; title: string }>(
      db,
      `SELECT id AS exhibition, title FROM exhibition WHERE id IN (SELECT exhibition FROM hours_lit)
       ORDER BY opens, position, id`,
      {},
    )
    for (const { exhibition, title } of lit) {
      const walls = rows<{ face: string; room: string; lux: number | null }>(
        db,
        `SELECT face.id AS face, wall.room, max(used.lux) AS lux FROM (
           SELECT face, planned_lux AS lux FROM face_plan WHERE exhibition = :exhibition
           UNION ALL SELECT face, NULL FROM placement WHERE exhibition = :exhibition) AS used
         JOIN face ON face.id = used.face JOIN wall ON wall.id = face.wall GROUP BY face.id`,
        { exhibition },
      )
      const planned = new Map(walls.flatMap(({ face, lux }) => (lux === null ? [] : [[face, lux] as const])))
      const uses = new Set(walls.flatMap(({ face, room }) => [face, room]))
      this.known.set(exhibition, { exhibition, title, hours: hoursOf(db, exhibition), planned, uses })
    }
  }

  /** Those it is on the checklist of first, then those whose rooms the record had it in. */
  lighting(entries: readonly { exhibition: string; face: string | null }[], record: readonly StoodFrom[]): ShowLit[] {
    const listed = new Map(entries.map(({ exhibition, face }) => [exhibition, face]))
    const [own, other]: [ShowLit[], ShowLit[]] = [[], []]
    for (const show of this.known.values()) {
      const face = listed.get(show.exhibition)
      if (face !== undefined) own.push({ ...show, face, uses: null })
      else if (record.some(({ place }) => show.uses.has(place))) other.push({ ...show, face: null })
    }
    return [...own, ...other]
  }
}

function oneOf(db: ReadHandle, shows: Shows, work: string, today: Day): LitDay[] {
  // A part of a set is in shows, moved and read through its set too.
  const whole = value<string | null>(db, 'SELECT parent FROM work WHERE id = :work', { work }) ?? work
  const entries = rows<{ exhibition: string; face: string | null }>(
    db,
    `SELECT entry.exhibition, placement.face FROM entry LEFT JOIN placement ON placement.entry = entry.id
     WHERE entry.work = :whole`,
    { whole },
  )
  const record = rows<{ at: string; place: string; kind: string }>(
    db,
    `SELECT moved.at, moved.place, movement.place_kind AS kind FROM moved JOIN movement ON movement.id = moved.movement
     WHERE moved.work IN (:work, :whole) AND ${inForce} ORDER BY moved.at, moved.movement`,
    { work, whole },
  ).map(({ at, place, kind }): StoodFrom => {
    return { from: dayAt(at), place, kind: kind === 'face' || kind === 'room' ? kind : 'elsewhere' }
  })
  const lighting = shows.lighting(entries, record)
  if (lighting.length === 0) return []
  const readings = [work, ...(whole === work ? [] : [whole])]
    .flatMap(each => readingsOf(db, each))
    .filter(each => each.struck === null)
    .sort((a, b) => a.at.localeCompare(b.at))
    .map((each): ReadFrom => ({ from: dayAt(each.at), lux: each.lux, uv: each.uv }))
  return litDays(lighting, record, readings, today)
}

/** Every day on which light falls on a work; on a set, as on the part that receives most. */
export function litDaysOf(db: ReadHandle, shows: Shows, work: string, today: Day): LitDay[] {
  const parts = partIdsOf(db, work)
  const all = (parts.length === 0 ? [work] : parts).map(each => oneOf(db, shows, each, today))
  const most = (days: readonly LitDay[]) => spentOf(days, null, today)
  return all
    .map(days => ({ days, spent: most(days) }))
    .reduce((a, b) => (b.spent.most > a.spent.most || (a.days.length === 0 && b.days.length > 0) ? b : a)).days
}

/** What a work's fullest 365 days have, with what is planned; null where no hours lit are known of it. */
export function doseOf(db: ReadHandle, work: string, now: string): { most: number; unknownHours: number } | null {
  const today = dayAt(now)
  const days = litDaysOf(db, new Shows(db), work, today)
  if (days.length === 0) return null
  const { most, unknownHours } = spentOf(days, null, today)
  return { most, unknownHours }
}
