/** The hardware of a show: what its works need, less what is in stock. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { hardwareOf } from '../../../src/crew/hardware.ts'
import { hardwareWork } from '../../../src/crew/show.ts'
import type { Reading } from '../service.ts'
import { calledWork, crewShow, faceNameOf, stockedFixings } from './show.ts'

export function hardware(reading: Reading, { exhibition }: Received<'crew.hardware'>): Output<'crew.hardware'> {
  const { works, crew } = crewShow(reading, exhibition)
  const made = hardwareOf(works.map(hardwareWork), stockedFixings(reading.db), crew.spare)
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
      ...made.lines
        .filter(line => !line.chosen)
        .map(
          (line): Finding => ({
            severity: 'settle',
            code: 'hardware-not-chosen',
            subject: { kind: 'exhibition', id: exhibition },
            text: `${line.needed} × ${line.what}: choose what these works hang on.`,
            figures: { needed: line.needed },
          }),
        ),
      ...(made.locks.agree
        ? []
        : [
            {
              severity: 'stop',
              code: 'locks-miscounted',
              subject: { kind: 'exhibition', id: exhibition },
              text: `The works need ${made.locks.byNeeds} locks, the walls have marks for ${made.locks.byMarks}. Count them again before anything hangs.`,
              figures: { byNeeds: made.locks.byNeeds, byMarks: made.locks.byMarks },
            } satisfies Finding,
          ]),
    ],
  }
}
