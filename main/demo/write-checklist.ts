/** The demo's checklist: works as their lenders list them, their pictures, a messy list, and what the tape then said. */
import { writeFileSync } from 'node:fs'
import type { Input } from '../../src/contract/contract.ts'
import type { Handles } from '../files/handles.ts'
import { hangingFigures, listedSizes, massOf, measuredSizes } from './measures.ts'
import { backOf } from './museum/backs.ts'
import { exhibition, lenders, makers, sections } from './museum/house.ts'
import { list, listKinds, listPictures, listText } from './museum/list.ts'
import type { DemoWork } from './museum/work-shape.ts'
import { works } from './museum/works.ts'
import type { RenderedPicture } from './pictures/render.ts'
import type { Do, Session } from './session.ts'
import type { HouseIds } from './write-house.ts'

export interface ShowIds {
  readonly exhibition: string
  readonly sections: readonly string[]
  /** By the work's key. */
  readonly works: ReadonlyMap<string, { readonly work: string; readonly entry: string }>
}

type Facts = Input<'work.update'>['changes']

function factsOf(work: DemoWork): Facts {
  return {
    glazing: { was: '', to: work.glazing },
    sensitivity: { was: '', to: work.sensitivity },
    lightLimit: { was: null, to: work.lux },
    ...Object.fromEntries(Object.entries(work.known ?? {}).map(([field, to]) => [field, { was: '', to }])),
    ...(work.note === undefined ? {} : { note: { was: '', to: work.note } }),
    ...(work.handling === undefined ? {} : { handling: { was: '', to: work.handling } }),
    ...(work.loanTerms === undefined ? {} : { loanTerms: { was: '', to: work.loanTerms } }),
    ...(work.notBeside === undefined ? {} : { notBeside: { was: '', to: work.notBeside } }),
  }
}

function addWork(act: Do, work: DemoWork, house: HouseIds, show: string, section: string) {
  const added = act('work.add', {
    title: work.title,
    maker: makers[work.maker],
    dateText: work.date,
    medium: work.medium,
    kind: work.kind,
    creditLine: lenders[work.lender].creditLine,
    lender: house.lenders[work.lender],
    number: { kind: work.lender === 'house' ? 'permanent' : 'lender', text: work.number },
    exhibition: show,
    section,
  })
  for (const [kind, text] of work.more ?? []) act('work.addNumber', { work: added.id, kind, text })
  act('work.update', { id: added.id, changes: factsOf(work) })
  for (const size of listedSizes(work)) act('work.addSize', { work: added.id, ...size })
  const mass = massOf(work)
  if (mass?.kind === 'listed') act('work.addMass', { work: added.id, ...mass })
  return { work: added.id, entry: added.entry ?? '' }
}

/** A day so many days from a moment. */
export function dayAfter(moment: string, days: number): string {
  return new Date(Date.parse(moment) + days * 86_400_000).toISOString().slice(0, 10)
}

export function writeChecklist(session: Session, house: HouseIds, today: string, daysAgo: number): Promise<ShowIds> {
  return session.edit(`Enter the checklist of ${exhibition.title}`, 'work.add', daysAgo, act => {
    const show = act('exhibition.add', {
      title: exhibition.title,
      venue: exhibition.venue,
      opens: dayAfter(today, exhibition.opensIn),
      closes: dayAfter(today, exhibition.opensIn + exhibition.openFor),
    }).id
    act('exhibition.update', { id: show, changes: { note: { was: '', to: exhibition.note } } })
    const made = sections.map(title => act('section.add', { exhibition: show, title }).id)
    const added = works.map(work => [work.key, addWork(act, work, house, show, made[work.section] ?? '')] as const)
    act('exhibition.renumber', { id: show })
    return { exhibition: show, sections: made, works: new Map(added) }
  })
}

/** Imports the lender's list as it came; its works join a section, its questions stay open. */
export async function writeList(
  session: Session,
  handles: Handles,
  house: HouseIds,
  show: ShowIds,
  daysAgo: number,
): Promise<ReadonlyMap<string, string>> {
  const { handle, path } = handles.create(list.name)
  writeFileSync(path, listText)
  await session.long(
    'import.accept',
    { handle, exhibition: show.exhibition, lender: house.lenders[list.lender] },
    daysAgo,
  )
  const come = session.read('work.list', {
    exhibition: show.exhibition,
    lender: house.lenders[list.lender],
    limit: 500,
  }).works
  await session.edit(
    `Put the works of the ${lenders[list.lender].name} into their section`,
    'entry.move',
    daysAgo,
    act => {
      act('entry.move', {
        entries: come.flatMap(line => line.entry?.id ?? []),
        section: show.sections[list.section] ?? null,
        before: null,
      })
      for (const line of come) {
        act('work.update', {
          id: line.id,
          changes: {
            kind: { was: line.kind, to: listKinds[line.number] ?? line.kind },
            lightLimit: { was: line.lightLimit, to: 50 },
            sensitivity: { was: line.sensitivity, to: 'high' },
          },
        })
      }
      act('exhibition.renumber', { id: show.exhibition })
    },
  )
  return new Map(come.map(line => [line.number, line.id]))
}

/** Every picture of the demo, in the order of `recipes`. */
export const recipes = [
  ...works.map(work => ({
    key: work.key,
    medium: work.picture[0],
    scene: work.picture[1],
    palette: work.picture[2],
    height: work.image[0],
    width: work.image[1],
  })),
  ...listPictures,
] as const

export async function writePictures(
  session: Session,
  handles: Handles,
  pictures: readonly RenderedPicture[],
  workOf: (key: string) => string | undefined,
  daysAgo: number,
): Promise<void> {
  const inputs = pictures.flatMap((picture, index) => {
    const work = workOf(recipes[index]?.key ?? '')
    if (work === undefined) return []
    const { handle, path } = handles.create(picture.name)
    writeFileSync(path, picture.bytes)
    return [{ work, handle }]
  })
  await session.longs(`Add pictures of ${inputs.length} works`, 'work.addPicture', inputs, daysAgo)
}

/** What the technician measured and weighed in the store. */
export async function writeMeasures(session: Session, show: ShowIds, daysAgo: number): Promise<void> {
  await session.edit('Measure and weigh the works in the store', 'work.addSize', daysAgo, act => {
    for (const [index, work] of works.entries()) {
      const id = show.works.get(work.key)?.work ?? ''
      for (const size of measuredSizes(work)) act('work.addSize', { work: id, ...size })
      const mass = massOf(work)
      if (mass?.kind === 'measured') act('work.addMass', { work: id, ...mass })
      if (work.hangs === null) continue
      const [height, width] = hangingFigures(work)
      act('work.setBack', { work: id, ...backOf(work.hangs, height, width, index % 3 === 0 ? 'front' : 'back') })
    }
  })
}
