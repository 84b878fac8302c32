/** When a photograph was taken, read from EXIF blocks that another program wrote: libvips with libexif, by sharp. */
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { cameraTime } from '../../../main/files/camera-time.ts'

/** The EXIF block of a picture with these words in its camera's directory. */
async function exifOf(camera: Record<string, string>): Promise<Uint8Array | undefined> {
  const picture = sharp({ create: { width: 8, height: 8, channels: 3, background: '#808080' } })
  const bytes = await picture
    .withExif({ IFD0: { Make: 'Invented' }, IFD2: camera })
    .jpeg()
    .toBuffer()
  return (await sharp(bytes).metadata()).exif
}

test('a camera’s date with its offset is a moment', async () => {
  const exif = await exifOf({ DateTimeOriginal: '2031:03:02 10:15:30', OffsetTimeOriginal: '+01:00' })
  expect(cameraTime(exif)).toBe('2031-03-02T09:15:30.000Z')
})

test('without an offset it goes by the clock of this machine', async () => {
  const exif = await exifOf({ DateTimeOriginal: '2031:07:02 10:15:30' })
  expect(cameraTime(exif)).toBe(new Date(2031, 6, 2, 10, 15, 30).toISOString())
})

test.each([
  ['no date', { ExposureTime: '1/60' }],
  ['a date of spaces, as cameras without a clock write', { DateTimeOriginal: '    :  :     :  :  ' }],
  ['a date that there is not', { DateTimeOriginal: '2031:13:40 10:15:30' }],
])('%s says nothing', async (_, camera) => {
  expect(cameraTime(await exifOf(camera))).toBeNull()
})

test('a block that is cut anywhere says nothing, or what it said', async () => {
  const exif = await exifOf({ DateTimeOriginal: '2031:03:02 10:15:30', OffsetTimeOriginal: '+01:00' })
  if (exif === undefined) throw new Error('no EXIF was written')
  const said = Array.from({ length: exif.length }, (_, length) => cameraTime(exif.slice(0, length)))
  expect(said[0]).toBeNull()
  for (const each of said) if (each !== null) expect(each).toMatch(/^2031-03-02T/)
  expect(cameraTime(undefined)).toBeNull()
})
