/**
 * A wall joined with the next, where the corner between them is straight: what is on the right one goes over at the same
 * absolute place. What one wall cannot have twice, or what was printed of the right one, bars it, by name. Two parts of
 * a wall between two rooms are joined on both its sides.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { formatLength } from '../../../src/measure/format.ts'
import { joinSaid, otherJoin } from '../../../src/plan/split-both.ts'
import { joinFacts, unlike } from '../../../src/plan/wall-parts.ts'
import { notFound } from '../change.ts'
import { orderedRows } from '../order.ts'
import { plan } from '../plan/get.ts'
import { makeOneWall } from '../plan/share.ts'
import { joinMeasures } from '../plan/survey-parts.ts'
import { ruleNumber } from '../rules.ts'
import { rulesOfOne } from '../sequence/rules-follow.ts'
import type { Writing } from '../service.ts'
import { row, rows, update, value } from '../sql.ts'
import { roomName } from './called.ts'
import { drawRoom } from './draw.ts'
import { dropWall } from './drop.ts'
import { moveAlong } from './move-along.ts'
import { columnsOf, faceOf, factsOf, hungBy, linesFromLeftEnd, type StoredWall, storedWall } from './wall-facts.ts'

const refused = (code: string, sentence: string) => new Refusal(code, sentence, { field: 'id' })

export function joinWall(writing: Writing, { id, alone }: Received<'wall.join'>): Output<'wall.join'> {
  const { db } = writing
  const first = storedWall(writing, id)
  if (first === undefined) throw notFound('wall')
  if (first.exhibition !== null) throw refused('partition', 'This is a partition, no wall of the room’s outline.')
  const second = nextOf(writing, first)
  const shared = first.backs !== null && second.backs !== null
  const other = shared ? otherJoin(plan(writing, { exhibition: null }).rooms, id) : null
  const called = `${roomName(db, first.room)} ${first.name} with ${second.name}`
  const thickness = typeof first.thickness === 'number' ? first.thickness : null
  if (other === null || alone === true) {
    // The one that there is; where both have one and this side alone is joined, the left one's.
    const backs = first.backs ?? second.backs
    joinTwo(writing, first, second)
    if (typeof backs === 'string') makeOneWall(writing, id, backs, thickness)
    writing.label(`Join ${called}`)
    return { done: true }
  }
  if (other.is === 'several')
    throw refused('other-side', `${joinSaid(other).not} Part one of them, or join this side alone.`)
  const [left, right] = [storedWall(writing, other.wall.id), storedWall(writing, other.right.id)]
  if (left === undefined || right === undefined) throw notFound('wall')
  joinTwo(writing, first, second)
  try {
    joinTwo(writing, left, right)
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown
    throw refused(thrown.code, `${other.room.name}, its other side: ${thrown.message}`)
  }
  makeOneWall(writing, id, left.id, thickness)
  writing.label(`Join ${called}, and its other side in ${other.room.name}`)
  return { done: true }
}

function joinTwo(writing: Writing, first: StoredWall, second: StoredWall): void {
  const { db } = writing
  const { id } = first
  refuseCorner(writing, first, second)
  const differs = unlike(factsOf(first), factsOf(second))
  if (differs.length > 0) {
    const what = differs.length === 1 ? differs[0] : `${differs.slice(0, -1).join(', ')} and ${differs.at(-1)}`
    throw refused('walls-differ', `${first.name} and ${second.name} differ in ${what}. Make them alike first.`)
  }
  const [fromFace, toFace] = [faceOf(writing, second.id), faceOf(writing, id)]
  if (value(db, 'SELECT id FROM sheet_print WHERE face = :face LIMIT 1', { face: fromFace }) !== undefined) {
    throw refused('printed', `Sheets of ${second.name} have been printed; it stays for the record.`)
  }
  linesFromLeftEnd(writing, first)
  linesFromLeftEnd(writing, second)
  const [left, right] = [storedWall(writing, id) ?? first, storedWall(writing, second.id) ?? second]
  const { joined, rise } = joinFacts(factsOf(left), factsOf(right))
  refuseLines(writing, left, right, rise)
  joinMeasures(writing, left, right, joined.length)
  const { length } = factsOf(left)
  moveAlong(writing, { fromWall: right.id, toWall: id, fromFace, toFace, x: length, y: rise, goes: () => true })
  takePlans(writing, fromFace, toFace, rise, left.datum_by === 'ramp')
  rulesOfOne(writing, toFace, fromFace)
  update(db, 'wall', id, { ...columnsOf(joined), to_corner: right.to_corner ?? '' })
  dropWall(writing, right.id)
  drawRoom(writing, left.room)
}

function nextOf(writing: Writing, wall: StoredWall): StoredWall {
  const ordered = orderedRows(writing.db, 'wall', 'room = :room AND exhibition IS NULL', { room: wall.room })
  // After the last comes the first.
  const next = ordered[(ordered.findIndex(one => one.id === wall.id) + 1) % ordered.length]
  if (ordered.length <= 3) throw refused('too-few-walls', 'A room has three walls at least.')
  const found = next === undefined ? undefined : storedWall(writing, next.id)
  if (found === undefined) throw notFound('wall')
  return found
}

function refuseCorner({ db }: Writing, first: StoredWall, second: StoredWall): void {
  const corner = first.to_corner ?? ''
  const angle =
    row<{ angle: number | null }>(db, 'SELECT angle FROM corner WHERE id = :corner', { corner })?.angle ?? null
  const within = ruleNumber(db, 'straightWithin')
  if (angle !== null && Math.abs(angle - 180) <= within) return
  const is = angle === null ? 'was not measured' : `is ${angle}°`
  throw refused(
    'not-straight',
    `The corner between ${first.name} and ${second.name} ${is}. Walls are joined where it is 180°, within ${within}°.`,
  )
}

/** One wall has one level line, and one line that a show hangs to. */
function refuseLines(writing: Writing, left: StoredWall, right: StoredWall, rise: number): void {
  const { db } = writing
  const ramp = left.datum_by === 'ramp'
  const raised = (line: number) => (ramp ? line : line + rise)
  const house = ruleNumber(db, 'centreLine')
  const set = (line: unknown) => (typeof line === 'number' ? line : house)
  const apart = (a: number, b: number) => Math.abs(a - b) > 0.05
  const say = (line: number) => formatLength(line, { unit: 'mm' })
  if (ramp !== (right.datum_by === 'ramp') || apart(set(left.datum), raised(set(right.datum)))) {
    throw refused(
      'lines-differ',
      `The level line of ${left.name} is at ${say(set(left.datum))}, that of ${right.name} at ${say(raised(set(right.datum)))} above the same floor. Give them one first.`,
    )
  }
  const [toFace, fromFace] = [faceOf(writing, left.id), faceOf(writing, right.id)]
  const shows = rows<{ exhibition: string }>(
    db,
    'SELECT DISTINCT exhibition FROM placement WHERE face IN (:toFace, :fromFace) ORDER BY exhibition',
    { toFace, fromFace },
  )
  for (const { exhibition } of shows) {
    const [own, theirs] = [hungBy(writing, toFace, exhibition), hungBy(writing, fromFace, exhibition)]
    if (own === null && theirs === null) continue
    const works = (face: string) =>
      value<number>(db, 'SELECT count(*) FROM placement WHERE face = :face AND exhibition = :exhibition', {
        face,
        exhibition,
      }) ?? 0
    if ((own === null && works(toFace) === 0) || (theirs === null && works(fromFace) === 0)) continue
    const alike = own?.rule === theirs?.rule && own?.eye_fraction === theirs?.eye_fraction
    if (!alike || apart(set(own?.centre_line), raised(set(theirs?.centre_line)))) {
      throw refused(
        'lines-differ',
        `Works on ${left.name} and on ${right.name} hang by different lines or rules. Give the walls one first.`,
      )
    }
  }
}

/** The left wall's plans hold; a show that planned for the right one alone brings its plan along. */
function takePlans(writing: Writing, from: string, to: string, rise: number, ramp: boolean): void {
  const { db } = writing
  for (const plan of rows<{ id: string; exhibition: string; centre_line: number | null }>(
    db,
    'SELECT id, exhibition, centre_line FROM face_plan WHERE face = :from ORDER BY id',
    { from },
  )) {
    if (hungBy(writing, to, plan.exhibition) !== null) continue
    const line = plan.centre_line === null || ramp ? plan.centre_line : plan.centre_line + rise
    update(db, 'face_plan', plan.id, { face: to, centre_line: line })
  }
}
