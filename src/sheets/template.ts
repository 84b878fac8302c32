/**
 * A paper template: the marks of one work at full size, to be taped to the wall. Cut over sheets that overlap, with the
 * level line, the work's middle and edges, a bar to check the printer's scale, crosses to lay sheets on each other and a
 * map. Of a set it has every part with its own edges and marks, which run from the set's left edge, never from part to
 * part. The rule it keeps: where a mark stands on the paper it stands on the wall; it is nowhere rounded.
 */
import { Refusal } from '../contract/refusal.ts'
import type { MarksAnswer } from '../hang/marks-shape.ts'
import { minus } from '../hang/printing.ts'
import type { Units } from './figures.ts'
import { type Page, type Paper, papers, type TextMeasure } from './shapes.ts'
import { type NamedBox, newSketch } from './sketch.ts'
import { drawTile, type TemplateMark, type TemplatePart } from './template-drawing.ts'
import { drawTemplateFoot } from './template-foot.ts'
import { type Area, onPaper, type Tile, templateMargin, templateOverlap, tilesOf } from './tiles.ts'

export interface TemplateQuestion {
  readonly answer: MarksAnswer
  /** Of a whole set: its parts in their order, each with its own answer. */
  readonly parts?: readonly TemplatePart[]
  /** `marks` is the strip with all marks; `work` is the whole work with its edges. */
  readonly area: 'marks' | 'work'
  readonly paper: Paper
  readonly units: Units
  readonly heading: {
    /** What people call it: `12 Salt pans`. */
    readonly called: string
    /** `Room 2, east wall`. */
    readonly place: string
    readonly time: string
    readonly by: string
  }
}

export interface Template {
  readonly title: string
  readonly pages: readonly Page[]
  readonly boxes: readonly (readonly NamedBox[])[]
  /** Sheets with something on them, in the order of the pages. */
  readonly tiles: readonly Tile[]
  readonly rows: number
  readonly columns: number
  /** Each mark's hole on each page that shows it, millimetres of paper. */
  readonly marks: readonly { readonly name: string; readonly page: number; readonly x: number; readonly y: number }[]
}

/** Paper around the marks. */
const around = 45
/** More sheets than that nobody tapes together. */
const mostSheets = 240

/**
 * The template of one work. Refuses `template-empty` where the work has no mark on the wall, and `template-too-large`
 * where it takes more sheets than anybody tapes together.
 */
export function paperTemplate(question: TemplateQuestion, measure: TextMeasure): Template {
  const marks = marksOf(question)
  if (marks.length === 0) {
    throw new Refusal(
      'template-empty',
      'Nothing of this work goes into the wall: there is nothing to mark through paper.',
      {
        field: 'placement',
      },
    )
  }
  const area = areaOf(question, marks)
  const { page, tiling } = bestPaper(area, question.paper)
  if (tiling.tiles.length > mostSheets) {
    throw new Refusal(
      'template-too-large',
      `This takes ${tiling.tiles.length} sheets. Print only the marks, or take larger paper.`,
      { field: 'area', details: { sheets: tiling.tiles.length, most: mostSheets } },
    )
  }
  const drawn = tiling.tiles.flatMap(tile => {
    const sketch = newSketch(measure)
    const inked = drawTile(sketch, { ...question, parts: question.parts ?? [], marks, tile, tiling, sheet: area })
    return inked ? [{ tile, sketch }] : []
  })
  const names = new Set(drawn.map(({ tile }) => tile.name))
  drawn.forEach(({ tile, sketch }, index) => {
    drawTemplateFoot(sketch, { question, marks, page, tile, tiling, names, at: index, of: drawn.length })
  })
  return {
    title: `${question.heading.called}: paper template`,
    pages: drawn.map(({ sketch }) => ({ ...page, shapes: sketch.shapes })),
    boxes: drawn.map(({ sketch }) => sketch.boxes),
    tiles: drawn.map(({ tile }) => tile),
    rows: tiling.rows,
    columns: tiling.columns,
    marks: drawn.flatMap(({ tile }, index) =>
      marks.flatMap(mark => {
        if (mark.x < tile.left || mark.x > tile.right || mark.y < tile.bottom || mark.y > tile.top) return []
        return [{ name: mark.name, page: index, ...onPaper(mark, tile) }]
      }),
    ),
  }
}

/** Every hole of the work; of a set those of each part, named by its letter, with how far it runs from the set's left edge. */
function marksOf({ answer, parts = [] }: TemplateQuestion): readonly TemplateMark[] {
  if (parts.length === 0) return templateMarks(answer)
  return parts.flatMap(part =>
    templateMarks(part.answer).map(mark => ({
      ...mark,
      part: part.letter,
      name: `${part.letter} ${mark.name}`,
      running: mark.printed === null ? null : minus(mark.printed.x, answer.printed.leftEdge),
    })),
  )
}

/** The marks into the wall, and a cleat's screws. */
function templateMarks(answer: MarksAnswer): readonly TemplateMark[] {
  const onWall = answer.marks.filter(mark => mark.on === 'wall')
  const screws = answer.cleat?.screws ?? []
  const edge = onWall.find(mark => mark.fixing.kind === 'cleat')
  return [
    ...onWall.map(mark => ({
      part: '',
      name: mark.name ?? `${mark.side} mark`,
      x: mark.hole.x,
      y: mark.hole.y,
      bearing: mark.bearing,
      // The ends of a cleat's edge are where it lies, not where it is drilled.
      drilled: screws.length === 0 || mark.fixing.kind !== 'cleat',
      fixing: mark.fixing.name,
      printed: mark.printed,
      running: null,
    })),
    ...screws.map((screw, index) => ({
      part: '',
      name: `screw ${index + 1}`,
      x: screw.x,
      y: edge?.hole.y ?? answer.edges.top,
      bearing: null,
      drilled: true,
      fixing: '',
      printed: null,
      running: null,
    })),
  ]
}

function areaOf({ answer, area }: TemplateQuestion, marks: readonly TemplateMark[]): Area {
  const points = marks.flatMap(mark => [mark, ...(mark.bearing === null ? [] : [mark.bearing])])
  const strip: Area = {
    left: Math.min(...points.map(point => point.x)) - around,
    right: Math.max(...points.map(point => point.x)) + around,
    bottom: Math.min(...points.map(point => point.y)) - around,
    top: Math.max(...points.map(point => point.y)) + around,
  }
  if (area === 'marks') return strip
  const { edges } = answer
  return {
    left: Math.min(strip.left, edges.left - 5),
    right: Math.max(strip.right, edges.right + 5),
    bottom: Math.min(strip.bottom, edges.bottom - 5),
    top: Math.max(strip.top, edges.top + 5),
  }
}

/** Upright or across, whichever takes fewer sheets. */
function bestPaper(area: Area, paper: Paper) {
  const across = papers[paper]
  const [first, second] = [across, { width: across.height, height: across.width }].map(page => ({
    page,
    tiling: tilesOf(
      area,
      page.width - templateMargin.left - templateMargin.right,
      page.height - templateMargin.top - templateMargin.foot,
      templateOverlap,
    ),
  }))
  if (first === undefined || second === undefined) throw new Error('a paper has two ways to lie')
  return second.tiling.tiles.length < first.tiling.tiles.length ? second : first
}
