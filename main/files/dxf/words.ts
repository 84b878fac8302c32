/** Words of a DXF: bytes in one of several alphabets, marks of layout among them, made into plain text. */

const whole = new TextDecoder('utf-8', { fatal: true })

/** Which alphabet `$DWGCODEPAGE` names; Western where it names none that is known. */
export function alphabetOf(codepage: string): string {
  const number = /(\d{3,4})/.exec(codepage)?.[1]
  const label = number === undefined ? 'windows-1252' : number === '932' ? 'shift_jis' : `windows-${number}`
  try {
    new TextDecoder(label)
    return label
  } catch {
    return 'windows-1252'
  }
}

/**
 * From bytes as Latin-1. UTF-8 is what newer files are in by the reference and many older ones in spite of it, and no
 * other alphabet makes whole UTF-8 by chance; else the file's own code page.
 */
export function decoded(text: string, alphabet: string): string {
  const said = text.replace(/\\U\+([0-9a-fA-F]{4})/g, (_, code: string) =>
    String.fromCharCode(Number.parseInt(code, 16)),
  )
  if (!/[\x80-\xff]/.test(text)) return said
  const bytes = Buffer.from(text, 'latin1')
  try {
    return whole.decode(bytes)
  } catch {
    return new TextDecoder(alphabet).decode(bytes)
  }
}

/** What a TEXT or MTEXT says, without its marks of layout: fonts, heights, stacked fractions, underlines. */
export function plainWords(text: string): string {
  return text
    .replace(/\\[Pp~]/g, ' ')
    .replace(/\\[AaCcFfHhQqTtWwXx][^;\\{}]*;/g, '')
    .replace(/\\S([^;^#/]*)[\^#/]([^;]*);/g, '$1/$2')
    .replace(/\\[LlOoKk]/g, '')
    .replace(/%%[uUoO]/g, '')
    .replace(/%%[dD]/g, '°')
    .replace(/%%[cC]/g, '⌀')
    .replace(/[{}]/g, '')
    .replace(/\s+/g, ' ')
    .trim()
}
