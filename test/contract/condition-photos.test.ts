/** Photographs of a condition report: kept whole, dated by their camera, told of what can't be taken, signed with it. */
import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { expect, onTestFinished, test } from 'vitest'
import { answer } from '../../main/hosts/answer.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { noisy, pngHeader, tiffOfCamera } from './camera-files.ts'
import { callOn, give, makeFixture, onePixel } from './fixture.ts'

async function drafted() {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-photos-'))
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-01T08:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(async () => {
    await host.close()
    rmSync(folder, { recursive: true, force: true })
  })
  await callOn(host, 'desk.sit', { person: known.person })
  const { id: report } = await callOn(host, 'condition.add', { work: known.pans, kind: 'incoming' })
  const mark = { form: 'mark' as const, points: [{ x: 10, y: 10 }] }
  const said = { term: 'paper.stain', age: 'old' as const, severity: 'slight' as const }
  const { id: finding } = await callOn(host, 'condition.addFinding', { report, ...mark, ...said })
  return { host, file, report, finding }
}

async function photograph(width: number, height: number, camera: Record<string, string> = {}): Promise<Buffer> {
  const picture = sharp({ create: { width, height, channels: 3, background: '#806040' } })
  return picture.withExif({ IFD2: camera }).jpeg().toBuffer()
}

const refusalOf = async (host: Host, report: string, handle: string) => {
  const answered = await answer(host, 'condition.addPhoto', { report, handle })
  return answered.ok ? null : answered.refusal
}
const strokes = [[100, 200, 300, 100, 500, 220]]

test('the camera’s date counts before the file’s, a person’s before both', async () => {
  const { host, report } = await drafted()
  const bytes = await photograph(40, 30, { DateTimeOriginal: '2031:03:02 10:15:30', OffsetTimeOriginal: '+01:00' })
  const changedAt = '2031-05-01T12:00:00.000Z'
  const { id } = await callOn(host, 'condition.addPhoto', {
    report,
    handle: give(host, 'IMG_0412.jpg', bytes),
    changedAt,
  })
  const [first] = (await callOn(host, 'condition.get', { id: report })).photos
  const takenAt = '2031-03-02T09:15:30.000Z'
  expect(first).toMatchObject({ takenAt, takenFrom: 'camera', widthPx: 40, heightPx: 30, name: 'IMG_0412.jpg' })
  await callOn(host, 'condition.updatePhoto', { id, changes: { takenAt: { was: takenAt, to: changedAt } } })
  const [said] = (await callOn(host, 'condition.get', { id: report })).photos
  expect(said).toMatchObject({ takenAt: changedAt, takenFrom: 'person' })
})

test('what can’t be taken is told by its reason, and nothing of it stays', async () => {
  const { host, file, report } = await drafted()
  const before = readdirSync(`${file}-files`, { recursive: true }).length
  const large = give(host, 'scan.tif', onePixel)
  truncateSync(host.handles.path(large), 500e6)
  expect(await refusalOf(host, report, large)).toMatchObject({
    code: 'file-too-large',
    message: 'scan.tif has 500 MB; a report takes photographs of up to 268 MB. Bring it as .jpg.',
  })
  // One colour: 324 million pixels in a file of some hundred kilobytes.
  const wide = sharp({
    create: { width: 18_000, height: 18_000, channels: 3, background: '#000' },
    limitInputPixels: false,
  })
  // The bytes of a refused one are gone, so each is given anew.
  const bomb = give(host, 'bomb.png', await wide.png({ compressionLevel: 9, palette: false }).toBuffer())
  expect(await refusalOf(host, report, bomb)).toMatchObject({ code: 'too-many-pixels', message: /324 megapixels/ })
  expect(await refusalOf(host, report, give(host, 'note.jpg', Buffer.from('none')))).toMatchObject({
    code: 'no-picture',
  })
  expect(readdirSync(`${file}-files`, { recursive: true })).toHaveLength(before)
  expect((await callOn(host, 'condition.get', { id: report })).photos).toEqual([])
})

