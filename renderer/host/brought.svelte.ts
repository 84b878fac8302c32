/** A file that is being looked at before it is taken in: carried to the host once, however often it is read. */
import { jobs } from './jobs.svelte.ts'

export class Brought {
  readonly file: File
  /** Empty until the host has all of it. */
  handle = $state('')
  private carrying: Promise<string> | null = null
  private readonly left = new AbortController()

  constructor(file: File) {
    this.file = file
  }

  /** Its handle. Throws `Refused`; asked again after that, it is carried again. */
  whole(): Promise<string> {
    this.carrying ??= this.carry()
    return this.carrying
  }

  private async carry(): Promise<string> {
    try {
      this.handle = (await jobs.upload(this.file, this.left.signal)).handle
      return this.handle
    } catch (thrown) {
      this.carrying = null
      throw thrown
    }
  }

  /** Nobody waits for it any more: what is under way is stopped. */
  leave(): void {
    this.left.abort()
  }
}
