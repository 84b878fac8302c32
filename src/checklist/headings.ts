/**
 * The headings that lists carry, in English, French and German, and what each means. A heading is taken apart into
 * its unit ("cm"), its part ("framed") and the words that are left, which must be known as a whole: a heading that is
 * half known is not known. Common practice, no source; the words were gathered from the trade's own vocabulary.
 */
import { isCurrency } from '../money/currency.ts'
import type { Field, ListPart, ListUnit } from './fields.ts'
import { plainWords } from './plain-text.ts'

export type ListLanguage = 'en' | 'fr' | 'de'

/** `number` is a bare "No.": a running number or somebody's number, which only its contents can tell. */
export type HeadingField = Field | 'number'

/** Words are in normal form: small letters without accents and marks. */
const known: Readonly<Partial<Record<HeadingField, Readonly<Record<ListLanguage, string>>>>> = {
  permanent: {
    en: 'accession number|accession no|accession|acc no|acc number|acc|inventory number|inventory no|inventory|inv no|inv number|inv|object number|object no|object id|work number|work no|permanent number|permanent no|museum number|museum no|registration number|identification number|id number|catalogue number of the museum',
    fr: 'numero d inventaire|numero dinventaire|no d inventaire|no dinventaire|n d inventaire|n inventaire|n inv|no inv|num inv|inventaire|cote|numero permanent',
    de: 'inventarnummer|inventar nr|inventarnr|inv nr|invnr|inventar|objektnummer|objekt nr|objektnr|signatur|zugangsnummer',
  },
  lenderNumber: {
    en: 'lenders number|lenders no|lender number|lender no|lenders ref|lender ref|lender reference|lenders reference|lender inventory number|lender inv no|lender id|owners number|owners no|owner number|owner no|their number|their no',
    fr: 'numero du preteur|no du preteur|n du preteur|ref preteur|reference du preteur|n preteur|no preteur',
    de: 'leihgebernummer|leihgeber nr|leihgebernr|nummer des leihgebers|nr des leihgebers|inventarnummer des leihgebers|inv nr leihgeber',
  },
  loan: {
    en: 'loan number|loan no|loan id|loan ref|loan reference|loan',
    fr: 'numero de pret|no de pret|n de pret|n pret|no pret',
    de: 'leihnummer|leih nr|leihvertragsnummer|leihvertrag nr|leihgabe nr|leihgabennummer',
  },
  entryNumber: {
    en: 'entry number|entry no|receipt number|receipt no|temporary number|temporary no|temp no|temp number',
    fr: 'numero d entree|numero dentree|no d entree|n d entree|numero temporaire',
    de: 'eingangsnummer|eingangs nr|eingangsnr|temporare nummer',
  },
  exhibitionNumber: {
    en: 'exhibition number|exhibition no|exh no|exh number|show number|show no|number in the exhibition',
    fr: 'numero d exposition|numero dexposition|no d exposition|n d exposition',
    de: 'ausstellungsnummer|ausstellungs nr|ausstellungsnr',
  },
  formerNumber: {
    en: 'former number|former no|old number|old no|previous number|previous no|old inventory number|old inventory no|old inv no|former accession number|former accession no|former inventory number|old accession number|old accession no',
    fr: 'ancien numero|ancien no|ancien numero d inventaire|ancien n d inventaire|ancienne cote',
    de: 'alte nummer|alte nr|fruhere nummer|fruhere nr|altnummer|alte inventarnummer|alte inv nr|fruhere inventarnummer|ehemalige nummer',
  },
  running: {
    en: 'running number|running no|checklist number|checklist no|list number|list no|list|cat no|cat number|catalogue number|catalogue no|catalog number|catalog no|cat|order|sequence|item|item no|item number|line|row|position in list|seq',
    fr: 'numero d ordre|numero dordre|no d ordre|n d ordre|ordre|numero de catalogue|n cat|no cat|rang',
    de: 'laufende nummer|laufende nr|lfd nr|lfdnr|lfd nummer|katalognummer|kat nr|katnr|kat|reihenfolge|position|pos|pos nr',
  },
  number: {
    en: 'number|no|nos|num|id|ref|reference|ref no',
    fr: 'numero|n|no|num|ref|reference',
    de: 'nummer|nr|num',
  },
  title: {
    en: 'title|titles|title of work|work title|object title|name of work|work|object|title of the work|artwork title|artwork|object name',
    fr: 'titre|titre de l oeuvre|titre de loeuvre|oeuvre|titre oeuvre|designation|intitule',
    de: 'titel|werktitel|titel des werks|titel des werkes|werk|objekt|bezeichnung|objekttitel',
  },
  maker: {
    en: 'maker|artist|artists|artist maker|maker artist|artist name|author|creator|photographer|painter|name|artist s|attribution|makers name|artists name',
    fr: 'artiste|artistes|auteur|createur|nom de l artiste|nom de lartiste|photographe|peintre|nom|artiste auteur|fabricant',
    de: 'kunstler|kunstlerin|kunstler in|kunstlername|kunstlerinnen|hersteller|urheber|fotograf|maler|name|name des kunstlers|autor|verfasser',
  },
  date: {
    en: 'date|dates|year|dating|date of work|made|date made|creation date|date of creation|period|year made|production date',
    fr: 'date|annee|datation|date de creation|epoque|date d execution|date dexecution|realisation',
    de: 'datum|jahr|datierung|entstehungsjahr|entstehung|entstehungszeit|zeit|epoche',
  },
  medium: {
    en: 'medium|media|material|materials|technique|materials and techniques|medium and support|medium support|medium technique|materials techniques',
    fr: 'technique|materiau|materiaux|medium|support|matiere|technique et support|technique materiaux|materiaux et techniques|technique et materiaux',
    de: 'technik|material|materialien|technik material|material technik|material und technik|technik und material|medium|werkstoff',
  },
  credit: {
    en: 'credit line|credit|credits|courtesy|courtesy line|credit information',
    fr: 'credit|credits|mention|mention obligatoire|mention de credit|ligne de credit|courtoisie|credits obligatoires',
    de: 'credit|credits|nachweis|courtesy|herkunftsangabe|besitznachweis|credit line',
  },
  lender: {
    en: 'lender|lenders|lender name|name of lender|lent by|owner|owners|owner lender|lender owner|collection|loan from|lending institution|source',
    fr: 'preteur|preteurs|nom du preteur|proprietaire|collection|institution|provenance du pret|pret de',
    de: 'leihgeber|leihgeberin|leihgeber in|eigentumer|besitzer|sammlung|leihgebende institution|leihgabe von',
  },
  size: {
    en: 'dimensions|dimension|size|sizes|dims|dim|measurements|measurement|dimensions h x w x d|dimensions hxwxd|h x w x d|hxwxd|h x w|hxw|hwd|size h x w|height x width|height x width x depth|dimensions height x width x depth',
    fr: 'dimensions|dimension|format|taille|mesures|dimensions h x l x p|dimensions hxlxp|h x l x p|hxlxp|h x l|hxl|dim|dimensions hxl|dimensions h x l|encombrement',
    de: 'masse|mass|abmessungen|abmessung|grosse|format|dimensionen|masse h x b x t|masse hxbxt|h x b x t|hxbxt|h x b|hxb|mabe|hohe x breite|hohe x breite x tiefe|masse h x b|bildmasse',
  },
  height: { en: 'height|h|ht|high', fr: 'hauteur|h|haut', de: 'hohe|hoehe|h' },
  width: { en: 'width|w|wd|wide|breadth|length', fr: 'largeur|l|larg|longueur|la', de: 'breite|b|br|lange' },
  depth: { en: 'depth|d|dp|deep|thickness', fr: 'profondeur|p|prof|epaisseur|ep', de: 'tiefe|t|starke|dicke' },
  diameter: { en: 'diameter|diam|dia|ø', fr: 'diametre|diam|ø', de: 'durchmesser|dm|dia|ø|o' },
  mass: {
    en: 'weight|weights|wt|mass|gross weight|net weight|weight of work|weight approx',
    fr: 'poids|masse|poids brut|poids net',
    de: 'gewicht|gew|bruttogewicht|nettogewicht|masse gewicht',
  },
  value: {
    en: 'value|values|insurance value|insured value|insurance|valuation|ins value|insurance valuation|agreed value|value for insurance',
    fr: 'valeur|valeur d assurance|valeur dassurance|assurance|valeur assuree|valeur agreee|val ass',
    de: 'wert|versicherungswert|versicherung|vers wert|versicherungssumme|vw',
  },
  lightLimit: {
    en: 'light limit|light level|light|lux|max lux|maximum lux|lux level|light levels|max light level|maximum light level|lux limit|lux max|light requirements|lighting',
    fr: 'lux|lux max|limite lumiere|eclairement|niveau d eclairement|eclairage|lumiere|eclairement max|eclairement maximal|niveau lumineux|niveau de lumiere',
    de: 'lux|max lux|licht|lichtstarke|beleuchtungsstarke|lichtgrenze|maximale beleuchtungsstarke|beleuchtung|lichtwert|lux max',
  },
  uvLimit: {
    en: 'uv|uv limit|uv level|max uv|maximum uv',
    fr: 'uv|uv max|limite uv',
    de: 'uv|uv grenze|max uv|uv wert',
  },
  glazing: {
    en: 'glazing|glazed|glass|glazing type|glazed with',
    fr: 'vitrage|verre|vitre|sous verre',
    de: 'verglasung|glas|verglast',
  },
  sensitivity: {
    en: 'sensitivity|light sensitivity|sensitivity to light|light class|light category',
    fr: 'sensibilite|sensibilite a la lumiere|classe de sensibilite',
    de: 'empfindlichkeit|lichtempfindlichkeit|lichtklasse',
  },
  kind: {
    en: 'kind|type|category|classification|object type|type of work|kind of work|class|work type',
    fr: 'type|categorie|genre|nature|type d oeuvre|type doeuvre|classification',
    de: 'art|typ|kategorie|gattung|objektart|werkart|klassifikation|objekttyp',
  },
  objectName: {
    en: 'name of the object|name of object|object designation|kind of object in words',
    fr: 'nom de l objet|denomination',
    de: 'objektname|name des objekts|gegenstand|sachbezeichnung',
  },
  titleTranslation: {
    en: 'title in translation|title translation|translated title|title translated|english title|title in english',
    fr: 'titre traduit|traduction du titre|titre en traduction',
    de: 'titel ubersetzt|ubersetzter titel|titelubersetzung|ubersetzung des titels',
  },
  titleLanguage: {
    en: 'language of the title|title language|language of title|language',
    fr: 'langue du titre|langue',
    de: 'sprache des titels|titelsprache|sprache',
  },
  inscriptions: {
    en: 'inscriptions and marks|inscriptions and markings|inscriptions markings|inscriptions|inscription|marks|markings|signature|signatures|signed|signature and marks|stamps|labels and stamps',
    fr: 'inscriptions|inscription|inscriptions et marques|marques|signature et marques|signature et inscriptions|poincons',
    de: 'inschrift|inschriften|bezeichnungen|beschriftung|signiert|marken|stempel|bezeichnet|inschriften und marken',
  },
  subject: {
    en: 'subject|subject matter|subjects|depicts|iconography|what it shows',
    fr: 'sujet|sujet represente|sujets|iconographie|represente',
    de: 'darstellung|bildthema|bildgegenstand|sujet|ikonographie|dargestellt',
  },
  description: {
    en: 'description|brief description|short description|physical description|object description|description of object',
    fr: 'description|description breve|description sommaire|descriptif|description physique',
    de: 'beschreibung|kurzbeschreibung|objektbeschreibung|werkbeschreibung',
  },
  placeOfOrigin: {
    en: 'place of origin|origin|place made|place of making|made in|place of production|production place|country of origin|place of discovery|find place|found at',
    fr: 'lieu d origine|origine|lieu de creation|lieu de fabrication|lieu d execution|lieu de production|lieu de decouverte|pays d origine',
    de: 'herkunftsort|entstehungsort|herstellungsort|herkunftsland|fundort|ursprungsort',
  },
  distinguishing: {
    en: 'distinguishing features|distinguishing feature|identifying features|identifying marks|special features|peculiarities',
    fr: 'signes distinctifs|signes particuliers|elements distinctifs|particularites',
    de: 'besondere merkmale|merkmale|kennzeichen|besondere kennzeichen|unterscheidungsmerkmale',
  },
  department: {
    en: 'owners department|department|responsible department|department section|responsible section|curatorial department|lenders department',
    fr: 'departement|departement responsable|departement du preteur',
    de: 'abteilung|zustandige abteilung|sammlungsbereich|abteilung des leihgebers',
  },
  section: {
    en: 'section|sections|theme|chapter|group|section title|grouping',
    fr: 'section|theme|chapitre|groupe|partie|sequence',
    de: 'abschnitt|sektion|thema|kapitel|gruppe|bereich|themenbereich',
  },
  place: {
    en: 'location|place|room|wall|room and wall|gallery|position|room wall|gallery wall|location in show|where|venue location',
    fr: 'emplacement|lieu|salle|mur|cimaise|localisation|position',
    de: 'standort|ort|raum|wand|saal|platz|aufstellung|hangeort',
  },
  status: {
    en: 'status|loan status|state|loan state|confirmed',
    fr: 'statut|etat du pret|etat de la demande|avancement|confirmation',
    de: 'status|stand|leihstatus|leihstand|zusage',
  },
  handling: {
    en: 'handling|handling notes|handling note|handling instructions|installation notes|installation|display requirements|display notes|special requirements|install notes|display instructions|condition|condition notes',
    fr: 'manipulation|consignes|consignes d installation|installation|accrochage|contraintes|conditions de presentation|etat|constat|remarques d installation',
    de: 'handhabung|handling|hinweise zur montage|montage|montagehinweise|auflagen|prasentation|besonderheiten|zustand|erhaltungszustand|hangung',
  },
  loanTerms: {
    en: 'loan terms|terms|loan conditions|conditions|terms of loan|conditions of loan|restrictions|display restrictions',
    fr: 'conditions|conditions de pret|termes du pret|clauses|restrictions',
    de: 'leihbedingungen|bedingungen|auflagen des leihgebers|konditionen|leihkonditionen',
  },
  notBeside: { en: 'not beside|not next to|keep apart from', fr: 'pas a cote de|eloigner de', de: 'nicht neben' },
  method: {
    en: 'hanging|hanging method|hanging system|hanging hardware|hardware|mount type|fixings|fixing|hanger type|hangers|hanger|how it hangs',
    fr: 'systeme d accrochage|mode d accrochage|fixation|fixations|attaches|type d accroche|accroche|systeme daccrochage',
    de: 'aufhangung|befestigung|hangesystem|art der hangung|hangevorrichtung|aufhangevorrichtung|hangetechnik',
  },
  note: {
    en: 'note|notes|remark|remarks|comment|comments|other|misc|info|information|additional information|other information|further information',
    fr: 'note|notes|remarque|remarques|commentaire|commentaires|observations|observation|divers|informations|infos',
    de: 'notiz|notizen|bemerkung|bemerkungen|anmerkung|anmerkungen|kommentar|sonstiges|hinweis|hinweise|info',
  },
}

