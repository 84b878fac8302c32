/** The words for keys of the screens that are not open while the help sheet is: their own tables come and go with them. */
import { wallKeys } from '../walls/wall-keys.ts'
import type { Key } from './keys.svelte.ts'

export const checklistKeys: readonly Key[] = [
  { press: 'F', says: 'type to filter' },
  { press: '↑ ↓', says: 'the work before, the next; with Shift the selection grows' },
  { press: 'Mod+A', says: 'select every work of the list' },
  { press: 'Space', says: 'add the work to the selection or take it out' },
  { press: 'Enter', says: 'write in the first field of the work; Tab goes on to the next field' },
  { press: 'Alt+ArrowUp', says: 'move what is selected up in the order of the show' },
  { press: 'Alt+ArrowDown', says: 'move it down' },
  { press: 'O', says: 'open the page of the work' },
  { press: 'N', says: 'add a work' },
  { press: 'Delete', says: 'take what is selected out of the show, after asking' },
]

export const friezeKeys: readonly Key[] = [
  { press: '← →', says: 'the work before, the next' },
  { press: 'Enter', says: 'select it; Space adds it to the selection' },
  { press: 'Alt ← →', says: 'move it in the order of the show' },
]

const never = () => {}
/** Nothing is done from the help sheet: only the words are read. */
const silent = {
  nudge: never,
  pan: never,
  zoom: never,
  fit: never,
  all: never,
  walk: never,
  snapping: never,
  arrange: never,
  late: never,
  behind: never,
  plumb: never,
  tick: never,
  step: never,
  nearest: never,
  remove: never,
  place: never,
  cancel: () => false,
  steps: { fine: '1 mm, or 1/16 in,', coarse: '10 mm, or 1 in,' },
}

export const keptTables = [
  { heading: 'On the checklist', keys: checklistKeys },
  { heading: 'On the frieze', keys: friezeKeys },
  { heading: 'On a wall', keys: wallKeys(silent) },
] as const
