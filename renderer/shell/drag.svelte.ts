/** Works under way from one part of the window to another: what a native drag carries, readable while it is carried. */
class Drag {
  entries = $state.raw<readonly string[]>([])
  works = $state.raw<readonly string[]>([])

  begin(event: DragEvent, entries: readonly string[], works: readonly string[]): void {
    this.entries = entries
    this.works = works
    event.dataTransfer?.setData('text/plain', entries.join(' '))
    if (event.dataTransfer) event.dataTransfer.effectAllowed = 'move'
  }

  end(): void {
    this.entries = []
    this.works = []
  }
}

export const drag = new Drag()
