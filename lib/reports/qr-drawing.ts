import { encode } from 'uqr'

/** A QR symbol as one path: a square of `size` modules a side, its quiet zone included. */
export type QrDrawing = { readonly size: number; readonly path: string }

/** Modules of empty paper around a symbol: ISO/IEC 18004 asks for four on every side. */
const QUIET_ZONE = 4

/**
 * The QR symbol of a text, to be filled black on white. Error correction M, so that a smudge does not end it.
 *
 * @throws RangeError for an empty text
 */
export function drawQr(text: string): QrDrawing {
  if (text === '') throw new RangeError('A QR symbol needs a text to hold.')
  const { data, size } = encode(text, { ecc: 'M', boostEcc: false, border: QUIET_ZONE })
  return { size, path: data.flatMap((row, y) => runs(row).map(([x, width]) => `M${x} ${y}h${width}v1h-${width}z`)).join('') }
}

/** Where the dark modules of a row lie: each run's first place and its length. */
function runs(row: readonly boolean[]): (readonly [number, number])[] {
  const found: (readonly [number, number])[] = []
  for (let x = 0; x < row.length; x += 1) {
    if (!row[x]) continue
    const from = x
    while (row[x + 1]) x += 1
    found.push([from, x - from + 1])
  }
  return found
}
