/**
 * The units a drawing may be in. A DXF says its unit as a number, `$INSUNITS` (DXF reference, header variables), or says
 * none; then a person must, and is helped by how large the whole would be in each.
 */
export const drawingUnits = ['mm', 'cm', 'dm', 'm', 'in', 'ft'] as const
export type DrawingUnit = (typeof drawingUnits)[number]

/** Millimetres in one unit; inch and foot as of 1959, exact. */
export const millimetresIn: Readonly<Record<DrawingUnit, number>> = {
  mm: 1,
  cm: 10,
  dm: 100,
  m: 1000,
  in: 25.4,
  ft: 304.8,
}

const byCode: Readonly<Record<number, DrawingUnit>> = { 1: 'in', 2: 'ft', 4: 'mm', 5: 'cm', 6: 'm', 14: 'dm' }

/** The unit that `$INSUNITS` names; null where it names none, or one that no plan is drawn in. */
export function unitOfCode(code: number): DrawingUnit | null {
  return byCode[code] ?? null
}

/** Houses measure between these, metres: a unit that makes the whole smaller or larger is offered last. From memory. */
const HOUSE = { least: 2, most: 1000 } as const

/** Every unit with the size that the whole would have, those that make a house first. */
export function sizesByUnit(
  width: number,
  height: number,
): readonly { readonly unit: DrawingUnit; readonly width: number; readonly height: number; readonly house: boolean }[] {
  const all = drawingUnits.map(unit => {
    const longer = (Math.max(width, height) * millimetresIn[unit]) / 1000
    return {
      unit,
      width: width * millimetresIn[unit],
      height: height * millimetresIn[unit],
      house: longer >= HOUSE.least && longer <= HOUSE.most,
    }
  })
  return [...all.filter(each => each.house), ...all.filter(each => !each.house)]
}
