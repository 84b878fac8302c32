/**
 * What a work's row says besides its main marks: marks with a name of their own (locks, plates, points), each with its
 * place, what it is and its tool; hangers with their length; the method's own figures. Every length as src/hang has it.
 */
import type { PlacedWork } from '../contract/areas/walls.ts'
import type { MarksAnswer } from '../hang/marks-shape.ts'
import { print } from '../hang/printing.ts'
import { calledMark, mainMarks } from '../hang/steps.ts'
import { type Figure, figure, massText, offset, otherUnit, type Units } from './figures.ts'

/** A line under the work's figures, in the same columns. */
export interface OtherMark {
  readonly called: string
  /** Heights of what bears there; of a hanger, of the edge it hangs from. */
  readonly fromFloor: Figure
  readonly fromLine: Figure
  readonly x: Figure
  /** What it is: its type and tool, or how long the hanger is. */
  readonly says: string
}

export function othersOf(answer: MarksAnswer, work: PlacedWork, units: Units): readonly OtherMark[] {
  const main = new Set(mainMarks(answer.marks))
  const named = answer.marks
    .filter(mark => !main.has(mark))
    .map(mark => {
      const lock = answer.locks.find(each => each.name === mark.name)
      const tool =
        [lock?.tool, work.lockTool].find(text => text !== undefined && text !== '') ?? work.keeper?.tool ?? ''
      const type = mark.does === 'keeps' ? (work.keeper?.name ?? lock?.type ?? 'not chosen yet') : mark.fixing.name
      return {
        called: calledMark(mark),
        fromFloor: figure(mark.printed.fromFloor, units),
        fromLine: offset(mark.printed.fromLine, units),
        x: figure(mark.printed.x, units),
        says: [type, mark.does === 'keeps' ? toolText(tool, work.lockTool) : '']
          .filter(text => text !== '')
          .join(' · '),
      }
    })
  const hangers = answer.hangers.map((hanger, index) => {
    const length = figure(print(hanger.length, units.steps), units)
    const side = answer.hangers.length === 1 ? '' : index === 0 ? 'left ' : 'right '
    return {
      called: `${side}hanger`,
      fromFloor: figure(print(hanger.from.y, units.steps), units),
      fromLine: offset(print(hanger.from.y - answer.datum, units.steps), units),
      x: figure(print(hanger.from.x, units.steps), units),
      says: `from its hook to the ring ${length.main} ${units.unit} · ${length.other} ${otherUnit(units.unit)}`,
    }
  })
  return [...named, ...hangers]
}

/** The lock's own tool, and where the show keeps it when that says more. */
function toolText(tool: string, kept: string): string {
  if (tool === '') return 'no tool noted'
  return kept === '' || kept === tool ? tool : `${tool} (${kept})`
}

/** Lengths of hangers and pulls stand in the working and in the lines above. */
const leftOut = /^(hanger-|links-|lean-?$)/

/** A cable's pull, a tipping angle, a load on the floor: each with its unit and how it came about. */
export function figureLines({ figures, method }: MarksAnswer, units: Units): readonly string[] {
  return (
    figures
      // What pulls a flat work's fixings is on the screen; a shelf hangs or falls by it.
      .filter(({ key }) => !leftOut.test(key) && (key !== 'pull-out' || method === 'shelf'))
      .map(({ label, value, unit, working }) => {
        const said =
          unit === 'mm'
            ? `${figure(print(value, units.steps), units).main} ${units.unit}`
            : unit === 'kg'
              ? massText(value, units.unit)
              : `${value.toFixed(Math.abs(value) < 10 ? 1 : 0)}${unit === '' || unit === '°' ? unit : `\u00a0${unit}`}`
        return `${label} ${said}${working === '' ? '' : ` = ${working}`}`
      })
  )
}
