/**
 * The register of locks as a table: where each is, what it is, what opens it, who shut it when. Places are the numbers
 * of the wall sheets: along the wall from its left end, and above the floor right under the lock.
 */
import type { LockRegister } from '../contract/areas/marks.ts'
import { print, type Steps } from '../hang/printing.ts'
import type { SheetUnit } from './checklist-columns.ts'
import { DONE, EMPTY, type TableSheet, textCell, withoutEmptyColumns } from './columns.ts'
import { type TableHead, text, workCells, workColumns } from './crew-columns.ts'
import { lengthColumns, printedCells } from './lengths-columns.ts'

export function lockSheets(
  { exhibitionTitle, lines }: TableHead,
  { locks }: LockRegister,
  { unit, steps, time }: { readonly unit: SheetUnit; readonly steps: Steps; readonly time: (at: string) => string },
): readonly TableSheet[] {
  const sheet: TableSheet = {
    name: 'Lock register',
    title: `${exhibitionTitle}: register of locks`,
    lines: [
      ...lines,
      'All that keeps a work on its wall: locks, and plates and screws below. This says how works come off: it lies where the tools are kept, and only there.',
      ...(locks.length === 0 ? ['No lock is planned.'] : []),
    ],
    columns: [
      ...workColumns,
      text('which', 'Which', 11),
      ...lengthColumns('x', 'From the left end', unit),
      ...lengthColumns('y', 'Above the floor', unit),
      text('type', 'Type', 20),
      text('tool', 'Tool', 16),
      text('shut', 'Shut when, by whom', 16),
      text('tick', 'Shut', 6),
      text('tickOpen', 'Opened', 8),
    ],
    rows: locks.map(lock => [
      ...workCells({ ...lock, faceName: `${lock.room}, ${lock.wall}` }),
      textCell(lock.called),
      ...printedCells(print(lock.x, steps), unit, steps),
      ...printedCells(print(lock.y, steps), unit, steps),
      textCell(lock.fixing === '' ? 'not chosen yet' : lock.fixing),
      textCell(lock.tool === '' ? 'not said yet' : lock.tool),
      textCell(
        lock.locked === null ? '' : [time(lock.locked.at), lock.locked.by].filter(each => each !== '').join(', '),
      ),
      lock.locked === null ? EMPTY : DONE,
      EMPTY,
    ]),
  }
  return [withoutEmptyColumns(sheet)]
}
