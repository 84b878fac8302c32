/** The clock of this machine, seen anew twice a minute, for as long as the component lives. */
export class Minute {
  now = $state(new Date().toISOString())

  constructor() {
    $effect(() => {
      const timer = setInterval(() => {
        this.now = new Date().toISOString()
      }, 30_000)
      return () => clearInterval(timer)
    })
  }
}
