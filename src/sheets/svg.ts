/**
 * A page of shapes as an SVG file of its own: as large as the paper, in millimetres, so that whoever opens it measures
 * what the sheet says. Words stay words; a reader without the faces takes its own.
 */
import type { Face, Page, Shape } from './shapes.ts'

const faces: Readonly<Record<Face, string>> = {
  plain: 'font-family="Archivo, Arial, sans-serif" font-weight="400"',
  strong: 'font-family="Archivo, Arial, sans-serif" font-weight="620"',
  figure: 'font-family="Archivo, Arial, sans-serif" font-weight="620" font-stretch="78%"',
  narrow: 'font-family="Archivo, Arial, sans-serif" font-weight="420" font-stretch="80%"',
  title: 'font-family="Newsreader, Georgia, serif" font-style="italic"',
}

/** Pictures are left out: a plan has none, and a file beside it would be lost. */
export function svgOf(page: Page, title: string): string {
  const { width, height } = page
  const body = page.shapes.map(shapeText).filter(text => text !== '')
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...body,
    '</svg>',
    '',
  ].join('\n')
}

function shapeText(shape: Shape): string {
  switch (shape.kind) {
    case 'line':
      return `<line x1="${shape.x1}" y1="${shape.y1}" x2="${shape.x2}" y2="${shape.y2}" stroke="${shape.colour}" stroke-width="${shape.width}"${dashed(shape.dash)}/>`
    case 'rect':
      return `<rect x="${shape.x}" y="${shape.y}" width="${shape.w}" height="${shape.h}" ${paint(shape)}${dashed(shape.dash)}/>`
    case 'path':
      return `<path d="${shape.d}" ${paint(shape)}${dashed(shape.dash)}/>`
    case 'image':
      return ''
    case 'text': {
      const turned = shape.upright === true ? ` transform="rotate(-90 ${shape.x} ${shape.y})"` : ''
      return `<text x="${shape.x}" y="${shape.y}" font-size="${shape.size}" ${faces[shape.face]} text-anchor="${shape.anchor}" fill="${shape.colour}"${turned}>${escaped(shape.text)}</text>`
    }
  }
}

function paint({ fill, stroke, width = 0.2 }: { fill?: string; stroke?: string; width?: number }): string {
  const line = stroke === undefined ? '' : ` stroke="${stroke}" stroke-width="${width}"`
  return `fill="${fill ?? 'none'}"${line}`
}

function dashed(dash: readonly [number, number] | undefined): string {
  return dash === undefined ? '' : ` stroke-dasharray="${dash.join(' ')}"`
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}
