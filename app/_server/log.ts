import 'server-only'
import pino from 'pino'
import { env } from './env'

const held = globalThis as { toelineLog?: pino.Logger }

/** JSON lines in UTC. People appear by id, never by name; secrets are cut out wherever they sit. */
export function log(): pino.Logger {
  held.toelineLog ??= pino({
    level: env().LOG_LEVEL,
    timestamp: pino.stdTimeFunctions.isoTime,
    redact: ['password', '*.password', 'token', '*.token', 'cookie', '*.cookie', 'email', '*.email'],
  })
  return held.toelineLog
}
