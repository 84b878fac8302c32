/** A wall cut or joined by a person: where it has another side in the next room, what becomes of that is told and asked first. */
import { cutSaid, joinSaid, otherCut, otherJoin } from '../../src/plan/split-both.ts'
import { ask, call, refusalOf } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'

interface Asked {
  readonly verb: 'split' | 'join'
  /** Empty where both sides cannot go. */
  readonly both: string
  readonly not: string
  readonly alone: string
  readonly write: (alone: boolean) => Promise<unknown>
  readonly says: string
}

interface Named {
  readonly id: string
  readonly name: string
}

const say = (mm: number) => desk.lengthWithUnit(mm)
const rooms = async () => (await ask('plan.get', { exhibition: null })).rooms

export class Cutting {
  asked = $state.raw<Asked | null>(null)
  problem = $state('')
  private busy = false

  /** @returns whether it is split; false while it is asked and where it is refused. */
  split({ id, name }: Named, x: number): Promise<boolean> {
    return this.begin(async () => {
      const cut = otherCut(await rooms(), id, x)
      const says = `${name} is two walls now. Take it back with undo, or join them.`
      const write = (alone: boolean) => call('wall.split', { id, x, alone })
      if (cut === null) return { says, write }
      const told = cutSaid(cut, say)
      // What happens to nobody else is told, not asked.
      return cut.is === 'whole' ? { says: `${says} ${told.both}`, write } : { verb: 'split', ...told, says, write }
    })
  }

  join({ id, name }: Named, next: string): Promise<boolean> {
    return this.begin(async () => {
      const join = otherJoin(await rooms(), id)
      const says = `${name} and ${next} are one wall now. Take it back with undo.`
      const write = (alone: boolean) => call('wall.join', { id, alone })
      return join === null ? { says, write } : { verb: 'join', ...joinSaid(join), says, write }
    })
  }

  private async begin(look: () => Promise<Asked | Pick<Asked, 'says' | 'write'>>): Promise<boolean> {
    if (this.busy) return false
    this.busy = true
    this.leave()
    try {
      const deed = await look()
      if ('verb' in deed) {
        this.asked = deed
        return false
      }
      return await this.write(deed, false)
    } catch (thrown) {
      this.problem = refusalOf(thrown).message
      return false
    } finally {
      this.busy = false
    }
  }

  /** @param alone the other side stays as it is */
  async answer(alone: boolean): Promise<boolean> {
    const { asked } = this
    this.asked = null
    return asked === null ? false : this.write(asked, alone)
  }

  private async write(deed: Pick<Asked, 'says' | 'write'>, alone: boolean): Promise<boolean> {
    try {
      await deed.write(alone)
      frame.say(deed.says)
      return true
    } catch (thrown) {
      this.problem = refusalOf(thrown).message
      return false
    }
  }

  /** As if nothing had been asked for; false where nothing was. */
  leave(): boolean {
    const was = this.asked !== null
    this.asked = null
    this.problem = ''
    return was
  }
}
