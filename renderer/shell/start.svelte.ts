/** Where the window opens: where it was, else the demo's best wall, else the checklist. */
import { desk } from '../host/desk.svelte.ts'
import { wallsScreen } from '../screens.ts'
import { frame } from './frame.svelte.ts'
import { route } from './route.svelte.ts'
import { show } from './show.svelte.ts'

/** The wall with the most works on it: the one worth standing in front of. */
export function bestFace(): string | null {
  const walls = (show.plan.value?.rooms ?? []).flatMap(room => room.walls)
  const [best] = walls.filter(wall => wall.works > 0).sort((a, b) => b.works - a.works)
  return best?.face ?? walls[0]?.face ?? null
}

export function start(): void {
  void frame.attempt(() => desk.load())
  let begun = route.screen !== ''
  $effect(() => {
    // Who has gone somewhere while the catalogue was being opened stays there.
    begun ||= route.screen !== '' || route.named
    if (begun || desk.state === undefined) return
    if (!desk.state.catalogue?.demo || wallsScreen === undefined) {
      begun = true
      return route.replace('checklist')
    }
    if (show.plan.value === undefined && show.plan.refusal === undefined) return
    begun = true
    const face = bestFace()
    if (face === null) route.replace('checklist')
    else route.replace('walls', face)
  })
  // A wall without a name in the address is the best one.
  $effect(() => {
    if (route.screen !== 'walls' || route.subject !== null) return
    const face = bestFace()
    if (face !== null) route.replace('walls', face)
  })
}
