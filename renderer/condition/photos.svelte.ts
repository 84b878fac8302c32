/** Photographs that come into a report: from the hand that drops, pastes or chooses them, one after the other. */
import { refusalOf, upload } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'
import { isPicture } from '../shell/bring.svelte.ts'

export class PhotosTaken {
  /** What was refused, each with the name of its file. */
  refused = $state.raw<readonly string[]>([])
  waiting = $state(0)
  private readonly report: string

  constructor(report: string) {
    this.report = report
  }

  async take(files: readonly File[]): Promise<void> {
    this.refused = []
    this.waiting += files.length
    for (const file of files) {
      try {
        await this.takeOne(file)
      } catch (thrown) {
        const { message } = refusalOf(thrown)
        this.refused = [...this.refused, message.includes(file.name) ? message : `${file.name}: ${message}`]
      } finally {
        this.waiting -= 1
      }
    }
  }

  private async takeOne(file: File): Promise<void> {
    const { handle } = await upload(file)
    const changedAt = new Date(file.lastModified).toISOString()
    await jobs.run('condition.addPhoto', `Taking ${file.name}`, { report: this.report, handle, changedAt })
  }

  /** A drop anywhere on the page; what is no picture goes where the program takes such. */
  takeDrop(event: DragEvent): void {
    this.takeTransfer(event, event.dataTransfer)
  }

  takePaste(event: ClipboardEvent): void {
    this.takeTransfer(event, event.clipboardData)
  }

  private takeTransfer(event: Event, transfer: DataTransfer | null): void {
    const files = [...(transfer?.files ?? [])]
    if (files.length === 0 || !files.some(isPicture)) return
    event.preventDefault()
    event.stopPropagation()
    void this.take(files)
  }
}
