/** The small part of two untyped packages that is used. */
declare module 'subset-font' {
  interface Options {
    readonly targetFormat: 'sfnt' | 'truetype' | 'woff' | 'woff2'
    readonly variationAxes?: Readonly<Record<string, number>>
    readonly preserveNameIds?: readonly number[]
  }
  export default function subsetFont(font: Buffer, text: string, options: Options): Promise<Buffer>
}

declare module 'fontkit' {
  export interface Font {
    readonly postscriptName: string
    readonly unitsPerEm: number
    readonly ascent: number
    readonly descent: number
    readonly variationAxes: Readonly<Record<string, unknown>>
    readonly hasGlyphForCodePoint: (code: number) => boolean
    readonly layout: (text: string, features?: readonly string[]) => { readonly advanceWidth: number }
  }
  export function create(font: Buffer): Font
}
