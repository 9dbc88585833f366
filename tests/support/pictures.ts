// Pictures made for tests: no photograph of anyone or anything.
import { crc32, deflateSync } from 'node:zlib'
import sharp, { type Sharp } from 'sharp'

/** A picture of two halves, red above blue, so that a test can see which way up it ended. */
export function twoHalves(width = 60, height = 40): Sharp {
  const half = { create: { width, height: height / 2, channels: 3 as const, background: '#0000ff' } }
  return sharp({ create: { width, height, channels: 3, background: '#ff0000' } }).composite([{ input: half, gravity: 'south' }])
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const frame = Buffer.alloc(8)
  frame.writeUInt32BE(data.length, 0)
  frame.writeUInt32BE(crc32(body), 4)
  return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)])
}

/** A PNG (ISO/IEC 15948) of one bit a pixel, all black: `rows` of data however many its header claims. */
export function blackPng(width: number, height: number, rows = height): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header[8] = 1 // bits a sample; the rest stays 0: grey, deflate, no filter, not interlaced
  const data = deflateSync(Buffer.alloc(rows * (1 + Math.ceil(width / 8))))
  return Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), chunk('IHDR', header), chunk('IDAT', data), chunk('IEND', Buffer.alloc(0))])
}
