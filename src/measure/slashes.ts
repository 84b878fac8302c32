/**
 * Sizes that are parted by slashes, as lists in German and French have them: H/B/T 61/91,5/4 cm. The rule it keeps:
 * slashes part measures only where as many letters are parted by slashes beside them; elsewhere 3/4 is a fraction. What
 * comes back is as long as what was written, so that every place in it is a place in the text.
 */
const LETTERS = '[hwdbtlp](?:\\s?[/x×]\\s?[hwdbtlp]){1,2}'
const FIGURE = '\\d{1,5}(?:[.,]\\d{1,3})?(?: ?(?:mm|cm|m|in))?'
const FIGURES = `${FIGURE}(?:\\s?/\\s?${FIGURE}){1,2}`

const BEFORE = new RegExp(
  `(?<![\\p{L}\\p{N}])(${LETTERS})(\\.?\\s{0,3}[:=]?\\s{0,3})(${FIGURES})(?!\\s?[\\d/.,x×])`,
  'giu',
)
const BEHIND = new RegExp(`(?<![\\d/.,x×]\\s?)(${FIGURES})(\\s{0,3}[([]\\s?)(${LETTERS})(?![\\p{L}\\p{N}])`, 'giu')

/** The statement with crosses for those slashes. */
export function crossSlashes(text: string): string {
  const turned = (whole: string, one: string, between: string, other: string) =>
    count(one) === count(other) && isNoFraction(one, other) ? `${crossed(one)}${between}${crossed(other)}` : whole
  return text.replace(BEFORE, turned).replace(BEHIND, turned)
}

function count(parted: string): number {
  return parted.split(/[/x×]/i).length
}

/** H x W 3/4 in may be a fraction; with slashes between the letters too, or three figures, or decimals, it is none. */
function isNoFraction(one: string, other: string): boolean {
  const [letters, figures] = /\d/.test(one) ? [other, one] : [one, other]
  return letters.includes('/') || count(figures) > 2 || /[.,]/.test(figures)
}

function crossed(parted: string): string {
  return parted.replaceAll('/', '×')
}
