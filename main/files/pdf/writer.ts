/**
 * Pages of shapes as a PDF. The same shapes, fonts and time give the same bytes. Text stays text: each run is set in
 * the face that has its characters, and a box that stands for a missing one carries the character for readers.
 */
import { createWriteStream } from 'node:fs'
import { rename, rm } from 'node:fs/promises'
import { finished } from 'node:stream/promises'
import PDFDocument from 'pdfkit'
import type { ImageShape, Page, Shape, TextShape } from '../../../src/sheets/shapes.ts'
import { missingWidth } from '../../../src/sheets/shapes.ts'
import { type Faces, features } from '../../fonts/faces.ts'

/** Points in a millimetre. */
const MM = 72 / 25.4

export interface PdfQuestion {
  readonly title: string
  /** BCP 47. */
  readonly language: string
  /** ISO 8601. */
  readonly at: string
  readonly pages: readonly Page[]
  /** JPEG or PNG of a picture of the catalogue; null where there is none to show. */
  readonly picture: (hash: string) => Buffer | null
}

/**
 * Writes the file whole or not at all. `told` hears of each page before it is drawn; whoever cancels is heard between
 * two pages, and an aborted signal or a throw from `told` ends there.
 */
export async function writePdf(
  file: string,
  question: PdfQuestion,
  faces: Faces,
  signal?: AbortSignal,
  told?: (done: number) => void,
): Promise<void> {
  const [first] = question.pages
  if (first === undefined) throw new Error('a PDF without pages')
  const beside = `${file}.part`
  const doc = new PDFDocument({
    autoFirstPage: false,
    // None of the faces that every reader must have: each text brings its own.
    font: '',
    pdfVersion: '1.7',
    lang: question.language,
    displayTitle: true,
    info: { Title: question.title, Creator: 'Hangwright', Producer: 'Hangwright', CreationDate: new Date(question.at) },
  })
  const out = createWriteStream(beside)
  // From the beginning: a disk that is full while pages are drawn must end here, not take the worker with it.
  const written = finished(out)
  written.catch(() => undefined)
  doc.pipe(out)
  try {
    const draw = drawer(doc, faces, question.picture)
    for (const [index, page] of question.pages.entries()) {
      await new Promise(resolve => setImmediate(resolve))
      signal?.throwIfAborted()
      told?.(index)
      doc.addPage({ size: [page.width * MM, page.height * MM], margin: 0 })
      for (const shape of page.shapes) draw(shape)
    }
    doc.end()
    await written
    await rename(beside, file)
  } catch (error) {
    doc.unpipe(out)
    out.destroy()
    // Until it is closed it could still make the file that is taken away here.
    await written.catch(() => undefined)
    await rm(beside, { force: true })
    throw error
  }
}

function drawer(doc: PDFKit.PDFDocument, faces: Faces, picture: PdfQuestion['picture']): (shape: Shape) => void {
  const registered = new Set<string>()
  function setFont(file: string, bytes: Buffer, points: number): void {
    if (!registered.has(file)) doc.registerFont(file, bytes)
    registered.add(file)
    doc.font(file).fontSize(points)
  }
  return shape => {
    switch (shape.kind) {
      case 'line':
        doc.save()
        if (shape.dash !== undefined) doc.dash(shape.dash[0] * MM, { space: shape.dash[1] * MM })
        doc.moveTo(shape.x1 * MM, shape.y1 * MM).lineTo(shape.x2 * MM, shape.y2 * MM)
        doc.lineWidth(shape.width * MM).stroke(shape.colour)
        doc.restore()
        return
      case 'rect':
        doc.save()
        if (shape.dash !== undefined) doc.dash(shape.dash[0] * MM, { space: shape.dash[1] * MM })
        doc.rect(shape.x * MM, shape.y * MM, shape.w * MM, shape.h * MM).lineWidth((shape.width ?? 0.2) * MM)
        paint(doc, shape.fill, shape.stroke)
        doc.restore()
        return
      case 'path':
        doc.save().scale(MM)
        if (shape.dash !== undefined) doc.dash(shape.dash[0], { space: shape.dash[1] })
        doc.path(shape.d).lineWidth(shape.width ?? 0.2)
        paint(doc, shape.fill, shape.stroke)
        doc.restore()
        return
      case 'image':
        drawImage(doc, shape, picture(shape.hash))
        return
      case 'text':
        drawText(doc, shape, faces, setFont)
    }
  }
}

function paint(doc: PDFKit.PDFDocument, fill: string | undefined, stroke: string | undefined): void {
  if (fill !== undefined && stroke !== undefined) doc.fillAndStroke(fill, stroke)
  else if (fill !== undefined) doc.fill(fill)
  else if (stroke !== undefined) doc.stroke(stroke)
}

function drawImage(doc: PDFKit.PDFDocument, { x, y, w, h }: ImageShape, bytes: Buffer | null): void {
  if (bytes === null) {
    doc
      .rect(x * MM, y * MM, w * MM, h * MM)
      .lineWidth(0.15 * MM)
      .stroke('#B9B4A8')
    return
  }
  doc.image(bytes, x * MM, y * MM, { fit: [w * MM, h * MM], align: 'center', valign: 'center' })
}

function drawText(
  doc: PDFKit.PDFDocument,
  shape: TextShape,
  faces: Faces,
  setFont: (file: string, bytes: Buffer, points: number) => void,
): void {
  const whole = faces.width(shape.face, shape.size, shape.text)
  const back = { start: 0, middle: whole / 2, end: whole }[shape.anchor]
  doc.save()
  if (shape.upright === true) doc.rotate(-90, { origin: [shape.x * MM, shape.y * MM] })
  let x = shape.x - back
  for (const run of faces.runs(shape.face, shape.text)) {
    if (run.font === null) {
      drawMissing(doc, run.text, x, shape, faces, setFont)
      x += missingWidth * shape.size
      continue
    }
    setFont(run.font.file, run.font.bytes, shape.size * MM)
    doc.fillColor(shape.colour)
    doc.text(run.text, x * MM, shape.y * MM, { lineBreak: false, baseline: 'alphabetic', features: [...features] })
    // Known from measuring, where the same text stands on many pages.
    x += faces.width(shape.face, shape.size, run.text)
  }
  doc.restore()
}

/** A box with the code point in it, four figures or more in two lines. */
function drawMissing(
  doc: PDFKit.PDFDocument,
  character: string,
  x: number,
  shape: TextShape,
  faces: Faces,
  setFont: (file: string, bytes: Buffer, points: number) => void,
): void {
  const { size, y, colour } = shape
  const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')
  const half = Math.ceil(code.length / 2)
  doc.markContent('Span', { actual: character })
  doc.rect((x + 0.05 * size) * MM, (y - 0.76 * size) * MM, (missingWidth - 0.1) * size * MM, 0.86 * size * MM)
  doc.lineWidth(0.05 * size * MM).stroke(colour)
  for (const [line, text] of [code.slice(0, half), code.slice(half)].entries()) {
    const [run] = faces.runs('figure', text)
    if (run === undefined || run.font === null) continue
    const small = size * 0.38
    setFont(run.font.file, run.font.bytes, small * MM)
    const inside = x + (missingWidth * size - faces.width('figure', small, text)) / 2
    doc.fillColor(colour)
    doc.text(text, inside * MM, (y - 0.38 * size + 0.38 * size * line) * MM, {
      lineBreak: false,
      baseline: 'alphabetic',
      features: [...features],
    })
  }
  doc.endMarkedContent()
}
