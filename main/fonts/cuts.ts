/**
 * Which static faces are cut from which variable font. The rule it keeps: an instance has its weight and width pinned,
 * since a variable font put into a PDF whole shows nothing; a stack is asked from its first face on.
 */
import type { Face } from '../../src/sheets/shapes.ts'

export interface Cut {
  /** Name of the built file. */
  readonly file: string
  /** The font package and its file. */
  readonly from: string
  readonly axes: Readonly<Record<string, number>>
}

const archivo = '@fontsource-variable/archivo/files/archivo'
const newsreader = '@fontsource-variable/newsreader/files/newsreader'
const noto = '@fontsource-variable/noto-sans/files/noto-sans'

function cuts(name: string, family: string, subsets: readonly string[], style: string, axes: Cut['axes']): Cut[] {
  return subsets.map(subset => ({
    file: `${name}-${subset}.ttf`,
    from: `${family}-${subset}-standard-${style}.woff2`,
    axes,
  }))
}

const western = ['latin', 'latin-ext', 'vietnamese']
/** Noto Sans comes after: for Cyrillic and Greek, and for what the first family leaves out. */
const beyond = ['latin', 'latin-ext', 'cyrillic', 'cyrillic-ext', 'greek', 'greek-ext']

function stack(name: string, wght: number, wdth: number): Cut[] {
  return [
    ...cuts(`archivo-${name}`, archivo, western, 'normal', { wght, wdth }),
    ...cuts(`noto-${name}`, noto, beyond, 'normal', { wght, wdth: Math.min(wdth, 100) }),
  ]
}

export const stacks: Readonly<Record<Face, readonly Cut[]>> = {
  plain: stack('plain', 400, 100),
  strong: stack('strong', 620, 100),
  figure: stack('figure', 620, 78),
  narrow: stack('narrow', 420, 80),
  title: [
    ...cuts('newsreader-title', newsreader, western, 'italic', { wght: 430, opsz: 14 }),
    ...cuts('noto-title', noto, beyond, 'italic', { wght: 400, wdth: 100 }),
  ],
}
