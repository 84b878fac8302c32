/** Photographs that come into a report: from the hand that drops, pastes or chooses them, one after the other. */
import { isPhotograph, partialSaid, sizeRefused } from '../../src/record/condition/photographs.ts'
import { Refused, refusalOf } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'

export class PhotosTaken {
  /** What was refused or is not whole, each with the name of its file. */
  refused = $state.raw<readonly string[]>([])
  waiting = $state(0)
  private stopped = false
  private readonly report: string

  constructor(report: string) {
    this.report = report
  }

  async take(files: readonly File[]): Promise<void> {
    this.refused = []
    this.stopped = false
    this.waiting += files.length
    for (const file of files) {
      try {
        if (!this.stopped) await this.takeOne(file)
      } catch (thrown) {
        const { message } = refusalOf(thrown)
        this.refused = [...this.refused, message.includes(file.name) ? message : `${file.name}: ${message}`]
      } finally {
        this.waiting -= 1
      }
    }
  }

  private async takeOne(file: File): Promise<void> {
    // Before it is carried anywhere: half a gigabyte takes its time.
    const tooLarge = sizeRefused(file.name, file.size)
    if (tooLarge !== '') throw new Refused({ code: 'file-too-large', message: tooLarge })
    const { handle } = await jobs.upload(file)
    const changedAt = new Date(file.lastModified).toISOString()
    const asked = { report: this.report, handle, changedAt }
    const { partial } = await jobs.run('condition.addPhoto', `Taking ${file.name}`, asked)
    if (partial) this.refused = [...this.refused, partialSaid(file.name)]
  }

  /** What is under way is taken in; what waits is not. */
  stop(): void {
    this.stopped = true
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
    if (files.length === 0 || !files.some(isPhotograph)) return
    event.preventDefault()
    event.stopPropagation()
    void this.take(files)
  }
}
