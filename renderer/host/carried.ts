/** A file on its way to the host, in pieces: stopped it leaves nothing there, cut off it goes on where it was. */
import { uploadLimit } from '../../src/contract/limits.ts'
import { Refused, read } from './client.svelte.ts'
import { transport } from './transport.ts'

const pieceSize = 4 * 1024 * 1024

/** What the host holds of a file, and the handle under which calls may name it. */
export interface Uploaded {
  readonly handle: string
  readonly name: string
  readonly bytes: number
}

/** The connection broke within a piece. What came before it lies with the host. */
export class CutOff extends Error {
  override readonly name = 'CutOff'
}

export class Carried {
  /** Bytes that the host has. */
  bytes = 0
  private readonly file: File
  private handle: string | undefined

  /** Throws `Refused` where the file is larger than the host takes. */
  constructor(file: File) {
    this.file = file
    if (file.size <= uploadLimit) return
    const message = `${file.name} has ${Math.round(file.size / 1e6)} MB; a file may have ${Math.round(uploadLimit / 1e6)} MB at most.`
    throw new Refused({ code: 'too-large', message })
  }

  /**
   * Carries what is left of it. Throws `Refused`, or `CutOff`: then it may be called once more and goes on.
   * @param told is told how many bytes have left
   * @param stop cancels it
   */
  async goOn(told: (bytes: number) => void, stop: AbortSignal): Promise<Uploaded> {
    let answer: Uploaded
    do {
      answer = await this.piece(told, stop)
      this.handle = answer.handle
      this.bytes = answer.bytes
      told(this.bytes)
    } while (this.bytes < this.file.size)
    return answer
  }

  private async piece(told: (bytes: number) => void, stop: AbortSignal): Promise<Uploaded> {
    const at = this.bytes
    const end = Math.min(at + pieceSize, this.file.size)
    const what = end < this.file.size ? 'more' : 'last'
    const piece = { name: this.file.name, bytes: this.file.slice(at, end), what, at, under: this.handle } as const
    let text: string
    try {
      stop.throwIfAborted()
      text = await transport.piece(piece, left => told(at + Math.min(left, end - at)), stop)
    } catch {
      if (!stop.aborted) throw new CutOff()
      await this.drop()
      throw new Refused({ code: 'cancelled', message: `${this.file.name} was not brought: it was cancelled.` })
    }
    return read(text) as Uploaded // the host answers a piece with nothing else
  }

  /** Takes away what the host has of it. */
  async drop(): Promise<void> {
    if (this.handle === undefined) return
    const piece = { name: this.file.name, bytes: new Blob(), what: 'stop', at: this.bytes, under: this.handle } as const
    this.handle = undefined
    this.bytes = 0
    // With a host that is gone its folder is gone too.
    await transport.piece(piece, () => undefined, new AbortController().signal).catch(() => undefined)
  }
}
