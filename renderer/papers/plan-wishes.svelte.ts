/** How a plan is to go out: at which scale, and with a show or the building alone. */
import { show } from '../shell/show.svelte.ts'

export class PlanWishes {
  /** One to so many; empty, the largest that fits. */
  scale = $state('')
  withShow = $state(true)
  readonly asked = $derived({
    exhibition: this.withShow ? show.id : null,
    ...(this.scale === '' ? {} : { scale: Number(this.scale) }),
  })
}

/** What the address says of a plan: no id of a wall has a dash. */
const plan = 'plan-'

export function planAddress(storey: string): string {
  return plan + storey
}

/** The storey of a plan's address; null where it is about something else. */
export function storeyOf(subject: string | null): string | null {
  return subject?.startsWith(plan) === true ? subject.slice(plan.length) : null
}
