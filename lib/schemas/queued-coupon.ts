import * as z from 'zod'
import { QUEUE_SCHEMA } from '../outbox/outbox-entry'
import { uuid } from './field'
import { blankPass } from './passes'
import { STATION_BOXES } from './readings'

const envelope = z.strictObject({ schema: z.number().int().min(1), personId: uuid, sentAt: z.iso.datetime({ offset: true }), coupon: z.record(z.string(), z.unknown()) })

export type QueuedCoupon =
  /** A coupon in today's shape, still unchecked. `personId` is who logged it; null when it did not come through a device's queue. */
  | { readonly kind: 'coupon'; readonly coupon: unknown; readonly personId: string | null }
  /** Written by a version of the application that this server does not know yet. */
  | { readonly kind: 'newer' }

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null && !Array.isArray(value)

/** Boxes that did not exist when the coupon was typed are empty ones: nothing was measured there. */
function withBoxes(rows: unknown, boxes: Readonly<Record<string, unknown>>): unknown {
  return Array.isArray(rows) ? rows.map((row: unknown) => (isRecord(row) ? { ...boxes, ...row } : row)) : rows
}

const STATION = Object.fromEntries(STATION_BOXES.map((name) => [name, '']))

/** Brings a coupon queued by an older version of the application to today's shape. What is no coupon passes as it is, to be refused. */
function upgraded(coupon: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const { readings, passes } = coupon
  return {
    ...coupon,
    ...(passes !== undefined && { passes: withBoxes(passes, blankPass()) }),
    ...(isRecord(readings) && { readings: { ...readings, stations: withBoxes(readings['stations'], STATION) } }),
  }
}

/**
 * Opens what a device's queue sent: an envelope with the schema it was queued under, who logged it and the device's clock at sending.
 * Anything else is taken for a bare coupon.
 */
export function openQueued(body: unknown): QueuedCoupon {
  const opened = envelope.safeParse(body)
  if (!opened.success) return { kind: 'coupon', coupon: body, personId: null }
  const { schema, personId, sentAt, coupon } = opened.data
  return schema > QUEUE_SCHEMA ? { kind: 'newer' } : { kind: 'coupon', coupon: { ...upgraded(coupon), sentAt }, personId }
}
