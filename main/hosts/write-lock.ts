/**
 * The one writer of a host. Whoever wants to write waits here without blocking the thread; SQLite's own lock then only
 * ever meets other programs.
 */
export interface WriteLock {
  /** Resolves with the function that gives the lock back; call it exactly once. Rejects when `signal` aborts first. */
  readonly take: (signal?: AbortSignal) => Promise<() => void>
  readonly waiting: () => number
}

export function createWriteLock(onWaiting: (waiting: number) => void = () => {}): WriteLock {
  const queue: (() => void)[] = []
  let taken = false

  function giveBack(): void {
    const next = queue.shift()
    if (next) {
      onWaiting(queue.length)
      next()
    } else taken = false
  }

  function release(): () => void {
    let given = false
    return () => {
      if (given) return
      given = true
      giveBack()
    }
  }

  return {
    waiting: () => queue.length,
    take(signal) {
      if (signal?.aborted) return Promise.reject(signal.reason)
      if (!taken) {
        taken = true
        return Promise.resolve(release())
      }
      return new Promise((resolve, reject) => {
        const enter = () => {
          signal?.removeEventListener('abort', leave)
          resolve(release())
        }
        const leave = () => {
          const place = queue.indexOf(enter)
          if (place >= 0) queue.splice(place, 1)
          onWaiting(queue.length)
          reject(signal?.reason)
        }
        signal?.addEventListener('abort', leave, { once: true })
        queue.push(enter)
        onWaiting(queue.length)
      })
    },
  }
}
