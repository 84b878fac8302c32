/**
 * Terms of a loan, as a lender wrote them, read sentence by sentence: what each asks of the hang, in English. It reads
 * what it knows word by word and takes nothing for granted: a condition, a second figure, a word of preference make a
 * term unclear, and a person is asked. The ways terms are worded are common practice, no source.
 */
/** What a term keeps a work away from. */
export type AwayFrom = 'daylight' | 'window' | 'facing a window' | 'heat' | 'air' | 'outside wall'

export type TermRead =
  /** Not beside, or not facing, what is named. */
  | { readonly asks: 'apart'; readonly how: 'not beside' | 'not facing'; readonly named: string }
  /** Beside, or on one wall with, what is named. */
  | { readonly asks: 'with'; readonly how: 'side by side' | 'one wall'; readonly named: string }
  | { readonly asks: 'away'; readonly from: AwayFrom }
  /** At most so many lux. */
  | { readonly asks: 'light'; readonly lux: number }
  | { readonly asks: 'place'; readonly how: 'only on' | 'not on'; readonly named: string }
  /** Of packing, insurance, climate and the like: no matter of where it hangs. */
  | { readonly asks: 'nothing' }
  /** `why` is a question or a sentence for a person. */
  | { readonly asks: 'unclear'; readonly why: string }

export interface LoanTerm {
  /** As it was written. */
  readonly quoted: string
  readonly read: TermRead
}

export type TermsOf = 'loanTerms' | 'notBeside'

/** Each term of a text. Never throws; an empty text has none. */
export function loanTerms(text: string, of: TermsOf): readonly LoanTerm[] {
  return sentencesIn(text).flatMap(sentence =>
    // A condition may be about all that stands before it.
    (sentence.length > longestTerm || conditional.test(sentence) ? [sentence] : clausesIn(sentence)).map(quoted => ({
      quoted,
      read: readTerm(quoted, of),
    })),
  )
}

