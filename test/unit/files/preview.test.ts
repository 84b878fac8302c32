/**
 * A photograph that cannot be decoded is shown by the preview inside it. The files are made here: the boxes of a HEIC
 * (ISO/IEC 14496-12 and 23008-12) round an Exif block with a JPEG (TIFF 6.0, Exif 2.32), and noise for the rest.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { expect, onTestFinished, test } from 'vitest'
import { previewIn } from '../../../main/files/preview.ts'
import { openStore } from '../../../main/files/store.ts'
import { thumbnailOf } from '../../../main/files/thumbnail.ts'

function box(type: string, ...contents: readonly Buffer[]): Buffer {
  const body = Buffer.concat(contents)
  const head = Buffer.alloc(8)
  head.writeUInt32BE(body.length + 8, 0)
  head.write(type, 4, 'latin1')
  return Buffer.concat([head, body])
}

/** Noise that no decoder takes for a picture, the same on each run; it holds beginnings of a JPEG by design. */
function noise(length: number): Buffer {
  const bytes = Buffer.alloc(length)
  let state = 7
  for (let at = 0; at < length; at++) {
    state = (state * 1103515245 + 12345) % 2 ** 31
    bytes[at] = state >> 16
  }
  for (const at of [100, 900]) bytes.set([0xff, 0xd8, 0xff, 0xe0], at)
  return bytes
}

function jpeg(width: number, height: number): Promise<Buffer> {
  return sharp({ create: { width, height, channels: 3, background: '#7a5530' } })
    .jpeg()
    .toBuffer()
}

/** A TIFF block whose second directory names a JPEG: tags 0x0201 (offset) and 0x0202 (length). */
function exif(picture: Buffer): Buffer {
  const head = Buffer.alloc(8 + 6 + 2 + 24 + 4)
  head.write('MM\0*', 0, 'latin1')
  head.writeUInt32BE(8, 4)
  head.writeUInt32BE(14, 10)
  head.writeUInt16BE(2, 14)
  for (const [at, tag, figure] of [
    [16, 0x0201, head.length],
    [28, 0x0202, picture.length],
  ] as const) {
    head.writeUInt16BE(tag, at)
    head.writeUInt16BE(4, at + 2)
    head.writeUInt32BE(1, at + 4)
    head.writeUInt32BE(figure, at + 8)
  }
  return Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), head, picture])
}

function heic(...items: readonly Buffer[]): Buffer {
  const brand = Buffer.from('heic\0\0\0\0mif1heic', 'latin1')
  return Buffer.concat([box('ftyp', brand), box('mdat', noise(3000), ...items, noise(3000))])
}

test('the largest picture inside is found among beginnings that are none', async () => {
  const photograph = heic(exif(await jpeg(160, 120)), await jpeg(512, 384))
  const found = await previewIn(photograph)
  expect(found).not.toBeNull()
  const { width, height } = await sharp(found ?? Buffer.alloc(0)).metadata()
  expect([width, height]).toEqual([512, 384])
  expect(await previewIn(heic())).toBeNull()
  // Icons are no pictures for people.
  expect(await previewIn(heic(await jpeg(40, 30)))).toBeNull()
})

test('a photograph is kept byte for byte and shown by its preview, on screen and on paper', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-preview-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  const photograph = heic(exif(await jpeg(320, 240)))
  await expect(sharp(photograph).metadata()).rejects.toThrow()
  const from = join(folder, 'IMG_1.heic')
  writeFileSync(from, photograph)
  const store = openStore(join(folder, 'a.hangwright'))
  const kept = await store.addPicture(from)
  expect(kept).toMatchObject({ mime: 'image/heic', widthPx: 320, heightPx: 240 })
  expect(readFileSync(store.path(kept.hash)).equals(photograph)).toBe(true)
  for (const size of [96, 'full'] as const) expect((await store.picture(kept.hash, size))?.type).toBe('image/jpeg')
  expect(await thumbnailOf(photograph)).toMatchObject({ extension: 'jpeg', width: 213, height: 160 })
})

test('without a preview it is kept, and said to be without a picture', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-preview-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  const from = join(folder, 'IMG_2.heic')
  writeFileSync(from, heic())
  const store = openStore(join(folder, 'a.hangwright'))
  const kept = await store.addPicture(from)
  expect(kept).toMatchObject({ mime: 'image/heic', widthPx: null, heightPx: null })
  expect(await store.picture(kept.hash, 480)).toBeNull()
  expect(await thumbnailOf(heic())).toBeNull()
})
