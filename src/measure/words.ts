/**
 * The words of dimension statements in English, French and German. The rule it keeps: a word that means one thing in
 * one language and another in the next (L, D) is its own kind and is decided by its company, not here.
 */
import type { Language, Part } from './statement.ts'

/** `l` and `d` are the letters that languages share: largeur or length, depth or diameter. */
export type Axis = 'height' | 'width' | 'depth' | 'diameter' | 'length' | 'l' | 'd'

export interface AxisWord {
  readonly axis: Axis
  /** The only language that uses the word so; null where several do. */
  readonly language: Language | null
}

export interface PartWord {
  readonly part: Part
  readonly language: Language | null
  /** A support or medium that yields to a word that names the measured part outright. */
  readonly weak: boolean
}

const AXES: ReadonlyMap<string, AxisWord> = table<AxisWord>([
  ['h ht hgt height', { axis: 'height', language: null }],
  ['high', { axis: 'height', language: 'en' }],
  ['hauteur haut haute', { axis: 'height', language: 'fr' }],
  ['höhe hoehe hoch', { axis: 'height', language: 'de' }],
  ['w wd width wide', { axis: 'width', language: 'en' }],
  ['largeur larg large', { axis: 'width', language: 'fr' }],
  ['b br breite breit', { axis: 'width', language: 'de' }],
  ['depth deep thick thickness', { axis: 'depth', language: 'en' }],
  ['p prof profondeur épaisseur ép ep', { axis: 'depth', language: 'fr' }],
  ['t tiefe tief dicke stärke', { axis: 'depth', language: 'de' }],
  ['diam dia diameter ø', { axis: 'diameter', language: null }],
  ['diamètre diametre', { axis: 'diameter', language: 'fr' }],
  ['durchmesser dm', { axis: 'diameter', language: 'de' }],
  ['length long', { axis: 'length', language: 'en' }],
  ['longueur longue', { axis: 'length', language: 'fr' }],
  ['länge laenge lang', { axis: 'length', language: 'de' }],
  ['l', { axis: 'l', language: null }],
  ['d', { axis: 'd', language: null }],
])

const strong = (part: Part, language: Language | null): PartWord => ({ part, language, weak: false })
const weak = (part: Part, language: Language | null): PartWord => ({ part, language, weak: true })

/** Phrases of up to three words, longest first when they are looked up. */
const PARTS: ReadonlyMap<string, PartWord> = table<PartWord>([
  ['framed|frame|with frame|in frame|including frame|incl frame|frame size|framed size', strong('framed', 'en')],
  ['encadré|encadrée|encadrés|cadre|avec cadre|avec le cadre|cadre compris|dans son cadre', strong('framed', 'fr')],
  ['gerahmt|rahmen|mit rahmen|inkl rahmen|rahmenmaß|rahmenmass|im rahmen|außenmaß', strong('framed', 'de')],
  ['unframed|without frame|excluding frame|excl frame|without the frame', weak('support', 'en')],
  ['sans cadre|non encadré|non encadrée|hors cadre|sans le cadre', weak('support', 'fr')],
  ['ungerahmt|ohne rahmen|exkl rahmen', weak('support', 'de')],
  ['canvas|stretcher|panel|board|support', weak('support', 'en')],
  ['toile|châssis|panneau', weak('support', 'fr')],
  ['leinwand|keilrahmen|bildträger', weak('support', 'de')],
  ['overall|total|overall size', strong('overall', null)],
  ['hors tout|totales|dimensions totales', strong('overall', 'fr')],
  ['gesamt|insgesamt|gesamtmaß|gesamtmass|gesamtgröße', strong('overall', 'de')],
  ['with base|including base|incl base|with plinth', strong('overall', 'en')],
  ['avec socle|socle compris', strong('overall', 'fr')],
  ['mit sockel|inkl sockel', strong('overall', 'de')],
  ['without base|excluding base', weak('support', 'en')],
  ['sans socle', weak('support', 'fr')],
  ['ohne sockel', weak('support', 'de')],
  ['mount|mounted|mat|matted|mat size', strong('mount', 'en')],
  ['passe partout|montage|marie louise', strong('mount', 'fr')],
  ['passepartout', strong('mount', null)],
  ['sheet|sheet size|paper size', strong('sheet', 'en')],
  ['feuille|feuillet', strong('sheet', 'fr')],
  ['blatt|blattmaß|blattmass|blattgröße|papiermaß', strong('sheet', 'de')],
  ['paper', weak('sheet', 'en')],
  ['papier', weak('sheet', null)],
  ['plate|platemark|plate mark|plate size', strong('plate', 'en')],
  ['cuvette|coup de planche|planche', strong('plate', 'fr')],
  ['platte|plattenrand|plattenmaß|plattenmass', strong('plate', 'de')],
  ['image|image size', strong('image', null)],
  ['picture|composition', strong('image', 'en')],
  ['motif|sujet', strong('image', 'fr')],
  ['bild|bildmaß|bildmass|bildgröße|darstellung|motiv', strong('image', 'de')],
  ['sight|sight size|visible|sight edge', strong('sight', 'en')],
  ['à vue|a vue|vue|partie visible', strong('sight', 'fr')],
  ['sichtbar|sichtmaß|sichtmass|lichtmaß|lichte maß|sichtbares maß', strong('sight', 'de')],
  ['base|plinth|pedestal', strong('base', 'en')],
  ['socle', strong('base', 'fr')],
  ['sockel', strong('base', 'de')],
])