interface Meaning {
  readonly field: HeadingField
  readonly language: ListLanguage
  /** Known in one language alone, so that it tells the language. */
  readonly telling: boolean
}

function table(): ReadonlyMap<string, Meaning> {
  const meanings = new Map<string, Meaning>()
  for (const [field, words] of Object.entries(known)) {
    for (const language of ['en', 'fr', 'de'] as const) {
      for (const word of words[language].split('|')) {
        // The normal form joins what an apostrophe parted: "d'inventaire" is "dinventaire".
        for (const form of new Set([word, word.replace(/\b([dl]) (?=\p{L}{2})/gu, '$1')])) {
          const there = meanings.get(form)
          // Object.entries widens the keys of `known`.
          const meaning = { field: field as HeadingField, language, telling: true }
          meanings.set(form, there === undefined ? meaning : { ...there, telling: there.language === language })
        }
      }
    }
  }
  return meanings
}

const meanings = table()

const partWords: readonly (readonly [ListPart, RegExp])[] = [
  [
    'support',
    /\b(?:unframed|without frame|sans cadre|non encadree?s?|ohne rahmen|ungerahmt|canvas|panel|support|toile|chassis|leinwand|keilrahmen)\b/,
  ],
  [
    'framed',
    /\b(?:framed|with frame|frame|encadree?s?|avec cadre|cadre|gerahmt|mit rahmen|rahmen|rahmenmasse|rahmenmass)\b/,
  ],
  ['sight', /\b(?:sight|a vue|lichtmass|sichtmass)\b/],
  ['mount', /\b(?:mount|mounted|mat|matted|passe partout|passepartout|marie louise|montage)\b/],
  ['sheet', /\b(?:sheet|paper|feuille|papier|blatt|blattmass|blattmasse)\b/],
  ['plate', /\b(?:plate|plate mark|platemark|cuvette|platte|plattenmass|plattenrand)\b/],
  ['image', /\b(?:image|picture|bild|bildmass|motiv)\b/],
  ['base', /\b(?:base|plinth|socle|sockel)\b/],
  ['overall', /\b(?:overall|total|hors tout|gesamt|gesamtmass|gesamtmasse|object|max|maximum)\b/],
]