const inPassing = (host: Host) => readdirSync(host.handlesFolder).filter(name => !name.startsWith('kept-'))

test('what is empty, and a picture of 60,000 × 60,000 in a file of some kilobytes, are refused by their headers', async () => {
  const { host, report } = await drafted()
  const empty = give(host, 'IMG_0001.jpg', Buffer.alloc(0))
  expect(await refusalOf(host, report, empty)).toMatchObject({
    code: 'no-picture',
    message: 'IMG_0001.jpg is empty: there is not one byte in it. Copy it from the camera’s card again.',
  })
  const bomb = await refusalOf(host, report, give(host, 'bomb.png', pngHeader(60_000, 60_000)))
  expect(bomb).toMatchObject({ code: 'too-many-pixels', message: expect.stringContaining('3600 megapixels') })
  expect((await callOn(host, 'condition.get', { id: report })).photos).toEqual([])
  expect(inPassing(host)).toEqual([])
})

test('one that is cut off is kept for what it shows, and told', async () => {
  const { host, report } = await drafted()
  const whole = await noisy(900, 700)
  const asked = (name: string, bytes: Buffer) =>
    callOn(host, 'condition.addPhoto', { report, handle: give(host, name, bytes) })
  expect(await asked('whole.jpg', whole)).toMatchObject({ partial: false, widthPx: 900, heightPx: 700 })
  const cut = await asked('cut.jpg', whole.subarray(0, Math.round(whole.length / 2)))
  expect(cut).toMatchObject({ partial: true, widthPx: 900, heightPx: 700 })
  expect(await host.open?.store.picture(cut.hash, 480)).not.toBe(null)
  // A header that promises a picture, and noise behind it.
  expect(await asked('noise.png', pngHeader(400, 300))).toMatchObject({ partial: true, widthPx: 400 })
  expect(inPassing(host)).toEqual([])
})

test('a camera’s own form is kept whole by its hash and shown by the preview in it', async () => {
  const { host, report } = await drafted()
  const raw = tiffOfCamera(await photograph(160, 120), await noisy(1200, 800))
  const { hash, partial, widthPx } = await callOn(host, 'condition.addPhoto', {
    report,
    handle: give(host, 'DSC_0007.NEF', raw),
  })
  expect(hash).toBe(createHash('sha256').update(raw).digest('hex'))
  expect({ partial, widthPx }).toEqual({ partial: false, widthPx: 1200 })
  expect(readFileSync(host.open?.store.path(hash) ?? '')).toEqual(raw)
  const [told] = (await callOn(host, 'condition.get', { id: report })).photos
  expect(told).toMatchObject({ preview: true, name: 'DSC_0007.NEF', widthPx: 1200, heightPx: 800 })
  const shown = await host.open?.store.picture(hash, 'full')
  expect((await sharp(shown?.bytes).metadata()).width).toBe(1200)
  const none = await refusalOf(host, report, give(host, 'DSC_0008.NEF', tiffOfCamera(Buffer.alloc(0), Buffer.alloc(0))))
  expect(none).toMatchObject({ code: 'no-picture', message: expect.stringContaining('holds no preview') })
  // A plain scan in the same container is a picture itself.
  const scan = await sharp({ create: { width: 50, height: 40, channels: 3, background: '#333' } })
    .tiff()
    .toBuffer()
  await callOn(host, 'condition.addPhoto', { report, handle: give(host, 'scan.tif', scan) })
  const { photos } = await callOn(host, 'condition.get', { id: report })
  expect(photos.map(each => each.preview)).toEqual([true, false])
})

