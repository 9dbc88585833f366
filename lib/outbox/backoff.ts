const FIRST_MS = 4_000
const MOST_MS = 5 * 60_000

/**
 * How long to wait before trying to send again, after `failures` tries in a row that did not get through: doubling from four seconds to
 * five minutes, the last quarter of it by lot so that a class's tablets do not all come back in the same second.
 *
 * @param random from 0 up to 1
 * @throws RangeError when there was no failure to wait after
 */
export function backoffMs(failures: number, random: number): number {
  if (!Number.isInteger(failures) || failures < 1) throw new RangeError(`Waiting follows at least one failure, not ${failures}.`)
  if (!(random >= 0 && random < 1)) throw new RangeError(`A lot from 0 up to 1 decides the last quarter, not ${random}.`)
  const whole = Math.min(MOST_MS, FIRST_MS * 2 ** Math.min(failures - 1, 20))
  return Math.round(whole * (0.75 + random / 4))
}
