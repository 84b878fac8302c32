/** Photographs that come into a report: from the hand that drops, pastes or chooses them, one after the other. */
import { isPhotograph, partialSaid, sizeRefused } from '../../src/record/condition/photographs.ts'
import { Refused, refusalOf } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'

/** As a camera counts: 9 before 10. A hand that drags forty begins with the one it took hold of. */
const byName = new Intl.Collator('en', { numeric: true })

/** What would be refused again. */
const forGood: ReadonlySet<string> = new Set(['file-too-large', 'same-photograph'])

export class PhotosTaken {
  /** What was refused or is not whole, each with the name of its file. */
  refused = $state.raw<readonly string[]>([])
  /** What did not come in and may yet. */
  left = $state.raw<readonly File[]>([])
  /** Of those asked for since the last rest: how many are done with, and how many there are. */
  done = $state(0)
  total = $state(0)
  private queue: File[] = []
  private readonly report: string

  constructor(report: string) {
    this.report = report
  }

  get busy(): boolean {
    return this.done < this.total
  }

  /** Those that come while others are under way wait behind them. */
  async take(files: readonly File[]): Promise<void> {
    const resting = !this.busy
    if (resting) {
      this.refused = []
      this.left = []
      this.done = 0
      this.total = 0
    }
    this.queue.push(...files.toSorted((a, b) => byName.compare(a.name, b.name)))
    this.total += files.length
    if (!resting) return
    for (let file = this.queue.shift(); file !== undefined; file = this.queue.shift()) {
      try {
        await this.takeOne(file)
      } catch (thrown) {
        this.fail(file, refusalOf(thrown))
      }
      this.done += 1
    }
  }

  private fail(file: File, { code, message }: Refused): void {
    this.refused = [...this.refused, message.includes(file.name) ? message : `${file.name}: ${message}`]
    if (!forGood.has(code)) this.left = [...this.left, file]
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

  /** What is under way is taken in; what waits is not, and can be asked for again. */
  stop(): void {
    const waiting = this.queue.splice(0)
    this.total -= waiting.length
    this.left = [...this.left, ...waiting]
  }

  again(): void {
    void this.take(this.left)
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
