/**
 * Puts pages that are drawn on the screen onto the paper of the browser's own print: each on a page of its size, with
 * nothing of the screen around it.
 */

type Size = { readonly width: number; readonly height: number }

const nameOf = ({ width, height }: Size) => `page-${Math.round(width * 10)}-${Math.round(height * 10)}`

/** Of the lower margin, which nothing is drawn on, mm. */
const spare = 0.5

/** Rules by which only `.on-paper` is printed; sizes are millimetres. */
function rulesFor(sizes: readonly Size[]): string {
  const named = [...new Map(sizes.map(size => [nameOf(size), size])).entries()]
  const pages = named.map(([name, { width, height }]) => `@page ${name} { size: ${width}mm ${height}mm; margin: 0 }`)
  return `${pages.join('\n')}
@media screen { .on-paper { display: none } }
@media print {
  html, body { display: block; height: auto; min-height: 0; margin: 0; overflow: visible; background: #fff }
  body > :not(.on-paper) { display: none !important }
  .on-paper > svg { display: block; border: 0; break-inside: avoid }
  .on-paper > svg:not(:last-child) { break-after: page }
}`
}

/** Lays copies of the drawn pages out for the printer; gives back what takes them away again. */
export function layOut(drawn: readonly SVGSVGElement[], sizes: readonly Size[]): () => void {
  const rules = new CSSStyleSheet()
  rules.replaceSync(rulesFor(sizes))
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules]
  const paper = document.createElement('div')
  paper.className = 'on-paper'
  for (const [at, svg] of drawn.entries()) {
    const size = sizes[at]
    if (size === undefined) continue
    const copy = svg.cloneNode(true) as SVGSVGElement // a copy is of the kind of what is copied
    copy.style.width = `${size.width}mm`
    // Cut, not scaled: a hair too high it would begin a page of nothing, and a rule is laid on what is drawn.
    const height = size.height - spare
    copy.setAttribute('viewBox', `0 0 ${size.width} ${height}`)
    copy.style.height = `${height}mm`
    copy.style.setProperty('page', nameOf(size))
    paper.append(copy)
  }
  document.body.append(paper)
  return () => {
    paper.remove()
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter(sheet => sheet !== rules)
  }
}
