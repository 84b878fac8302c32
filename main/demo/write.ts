/**
 * Writes the demo into a new catalogue. It is made in a folder of its own beside the place where it shall lie and moved
 * there whole, so that a cancel or a full disk leaves nothing half-written. With the same clock, ids and seed every run
 * gives the same catalogue.
 */
import { existsSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { availableParallelism, tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { Refusal } from '../../src/contract/refusal.ts'
import { createCatalogue } from '../database/catalogue.ts'
import { openHandles } from '../files/handles.ts'
import { makeFolder } from '../files/named-places.ts'
import { openStore } from '../files/store.ts'
import { damages } from './museum/damage.ts'
import { bestWall } from './museum/placements.ts'
import { renderCloseUp } from './pictures/close-up.ts'
import { renderAll } from './pictures/render-all.ts'
import { dayClock, openSession } from './session.ts'
import { recipes, writeChecklist, writeList, writeMeasures, writePictures } from './write-checklist.ts'
import { writeChecked, writeHung } from './write-hanging.ts'
import { writeHouse } from './write-house.ts'
import { writeLoans } from './write-loans.ts'
import { writePlan } from './write-plan.ts'
import { writeAir, writeDamages, writeRecord } from './write-record.ts'
import { writeRules } from './write-rules.ts'
import { writeSets } from './write-sets.ts'
import { writeStands } from './write-stands.ts'
import { writePlacements, writePlans } from './write-walls.ts'

export interface DemoOptions {
  /** ISO 8601; asked once: the demo's days count back from it. */
  readonly now: () => string
  readonly newId: () => string
  readonly seed?: number
  /** Picture makers at once; as many as the machine has, four at most, where left out. 1 works without threads. */
  readonly threads?: number
  /** Longer side of the pictures, pixels. */
  readonly pictureSize?: number
  /** The picture makers' code, where it is bundled. */
  readonly thread?: URL
  readonly signal?: AbortSignal
  readonly progress?: (done: number, total: number, words: string) => void
}

export interface Demo {
  readonly catalogue: string
  readonly exhibitions: readonly string[]
  /** Faces of the walls; the first is the one to open on. */
  readonly walls: readonly string[]
  readonly works: number
}

/** The year of the ferry rope; any number gives other pictures. */
const SEED = 1931
/** Days before today on which things are said to have happened. */
const days = {
  house: 74,
  plan: 70,
  checklist: 61,
  list: 33,
  pictures: 30,
  measures: 18,
  sets: 15,
  plans: 12,
  placements: 9,
  stands: 6,
  rules: 5,
  loans: 5,
  record: 5,
  hung: 4,
  checked: 3,
} as const
/** What comes after the pictures, counted as so many pictures. */
const STEPS = 11

/** Refuses `catalogue-exists` where the file is; a cancel rejects with the signal's reason. */
export async function writeDemo(file: string, options: DemoOptions): Promise<Demo> {
  if (existsSync(file)) {
    throw new Refusal('catalogue-exists', 'There is a file of this name already. Choose another name.', {
      details: { file },
    })
  }
  const home = dirname(file)
  makeFolder(home, 'file')
  const making = mkdtempSync(join(home, '.making-'))
  try {
    const demo = await writeInto(join(making, basename(file)), options)
    // The files first, the catalogue that names them last.
    const parts = readdirSync(making).sort((a, b) => Number(a === basename(file)) - Number(b === basename(file)))
    for (const part of parts) renameSync(join(making, part), join(home, part))
    return { ...demo, catalogue: file }
  } finally {
    rmSync(making, { recursive: true, force: true })
  }
}

async function writeInto(file: string, options: DemoOptions): Promise<Demo> {
  const signal = options.signal ?? new AbortController().signal
  const total = recipes.length + STEPS
  let done = 0
  const tell = (words: string) => options.progress?.(done, total, words)
  const step = (words: string) => {
    signal.throwIfAborted()
    tell(words)
    done += 1
  }
  const today = options.now()
  const pictures = await renderAll(recipes, options.seed ?? SEED, {
    threads: options.threads ?? Math.min(4, availableParallelism()),
    longSide: options.pictureSize,
    thread: options.thread,
    signal,
    progress: made => {
      done = made
      tell(`Painting picture ${made} of ${recipes.length}`)
    },
  })
  const clock = dayClock(today)
  const handlesFolder = mkdtempSync(join(tmpdir(), 'hangwright-demo-'))
  const handles = openHandles(handlesFolder)
  const catalogue = createCatalogue(file, { now: clock.now, newId: options.newId })
  try {
    const session = openSession({ catalogue, store: openStore(file), handles, clock, newId: options.newId, signal })
    step('Measuring the rooms')
    const house = await writeHouse(session, days.house)
    session.sit(house.coordinator)
    await writePlan(session, days.plan)
    step('Entering the checklist')
    const entered = await writeChecklist(session, house, today, days.checklist)
    step('Reading a lender’s list')
    const listed = await writeList(session, handles, house, entered, days.list)
    step('Adding pictures')
    const workOf = (key: string) => entered.works.get(key)?.work ?? listed.get(key)
    await writePictures(session, handles, pictures, workOf, days.pictures)
    step('Measuring the works')
    session.sit(house.technician)
    await writeMeasures(session, entered, days.measures)
    step('Putting sets together')
    session.sit(house.coordinator)
    const show = await writeSets(session, entered, days.sets)
    step('Planning the walls')
    await writePlans(session, house, show, today, days.plans)
    step('Laying out the walls')
    await writePlacements(session, house, show, days.placements)
    await writeStands(session, house, show, days.stands)
    await writeRules(session, show, days.rules)
    session.sit(house.registrar)
    await writeLoans(session, house, workOf, today, days.loans)
    const damaged = await writeRecord(session, show, today, days.record)
    step('Photographing what is damaged')
    const photos = []
    for (const each of damages.flatMap(({ photos }) => photos)) {
      signal.throwIfAborted()
      photos.push(await renderCloseUp(each, options.seed ?? SEED, options.pictureSize))
    }
    await writeDamages(session, handles, photos, damaged, today, days.record)
    await writeAir(session, handles, today, days.record)
    step('Hanging the first walls')
    session.sit(house.technician)
    await writeHung(session, house, show, days.hung)
    session.sit(house.coordinator)
    await writeChecked(session, house, show, days.checked)
    step('Closing the demo')
    const first = house.faces.get(bestWall) ?? ''
    const walls = [first, ...[...house.faces.values()].filter(face => face !== first)]
    const { works } = session.read('work.counts', { exhibition: show.exhibition })
    tell('The demo is ready')
    return { catalogue: file, exhibitions: [show.exhibition], walls, works }
  } finally {
    catalogue.close()
    rmSync(handlesFolder, { recursive: true, force: true })
  }
}
