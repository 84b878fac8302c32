/**
 * A refusal is an expected "no": it has a code that stays the same for ever, a sentence for people, and, where it can,
 * the field it is about. It crosses every host as `RefusalJson`. Anything else that is thrown is a fault of ours.
 */
export interface RefusalJson {
  readonly code: string
  readonly message: string
  readonly field?: string
  /** JSON values that a screen needs beyond the sentence, such as both values of a clash. */
  readonly details?: unknown
}

export class Refusal extends Error {
  override readonly name = 'Refusal'
  readonly code: string
  readonly field: string | undefined
  readonly details: unknown

  constructor(code: string, message: string, more: { readonly field?: string; readonly details?: unknown } = {}) {
    super(message)
    this.code = code
    this.field = more.field
    this.details = more.details
  }

  toJson(): RefusalJson {
    return {
      code: this.code,
      message: this.message,
      ...(this.field === undefined ? {} : { field: this.field }),
      ...(this.details === undefined ? {} : { details: this.details }),
    }
  }
}
