/// <reference path="./packages.d.ts" />
/**
 * The faces of the sheets with their widths. Each run of a text takes the first face of its stack that has the
 * characters; a character that no face has stays a run of its own, to be drawn as a box with its code point.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { create, type Font } from 'fontkit'
import { type Face, missingWidth, type TextMeasure } from '../../src/sheets/shapes.ts'
import { buildFonts, builtFonts } from './build.ts'
import { stacks } from './cuts.ts'

/** Lining figures of one width: every figure of a sheet stands under the one above. */
export const features = ['kern', 'tnum', 'lnum', 'liga'] as const

export interface LoadedFont {
  readonly file: string
  readonly bytes: Buffer
  readonly font: Font
}

/** A stretch of text in one font; without a font no face has its character. */
export interface Run {
  readonly font: LoadedFont | null
  readonly text: string
}

export interface Faces extends TextMeasure {
  readonly runs: (face: Face, text: string) => readonly Run[]
}

let loading: Promise<Faces> | undefined

/** The faces of this process; cut first where that has not been done. */
export function openFaces(): Promise<Faces> {
  loading ??= load()
  return loading
}

async function load(): Promise<Faces> {
  await buildFonts()
  const fonts = new Map<string, LoadedFont>()
  function font(file: string): LoadedFont {
    const known = fonts.get(file)
    if (known !== undefined) return known
    const bytes = readFileSync(join(builtFonts, file))
    const loaded = { file, bytes, font: create(bytes) }
    fonts.set(file, loaded)
    return loaded
  }
  function holder(face: Face, character: string): LoadedFont | null {
    const code = character.codePointAt(0) ?? 0
    for (const cut of stacks[face]) {
      const loaded = font(cut.file)
      if (loaded.font.hasGlyphForCodePoint(code)) return loaded
    }
    return null
  }
  function runs(face: Face, text: string): readonly Run[] {
    const found: { font: LoadedFont | null; text: string }[] = []
    for (const character of text.normalize('NFC')) {
      const last = found.at(-1)
      // A mark that joins the letter before it stays in that letter's run where the font has it.
      const has = holder(face, character)
      if (last !== undefined && has !== null && last.font === has) last.text += character
      else found.push({ font: has, text: character })
    }
    return found
  }
  const widths = new Map<string, number>()
  function emWidth(face: Face, text: string): number {
    const key = `${face} ${text}`
    const known = widths.get(key)
    if (known !== undefined) return known
    let width = 0
    for (const run of runs(face, text)) {
      width +=
        run.font === null
          ? missingWidth
          : run.font.font.layout(run.text, features).advanceWidth / run.font.font.unitsPerEm
    }
    if (widths.size > 20_000) widths.clear()
    widths.set(key, width)
    return width
  }
  return {
    runs,
    width: (face, size, text) => emWidth(face, text) * size,
    lacks: (face, text) => [
      ...new Set(
        runs(face, text)
          .filter(run => run.font === null)
          .map(run => run.text),
      ),
    ],
  }
}
