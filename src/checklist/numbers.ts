/**
 * Numbers of works: the normal form by which two spellings of one number are known as one, and the key that sorts
 * them as people read them. `1995.5.2a` is `1995.5.2 A` but never `1995.52`: figures are compared run by run, the
 * marks between them count, and case, blanks, kinds of dash and zeros in front do not.
 */

/** Words and marks that stand before a number without being part of it, in English, French and German. */
const leadWords =
  /^(?:[.\-/,;:#\s]|(?:inv(?:entory|entar|entaire)?|acc(?:ession)?|kat|cat|obj(?:ect|ekt)?|no|nos|nr|num|number|numéro|numero|nummer|n°|nº|№)(?:[.:\s-]+|(?=\d)|$))+/u

function folded(text: string): string {
  return text
    .normalize('NFKC')
    .replace(/[\u00a0\u2000-\u200b\u202f\ufeff]/g, ' ')
    .replace(/[\u2010-\u2015\u2212\u00ad]/g, '-')
    .replace(/[\u2044\u2215]/g, '/')
    .trim()
    .toLowerCase()
}

/**
 * The normal form of a work's number; empty where the text holds no letter and no figure.
 * Zeros in front of a run of figures are dropped, since spreadsheets drop them too.
 */
export function normalNumber(text: string): string {
  // Most numbers stand in their normal form already.
  if (/^(?:0|[1-9]\d*)(?:[./-](?:0|[1-9]\d*))*$/.test(text)) return text
  const whole = folded(text)
  const bare = whole.replace(leadWords, '')
  const kept = /[\p{L}\p{N}]/u.test(bare) ? bare : whole
  if (!/[\p{L}\p{N}]/u.test(kept)) return ''
  return (
    kept
      .replace(/\s*([^\p{L}\p{N}\s])\s*/gu, '$1')
      // A blank only parts two runs of figures or two of letters: "1995.5.2 A" is "1995.5.2A".
      .replace(/(\p{N})\s+(?=\p{L})|(\p{L})\s+(?=\p{N})/gu, '$1$2')
      .replace(/\s+/g, ' ')
      .replace(/^[.\-/,;:#]+|[.\-/,;:]+$/g, '')
      .replace(/\d+/g, run => run.replace(/^0+(?=\d)/, ''))
      .toUpperCase()
  )
}

/** A key whose plain text order is the order people expect: 2 before 10, 1995.5 before 1995.5.2, that before 1995.5.2a. */
export function numberSortKey(text: string): string {
  return sortKeyOfNormal(normalNumber(text))
}

/** The same for a number that is in its normal form. */
export function sortKeyOfNormal(norm: string): string {
  return (
    norm
      .toLowerCase()
      // Parts are called a to z, then aa: the twenty-seventh comes behind z.
      .replace(/(?<=\d)[a-z]{2}$/, parts => `{${parts}`)
      .replace(/\d+/g, run => {
        // The length of a run goes before it, so that longer runs, which are larger numbers, come later.
        const length = Math.min(run.length, 35).toString(36)
        return `${length}${run}`
      })
  )
}

/** Whether two numbers differ by one wrong, missing, extra or swapped sign, as a slip in copying makes them. */
export function nearNumber(one: string, other: string): boolean {
  const a = normalNumber(one)
  const b = normalNumber(other)
  if (a === b || a === '' || b === '' || Math.abs(a.length - b.length) > 1) return false
  // Short running numbers are all near one another: 11 and 12 say nothing.
  if (Math.min(a.length, b.length) < 4) return false
  let start = 0
  while (start < a.length && start < b.length && a[start] === b[start]) start++
  const restA = a.slice(start)
  const restB = b.slice(start)
  if (restA.length === restB.length) {
    if (restA.slice(1) === restB.slice(1)) return true
    return restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2)
  }
  return restA.length > restB.length ? restA.slice(1) === restB : restA === restB.slice(1)
}
