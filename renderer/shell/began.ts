/**
 * What stood behind each text that a field showed. An edit of a figure is based on what its hand saw when it began, not
 * on what another window wrote since: else that would be overwritten without a word.
 */
export class Began<V> {
  private readonly values = new Map<string, V>()

  /** The text itself, remembered with what it says. `asked` is how a clash names the value, where that is another text. */
  show(field: string, text: string, value: V, asked = text): string {
    for (const each of [text, asked]) this.values.set(`${field} ${each}`, value)
    return text
  }

  /** What this text said when it was shown. */
  was(field: string, text: string, otherwise: V): V {
    return this.values.get(`${field} ${text}`) ?? otherwise
  }
}
