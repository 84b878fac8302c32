/**
 * Opens a list by what is in the file, not by what it is called: the first bytes tell a workbook from text, and from
 * the kinds of file that people send instead. Each of those is its own refusal and says what to do.
 */
import { readFileSync, statSync } from 'node:fs'
import { Refusal } from '../../../src/contract/refusal.ts'
import { firstBytes, openTextFile, type TextChoices } from './csv.ts'
import { encodingOfStart } from './encodings.ts'
import { type Table, limits as usualLimits, type Watch } from './table.ts'
import { openXlsx } from './xlsx.ts'

/** `name` is what the person knows the file by; its ending must fit what the file is. */
export async function openTable(path: string, name: string, watch: Watch, choices: TextChoices = {}): Promise<Table> {
  const limits = choices.limits ?? usualLimits
  const start = firstBytes(path, 4096)
  if (start.length === 0)
    throw refuse('empty-file', 'There is nothing in this file. Choose the file that holds the checklist.')
  if (statSync(path).size > limits.bytes) {
    throw refuse(
      'too-large',
      `The file is larger than the ${Math.round(limits.bytes / 1e6)} MB a list may have. Split it into several files.`,
    )
  }
  const ending = /\.([0-9a-z]+)$/i.exec(name)?.[1]?.toLowerCase() ?? ''
  if (startsWith(start, [0xd0, 0xcf, 0x11, 0xe0])) throw compoundFile(path)
  if (startsWith(start, [0x50, 0x4b, 0x03, 0x04]) || startsWith(start, [0x50, 0x4b, 0x05, 0x06])) {
    const table = await openXlsx(path, watch, limits)
    if (['csv', 'tsv', 'txt', 'xls'].includes(ending)) {
      throw refuse(
        'wrong-ending',
        `This is a workbook, but it is called .${ending}. Give it the ending .xlsx and choose it again.`,
      )
    }
    return table
  }
  refuseOtherKinds(start)
  if (['xlsx', 'xlsm', 'xls', 'xltx'].includes(ending)) {
    // A workbook cut off before its first entry has no mark of a workbook either.
    throw refuse(
      'wrong-ending',
      `This file is called .${ending} but is not a workbook. If it is text, give it the ending .csv; otherwise get it again.`,
    )
  }
  return openTextFile(path, watch, choices)
}

function refuse(code: string, words: string): Refusal {
  return new Refusal(code, words, { field: 'handle' })
}

function startsWith(bytes: Buffer, mark: readonly number[]): boolean {
  return mark.every((byte, i) => bytes[i] === byte)
}

/** The container of old binary workbooks and of encrypted new ones. */
function compoundFile(path: string): Refusal {
  const encrypted = readFileSync(path).includes(Buffer.from('EncryptedPackage', 'utf16le'))
  return encrypted
    ? refuse(
        'password-protected',
        'The workbook is protected by a password. Open it, take the password away, and save it again.',
      )
    : refuse(
        'old-workbook',
        'This is a workbook of the old kind (.xls). Open it in a spreadsheet program and save it as .xlsx or CSV.',
      )
}

function refuseOtherKinds(start: Buffer): void {
  const words = start.toString('latin1').trimStart().toLowerCase()
  if (words.startsWith('%pdf-')) {
    throw refuse('pdf-file', 'This is a PDF. Ask for the list as a spreadsheet, or copy its table and paste it here.')
  }
  if (/^(?:\xef\xbb\xbf)?\s*<(?:!doctype|html|\?xml|table|meta|head)/.test(words)) {
    throw refuse(
      'web-page',
      'This is a web page, whatever its ending says. Open it in a spreadsheet program and save it as .xlsx, or copy its table and paste it here.',
    )
  }
  if (words.startsWith('{\\rtf')) {
    throw refuse('not-a-table', 'This is a text document. Copy its table and paste it here.')
  }
  const wide = encodingOfStart(start)
  if (wide === 'utf-16le' || wide === 'utf-16be') return
  let controls = 0
  for (const byte of start) if (byte < 32 && byte !== 9 && byte !== 10 && byte !== 11 && byte !== 13) controls++
  if (controls > Math.max(3, start.length * 0.02)) {
    throw refuse('not-a-table', 'This file holds no table that can be read. Choose a .csv or .xlsx file.')
  }
}
