/**
 * Normal forms of words, by which two spellings of one maker, title, date or lender are known as one. They are only
 * for comparing: what a list says is kept as it was written.
 */

/** Small letters without accents, marks as blanks, one blank between words. */
export function plainWords(text: string): string {
  // Nearly every cell is plain letters; the long way round is only for the others.
  if (/^[\x20-\x7e]*$/.test(text)) {
    return text
      .toLowerCase()
      .replace(/'/g, '')
      .replace(/[^a-z0-9]+/g, ' ')
      .trim()
  }
  return folded(text)
    .toLowerCase()
    .replace(/['’]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}

function folded(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/ß/g, 'ss')
    .replace(/[æÆ]/g, 'ae')
    .replace(/[œŒ]/g, 'oe')
    .replace(/[øØ]/g, 'o')
    .replace(/[łŁ]/g, 'l')
    .replace(/[đĐ]/g, 'd')
}

/** A maker without years of life and in any order of names: "Ruel, Ada (1881–1950)" is "Ada Ruel". */
export function makerWords(text: string): string {
  return plainWords(text.replace(/\([^)]*\)|\[[^\]]*\]/g, ' '))
    .replace(/\b(?:born|died|geb|geboren)\b.*$/, '')
    .trim()
    .split(' ')
    .sort()
    .join(' ')
}

/** A title without the quotation marks some lists put around it. */
export function titleWords(text: string): string {
  return plainWords(text)
}

/** A date with the words for "about" in three languages read as one: "ca. 1910", "c. 1910", "vers 1910", "um 1910". */
export function dateWords(text: string): string {
  return plainWords(text).replace(/^(?:circa|ca|c|about|vers|env|environ|um)\s+(?=\d)/, 'c ')
}

/** One key for a work that has no number: lender, maker, title and date in normal form. Empty where there is no title and no maker. */
export function workKey(work: {
  readonly lender: string
  readonly maker: string
  readonly title: string
  readonly date: string
}): string {
  return keyOfWords(work.lender, makerWords(work.maker), titleWords(work.title), dateWords(work.date))
}

/** The same of what is in normal form already. */
export function keyOfWords(lender: string, maker: string, title: string, date: string): string {
  return maker === '' && title === '' ? '' : `${lender}\n${maker}\n${title}\n${date}`
}

/** A cell as people see it: odd blanks as blanks, line ends alike, nothing around it. */
export function tidy(text: string): string {
  if (/^[\x21-\x7e](?:[\x20-\x7e]*[\x21-\x7e])?$/.test(text)) return text
  return text
    .replace(/\r\n?|[\u2028\u2029\u0085]/g, '\n')
    .replace(/[\u00a0\u2000-\u200a\u202f\u3000\t]/g, ' ')
    .replace(/[\u200b\u2060\ufeff]/g, '')
    .replace(/ *\n */g, '\n')
    .trim()
}
