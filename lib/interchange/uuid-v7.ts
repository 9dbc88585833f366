/**
 * A UUID of version 7 (RFC 9562): 48 bits of milliseconds, then random bits. Devices make the ids of what they log with it.
 *
 * @param ms milliseconds since 1970-01-01
 * @param random at least ten random bytes
 * @throws RangeError when there are fewer, or the moment does not fit into its 48 bits
 */
export function uuidV7(ms: number, random: Uint8Array): string {
  if (random.length < 10) throw new RangeError('A UUID needs ten random bytes.')
  if (!Number.isInteger(ms) || ms < 0 || ms >= 2 ** 48) throw new RangeError(`A UUID needs a moment in whole milliseconds since 1970, not ${ms}.`)
  const bytes = new Uint8Array(16)
  for (let index = 0; index < 6; index += 1) bytes[index] = Math.floor(ms / 2 ** (8 * (5 - index))) % 256
  bytes.set(random.subarray(0, 10), 6)
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f)
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f)
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`
}
