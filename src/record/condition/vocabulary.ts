/**
 * Words for what is found on a work, by what it is made of. The words are those of open glossaries of the field (terms
 * of the Art & Architecture Thesaurus, ODC-By 1.0, and of museums' condition glossaries); what each means is said here
 * in words of our own. A house adds its own beside them.
 */

export const materials = ['painting', 'paper', 'photograph', 'textile', 'frame', 'object'] as const
export type Material = (typeof materials)[number]

export interface Term {
  /** Kept in reports: never changed, only added to. */
  readonly key: string
  readonly material: Material
  readonly word: string
  readonly meaning: string
}

type Words = readonly (readonly [word: string, meaning: string])[]

const words: Readonly<Record<Material, Words>> = {
  painting: [
    ['abrasion', 'rubbed or scraped, so that paint or varnish is thinner or gone'],
    ['accretion', 'something from outside sticks to the surface'],
    ['blister', 'paint lifted into a closed bubble'],
    ['bloom', 'a bluish or whitish haze on the varnish'],
    ['chalking', 'paint that comes off as powder when touched'],
    ['crackle', 'a net of fine cracks, come with age'],
    ['crack', 'a single break through paint or ground'],
    ['cupping', 'islands of paint between cracks, their edges curled up'],
    ['dent', 'the canvas or panel is pushed in or out at a spot'],
    ['discoloration', 'colour or varnish that has changed'],
    ['flaking', 'paint that parts from what is beneath and may fall'],
    ['loss', 'paint or ground that is missing'],
    ['puncture', 'a hole right through'],
    ['scratch', 'a line cut or pressed into the surface'],
    ['slack canvas', 'the canvas hangs loose or waves'],
    ['stretcher crease', 'a line where the canvas lay against a bar'],
    ['tear', 'the canvas has parted along a line'],
    ['warp', 'the panel or stretcher is bent or twisted'],
  ],
  paper: [
    ['cockling', 'the sheet waves and no longer lies flat'],
    ['crease', 'a sharp line where the sheet was bent'],
    ['fading', 'colour that light has made paler'],
    ['fold', 'bent over onto itself, or the line of it'],
    ['foxing', 'small reddish brown spots'],
    ['hole', 'a place where the sheet is missing right through'],
    ['loss', 'a part of the sheet or of the image that is gone'],
    ['mat burn', 'a brown line where an acid mount lay'],
    ['mould', 'growth, or the stain that it left'],
    ['skinning', 'the top layer of the sheet is pulled off'],
    ['soiling', 'dirt on or in the surface'],
    ['stain', 'a colour that something left in the sheet'],
    ['tear', 'the sheet has parted from an edge or within'],
    ['tide line', 'the edge where water came to and dried'],
  ],
  photograph: [
    ['abrasion', 'rubbed, so that the surface is matt or thinner'],
    ['bent corner', 'a corner that was pressed over'],
    ['crack in the emulsion', 'the layer that bears the image is broken'],
    ['curl', 'the print rolls up by itself'],
    ['delamination', 'layers of the print, or the print and its mount, part'],
    ['fading', 'the image is paler than it was'],
    ['ferrotyping', 'glossy patches where the print stuck to glass'],
    ['fingerprint', 'the mark of a hand in the surface'],
    ['silver mirroring', 'a bluish metal sheen in the dark parts'],
    ['stain', 'a colour that does not belong to the image'],
  ],
  textile: [
    ['creasing', 'lines pressed into the cloth'],
    ['fading', 'dye that light has made paler'],
    ['fraying', 'threads come loose at an edge'],
    ['hole', 'a place where the cloth is missing'],
    ['insect damage', 'grazed or eaten by insects, or what they left'],
    ['loose thread', 'a thread of cloth or stitching that has come away'],
    ['soiling', 'dirt on or in the cloth'],
    ['split', 'the cloth has parted along its threads'],
    ['stain', 'a colour that something left in the cloth'],
    ['weak seam', 'stitching that no longer holds'],
  ],
  frame: [
    ['chip', 'a small piece broken off an edge'],
    ['crack', 'the wood or its ornament is broken, not parted'],
    ['flaking gesso', 'the ground under the gilding lifts or falls'],
    ['loose hardware', 'a ring, plate or screw that moves'],
    ['loose part', 'ornament or moulding that moves'],
    ['loss', 'a piece of the frame that is missing'],
    ['open joint', 'a corner whose two sides have come apart'],
    ['scratch', 'a line cut into the finish'],
    ['scratched glazing', 'a line in the glass or acrylic'],
    ['worn finish', 'gilding or paint rubbed through'],
  ],
  object: [
    ['accretion', 'something from outside sticks to the surface'],
    ['break', 'a part has come off'],
    ['chip', 'a small piece broken off an edge'],
    ['corrosion', 'metal that has turned to rust, verdigris or the like'],
    ['crack', 'a break that goes in but does not part it'],
    ['dent', 'pushed in by a blow'],
    ['loose part', 'a part that moves and should not'],
    ['loss', 'a part that is missing'],
    ['old repair', 'glue, filling or a pin from before'],
    ['scratch', 'a line cut into the surface'],
    ['staining', 'a colour that does not belong to it'],
    ['worm holes', 'small round holes, with dust where it is alive'],
  ],
}

/** Every word that the program brings, by material in the order of `materials`. */
export const vocabulary: readonly Term[] = materials.flatMap(material =>
  words[material].map(([word, meaning]) => ({
    key: `${material}.${word.replaceAll(' ', '-')}`,
    material,
    word,
    meaning,
  })),
)

/** Which materials a kind of work asks for first; a frame is looked at with each. */
export function materialsFor(kind: string): readonly Material[] {
  const own: Readonly<Record<string, Material>> = {
    painting: 'painting',
    drawing: 'paper',
    print: 'paper',
    photograph: 'photograph',
    textile: 'textile',
  }
  const first = own[kind] ?? 'object'
  return [first, 'frame', ...materials.filter(material => material !== first && material !== 'frame')]
}
