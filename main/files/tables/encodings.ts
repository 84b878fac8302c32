/**
 * Which encoding a text file is in, decided by its mark at the start, then by being valid UTF-8, then by which of the
 * encodings that spreadsheets write makes the most likely words of its bytes. The two DOS code pages that Excel's
 * "CSV (MS-DOS)" writes are not known to the platform's decoder, so that their upper halves stand here.
 */
import type { z } from 'zod'
import type { encoding } from '../../../src/contract/areas/import.ts'

export type Encoding = z.output<typeof encoding>

/** Upper halves (0x80 to 0xFF) of IBM code pages 850 and 437, as the Unicode consortium's mapping tables give them. */
const dosPages = {
  ibm850:
    'ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜø£Ø×ƒáíóúñÑªº¿®¬½¼¡«»░▒▓│┤ÁÂÀ©╣║╗╝¢¥┐└┴┬├─┼ãÃ╚╔╩╦╠═╬¤ðÐÊËÈıÍÎÏ┘┌█▄¦Ì▀ÓßÔÒõÕµþÞÚÛÙýÝ¯´\u00ad±‗¾¶§÷¸°¨·¹³²■\u00a0',
  ibm437:
    'ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00a0',
} as const

export interface Decoder {
  readonly decode: (bytes: Uint8Array, last: boolean) => string
}

export function decoderOf(name: Encoding): Decoder {
  if (name === 'ibm850' || name === 'ibm437') {
    const upper = dosPages[name]
    return {
      decode(bytes) {
        const plain = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1')
        return plain.replace(/[\x80-\xff]/g, char => upper[char.charCodeAt(0) - 128] ?? char)
      },
    }
  }
  const decoder = new TextDecoder(name)
  return { decode: (bytes, last) => decoder.decode(bytes, { stream: !last }) }
}

/** The encoding that the mark at the start tells, or that zero bytes on every second place give away. */
export function encodingOfStart(start: Uint8Array): Encoding | undefined {
  if (start[0] === 0xef && start[1] === 0xbb && start[2] === 0xbf) return 'utf-8'
  if (start[0] === 0xff && start[1] === 0xfe) return 'utf-16le'
  if (start[0] === 0xfe && start[1] === 0xff) return 'utf-16be'
  const pairs = Math.min(start.length >> 1, 512)
  let evenZeros = 0
  let oddZeros = 0
  for (let i = 0; i < pairs; i++) {
    if (start[2 * i] === 0) evenZeros++
    if (start[2 * i + 1] === 0) oddZeros++
  }
  if (pairs >= 4 && oddZeros > pairs * 0.6 && evenZeros < pairs * 0.05) return 'utf-16le'
  if (pairs >= 4 && evenZeros > pairs * 0.6 && oddZeros < pairs * 0.05) return 'utf-16be'
  return undefined
}

const candidates: readonly Encoding[] = ['windows-1252', 'macintosh', 'ibm850']

/**
 * The likeliest of the encodings with one byte a character, from those stretches of the text that are not plain.
 * Windows wins a tie: it is what most lists come in.
 */
export function likeliestEncoding(stretches: readonly Uint8Array[]): Encoding {
  let best: Encoding = 'windows-1252'
  let bestScore = Number.NEGATIVE_INFINITY
  for (const candidate of candidates) {
    const decoder = decoderOf(candidate)
    const score = stretches.reduce((sum, bytes) => sum + likelihood(decoder.decode(bytes, true)), 0)
    if (score > bestScore) {
      best = candidate
      bestScore = score
    }
  }
  return best
}

/** Signs that checklists in Western languages hold beside letters. */
const usualSigns = /[‘’“”„«»–—…°×½¼¾§€£±•²Ø©®]/
const usualLetters = /[éèàçêëîïôûùâüäößñóáíúåæœøÉÀÈÇÜÄÖ]/

/** How much a text looks like words: accented letters in their case, signs between words. */
function likelihood(text: string): number {
  let score = 0
  for (let i = 0; i < text.length; i++) {
    const char = text[i] ?? ''
    if (char < '\x80') continue
    const before = text[i - 1] ?? ' '
    const after = text[i + 1] ?? ' '
    const inWord = /\p{L}/u.test(before) || /\p{L}/u.test(after)
    if (/\p{Ll}/u.test(char)) {
      score += usualLetters.test(char) ? 2 : 0
      if (!inWord && !/\s/.test(before + after)) score -= 1
    } else if (/\p{Lu}/u.test(char)) {
      // A capital in the middle of a word of small letters is what a wrong table makes of an accent.
      score += /\p{Ll}/u.test(before) ? -3 : usualLetters.test(char) ? 1 : 0
    } else if (/[\x80-\x9f\ufffd]/.test(char)) {
      score -= 4
    } else if (usualSigns.test(char)) {
      score += char === '’' || char === '‘' || !(/\p{L}/u.test(before) && /\p{L}/u.test(after)) ? 1 : -2
    } else {
      score -= inWord ? 3 : 1
    }
  }
  return score
}
