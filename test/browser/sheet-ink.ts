/**
 * A PDF drawn by pdf.js in the browser, and the texts that it shows no ink for. The page that draws is served from the
 * package itself, under a name that no network knows.
 */
import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { BrowserContext, Page } from '@playwright/test'

const origin = 'http://sheets.invalid'
const pdfjs = fileURLToPath(new URL('../../node_modules/pdfjs-dist/build/', import.meta.url))

export interface TextAt {
  readonly name: string
  readonly text: string
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** A page size in millimetres with the boxes of its texts. */
export interface SheetPage {
  readonly width: number
  readonly height: number
  readonly texts: readonly TextAt[]
}

export async function openDrawer(context: BrowserContext): Promise<Page> {
  const page = await context.newPage()
  await page.route(`${origin}/**`, async route => {
    const path = new URL(route.request().url()).pathname
    if (path === '/') return route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>pdf.js</title>' })
    if (!/^\/pdf(\.worker)?\.mjs$/.test(path)) return route.fulfill({ status: 404 })
    return route.fulfill({ contentType: 'text/javascript', body: await readFile(pdfjs + path) })
  })
  await page.goto(`${origin}/`)
  return page
}

/** How the drawn pages differ from the model: their number and sizes, and each text whose box stays without ink. */
export async function withoutInk(drawer: Page, pdf: Buffer, pages: readonly SheetPage[]): Promise<string[]> {
  return drawer.evaluate(
    async ([base64, expected, address]) => {
      const { getDocument, GlobalWorkerOptions } = await import(`${address}/pdf.mjs`)
      GlobalWorkerOptions.workerSrc = `${address}/pdf.worker.mjs`
      const data = Uint8Array.from(atob(base64), letter => letter.charCodeAt(0))
      const task = getDocument({ data, verbosity: 0 })
      const file = await task.promise
      const wrong: string[] = []
      if (file.numPages !== expected.length) wrong.push(`${file.numPages} pages for ${expected.length}`)
      // 150 dots an inch, as a common printer's draft.
      const scale = 150 / 72
      for (const [index, { width, height, texts }] of expected.entries()) {
        const page = await file.getPage(index + 1)
        const viewport = page.getViewport({ scale })
        const canvas = new OffscreenCanvas(Math.round(viewport.width), Math.round(viewport.height))
        const dots = canvas.width / width
        if (Math.abs(canvas.height - height * dots) > 2) wrong.push(`page ${index + 1} has another shape`)
        const context = canvas.getContext('2d', { willReadFrequently: true })
        if (context === null) throw new Error('no canvas')
        await page.render({ canvasContext: context, canvas: null, viewport, background: '#ffffff' }).promise
        const { data: pixels } = context.getImageData(0, 0, canvas.width, canvas.height)
        for (const { name, text, x, y, w, h } of texts) {
          let darkest = 255
          for (let row = Math.floor(y * dots); row <= Math.min((y + h) * dots, canvas.height - 1); row++) {
            for (let column = Math.floor(x * dots); column <= Math.min((x + w) * dots, canvas.width - 1); column++) {
              const at = 4 * (row * canvas.width + column)
              // Luma of ITU-R BT.601, as other programs turn to grey.
              const grey =
                0.299 * (pixels[at] ?? 255) + 0.587 * (pixels[at + 1] ?? 255) + 0.114 * (pixels[at + 2] ?? 255)
              darkest = Math.min(darkest, grey)
            }
          }
          if (darkest > 170) wrong.push(`page ${index + 1}: ${name} “${text}”`)
        }
      }
      await task.destroy()
      return wrong
    },
    [pdf.toString('base64'), pages, origin] as const,
  )
}
