/**
 * The parts of the frame that a screen may fill: the tag at the right, the column at the left above the key plan. And
 * the one line that says what became of the last thing asked, where it has no place of its own.
 */
import type { Snippet } from 'svelte'
import { type Refused, refusalOf } from '../host/client.svelte.ts'

export interface Brought {
  readonly files: readonly File[]
  readonly text: string | undefined
}

class Frame {
  tag = $state.raw<Snippet | null>(null)
  /** In a narrow window a tag that stands beside its drawing can be folded into a word. */
  tagFolded = $state(false)
  left = $state.raw<Snippet | null>(null)
  said = $state.raw<{ readonly text: string; readonly refused: boolean } | null>(null)
  /** In a narrow window the left column is folded into a word. */
  leftOpen = $state(false)
  /** Files dropped or a table pasted, until the flow that takes them has closed. */
  brought = $state.raw<Brought | null>(null)
  /** What of it waits for a person, in words, while another screen is looked at; empty where nothing would be lost. */
  waits = $state('')

  say(text: string): void {
    this.said = { text, refused: false }
  }

  refuse(refused: Refused): void {
    this.said = { text: refused.message, refused: true }
  }

  /** Does something whose refusal has no nearer place to stand. */
  async attempt(act: () => Promise<unknown>): Promise<boolean> {
    this.said = null
    try {
      await act()
      return true
    } catch (thrown) {
      this.refuse(refusalOf(thrown))
      return false
    }
  }
}

export const frame = new Frame()
