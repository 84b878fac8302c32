/** The keys of the wall, with their words for the help sheet. */
import { type Key, passOn } from '../shell/keys.svelte.ts'

export interface WallDeeds {
  readonly nudge: (x: number, y: number, coarse: boolean) => void
  readonly pan: (x: number, y: number) => void
  readonly zoom: (factor: number) => void
  readonly fit: () => void
  readonly all: () => void
  readonly walk: (step: number) => void
  readonly snapping: () => void
  readonly arrange: () => void
  readonly behind: () => void
  readonly plumb: () => void
  readonly tick: (column: 'services' | 'marked' | 'drilled') => void
  readonly step: () => void
  readonly nearest: () => void
  readonly late: () => void
  readonly remove: () => void
  readonly place: () => void
  /** False where nothing goes on that could end. */
  readonly cancel: () => boolean
  readonly steps: { readonly fine: string; readonly coarse: string }
}

const ways = [
  ['ArrowLeft', -1, 0, 'left'],
  ['ArrowRight', 1, 0, 'right'],
  ['ArrowUp', 0, 1, 'up'],
  ['ArrowDown', 0, -1, 'down'],
] as const

export function wallKeys(deeds: WallDeeds): readonly Key[] {
  return [
    ...ways.flatMap(([key, x, y, word]): Key[] => [
      {
        press: key,
        says: `move what is selected ${deeds.steps.fine} ${word}; with nothing selected, the view`,
        run: () => deeds.nudge(x, y, false),
      },
      { press: `Shift+${key}`, says: `move it ${deeds.steps.coarse} ${word}`, run: () => deeds.nudge(x, y, true) },
      { press: `Alt+${key}`, says: `move the view ${word}`, run: () => deeds.pan(x, y) },
    ]),
    { press: ']', says: 'the next work on the wall', run: () => deeds.walk(1) },
    { press: '[', says: 'the work before', run: () => deeds.walk(-1) },
    { press: 'Mod+A', says: 'select every work of the wall', run: deeds.all },
    { press: '+', says: 'closer', run: () => deeds.zoom(1.3) },
    { press: '=', says: 'closer', run: () => deeds.zoom(1.3) },
    { press: '-', says: 'further', run: () => deeds.zoom(1 / 1.3) },
    { press: '0', says: 'the whole wall', run: deeds.fit },
    { press: 'S', says: 'snapping on or off', run: deeds.snapping },
    { press: 'A', says: 'arrange what is selected', run: deeds.arrange },
    { press: 'B', says: 'what is behind the wall, shown or hidden', run: deeds.behind },
    { press: 'W', says: 'where the weight of the wall sits, shown or hidden', run: deeds.plumb },
    {
      press: 'V',
      says: 'the marks of what is selected are looked at: no pipe, no cable',
      run: () => deeds.tick('services'),
    },
    { press: 'M', says: 'they are marked on the wall', run: () => deeds.tick('marked') },
    { press: 'D', says: 'they are drilled', run: () => deeds.tick('drilled') },
    { press: 'H', says: 'the next step of it: hung, level, locked, checked', run: deeds.step },
    { press: 'N', says: 'move it to the nearest place that works', run: deeds.nearest },
    { press: 'L', says: 'a late change: what is selected, or the whole wall', run: deeds.late },
    { press: 'P', says: 'hang the works selected in the frieze here', run: deeds.place },
    { press: 'Delete', says: 'take what is selected off the wall', run: deeds.remove },
    {
      press: 'Escape',
      says: 'drop what is being tried, then let go of what is selected',
      run: () => deeds.cancel() || passOn,
    },
  ]
}