/** A full stop after these ends no sentence. */
const shortened = /(?:^|[\s(])(?:nos?|nr|cat|max|min|approx|ca?|fig|inv|st|mrs?|dr|incl|resp|e\.g|i\.e)$/i

function sentencesIn(text: string): string[] {
  const found: string[] = []
  let start = 0
  for (const mark of text.matchAll(/[\n\r;•]+|[.!](?=\s|$)/g)) {
    if (mark[0] === '.' && shortened.test(text.slice(Math.max(start, mark.index - 8), mark.index))) continue
    found.push(text.slice(start, mark.index))
    start = mark.index + mark[0].length
  }
  found.push(text.slice(start))
  return found.map(tidied).filter(sentence => /[\p{L}\p{N}]/u.test(sentence))
}

function tidied(text: string): string {
  return text.replace(/^[\s,–—-]+|[\s,]+$/g, '')
}

/** "… and not beside …": a second clause begins with what it asks. */
function clausesIn(sentence: string): string[] {
  return sentence
    .split(
      /(?:,\s*(?:and|nor|or|but)?|\s(?:and|nor|but))\s+(?=(?:not|no|never|must|may not|shall|should|max|at most|away from|only)\b)/i,
    )
    .map(tidied)
    .filter(clause => clause !== '')
}

const conditional =
  /\b(?:unless|except|if|when|where possible|preferably|ideally|ask|subject to|agreement|approval|permission|consent|depending|otherwise)\b/i
/** By these a term is known to speak of the hang at all: place, neighbours, light, height, order. */
const ofHang =
  /\b(?:hang|hangs|hung|hanging|walls?|rooms?|gallery|beside|next to|near|close to|adjacent|alongside|opposite|facing|together|apart|separated?|pairs?|alone|isolated|above|below|left|right|cent(?:re|er)|height|eye level|first|last|entrance|exit|door|doorway|corner|window|daylight|sunlight|lux|lx|dim|dark|bright|light|lit|spotlight|lamp|radiator|vent|grille|neighbou?r|order|sequence)\b/i
const negation = /\b(?:not|never|no|avoid|away from|out of|apart from)\b/i

/** "No 12" negates nothing. */
function isNegated(term: string): boolean {
  return negation.test(term.replace(/\bnos?\.?\s*\d/gi, ' '))
}

const shown = '(?:shown|hung|hang|hangs|displayed|exhibited|installed|presented|placed|shown only|kept|stay|stays)'

/** Nobody words one term in more characters. */
const longestTerm = 400

function readTerm(term: string, of: TermsOf): TermRead {
  if (term.length > longestTerm) return unclear('It is too long to be read as one term. What shall hold?')
  if (conditional.test(term))
    return ofHang.test(term) || of === 'notBeside'
      ? unclear('It holds under a condition, or as a wish. What shall hold here?')
      : nothing
  const light = readLight(term)
  if (light !== null) return light
  return (
    readAway(term) ??
    readNeighbour(term) ??
    readPlace(term) ??
    (of === 'notBeside'
      ? { asks: 'apart', how: 'not beside', named: named(term) }
      : ofHang.test(term)
        ? unclear('It speaks of where or how it hangs, in words that no rule is read from. What shall hold?')
        : nothing)
  )
}

const nothing: TermRead = { asks: 'nothing' }

function unclear(why: string): TermRead {
  return { asks: 'unclear', why }
}

const upTo =
  /\b(?:at most|max|maximum|maximally|(?:no|not|never)(?: be)?(?: to)? (?:more|over|above|exceed\w*|brighter|higher)|exceed|up to|below|under|less than|limited to|limit|or less|or lower|or below)\b|[≤<]/i
const atLeast = /\b(?:at least|min|minimum|(?:no|not|never)(?: be)? (?:less|below|under|lower))\b|[≥>]/i

function readLight(term: string): TermRead | null {
  const figures = [...term.matchAll(/(\d[\d.,\u202f\u00a0 ]*)\s*(lux|lx|foot[\s-]?candles?|fc)\b/gi)]
  const [one] = figures
  if (one === undefined) return null
  if (/\b(?:lux|lx)[\s-]*(?:hours?|hrs?|h)\b|\bk?lxh\b|per (?:year|annum|day)|a year|annual/i.test(term))
    return unclear('It is light summed over time, not a level. Which level keeps to it?')
  const digits = (one[1] ?? '').trim().replace(/[\s\u202f\u00a0]/g, '')
  if (figures.length > 1 || /\d\s*(?:-|–|to|and|or)\s*\d/i.test(term))
    return unclear('It names more than one level. Which is the most that it may receive?')
  if (!/^\d{1,4}$/.test(digits) || Number(digits) === 0)
    return unclear(`“${digits}” may be read in more than one way. How many lux are the most?`)
  if (atLeast.test(term))
    return unclear('It names the least light, not the most. What is the most that it may receive?')
  if (/candle|fc\b/i.test(one[2] ?? '')) {
    // 1 foot-candle is 1 lm/ft²; a foot is 0.3048 m by definition.
    const lux = (Number(digits) / 0.3048 ** 2).toFixed(1)
    return unclear(`${digits} foot-candles are ${lux} lux. How many lux are the most?`)
  }
  if (!upTo.test(term)) return unclear(`Are ${digits} lux the most that it may receive?`)
  return { asks: 'light', lux: Number(digits) }
}

const near =
  '(?:above|over|near|next to|close to|beside|by|under|below|in front of|in the vicinity of|within [^,]*? of|from|to|against|at|adjacent to)'

function readAway(term: string): TermRead | null {
  if (!isNegated(term)) return null
  if (/\b(?:outside|outer|exterior|external)(?:[ -]facing)? walls?\b/i.test(term))
    return { asks: 'away', from: 'outside wall' }
  if (/\b(?:facing|opposite|face|across from)\s+(?:an?|any|the)?\s*windows?\b/i.test(term))
    return { asks: 'away', from: 'facing a window' }
  if (/\b(?:day\s?light|sun\s?light|natural light|direct sun)\b/i.test(term)) return { asks: 'away', from: 'daylight' }
  if (new RegExp(`\\b${near}\\b.*\\bwindows?\\b`, 'i').test(term)) return { asks: 'away', from: 'window' }
  if (
    new RegExp(
      `\\b${near}\\b.*\\b(?:radiators?|heaters?|heating|convectors?|fireplaces?|stoves?|heat sources?|sources? of heat)\\b`,
      'i',
    ).test(term)
  )
    return { asks: 'away', from: 'heat' }
  if (
    new RegExp(
      `\\b${near}\\b.*\\b(?:vents?|grilles?|grills?|ducts?|ventilation|ventilators?|air[ -](?:inlets?|outlets?|conditioning|conditioners?|supply|vents?|currents?)|draughts?|drafts?)\\b`,
      'i',
    ).test(term)
  )
    return { asks: 'away', from: 'air' }
  return null
}

function readNeighbour(term: string): TermRead | null {
  const beside = /\b(?:beside|next to|alongside|adjacent to|side by side with|neighbouring|neighboring)\s+(.+)$/i.exec(
    term,
  )
  const facing = /\b(?:facing|opposite(?: to)?|across from|face)\s+(.+)$/i.exec(term)
  const together = new RegExp(`\\b${shown}\\s+(?:only\\s+)?(?:together\\s+)?with\\s+(.+)$`, 'i').exec(term)
  const parted = /\b(?:not|never)\s+(?:to\s+)?(?:be\s+)?(?:separated|parted|split)\s+from\s+(.+)$/i.exec(term)
  if (parted !== null) return { asks: 'with', how: 'one wall', named: named(parted[1]) }
  const not = isNegated(term)
  if (not && beside !== null) return { asks: 'apart', how: 'not beside', named: named(beside[1]) }
  if (not && facing !== null) return { asks: 'apart', how: 'not facing', named: named(facing[1]) }
  if (not && together !== null)
    return unclear(
      'Not with it on one wall, in one room, or in one show? A rule keeps works apart side by side or face to face.',
    )
  const must = /\b(?:must|shall|to be|is to|are to|has to|have to|needs? to|always|only|should)\b/i.test(term)
  if (!not && must && beside !== null) return { asks: 'with', how: 'side by side', named: named(beside[1]) }
  if (!not && must && together !== null) return { asks: 'with', how: 'one wall', named: named(together[1]) }
  return null
}

function readPlace(term: string): TermRead | null {
  const only = /\bonly\s+(?:be\s+)?(?:\w+\s+)?(?:in|on)\s+(?:the\s+)?(.+)$/i.exec(term)
  const not = /\b(?:not|never)\s+(?:to\s+)?(?:be\s+)?(?:\w+\s+)?(?:in|on)\s+(?:the\s+)?(.+)$/i.exec(term)
  if (only !== null && not === null) return { asks: 'place', how: 'only on', named: named(only[1]) }
  if (not !== null && only === null) return { asks: 'place', how: 'not on', named: named(not[1]) }
  return null
}

/** Without quotation marks and what a sentence ends with. */
function named(words: string | undefined): string {
  return (words ?? '')
    .replace(/["“”„«»]/g, '')
    .replace(/[.,:)\]]+$/, '')
    .trim()
}
