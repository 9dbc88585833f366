import { fixed, readQuantity, type Quantity } from './quantity'

/** A span of time in seconds. */
export type Seconds = Quantity<'s'>
export const seconds = (value: number): Seconds => value as Seconds

const SPELLINGS = {
  s: 1, sec: 1, 'sec.': 1, secs: 1, second: 1, seconds: 1, seg: 1, segundo: 1, segundos: 1,
  min: 60, 'min.': 60, mins: 60, m: 60, minute: 60, minutes: 60, minuto: 60, minutos: 60,
  h: 3600, hr: 3600, hrs: 3600, hour: 3600, hours: 3600, hora: 3600, horas: 3600,
}
const CLOCK = /^\s*(?:(\d{1,3}):)?(\d{1,3}):(\d{2}(?:[.,]\d+)?)\s*$/

/**
 * Reads '1:30', '1:02:05', '90', '90 s', '1.5 min'. A bare number is seconds.
 *
 * @throws RangeError naming what was typed; also for '1:75', which no clock shows
 */
export function parseDuration(text: string): Seconds {
  const clock = CLOCK.exec(text)
  if (!clock) return seconds(readQuantity(text, 'a time', SPELLINGS, 's', '1:30, 90 or 1.5 min'))
  const [hours, minutes, rest] = [Number(clock[1] ?? 0), Number(clock[2]), Number(clock[3]?.replace(',', '.'))]
  if (rest >= 60 || (clock[1] !== undefined && minutes >= 60)) throw new RangeError(`"${text.trim()}" is not a time: 60 and more carries over. Write it like 1:30.`)
  return seconds(hours * 3600 + minutes * 60 + rest)
}

/** As a clock shows it, to the nearest second: '0:45', '1:30', '1:02:05'. @throws RangeError when the value is below zero or not finite */
export function formatDuration(value: Seconds): string {
  if (!(value >= 0 && Number.isFinite(value))) throw new RangeError(`${value} seconds cannot be shown on a clock.`)
  const whole = Math.round(value)
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60]
  const two = (part: number): string => String(part).padStart(2, '0')
  return hours > 0 ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`
}

/** A sum of times, to the nearest minute: '45 s' below one, '6 min', '3 h 39 min'. @throws RangeError when the value is below zero or not finite */
export function formatTotalTime(value: Seconds): string {
  if (!(value >= 0 && Number.isFinite(value))) throw new RangeError(`${value} seconds are no sum of times.`)
  if (value < 59.5) return `${Math.round(value)} s`
  const minutes = Math.round(value / 60)
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`
}

/** In words for a duration shorter than a minute, such as a side pause: '0.5 s'. @throws RangeError when the value is not finite */
export function formatSeconds(value: Seconds, digits = 1): string {
  return `${fixed(value, digits)} s`
}