/** Nouns that count: 4 panels, 2 Tafeln, 3 éléments. */
const COUNTED: ReadonlyMap<string, Language | null> = table<Language | null>([
  ['panels panel parts part pieces piece sheets prints photographs works units elements objects canvases', 'en'],
  ['panneaux panneau parties éléments élément pièces feuilles tirages volets toiles oeuvres œuvres', 'fr'],
  ['tafeln tafel teile teil blätter stück fotografien objekte elemente leinwände', 'de'],
])

const ONE_PIECE: ReadonlySet<string> = set('part piece element élément pièce partie teil volet tafel')
const EACH: ReadonlySet<string> = set('each ea chaque chacun chacune je jeweils apiece')
const ABOUT: ReadonlySet<string> = set(
  'approx approximately about around ca c circa env environ approximativement etwa ungefähr ungef zirka roughly rund',
)
const NOTHING: ReadonlySet<string> = set(
  'variable variables varies varying variabel tbc tbd tba unknown inconnu inconnue inconnues unbekannt various diverse',
)
const NOTHING_PHRASES: ReadonlySet<string> = new Set([
  'see image',
  'see photo',
  'see photograph',
  'see attached',
  'see below',
  'to be confirmed',
  'to be determined',
  'not known',
  'n a',
  'voir image',
  'voir photo',
  'à confirmer',
  'à préciser',
  'siehe bild',
  'siehe foto',
  'siehe abbildung',
  'nach vereinbarung',
  'noch offen',
])
const NOISE: ReadonlySet<string> = set(
  `size sizes dimension dimensions dims dim measurement measurements measures measuring format maß maße masse mass
   of the and with in on a an et avec de du la le les en und mit von der die das im auf zu is are as at its for per
   max maximum maximal maximale maximales weight wt poids gewicht sur auf oil acrylic huile acryl öl holz wood bois
   linen lin print photograph work artwork object`,
)
const WEIGHT: ReadonlySet<string> = set('weight wt weighs poids gewicht masse mass pèse wiegt')
const NUMBERS: ReadonlyMap<string, number> = table<number>([
  ['one un une ein eine', 1],
  ['two deux zwei pair diptych diptyque diptychon', 2],
  ['three trois drei triptych triptyque triptychon', 3],
  ['four quatre vier', 4],
  ['five cinq fünf', 5],
  ['six sechs', 6],
  ['seven sept sieben', 7],
  ['eight huit acht', 8],
  ['nine neuf neun', 9],
  ['ten dix zehn', 10],
  ['twelve douze zwölf', 12],
])

export const axisOf = (word: string): AxisWord | undefined => AXES.get(word)
export const partOf = (phrase: string): PartWord | undefined => PARTS.get(phrase)
export const countedOf = (word: string): Language | null | undefined => COUNTED.get(word)
export const isOnePiece = (word: string): boolean => ONE_PIECE.has(word)
export const isEach = (word: string): boolean => EACH.has(word)
export const isAbout = (word: string): boolean => ABOUT.has(word)
export const saysNothing = (phrase: string): boolean => NOTHING.has(phrase) || NOTHING_PHRASES.has(phrase)
export const isNoise = (word: string): boolean => NOISE.has(word)
export const isWeightWord = (word: string): boolean => WEIGHT.has(word)
export const numberWord = (word: string): number | undefined => NUMBERS.get(word)

export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', fr: 'French', de: 'German' }

function set(words: string): ReadonlySet<string> {
  return new Set(words.split(/\s+/))
}

/** Words parted by blanks, or phrases parted by bars, each with what it means. */
function table<T>(rows: readonly (readonly [string, T])[]): ReadonlyMap<string, T> {
  return new Map(
    rows.flatMap(([words, value]) => words.split(words.includes('|') ? '|' : ' ').map(word => [word, value] as const)),
  )
}
