/**
 * The colours, sizes and faces of the look in one table. tokens.css is made from it (a test compares the two), and the
 * contrast of every pair that text or a mark stands in is tested on the table itself, since a checker of pages does not
 * see text inside drawings. Where a pair fails, change the colour, not the limit.
 */
export type Colour =
  | 'ground'
  | 'paper'
  | 'panel'
  | 'chosen'
  | 'ink'
  | 'ink-2'
  | 'ink-3'
  | 'line'
  | 'hairline'
  | 'wall'
  | 'snapped'
  | 'fits'
  | 'settle'
export type Theme = 'light' | 'dark'

export const colours: Readonly<Record<Theme, Readonly<Record<Colour, string>>>> = {
  light: {
    ground: '#EFEADF',
    paper: '#FBF9F4',
    panel: '#F6F2E9',
    chosen: '#F1E7D3',
    ink: '#1F2224',
    'ink-2': '#4B4F52',
    'ink-3': '#66655F',
    line: '#B9B4A8',
    hairline: '#DCD6C8',
    wall: '#FDFCF9',
    snapped: '#D2452B',
    fits: '#2E6E4E',
    settle: '#8F5A00',
  },
  dark: {
    ground: '#1A1C1F',
    paper: '#23262A',
    panel: '#202327',
    chosen: '#35312A',
    ink: '#ECE7DC',
    'ink-2': '#B9B5AB',
    'ink-3': '#9B9A93',
    line: '#4A4D50',
    hairline: '#34373A',
    wall: '#2B2E32',
    snapped: '#F0603F',
    fits: '#7FC39B',
    settle: '#E0A94A',
  },
}

/** What is drawn upon a picture: the picture does not follow the theme, so neither does what lies on it. */
export const onPicture = {
  'drawn-ink': colours.light.ink,
  'drawn-quiet': colours.light['ink-2'],
  'drawn-paper': colours.light.paper,
  'drawn-pen': colours.light.snapped,
} as const

/** Type sizes in CSS pixels. */
export const sizes = { note: 11, text: 13, lead: 17, head: 22, number: 34 } as const

export const faces = {
  text: "'Archivo Variable', 'Noto Sans Variable', sans-serif",
  title: "'Newsreader Variable', 'Noto Sans Variable', serif",
} as const

const grounds = ['ground', 'paper', 'panel', 'wall', 'chosen'] as const
const words = ['ink', 'ink-2', 'ink-3', 'settle', 'fits'] as const

export interface Pair {
  readonly front: Colour
  readonly back: Colour
  /** Least contrast: 4.5 for text below 24 px (WCAG 2.2, 1.4.3), 3 for lines that carry meaning (1.4.11). */
  readonly least: number
}

/** Every pair of colours that the screens put upon each other. */
export const pairs: readonly Pair[] = [
  ...words.flatMap(front => grounds.map(back => ({ front, back, least: 4.5 }))),
  ...grounds.map(back => ({ front: 'snapped' as const, back, least: 3 })),
  // Words reversed out of ink: the severest finding and the chosen step.
  { front: 'paper', back: 'ink', least: 4.5 },
]

/** Relative luminance of #RRGGBB, WCAG 2.2 "relative luminance". */
export function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map(at => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** Contrast of two colours, 1 to 21, WCAG 2.2 "contrast ratio". */
export function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
  return (light + 0.05) / (dark + 0.05)
}

/** The text of tokens.css. */
export function tokensCss(): string {
  const list = (theme: Theme, indent: string) =>
    Object.entries(colours[theme])
      .map(([name, value]) => `${indent}--${name}: ${value};\n`)
      .join('')
  const fixed = [
    ...Object.entries(sizes).map(([name, px]) => `  --size-${name}: ${px}px;\n`),
    ...Object.entries(onPicture).map(([name, value]) => `  --${name}: ${value};\n`),
    ...Object.entries(faces).map(([name, face]) => `  --face-${name}: ${face};\n`),
  ].join('')
  return [
    '/* Made from tokens.ts; change it there. */\n',
    `:root {\n  color-scheme: light;\n${fixed}${list('light', '  ')}}\n\n`,
    `@media (prefers-color-scheme: dark) {\n  :root:not([data-theme='light']) {\n    color-scheme: dark;\n${list('dark', '    ')}  }\n}\n\n`,
    `:root[data-theme='dark'] {\n  color-scheme: dark;\n${list('dark', '  ')}}\n`,
  ].join('')
}
