/** Whether papers hold what is not for everybody: off until somebody asks, then kept for each person at this desk. */
import { desk } from '../host/desk.svelte.ts'

const key = 'hangwright-with-values'
/** Who has not said who they are is asked again each time. */
const nobody = 'nobody'

class WithValues {
  private people = $state.raw<readonly string[]>((localStorage.getItem(key) ?? '').split(' '))

  get asked(): boolean {
    return this.people.includes(desk.person?.id ?? nobody)
  }

  set asked(to: boolean) {
    const at = desk.person?.id ?? nobody
    const others = this.people.filter(each => each !== at)
    this.people = to ? [...others, at] : others
    localStorage.setItem(key, this.people.filter(each => each !== nobody && each !== '').join(' '))
  }
}

export const withValues = new WithValues()
