/** The demo as it lies in its catalogue: written by the services, whole, the same each time, with its trouble found. */
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Catalogue, openCatalogue } from '../../../main/database/catalogue.ts'
import { ways } from '../../../main/demo/museum/backs.ts'
import { sections } from '../../../main/demo/museum/house.ts'
import { blocks, rows } from '../../../main/demo/museum/placements.ts'
import { sets } from '../../../main/demo/museum/sets.ts'
import { troubles } from '../../../main/demo/museum/trouble.ts'
import { works } from '../../../main/demo/museum/works.ts'
import { type Demo, writeDemo } from '../../../main/demo/write.ts'
import { recipes } from '../../../main/demo/write-checklist.ts'
import { openHandles } from '../../../main/files/handles.ts'
import { type FileStore, openStore } from '../../../main/files/store.ts'
import type { Job, Reading, Writing } from '../../../main/services/service.ts'
import { catalogueServices as services } from '../../../main/services/table.ts'
import { methodKeys } from '../../../src/hang/method-keys.ts'

const NOW = '2031-03-14T09:00:00.000Z'
/** Small pictures: how they look at full size is another test's matter. */
const PIXELS = 160
const folder = mkdtempSync(join(tmpdir(), 'hangwright-demo-test-'))

function ids(): () => string {
  let n = 0
  return () => `d${(n++).toString(36).padStart(6, '0')}`
}

let demo: Demo
let catalogue: Catalogue
let store: FileStore
let reading: Reading
let show: string

beforeAll(async () => {
  const file = join(folder, 'demo.hangwright')
  demo = await writeDemo(file, { now: () => NOW, newId: ids(), threads: 2, pictureSize: PIXELS })
  catalogue = openCatalogue(file, { now: () => NOW, newId: ids() })
  store = openStore(file)
  reading = { db: catalogue.db, store, handles: openHandles(join(folder, 'handles')), now: () => NOW, person: null }
  show = demo.exhibitions[0] ?? ''
}, 180_000)

afterAll(() => {
  catalogue?.close()
  rmSync(folder, { recursive: true, force: true })
})

function lines() {
  return services['work.list'](reading, { exhibition: show, limit: 500 }).works
}

function workOf(key: string): string {
  const set = sets.find(each => each.key === key)
  if (set !== undefined) return lines().find(line => line.title === set.title)?.id ?? ''
  if (sets.some(each => each.parts.includes(key))) return workOfPart(key)
  const number = works.find(work => work.key === key)?.number
  return lines().find(line => line.number === number)?.id ?? ''
}

/** A part is in the show by its set. */
function workOfPart(key: string): string {
  const number = works.find(work => work.key === key)?.number
  return (
    lines()
      .flatMap(line => line.parts)
      .find(part => part.number === number)?.id ?? ''
  )
}

function runningOf(key: string): string {
  return lines().find(line => line.id === workOf(key))?.entry?.running ?? ''
}

/** Every text in a value, at any depth. */
function textsOf(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value]
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(textsOf) : []
}

/** Every row of every table but SQLite's own, as text. */
function dump(file: string): string {
  const db = new Database(file, { readonly: true })
  try {
    const names = db
      .prepare<[], { name: string }>(
        `SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'work_fts%' ORDER BY name`,
      )
      .all()
    return names
      .map(
        ({ name }) =>
          `${name}\n${db
            .prepare(`SELECT * FROM "${name}" ORDER BY 1, 2`)
            .all()
            .map(row => JSON.stringify(row))
            .join('\n')}`,
      )
      .join('\n\n')
  } finally {
    db.close()
  }
}

