/** Files as cameras and faults write them, made here: a PNG that promises anything, a sensor's TIFF, a picture of noise. */
import { crc32, deflateSync } from 'node:zlib'
import sharp from 'sharp'

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const ends = Buffer.alloc(8)
  ends.writeUInt32BE(data.length, 0)
  ends.writeUInt32BE(crc32(body), 4)
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)])
}

/** The header of a PNG of this size (ISO/IEC 15948, 11.2.2) and behind it what unfolds to no picture. */
export function pngHeader(width: number, height: number): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 2, 0, 0, 0], 8)
  const begins = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  const nothing = deflateSync(Buffer.alloc(16, 9)).map(byte => byte ^ 0x5a)
  return Buffer.concat([
    begins,
    chunk('IHDR', head),
    chunk('IDAT', Buffer.from(nothing)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

/** A picture in which every pixel counts, so that half its bytes are half its picture. */
export function noisy(width: number, height: number): Promise<Buffer> {
  const pixels = Buffer.alloc(width * height * 3)
  let state = 5
  for (let at = 0; at < pixels.length; at++) {
    state = (state * 1103515245 + 12345) % 2 ** 31
    pixels[at] = state >> 16
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
    .jpeg()
    .toBuffer()
}

/**
 * A TIFF as a camera writes what its sensor said (TIFF 6.0, section 2; ISO 12234-2): a first directory that says that
 * it is a small picture and where others are, a stamp, and a preview among bytes that no decoder takes.
 */
export function tiffOfCamera(stamp: Buffer, preview: Buffer): Buffer {
  const entries: readonly (readonly [number, number, number])[] = [
    [254, 4, 1],
    [256, 4, 160],
    [257, 4, 120],
    [330, 4, 200],
  ]
  const head = Buffer.alloc(240)
  head.write('II*\0', 0, 'latin1')
  head.writeUInt32LE(8, 4)
  head.writeUInt16LE(entries.length, 8)
  for (const [at, [tag, type, value]] of entries.entries()) {
    head.writeUInt16LE(tag, 10 + at * 12)
    head.writeUInt16LE(type, 12 + at * 12)
    head.writeUInt32LE(1, 14 + at * 12)
    head.writeUInt32LE(value, 18 + at * 12)
  }
  return Buffer.concat([head, stamp, Buffer.alloc(500, 0x41), preview, Buffer.alloc(500, 0x42)])
}
