/** Puts the works of a list into the exhibition: its sections in the order of the list, works at their ends. */
import type { Merge } from '../../../src/checklist/merge.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { insert, row, rows, update, value } from '../sql.ts'
import type { Queue, Shape } from './bulk.ts'
import type { PlannedWork } from './plan.ts'
import type { Show } from './source.ts'

const entryShape: Shape = {
  table: 'entry',
  columns: ['id', 'exhibition', 'work', 'section', 'position', 'running', 'status'],
}

export interface ShowWriter {
  readonly exhibition: string
  readonly enter: (work: string, planned: PlannedWork) => void
  readonly change: (work: string, entry: Merge['entry']) => void
}

export function makeShow(writing: Writing, show: Show, queue: Queue): ShowWriter {
  const { db } = writing
  const exhibition = show.id ?? add(writing, show.title)
  openExhibition(db, exhibition)
  const sections = new Map(
    rows<{ id: string; title: string }>(db, 'SELECT id, title FROM section WHERE exhibition = :exhibition', {
      exhibition,
    }).map(section => [section.title, section.id]),
  )
  const ends = new Map<string, number>()
  const entered = new Set<string>()

  function section(title: string): string | null {
    if (title === '') return null
    const there = sections.get(title)
    if (there !== undefined) return there
    const id = writing.newId()
    const last = value<number>(db, 'SELECT max(position) FROM section WHERE exhibition = :exhibition', { exhibition })
    insert(db, 'section', { id, exhibition, title: title.slice(0, 500), position: (last ?? 0) + 1 })
    sections.set(title, id)
    return id
  }

  function nextPosition(of: string | null): number {
    const last =
      ends.get(of ?? '') ??
      value<number>(db, 'SELECT max(position) FROM entry WHERE exhibition = :exhibition AND section IS :of', {
        exhibition,
        of,
      }) ??
      0
    ends.set(of ?? '', last + 1)
    return last + 1
  }

  return {
    exhibition,
    enter(work, planned) {
      // Two rows of a list may turn out to be one work that is there; it stands in the show once.
      if (entered.has(work)) return
      // A part comes into a show with its set.
      if (value<string | null>(db, 'SELECT parent FROM work WHERE id = :work', { work }) != null) return
      entered.add(work)
      const of = section(planned.section.slice(0, 500))
      queue.put(entryShape, [
        writing.newId(),
        exhibition,
        work,
        of,
        nextPosition(of),
        planned.reading.running.slice(0, 40),
        planned.status ?? 'wanted',
      ])
    },
    change(work, entry) {
      if (Object.keys(entry).length === 0) return
      const found = row<{ id: string }>(db, 'SELECT id FROM entry WHERE exhibition = :exhibition AND work = :work', {
        exhibition,
        work,
      })
      if (found === undefined) return
      const of = entry.section === undefined ? undefined : section(entry.section)
      update(db, 'entry', found.id, {
        ...(entry.running === undefined ? {} : { running: entry.running.slice(0, 40) }),
        ...(entry.status === undefined ? {} : { status: entry.status }),
        ...(of === undefined ? {} : { section: of, position: nextPosition(of) }),
      })
    },
  }
}

function add(writing: Writing, title: string): string {
  const id = writing.newId()
  const last = value<number>(writing.db, 'SELECT max(position) FROM exhibition')
  insert(writing.db, 'exhibition', { id, title, position: (last ?? 0) + 1 })
  return id
}