test('a signature is of the photographs too, and a correction takes them over with their findings', async () => {
  const { host, report, finding } = await drafted()
  const sign = (role: 'registrar' | 'courier', name: string) =>
    callOn(host, 'condition.sign', { report, role, name, strokes })
  await sign('registrar', 'Tamsin Oake')
  const { id } = await callOn(host, 'condition.addPhoto', { report, handle: give(host, 'a.png', onePixel) })
  const { signatures } = await callOn(host, 'condition.get', { id: report })
  expect(signatures.map(each => each.counts)).toEqual([false])
  await callOn(host, 'condition.updatePhoto', {
    id,
    changes: { findings: { was: [], to: [finding] }, shows: { was: '', to: 'the stain' } },
  })
  await sign('registrar', 'Tamsin Oake')
  await sign('courier', 'Bo Lind')
  await callOn(host, 'condition.complete', { report })
  const corrected = await callOn(host, 'condition.correct', { report, why: 'it is a fold' })
  const copy = await callOn(host, 'condition.get', { id: corrected.id })
  expect(copy.photos).toMatchObject([{ shows: 'the stain', findings: [copy.findings[0]?.id] }])
  expect(copy.photos[0]?.id).not.toBe(id)
  // A finding that is taken off is shown by no photograph; undo brings both back.
  await callOn(host, 'condition.removeFinding', { id: copy.findings[0]?.id ?? '' })
  expect((await callOn(host, 'condition.get', { id: corrected.id })).photos[0]?.findings).toEqual([])
  await callOn(host, 'edit.undo', {})
  expect((await callOn(host, 'condition.get', { id: corrected.id })).photos[0]?.findings).toEqual([
    copy.findings[0]?.id,
  ])
})

test('they stand in the order that they are put in', async () => {
  const { host, report } = await drafted()
  const ids: string[] = []
  for (const width of [10, 11, 12]) {
    const handle = give(host, `${width}.jpg`, await photograph(width, 10))
    ids.push((await callOn(host, 'condition.addPhoto', { report, handle })).id)
  }
  const [first = '', , last = ''] = ids
  await callOn(host, 'condition.movePhoto', { id: last, before: first })
  const { photos } = await callOn(host, 'condition.get', { id: report })
  expect(photos.map(each => each.widthPx)).toEqual([12, 10, 11])
})

test('the back: its picture is a photograph of the report, both are signed, and it goes when the photograph does', async () => {
  const { host, report, finding } = await drafted()
  const back = { report, side: 'back' as const, form: 'mark' as const, points: [{ x: 10, y: 10 }] }
  const { id: behind } = await callOn(host, 'condition.addFinding', { ...back, term: 'frame.loose-hardware' })
  const before = await callOn(host, 'condition.get', { id: report })
  expect(before.findings.map(({ id, side }) => [id, side])).toEqual([
    [finding, 'front'],
    [behind, 'back'],
  ])
  const handle = give(host, 'IMG_0007.jpg', await photograph(40, 30))
  const { id: photo, hash } = await callOn(host, 'condition.addPhoto', { report, handle })
  const elsewhere = 'a'.repeat(64)
  const refused = await answer(host, 'condition.update', {
    id: report,
    changes: { backPicture: { was: null, to: elsewhere } },
  })
  expect(refused).toMatchObject({ ok: false, refusal: { code: 'bad-input', field: 'changes.backPicture.to' } })
  await callOn(host, 'condition.update', { id: report, changes: { backPicture: { was: null, to: hash } } })
  const drawnOn = await callOn(host, 'condition.get', { id: report })
  expect(drawnOn.backPicture).toBe(hash)
  await callOn(host, 'condition.removePhoto', { id: photo })
  const after = await callOn(host, 'condition.get', { id: report })
  expect(after.backPicture).toBe(null)
  // Only what is said counts for the hash: the same as before the photograph.
  expect(after.content).toBe(before.content)
  expect(drawnOn.content).not.toBe(before.content)
  await callOn(host, 'condition.removeFinding', { id: behind })
  expect((await callOn(host, 'condition.get', { id: report })).content).not.toBe(before.content)
})
