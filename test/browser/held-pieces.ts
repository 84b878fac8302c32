/** The network held in the hand: each piece of a file waits until the test lets it through. */
import type { Page, Route } from '@playwright/test'

/** The pieces of files that leave a page, each held until it is let through or broken. */
export async function held(page: Page) {
  const waiting: Route[] = []
  const arrivals: (() => void)[] = []
  let open = false
  let came = 0
  await page.route(/\/upload\?/, async route => {
    came += 1
    // What takes a file away again is never held.
    if (open || route.request().url().includes('what=stop')) return route.continue()
    waiting.push(route)
    arrivals.shift()?.()
  })
  async function next(): Promise<Route> {
    if (waiting.length === 0) await new Promise<void>(resolve => arrivals.push(resolve))
    const route = waiting.shift()
    if (route === undefined) throw new Error('no piece is waiting')
    return route
  }
  return {
    pieces: () => came,
    through: async () => (await next()).continue(),
    broken: async () => (await next()).abort('connectionreset'),
    async rest(): Promise<void> {
      open = true
      for (const route of waiting.splice(0)) await route.continue()
    },
    hold(): void {
      open = false
    },
  }
}
