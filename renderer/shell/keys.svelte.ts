/**
 * Every key that does something, in one table: what is pressed, what it does, and the words for the help sheet, so that
 * the sheet cannot differ from the keys. The innermost component is asked first, and who has nothing to do with a key
 * just now hands it outwards: Escape ends a drag before it lets go of a selection, on whichever screen loads first.
 */
import { getContext, setContext } from 'svelte'

/** What a key's deed gives to hand the key to the next table outwards. */
export const passOn = Symbol('pass on')

export interface Key {
  /** Such as `/`, `Mod+Z`, `Mod+Shift+Z`, `Alt+ArrowUp`. Mod is Ctrl, or Command on a Mac. */
  readonly press: string
  readonly says: string
  /** Gives `passOn` where it has nothing to do just now. Left out where a part of the screen hears the key itself. */
  readonly run?: (() => unknown) | undefined
}

interface Table {
  /** How many components with keys of their own stand around this one. */
  readonly depth: number
  readonly heading: string
  readonly keys: readonly Key[]
}

class Keys {
  tables = $state.raw<readonly Table[]>([])
  /** The same, unwatched: what is torn down reads watched state as it was, and would lose who came meanwhile. */
  private held: readonly Table[] = []

  add(table: Table): () => void {
    this.held = [...this.held, table]
    this.tables = this.held
    return () => {
      this.held = this.held.filter(one => one !== table)
      this.tables = this.held
    }
  }

  hear(event: KeyboardEvent): void {
    if (event.defaultPrevented || isWriting(event.target)) return
    const pressed = nameOf(event)
    for (const table of [...this.tables].reverse().sort((a, b) => b.depth - a.depth)) {
      const key = table.keys.find(one => one.run !== undefined && one.press === pressed)
      if (key?.run === undefined || key.run() === passOn) continue
      event.preventDefault()
      return
    }
  }
}

/** Whether keys belong to a field one writes in. */
export function isWriting(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false
  if (target instanceof HTMLInputElement) return target.type !== 'checkbox' && target.type !== 'radio'
  return target.isContentEditable || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement
}

export function nameOf(event: KeyboardEvent): string {
  const { key } = event
  const letter = key.length === 1 ? key.toUpperCase() : key
  // A printed sign such as ? already says whether Shift was held.
  const shift = event.shiftKey && (key.length > 1 || /[a-z]/i.test(key))
  return `${event.ctrlKey || event.metaKey ? 'Mod+' : ''}${event.altKey ? 'Alt+' : ''}${shift ? 'Shift+' : ''}${letter}`
}

export const keys = new Keys()

const depthKey = Symbol('depth of keys')

/** Adds a table for as long as the component lives, inside the tables of the components around it. */
export function useKeys(heading: string, list: () => readonly Key[]): void {
  const depth = (getContext<number | undefined>(depthKey) ?? -1) + 1
  setContext(depthKey, depth)
  $effect(() => keys.add({ depth, heading, keys: list() }))
}
