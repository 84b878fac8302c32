/** The hardware of a show: what its works need, less what is in stock. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { hardwareOf } from '../../../src/crew/hardware.ts'
import { hardwareWork } from '../../../src/crew/show.ts'
import type { Reading } from '../service.ts'
import type { Wishes } from '../sheets/wishes.ts'
import { calledWork, crewShow, faceNameOf, stockedFixings } from './show.ts'

export function hardware(
  reading: Reading,
  { exhibition }: Received<'crew.hardware'>,
  wishes: Wishes = {},
): Output<'crew.hardware'> {
  const { works, crew } = crewShow(reading, exhibition, wishes)
  const library = stockedFixings(reading.db)
  const inLibrary = new Set(library.map(fixing => fixing.name))
  const made = hardwareOf(works.map(hardwareWork), library, crew.spare, crew.teams)
  const names = new Map(works.map(({ elevation }) => [elevation.wall.face, faceNameOf(elevation)]))
  const unknown = works.filter(work => work.answer === null)
  return {
    spare: crew.spare,
    lines: [...made.lines],
    boxes: made.boxes
      .filter(box => box.lines.length > 0)
      .map(box => ({ face: box.face, faceName: names.get(box.face) ?? '', lines: box.lines })),
    bits: [...made.bits],
    locks: made.locks,
    unknown: unknown.map(work => ({ ...calledWork(work), why: work.problem })),
    findings: [
      ...unknown.map(
        (work): Finding => ({
          severity: 'settle',
          code: 'hardware-unknown',
          subject: { kind: 'placement', id: work.placed.placement },
          text: `${work.called} is not in the hardware: ${work.problem}`,
          figures: {},
        }),
      ),
      ...works.flatMap(work =>
        hardwareWork(work)
          .fixings.filter(name => !inLibrary.has(name))
          .map(
            (name): Finding => ({
              severity: 'settle',
              code: 'hardware-not-chosen',
              subject: { kind: 'placement', id: work.placed.placement },
              text: `${work.called}: ${name}. Choose it from the library, so that it can be counted in stock.`,
              figures: { fixing: name },
            }),
          ),
      ),
      ...(made.locks.agree
        ? []
        : [
            {
              severity: 'stop',
              code: 'locks-miscounted',
              subject: { kind: 'exhibition', id: exhibition },
              text: `The works say ${made.locks.byWorks} locks, the walls have marks for ${made.locks.byMarks}. Count them again before anything hangs.`,
              figures: { byWorks: made.locks.byWorks, byMarks: made.locks.byMarks },
            } satisfies Finding,
          ]),
    ],
  }
}
