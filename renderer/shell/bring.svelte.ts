/**
 * What comes in from outside: files dropped anywhere, a table pasted. Lists go to the import, pictures to their works.
 * It has a screen of its own: another one hides it, and nothing that was chosen in it is lost until it is put away.
 */
import { isPhotograph, photographsWanted } from '../../src/record/condition/photographs.ts'
import { importFlow } from '../screens.ts'
import { type Brought, frame } from './frame.svelte.ts'
import { isWriting } from './keys.svelte.ts'
import { address, route } from './route.svelte.ts'

export const isDrawing = (file: File): boolean => /\.dxf$/i.test(file.name)
/** Endings of lists and of pictures, as a system's own choice of files wants them. */
export const listsAndPictures = `.csv,.tsv,.txt,.xlsx,${photographsWanted}`
const lists = /\.(csv|tsv|txt|xlsx)$/i

/** The address that putting it away goes back to. */
let from = ''

function bring(brought: Brought): void {
  if (frame.waits !== '') {
    route.go('brought')
    frame.said = {
      text: 'This is still being looked at. Take it in or put it away, then bring the next.',
      refused: true,
    }
    return
  }
  if (route.screen !== 'brought') from = location.hash
  frame.brought = brought
  route.go('brought')
}

export function putAway(): void {
  frame.brought = null
  frame.waits = ''
  if (route.screen === 'brought') location.hash = from === '' ? address('checklist') : from
}

export function takeFiles(files: readonly File[]): void {
  if (files.length === 0) return
  const pictures = files.filter(isPhotograph)
  const tables = files.filter(file => lists.test(file.name))
  const drawings = files.filter(isDrawing)
  if (drawings.length > 0) {
    const [first] = drawings
    if (first) bring({ files: [first], text: undefined })
    if (files.length > 1) frame.say('Drawings are taken one at a time; this is the first of them.')
  } else if (tables.length > 0 && importFlow !== undefined) {
    const [first] = tables
    if (first) bring({ files: [first], text: undefined })
    if (files.length > 1) frame.say('Lists are taken one at a time; this is the first of them.')
  } else if (pictures.length > 0) {
    bring({ files: pictures, text: undefined })
  } else {
    frame.said = {
      text: 'That is neither a list nor a picture nor a plan. Bring a list as .csv or .xlsx, pictures as .jpg, .png, .webp or .tiff, a plan as .dxf.',
      refused: true,
    }
  }
}

export function takeDrop(event: DragEvent): void {
  const files = [...(event.dataTransfer?.files ?? [])]
  if (files.length === 0 || event.defaultPrevented) return
  event.preventDefault()
  takeFiles(files)
}

/** A table from a spreadsheet arrives as text with tabs. */
export function takePaste(event: ClipboardEvent): void {
  if (isWriting(event.target)) return
  const files = [...(event.clipboardData?.files ?? [])]
  if (files.length > 0) {
    takeFiles(files)
    return
  }
  const text = event.clipboardData?.getData('text/plain') ?? ''
  if (!text.includes('\t') || importFlow === undefined) return
  event.preventDefault()
  bring({ files: [], text })
}
