/** Pictures under the plan: the file is kept under its hash before the row that names it. */
import type { UnderlayRow } from '../../../src/contract/areas/underlay.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { wholeTurn } from '../../../src/plan/place.ts'
import { scaleBounds, scaledBy } from '../../../src/plan/underlay.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound, same, yesNoColumn } from '../change.ts'
import { buildingOf } from '../rooms/write.ts'
import type { Job, Reading, ServicesOf, Writing } from '../service.ts'
import { insert, remove as removeRow, rows, update } from '../sql.ts'

interface Stored extends Omit<UnderlayRow, 'at' | 'shown'> {
  readonly x: number
  readonly y: number
  readonly shown: number
}

function underlays(db: ReadHandle, where = ''): UnderlayRow[] {
  return rows<Stored>(
    db,
    `SELECT id, storey, name, hash, width_px AS widthPx, height_px AS heightPx, at_x AS x, at_y AS y, turn,
      mm_per_px AS mmPerPx, shown FROM underlay ${where === '' ? '' : 'WHERE id = :where'} ORDER BY id`,
    where === '' ? {} : { where },
  ).map(({ x, y, shown, ...rest }) => ({ ...rest, at: [x, y] as [number, number], shown: shown === 1 }))
}

function underlay(db: ReadHandle, id: string): UnderlayRow {
  const [found] = underlays(db, id)
  if (found === undefined) throw notFound('picture under the plan')
  return found
}

function list({ db }: Reading): Output<'underlay.list'> {
  return { underlays: underlays(db) }
}

/** Before anybody scales it: the whole picture 20 m wide, so that it can be seen beside rooms; from memory. */
const firstWidth = 20_000

async function add(job: Job, input: Received<'underlay.add'>): Promise<Output<'underlay.add'>> {
  const { handle, storey = '', at = [0, 0] } = input
  const name = job.handles.name(handle)
  job.progress(0, 1, `Reading ${name}`)
  const kept = await job.store.addPicture(job.handles.path(handle))
  const { widthPx, heightPx } = kept
  if (widthPx === null || heightPx === null) {
    throw new Refusal('no-picture', `${name} is no picture that can be shown. Give it as JPEG, PNG or TIFF.`, {
      field: 'handle',
    })
  }
  const id = job.newId()
  return job.write(writing => {
    writing.label(`Lay ${name} under the plan`)
    insert(writing.db, 'underlay', {
      id,
      building: buildingOf(writing),
      storey,
      hash: kept.hash,
      mime: kept.mime,
      name,
      width_px: widthPx,
      height_px: heightPx,
      at_x: at[0],
      at_y: at[1],
      mm_per_px: input.mmPerPx ?? Math.min(firstWidth / widthPx, scaleBounds.most),
    })
    return underlay(writing.db, id)
  })
}

function change(writing: Writing, { id, changes }: Received<'underlay.update'>): Output<'underlay.update'> {
  const { db } = writing
  const stored = underlay(db, id)
  const { at, turn, ...rest } = changes
  writing.label(labelOf(stored.name, changes))
  const others = { ...rest, turn: turn === undefined ? undefined : { ...turn, to: wholeTurn(turn.to) } }
  const columns = { turn: 'turn', mmPerPx: 'mm_per_px', storey: 'storey', shown: yesNoColumn('shown') }
  const { saved, clashes } = changeFields(writing, 'underlay', id, others, columns, 'picture under the plan')
  if (at === undefined) return { saved, clashes }
  if (!same(stored.at, at.was) && !same(stored.at, at.to)) {
    return {
      saved,
      clashes: [...clashes, { code: 'clash', id, field: 'at', was: at.was, yours: at.to, theirs: stored.at }],
    }
  }
  update(db, 'underlay', id, { at_x: at.to[0], at_y: at.to[1] })
  return { saved: [...saved, 'at'], clashes }
}

function labelOf(name: string, { shown }: Received<'underlay.update'>['changes']): string {
  if (shown === undefined) return `Move ${name} under the plan`
  return shown.to ? `Show ${name} under the plan` : `Hide ${name} under the plan`
}

function scale(writing: Writing, { id, from, to, distance }: Received<'underlay.scale'>): Output<'underlay.scale'> {
  const stored = underlay(writing.db, id)
  const scaled = scaledBy(stored, from, to, distance)
  if (scaled === null) {
    throw new Refusal(
      'no-scale',
      'These two points and this distance make no scale of a plan. Choose two points further apart.',
      { field: 'to' },
    )
  }
  writing.label(`Scale ${stored.name} under the plan`)
  const { at, mmPerPx } = scaled
  update(writing.db, 'underlay', id, { at_x: at[0], at_y: at[1], mm_per_px: mmPerPx })
  return underlay(writing.db, id)
}

function remove(writing: Writing, { id }: Received<'underlay.remove'>): Output<'underlay.remove'> {
  const { name } = underlay(writing.db, id)
  writing.label(`Take ${name} off the plan`)
  removeRow(writing.db, 'underlay', id)
  return { done: true }
}

export const underlayServices: ServicesOf<
  'underlay.list' | 'underlay.add' | 'underlay.update' | 'underlay.scale' | 'underlay.remove'
> = {
  'underlay.list': list,
  'underlay.add': add,
  'underlay.update': change,
  'underlay.scale': scale,
  'underlay.remove': remove,
}
