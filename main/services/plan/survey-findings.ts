/** What a room's survey leaves to settle: it does not close, a measure stands out, a wall is not as it was drawn. */

import type { Finding } from '../../../src/contract/shared.ts'
import { daySaid } from '../../../src/light/day.ts'
import { formatLength } from '../../../src/measure/format.ts'
import type { RoomOutline } from '../../../src/plan/room-survey.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { dateAt } from '../days.ts'
import { ruleNumber } from '../rules.ts'
import { rows } from '../sql.ts'

const mm = (length: number) => formatLength(length, { unit: 'mm' })

interface Room {
  readonly id: string
  readonly name: string
}

export function surveyFindings(db: ReadHandle, room: Room, outline: RoomOutline): Finding[] {
  const subject = { kind: 'room', id: room.id }
  const said = (code: string, gap: number): Finding => ({
    severity: 'settle',
    code,
    subject,
    text: `${room.name}: ${outline.note}`,
    figures: { gap },
  })
  const found: Finding[] = []
  if (!outline.closes) found.push(said('room-open', outline.gap))
  else if (outline.suspects.length > 0) found.push(said('measure-stands-out', outline.gap))
  return [...found, ...drawnOtherwise(db, room)]
}

interface Pair {
  readonly wall: string
  readonly name: string
  readonly drawn: number
  readonly measured: number
  readonly at: string
  readonly by: string
}

/** The newest drawn and the newest used measured length of each wall that has both. */
function drawnOtherwise(db: ReadHandle, room: Room): Finding[] {
  const within = ruleNumber(db, 'drawnWithin')
  const newest = (which: string) =>
    `SELECT id FROM survey AS one WHERE one.wall = wall.id AND ${which} ORDER BY one.at DESC, one.id DESC LIMIT 1`
  const [drawn, measured] = [newest("one.how = 'drawn'"), newest("one.how = 'measured' AND one.used = 1")]
  return rows<Pair>(
    db,
    `SELECT wall.id AS wall, wall.name, plan.value AS drawn, tape.value AS measured, tape.at, tape.by
     FROM wall JOIN survey AS plan ON plan.id = (${drawn}) JOIN survey AS tape ON tape.id = (${measured})
     WHERE wall.room = :room ORDER BY wall.position, wall.id`,
    { room: room.id },
  )
    .filter(pair => Math.abs(pair.measured - pair.drawn) > within)
    .map(({ wall, name, at, by, ...pair }) => {
      const over = pair.measured - pair.drawn
      const who = by === '' ? '' : ` by ${by}`
      const than = `${mm(Math.abs(over))} ${over > 0 ? 'longer' : 'shorter'} than drawn`
      return {
        severity: 'settle',
        code: 'drawn-differs',
        subject: { kind: 'wall', id: wall },
        text: `${room.name} ${name}: measured ${mm(pair.measured)}${who} on ${daySaid(dateAt(at))}, ${than}. Whoever planned by the drawing must hear of it.`,
        figures: pair,
      }
    })
}
