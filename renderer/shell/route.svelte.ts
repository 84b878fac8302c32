/** Where one is, kept in the address after the #, so that back, forward and a kept address all work. */
class Route {
  private parts = $state.raw<readonly string[]>([])

  screen = $derived(this.parts[0] ?? '')
  /** What the screen shows: a face, a room, a work. */
  subject = $derived(this.parts[1] ?? null)

  constructor() {
    this.read()
    window.addEventListener('hashchange', () => this.read())
  }

  /** Whether the address names a screen. It is ahead of `screen` from when a hand goes somewhere until the window hears of it. */
  get named(): boolean {
    return location.hash.replace(/^#\/?/, '') !== ''
  }

  private read(): void {
    this.parts = location.hash
      .replace(/^#\/?/, '')
      .split('/')
      .filter(part => part !== '')
      .map(decodeURIComponent)
  }

  go(screen: string, subject?: string): void {
    location.hash = address(screen, subject)
  }

  /** Goes there without a step to come back to. */
  replace(screen: string, subject?: string): void {
    history.replaceState(null, '', address(screen, subject))
    this.read()
  }
}

export function address(screen: string, subject?: string): string {
  return subject === undefined ? `#/${screen}` : `#/${screen}/${encodeURIComponent(subject)}`
}

export const route = new Route()
