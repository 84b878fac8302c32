/** Widths of texts as the drawing sets them. Figures are tabular: every digit is as wide as a 0, so few are measured. */
const known = new Map<string, number>()
let probe: SVGTextElement | undefined
/** Counts the arrivals of fonts: who measured before is told to measure again. */
const arrivals = $state({ count: 0 })

function probeIn(): SVGTextElement {
  if (probe?.isConnected) return probe
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
  svg.setAttribute('aria-hidden', 'true')
  svg.style.cssText = 'position:absolute;width:0;height:0;overflow:hidden;visibility:hidden'
  probe = document.createElementNS('http://www.w3.org/2000/svg', 'text')
  svg.append(probe)
  document.body.append(svg)
  return probe
}

export function textWidth(text: string, size: number, weight = 400, stretch = 100): number {
  void arrivals.count
  const zeros = text.replaceAll(/\d/g, '0')
  const shape = `${size} ${weight} ${stretch} ${zeros}`
  const found = known.get(shape)
  if (found !== undefined) return found
  const node = probeIn()
  node.style.fontSize = `${size}px`
  node.style.fontWeight = String(weight)
  node.style.fontStretch = `${stretch}%`
  node.textContent = zeros
  const width = node.getComputedTextLength()
  known.set(shape, width)
  return width
}

document.fonts.addEventListener('loadingdone', () => {
  known.clear()
  arrivals.count += 1
})
