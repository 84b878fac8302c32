/** What comes in from outside: files dropped anywhere, a table pasted. Lists go to the import, pictures to their works. */
import { importFlow } from '../screens.ts'
import { frame } from './frame.svelte.ts'
import { isWriting } from './keys.svelte.ts'

const lists = /\.(csv|tsv|txt|xlsx)$/i

export function takeFiles(files: readonly File[]): void {
  if (files.length === 0) return
  const pictures = files.filter(file => file.type.startsWith('image/') || /\.(heic|heif|tiff?)$/i.test(file.name))
  const tables = files.filter(file => lists.test(file.name))
  if (tables.length > 0 && importFlow !== undefined) {
    const [first] = tables
    if (first) frame.brought = { files: [first], text: undefined }
    if (files.length > 1) frame.say('Lists are taken one at a time; this is the first of them.')
  } else if (pictures.length > 0) {
    frame.brought = { files: pictures, text: undefined }
  } else {
    frame.said = {
      text: 'That is neither a list nor a picture. Bring a list as .csv or .xlsx, pictures as .jpg, .png, .webp or .tiff.',
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
  frame.brought = { files: [], text }
}
