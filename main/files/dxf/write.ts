/**
 * A plan as DXF, by the library `@tarikjabiri/dxf`: its form is AC1021, the oldest in which names in any alphabet stay
 * whole; the entities are those of every version since 2000. Millimetres, y up, one layer for each kind of thing.
 */
import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, TextHorizontalAlignment, Units } from '@tarikjabiri/dxf'
import type { Figure, PlanLayer, Role } from '../../../src/plan/figures.ts'
import { planLayers } from '../../../src/plan/figures.ts'

/** Colour numbers of the DXF reference (1 red … 7 black on white, 8 and 9 greys). */
const colours: Readonly<Record<PlanLayer, number>> = {
  ROOMS: Colors.White,
  WALLS: Colors.White,
  'WALLS-UNMEASURED': 9,
  OPENINGS: 8,
  DOORS: 8,
  FIXTURES: Colors.Cyan,
  PARTITIONS: Colors.Magenta,
  STANDING: Colors.Blue,
  TRACKS: Colors.Yellow,
  WORKS: Colors.Red,
  ZONES: Colors.Green,
  TEXT: Colors.White,
}

/** Dashes and gaps, mm of the building: 3 and 1.5 mm at 1:100, as ISO 128 draws what lies above the cut or is hidden. */
const dashed = { name: 'DASHED', says: 'Dashed __ __ __ __', parts: [300, -150] }
/** What nobody measured, and what hangs from the ceiling above the cut. */
const dashedLayers: ReadonlySet<PlanLayer> = new Set(['WALLS-UNMEASURED', 'TRACKS'])

/** Heights of letters, mm of the building: 2.5 mm and more at 1:100. */
const letters: Readonly<Record<Role, number>> = { room: 300, below: 200, zones: 150, thing: 150 }

/** How far below a room's name its other words stand, mm of the building. */
const below: Readonly<Record<Role, number>> = { room: 0, below: 300, zones: 550, thing: 0 }

/** A quarter of a circle: the tangent of a quarter of 90°. */
const quarterBulge = Math.tan(Math.PI / 8)

/** The text of the file. */
export function dxfText(figures: readonly Figure[]): string {
  const dxf = new DxfWriter()
  dxf.setUnits(Units.Millimeters)
  dxf.setVariable('$MEASUREMENT', { 70: 1 })
  dxf.addLType(dashed.name, dashed.says, [...dashed.parts])
  for (const layer of planLayers)
    dxf.addLayer(layer, colours[layer], dashedLayers.has(layer) ? dashed.name : 'Continuous')
  for (const figure of figures) {
    const layerName = figure.layer
    switch (figure.kind) {
      case 'line': {
        const points = figure.points.map(([x, y]) => ({ point: point2d(x, up(y)) }))
        const flags = figure.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None
        if (points.length > 1) dxf.addLWPolyline(points, { layerName, flags })
        break
      }
      case 'circle':
        dxf.addCircle(point3d(figure.at[0], up(figure.at[1])), figure.radius, { layerName })
        break
      case 'quarter': {
        // Clockwise stays clockwise: the page and the drawing are both seen from above, y alone is written otherwise.
        const bulge = figure.clockwise ? -quarterBulge : quarterBulge
        const [from, to] = [figure.from, figure.to].map(([x, y]) => point2d(x, up(y)))
        if (from !== undefined && to !== undefined)
          dxf.addLWPolyline([{ point: from, bulge }, { point: to }], { layerName })
        break
      }
      case 'words': {
        const height = letters[figure.role]
        const y = up(figure.at[1]) - below[figure.role]
        const at = point3d(figure.at[0], y)
        dxf.addText(at, height, oneLine(figure.text), {
          layerName,
          horizontalAlignment: TextHorizontalAlignment.Center,
          secondAlignmentPoint: at,
        })
      }
    }
  }
  return dxf.stringify()
}

function up(y: number): number {
  return y === 0 ? 0 : -y
}

/** A line end within a value would end the tag. */
function oneLine(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim()
}