describe('the demo', () => {
  it('has three rooms that close, fourteen walls and one show in four sections', () => {
    const { rooms, building } = services['room.list'](reading, {})
    expect(building?.name).toBe('Larkweir House')
    expect(rooms.map(room => room.walls.length)).toEqual([4, 5, 5])
    expect(rooms.every(room => room.closure.closes)).toBe(true)
    expect(services['room.findings'](reading, { exhibition: show }).findings).toEqual([])
    expect(demo.walls).toHaveLength(14)
    expect(services['exhibition.list'](reading, {}).exhibitions).toMatchObject([
      { title: 'What the Weir Keeps', works: 70, placed: 55 },
    ])
    const frieze = services['exhibition.frieze'](reading, { exhibition: show })
    expect(frieze.sections.map(section => section.title)).toEqual([...sections])
    expect(frieze.works.map(work => work.running)).toEqual(Array.from({ length: 70 }, (_, index) => String(index + 1)))
  })

  it('has about sixty works of five lenders and the house, some without size, some with questions', () => {
    const counts = services['work.counts'](reading, { exhibition: show })
    expect(counts.works).toBe(70)
    expect(demo.works).toBe(70)
    expect(counts.lenders).toHaveLength(6)
    expect(counts.lenders.every(lender => lender.works >= 5)).toBe(true)
    expect(counts.kinds.map(({ kind }) => kind)).not.toContain('')
    expect(counts.unplaced).toBe(15)
    expect(counts.questions).toBeGreaterThanOrEqual(4)
    expect(counts.differs).toBe(1)
    expect(counts.unmeasured).toBeGreaterThanOrEqual(8)
    expect(lines().filter(line => line.size === null).length).toBeGreaterThanOrEqual(3)
  })

  it('keeps what the messy list said, as it was written', () => {
    const { questions } = services['import.questions'](reading, { exhibition: show, limit: 100 })
    const raw = questions.map(question => question.text).join('\n')
    for (const written of ['21 x 29.7', '60.6', '2-Jan']) expect(raw).toContain(written)
    expect(questions.every(question => question.answer === null && question.question !== '')).toBe(true)
    expect(services['import.runs'](reading, {}).runs).toMatchObject([{ name: 'tamble-navigation-loans.csv', added: 8 }])
  })

  it('hangs works in every method and way', () => {
    const methods = new Set(
      lines()
        .map(line => line.method)
        .filter(method => method !== ''),
    )
    expect(methods).toEqual(new Set(methodKeys))
    expect(ways).toHaveLength(17)
    const sides = new Set<string>()
    for (const work of works) {
      if (work.hangs === null) continue
      const got = services['work.get'](reading, { id: workOf(work.key) })
      expect(got.backs, work.key).toHaveLength(1)
      sides.add(got.backs[0]?.seenFrom ?? '')
    }
    expect(sides).toEqual(new Set(['front', 'back']))
  })

  it('gives every work that is placed marks of its own, except for the trouble', () => {
    const { findings } = services['finding.list'](reading, { exhibition: show })
    for (const code of ['not-measured', 'no-back', 'back-invalid', 'hangers-off-the-work', 'mark-off-wall']) {
      expect(
        findings.filter(finding => finding.code === code),
        code,
      ).toEqual([])
    }
  })

  it.each(troubles.map(trouble => [trouble.says, trouble] as const))('has its trouble found: %s', (_, trouble) => {
    const elevations = demo.walls.map(face => services['wall.elevation'](reading, { exhibition: show, face }))
    const work = workOf(trouble.work)
    const on = elevations.find(each => each.works.some(placed => placed.work === work))
    const placement = on?.works.find(placed => placed.work === work)?.placement
    const { findings } = services['finding.list'](reading, { exhibition: show, face: on?.wall.face ?? '' })
    const found = findings.find(
      finding => finding.code === trouble.code && [work, placement].includes(finding.subject.id),
    )
    expect(found, trouble.code).toBeDefined()
    expect(['stop', 'settle']).toContain(found?.severity)
    if (trouble.figure !== undefined) expect(found?.figures[trouble.figure[0]]).toBeCloseTo(trouble.figure[1], 6)
  })

  it('has no other trouble on its walls', () => {
    const meant = new Set([...troubles.map(trouble => trouble.code), 'off-wall'])
    const { findings } = services['finding.list'](reading, { exhibition: show })
    const placements = new Set(
      demo.walls.flatMap(face =>
        services['wall.elevation'](reading, { exhibition: show, face }).works.map(work => work.placement),
      ),
    )
    const others = findings.filter(
      finding => finding.severity !== 'fits' && placements.has(finding.subject.id) && !meant.has(finding.code),
    )
    expect(others.map(finding => `${finding.code}: ${finding.text}`)).toEqual([])
  })

  it('opens on its long wall with seven works in two hands’ and a loom’s media and one kept layout', () => {
    const best = services['wall.elevation'](reading, { exhibition: show, face: demo.walls[0] ?? '' })
    expect(best.wall.length).toBe(9200)
    expect(best.works.map(work => work.running)).toEqual(['1', '2', '3', '4', '5', '6', '7'])
    expect(best.works.every(work => work.picture !== null && work.fixing !== null && work.back !== null)).toBe(true)
    expect(best.layouts).toMatchObject([{ name: 'First try, cloth in the middle', works: 7 }])
    const compared = services['layout.compare'](reading, { id: best.layouts[0]?.id ?? '' })
    expect(compared.places.filter(place => Math.abs((place.kept?.x ?? 0) - (place.now?.x ?? 0)) > 1)).not.toHaveLength(
      0,
    )
  })

  it('has one wall half drilled: two works hung, one of them checked by somebody else, and a hole of a work that left', () => {
    const face = demo.walls.find(each =>
      services['wall.elevation'](reading, { exhibition: show, face: each }).made.some(mark => mark.placement === null),
    )
    const { marks, dead } = services['mark.ofFace'](reading, { exhibition: show, face: face ?? '' })
    const states = (key: string) => marks.filter(mark => mark.name === runningOf(key)).map(mark => mark.state)
    expect(states('after-rain')).toEqual(['drilled', 'drilled'])
    expect(states('mill-lane')).toEqual(['drilled', 'drilled'])
    expect(states('dye-yard').every(state => state === 'marked')).toBe(true)
    expect(states('steps-night').every(state => state === 'planned')).toBe(true)
    expect(marks.every(mark => mark.made === null || mark.made.services?.by === 'Dov Hasterley')).toBe(true)
    // Two rings left two holes; one is filled.
    expect(dead).toHaveLength(1)
    expect(dead[0]?.drilled?.by).toBe('Dov Hasterley')
    const { steps } = services['placement.steps'](reading, { exhibition: show, face: face ?? '' })
    expect(new Map(steps.map(step => [step.state, step.by]))).toEqual(
      new Map([
        ['hung', 'Dov Hasterley'],
        ['level', 'Dov Hasterley'],
        ['checked', 'Orla Fenwright'],
      ]),
    )
  })

  it('has locks with their tools, one of them shut, and the hardware counted the same both ways', () => {
    const { locks } = services['lock.list'](reading, { exhibition: show })
    expect(
      locks.filter(lock => lock.called === 'lock').map(lock => [lock.wall, lock.tool !== '', lock.locked !== null]),
    ).toEqual([
      ['north wall', true, true],
      ['south wall', true, false],
    ])
    const { locks: counted, lines: kinds } = services['crew.hardware'](reading, { exhibition: show })
    expect(counted.agree).toBe(true)
    // Everything of the demo is chosen; what stands on the floor is fixed by nothing, and nothing is asked of it.
    expect(services['crew.hardware'](reading, { exhibition: show }).findings.map(finding => finding.code)).toEqual([])
    expect(kinds.some(kind => kind.inStock === null) && kinds.some(kind => (kind.inStock ?? 0) > 0)).toBe(true)
    expect(services['equipment.list'](reading, {}).equipment.map(each => each.carriesKg)).toContain(null)
  })

  it('is told in the units of its reader: no millimetre and no kilogram for one who reads inches, nor the other way', () => {
    /** Sentences with a figure in such a unit; names that the house gave its things are said as they are. */
    const saying = (unit: 'mm' | 'in', other: RegExp): readonly string[] => {
      const reader = { id: 'r', name: 'Reader', role: '', lengthUnit: unit, fraction: 16, paper: 'A4' } as const
      const asked: Reading = { ...reading, person: reader }
      const hardware = services['crew.hardware'](asked, { exhibition: show })
      const inLibrary = new Set(hardware.lines.filter(line => line.fixing !== null).map(line => line.what))
      const told = [
        services['crew.plan'](asked, { exhibition: show }),
        services['crew.orders'](asked, { exhibition: show }),
        hardware.findings,
        hardware.unknown,
        hardware.lines.map(line => line.what).filter(what => ![...inLibrary].some(name => what.endsWith(name))),
        services['finding.list'](asked, { exhibition: show }),
      ]
      return textsOf(told).filter(text => other.test(text.replace(/[\u00a0\u2009]/g, ' ')))
    }
    expect(saying('in', /(^|[\s(×])[\d.,]+ ?(mm|cm|kg)\b/)).toEqual([])
    expect(saying('mm', /(^|[\s(×])[\d./]+ ?(in|lb|ft)\b/)).toEqual([])
    // Not for want of figures: both say some.
    expect(saying('in', /\d ?(in|lb)\b/).length).toBeGreaterThan(20)
    expect(saying('mm', /\d ?(mm|kg)\b/).length).toBeGreaterThan(20)
  })

  it('says of each rating where it stands, and has kinds without any', () => {
    const { fixings } = services['fixing.list'](reading, {})
    const rated = fixings.filter(fixing => fixing.ratedKg !== null)
    expect(rated.every(fixing => fixing.source !== '')).toBe(true)
    expect(fixings.flatMap(fixing => fixing.ratings).every(rating => rating.source !== '')).toBe(true)
    expect(
      fixings.filter(fixing => fixing.ratedKg === null && fixing.ratings.length === 0).length,
    ).toBeGreaterThanOrEqual(1)
    expect(
      fixings.every(
        fixing => fixing.ratedKg === null || fixing.bit !== '' || ['hook', 'rail-hook'].includes(fixing.kind),
      ),
    ).toBe(true)
  })

  it('knows what is behind its walls: studs one by one, joints, a ceiling that falls, a rail, another floor', () => {
    const walls = services['room.list'](reading, {}).rooms.flatMap(room => room.walls)
    expect(walls.some(wall => wall.studs.length > 3)).toBe(true)
    expect(walls.some(wall => wall.joints.length > 3)).toBe(true)
    expect(walls.some(wall => wall.ceiling.length > 1)).toBe(true)
    expect(walls.some(wall => wall.rail.length > 1 && wall.railKgPerMetre !== null)).toBe(true)
    expect(walls.some(wall => wall.datumBy === 'middle' && wall.floor.length > 1)).toBe(true)
    expect(walls.filter(wall => wall.behindSeen !== '').length).toBeGreaterThan(5)
  })

  it('places each row where the data says', () => {
    for (const row of rows) {
      const [key = ''] = row.works
      const first = workOf(blocks.find(block => block.key === key)?.works[0] ?? key)
      expect(lines().find(line => line.id === first)?.entry?.where, row.wall).not.toBeNull()
    }
  })

  it('has a picture, kept under its hash, for every recipe', () => {
    // A set shows the first picture of its parts; the parts have each their own.
    const inSets = sets.flatMap(set => set.parts.map(workOfPart))
    const hashes = [
      ...lines().flatMap(line => (line.parts.length > 0 ? [] : (line.picture ?? []))),
      ...inSets.flatMap(id => services['work.get'](reading, { id }).pictures.map(picture => picture.hash)),
    ]
    expect(hashes).toHaveLength(recipes.length)
    expect(new Set(hashes).size).toBe(recipes.length)
    for (const hash of hashes) expect(existsSync(store.path(hash))).toBe(true)
  })

  it('is lit, so that works have doses: some beyond a year of light, one beyond ultraviolet', () => {
    const { lines, total } = services['light.list'](reading, {})
    expect(total).toBeGreaterThan(30)
    expect(lines.filter(line => line.most > 0).length).toBeGreaterThan(20)
    expect(lines[0]?.budgets[0]?.ends).toMatch(/^\d{4}-/u)
    expect(lines.some(line => line.violet.most > 0)).toBe(true)
    expect(lines.filter(line => line.violets.some(limit => limit.hours > 0))).toHaveLength(1)
  })

  it('has a damage told in time and closed by a signed report, and one whose owner nobody told, which keeps it in the house', async () => {
    const { lines: told, open } = services['damage.list'](reading, {})
    expect([told.length, open]).toEqual([2, 1])
    const [stays, closed] = told
    expect(stays).toMatchObject({ reference: 'D-0002', work: workOf('quay-evening'), lent: true, closedAt: null })
    // Found five days before; a day is what the house gives itself.
    expect(stays?.clock).toMatchObject({ toldAt: null, waited: 120, late: 96, within: 24 })
    expect(stays?.lacks.map(({ code }) => code)).toEqual(['report-draft', 'owner-not-told', 'no-action'])
    expect(closed).toMatchObject({ reference: 'D-0001', work: workOf('two-kilns'), lacks: [] })
    expect(closed?.closedAt).not.toBeNull()
    expect(closed?.clock).toMatchObject({ late: 0, within: 24 })
    expect(closed?.clock?.waited).toBeCloseTo(2.5, 6)
    for (const [head, complete] of [
      [stays, false],
      [closed, true],
    ] as const) {
      const { reports, movedFirst } = services['damage.get'](reading, { id: head?.id ?? '' })
      expect(reports.map(report => [report.complete, report.photos.length])).toEqual([[complete, 2]])
      expect(movedFirst).toBeNull()
      for (const photo of reports.flatMap(({ photos }) => photos)) {
        expect(existsSync(store.path(photo.hash))).toBe(true)
        expect([photo.shows === '', photo.findings.length]).toEqual([false, 1])
      }
    }
    // Each tried in an edit that is thrown away.
    const newId = ids()
    const carry = (key: string) =>
      catalogue.edit({ procedure: 'movement.add', person: { id: '', name: 'Dov Hasterley' } }, edit => {
        const writing: Writing = { ...reading, db: edit.db, newId: () => `van ${newId()}`, label: () => {} }
        const { id: to } = services['location.add'](writing, { kind: 'vehicle', name: 'Van 3' })
        services['movement.add'](writing, { works: [workOf(key)], to, at: NOW, by: 'Dov Hasterley' })
        throw new Error('nothing bars it')
      })
    await expect(carry('quay-evening')).rejects.toThrow(/stays in the house: its damage D-0002 is not closed/)
    await expect(carry('two-kilns')).rejects.toThrow('nothing bars it')
  })

  it('is made of few edits, each with a label and a person, oldest first', () => {
    const { edits } = services['edit.list'](reading, { limit: 500 })
    expect(edits.length).toBeLessThanOrEqual(24)
    expect(edits.every(edit => edit.label.length > 5)).toBe(true)
    expect(edits.filter(edit => edit.person === '')).toHaveLength(1)
    const times = edits.map(edit => edit.at)
    expect(times).toEqual([...times].sort().reverse())
    expect(times.every(at => at < NOW)).toBe(true)
  })

  it('passes the catalogue’s own check', async () => {
    const job: Job = {
      ...reading,
      newId: ids(),
      signal: new AbortController().signal,
      progress: () => {},
      write: () => Promise.reject(new Error('a check writes nothing')),
      held: read => read(),
      alone: () => Promise.reject(new Error('a check changes no file')),
    }
    expect(await services['catalogue.check'](job, {})).toEqual({ ok: true, integrity: [] })
  })
})

describe('writing it', () => {
  it('gives the same catalogue again from the same clock and ids', async () => {
    const file = join(folder, 'again', 'demo.hangwright')
    await writeDemo(file, { now: () => NOW, newId: ids(), threads: 1, pictureSize: PIXELS })
    const again = dump(file).split('\n')
    const first = dump(demo.catalogue).split('\n')
    expect(again.length).toBe(first.length)
    expect(again.find((line, index) => line !== first[index])).toBeUndefined()
  }, 180_000)

  it('leaves nothing behind when it is cancelled, neither while painting nor while writing', async () => {
    for (const at of ['Painting', 'Adding pictures']) {
      const home = join(folder, `cancelled ${at}`)
      const abort = new AbortController()
      const work = writeDemo(join(home, 'demo.hangwright'), {
        now: () => NOW,
        newId: ids(),
        threads: 2,
        pictureSize: PIXELS,
        signal: abort.signal,
        progress: (_, __, words) => {
          if (words.startsWith(at)) abort.abort(new Error('enough'))
        },
      })
      await expect(work).rejects.toThrow('enough')
      expect(readdirSync(home)).toEqual([])
    }
  }, 180_000)

  it('never writes over a file', async () => {
    const file = join(folder, 'mine.hangwright')
    writeFileSync(file, 'mine')
    await expect(writeDemo(file, { now: () => NOW, newId: ids() })).rejects.toMatchObject({ code: 'catalogue-exists' })
    expect(readdirSync(folder).filter(name => name.startsWith('.making'))).toEqual([])
  })
})
