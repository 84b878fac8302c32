/**
 * Words of lists that stand for one of the program's own: glazing, sensitivity to light, kind of work, status of a
 * loan; in English, French and German. Common practice, no source. A word that is not here is not guessed at.
 */
import { plainWords } from './plain-text.ts'

function lookup(words: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  const found = new Map<string, string>()
  for (const [value, list] of Object.entries(words)) for (const word of list.split('|')) found.set(word, value)
  return found
}

const glazing = lookup({
  none: 'none|no|unglazed|not glazed|without|without glass|sans|sans verre|non|aucun|non vitre|ohne|ohne glas|keine|nein|unverglast|none unglazed',
  glass:
    'glass|glazed with glass|float glass|museum glass|anti reflective glass|ar glass|uv glass|mineral glass|verre|sous verre|verre antireflet|verre musee|glas|museumsglas|entspiegeltes glas|floatglas',
  acrylic:
    'acrylic|acrylic glass|plexi|plexiglas|plexiglass|acrylic sheet|uv acrylic|acrylique|verre acrylique|acryl|acrylglas|pmma',
  laminated:
    'laminated|laminated glass|safety glass|verre feuillete|feuillete|vsg|verbundglas|verbundsicherheitsglas|sicherheitsglas',
})

const sensitivity = lookup({
  high: 'high|very high|highly sensitive|very sensitive|elevee|haute|tres sensible|forte|hoch|sehr hoch|sehr empfindlich|hoch empfindlich',
  medium: 'medium|moderate|moderately sensitive|sensitive|mid|moyenne|sensible|mittel|empfindlich|mittlere',
  low: 'low|slightly sensitive|less sensitive|faible|peu sensible|gering|niedrig|wenig empfindlich',
  none: 'none|not sensitive|insensitive|no|nulle|aucune|non sensible|keine|unempfindlich|nicht empfindlich',
})

const kind = lookup({
  painting: 'painting|paintings|oil painting|peinture|peintures|tableau|tableaux|gemalde|malerei|bild',
  drawing:
    'drawing|drawings|work on paper|works on paper|watercolour|watercolor|pastel|dessin|dessins|aquarelle|oeuvre sur papier|zeichnung|zeichnungen|aquarell|arbeit auf papier',
  print:
    'print|prints|etching|engraving|lithograph|woodcut|screenprint|poster|estampe|gravure|lithographie|serigraphie|affiche|druck|druckgrafik|grafik|radierung|holzschnitt|siebdruck|plakat',
  photograph:
    'photograph|photographs|photo|photos|photography|photographie|photographies|fotografie|foto|fotografien|fotos',
  textile: 'textile|textiles|tapestry|quilt|tissu|tapisserie|textil|textilien|wandteppich|tapisserie textile',
  object:
    'object|objects|sculpture|sculptures|relief|ceramic|ceramics|furniture|objet|objets|ceramique|objekt|objekte|skulptur|plastik|keramik|mobel',
  other: 'other|autre|andere|sonstiges|video|installation|film|mixed media',
})

const status = lookup({
  wanted:
    'wanted|wish|wish list|proposed|to be requested|souhaite|a demander|propose|wunsch|gewunscht|vorgeschlagen|anzufragen',
  'asked for':
    'asked for|requested|request sent|pending|demande|demandee|en attente|en cours|angefragt|anfrage lauft|ausstehend',
  agreed:
    'agreed|confirmed|approved|loan agreed|accepted|yes|accorde|confirme|accepte|oui|zugesagt|bestatigt|genehmigt|ja|zusage',
  'on its way': 'on its way|in transit|en route|en transit|unterwegs|im transport',
  arrived: 'arrived|received|delivered|arrive|recu|livre|eingetroffen|angekommen|geliefert',
  unpacked: 'unpacked|deballe|ausgepackt',
  'checked in': 'checked in|condition checked|constat fait|zustand gepruft|eingecheckt',
})

export const glazingOf = (text: string): string | undefined => glazing.get(plainWords(text))
export const sensitivityOf = (text: string): string | undefined => sensitivity.get(plainWords(text))
export const kindOf = (text: string): string | undefined => kind.get(plainWords(text))
export const statusOf = (text: string): string | undefined => status.get(plainWords(text))

const unset = /^(?:-+|\/|n ?a|n ?d|tbc|tbd|none given|unknown|inconnu|unbekannt|k ?a)$/

/** Whether a cell only says that nothing is known. */
export function saysNothing(text: string): boolean {
  if (text === '') return true
  return text.length <= 12 && (/^[-–—./?*]+$/.test(text) || unset.test(plainWords(text)))
}