const unitWords: Readonly<Record<string, ListUnit>> = {
  mm: 'mm',
  millimetres: 'mm',
  millimeters: 'mm',
  cm: 'cm',
  cms: 'cm',
  centimetres: 'cm',
  centimeters: 'cm',
  m: 'm',
  metres: 'm',
  meters: 'm',
  in: 'in',
  ins: 'in',
  inch: 'in',
  inches: 'in',
  pouces: 'in',
  zoll: 'in',
  ft: 'ft',
  feet: 'ft',
  kg: 'kg',
  kgs: 'kg',
  kilograms: 'kg',
  g: 'g',
  lb: 'lb',
  lbs: 'lb',
  pounds: 'lb',
}

export interface ReadHeading {
  readonly field: HeadingField | null
  readonly unit: ListUnit | null
  readonly part: ListPart | null
  /** The language it tells, where only one has this word. */
  readonly language: ListLanguage | null
}

/** Reads one heading. Where nothing is known of it, its unit and part may still be. */
export function readHeading(text: string): ReadHeading {
  const signs = text.replace(/["”″]/g, ' in ').replace(/#/g, ' no ').replace(/[Øø⌀]/g, ' diam ').replace(/[×✕]/g, ' x ')
  const bracketUnit = /[([]\s*(?:in\s+)?([a-zäöü.]+)\s*[)\]]/giu
  let unit: ListUnit | null = null
  let rest = signs.replace(bracketUnit, (whole, word: string) => {
    const found = unitWords[plainWords(word)]
    if (found === undefined) return whole
    unit ??= found
    return ' '
  })
  // What stands before a slash repeats in another language: "Title / Titre".
  const whole = readWords(plainWords(rest), unit)
  if (whole.field !== null) return whole
  for (const piece of rest.split(/[/|\n]|\s-\s/)) {
    const read = readWords(plainWords(piece), unit)
    if (read.field !== null && piece.trim() !== rest.trim())
      return { ...read, unit: read.unit ?? whole.unit, part: read.part ?? whole.part }
  }
  rest = rest.replace(/\([^)]*\)/g, ' ')
  const bare = readWords(plainWords(rest), unit)
  return bare.field === null ? whole : { ...bare, unit: bare.unit ?? whole.unit, part: bare.part ?? whole.part }
}

function readWords(words: string, unit: ListUnit | null): ReadHeading {
  const direct = meanings.get(words)
  if (direct !== undefined) return reading(direct, unit, null)
  let rest = words
  let part: ListPart | null = null
  for (const [name, pattern] of partWords) {
    if (!pattern.test(rest)) continue
    part = name
    rest = rest.replace(pattern, ' ')
    break
  }
  let own = unit
  if (own === null) {
    const last = /(?:^|\s)(?:in\s+)?([a-z]+)$/.exec(rest.trim())
    const found = last === null ? undefined : unitWords[last[1] ?? '']
    // "in" alone is a word as well as a unit; "m" and "g" are too short to trust without brackets.
    if (last !== null && found !== undefined && found !== 'm' && found !== 'g' && rest.trim() !== last[1]) {
      own = found
      rest = rest.trim().slice(0, rest.trim().length - (last[0] ?? '').length)
    }
  }
  const left = rest
    .replace(/\b(?:the|of|le|la|les|de|du|der|die|das|des)\b/g, ' ')
    .replace(/\b(?:in |en )?(?:eur|euros?|usd|chf|gbp)\b/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
  const meaning = meanings.get(rest.replace(/\s+/g, ' ').trim()) ?? meanings.get(left) ?? valueIn(left)
  if (meaning !== undefined) {
    // "Image" beside a title is a picture, beside a height it says what is measured.
    const sized = ['size', 'height', 'width', 'depth', 'diameter'].includes(meaning.field)
    if (sized || part === null || meaning.field === 'mass') return reading(meaning, own, sized ? part : null)
    return { field: null, unit: own, part, language: null }
  }
  // "Framed (cm)" alone heads a size, and so does the German compound "Bildmaß".
  if (part !== null && left === '' && (own !== null || /mass(?:e|en)?$/.test(words)))
    return { field: 'size', unit: own, part, language: null }
  return { field: null, unit: own, part, language: null }
}

/** A value beside whatever code of a currency: “Insurance value SEK”. */
function valueIn(words: string): Meaning | undefined {
  const [code = '', ...rest] = words.split(' ').reverse()
  if (!isCurrency(code.toUpperCase())) return undefined
  const meaning = meanings.get(
    rest
      .reverse()
      .join(' ')
      .replace(/ (?:in|en)$/, ''),
  )
  return meaning?.field === 'value' ? meaning : undefined
}

function reading(meaning: Meaning, unit: ListUnit | null, part: ListPart | null): ReadHeading {
  const massUnit = unit === 'kg' || unit === 'g' || unit === 'lb'
  // German "Masse" is sizes; with kg beside it, it is a mass.
  const field = massUnit && meaning.field === 'size' ? 'mass' : meaning.field
  return { field, unit, part, language: meaning.telling ? meaning.language : null }
}

/** Reads a heading that spans others: "Framed (cm)" above H, W, D. */
export function readGroupHeading(text: string): Pick<ReadHeading, 'unit' | 'part'> {
  const read = readHeading(text)
  return { unit: read.unit, part: read.part }
}
