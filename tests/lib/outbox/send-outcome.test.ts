import { describe, expect, it } from 'vitest'
import { backoffMs } from '@/lib/outbox/backoff'
import { readOutcome } from '@/lib/outbox/send-outcome'

const no = (code: string) => ({ ok: false, code, message: 'No.', fields: {} })

describe('the answer to one sending', () => {
  it.each([
    ['taken', 200, { ok: true, value: { id: 'x', number: 3, created: false } }, { kind: 'taken', number: 3 }],
    ['a photo taken', 200, { ok: true, value: { id: 'x' } }, { kind: 'taken', number: null }],
    ['something to correct', 422, { ok: false, code: 'INVALID', message: 'No.', fields: { note: 'Long.', odd: 3 } }, { kind: 'refused', code: 'INVALID', message: 'No.', fields: { note: 'Long.' } }],
    ['cautions to confirm first', 428, no('SAFETY'), { kind: 'refused', code: 'SAFETY', message: 'No.', fields: {} }],
    ['a class one is not in', 404, no('NOT_FOUND'), { kind: 'refused', code: 'NOT_FOUND', message: 'No.', fields: {} }],
    ['a newer version', 409, no('CONFLICT'), { kind: 'refused', code: 'CONFLICT', message: 'No.', fields: {} }],
    ['no session', 401, no('SIGNED_OUT'), { kind: 'held', why: 'signed-out' }],
    ['another person', 409, no('OTHER_PERSON'), { kind: 'held', why: 'other-person' }],
    ['a given password', 403, no('NEW_PASSWORD'), { kind: 'held', why: 'new-password' }],
    ['a bug', 500, undefined, { kind: 'failed' }],
    ['a restart', 502, undefined, { kind: 'unreachable' }],
    ['a store that is down', 503, no('UNAVAILABLE'), { kind: 'unreachable' }],
    ['too many at once, from a server in front', 429, undefined, { kind: 'unreachable' }],
    ['the sign-in page of the shop’s network', 200, undefined, { kind: 'unreachable' }],
    ['the same in JSON', 200, { login: '/portal' }, { kind: 'unreachable' }],
    ['a missing page that is not ours', 404, undefined, { kind: 'unreachable' }],
    ['yes with the status of no', 422, { ok: true }, { kind: 'unreachable' }],
  ])('%s', (_what, status, body, outcome) => {
    expect(readOutcome(status, body)).toEqual(outcome)
  })
})

describe('waiting before the next try', () => {
  it('doubles from four seconds and stops at five minutes', () => {
    expect([1, 2, 3, 4, 7, 8, 1000].map((failures) => backoffMs(failures, 0.999_999_9))).toEqual([4000, 8000, 16_000, 32_000, 256_000, 300_000, 300_000])
    expect([1, 8].map((failures) => backoffMs(failures, 0))).toEqual([3000, 225_000])
  })

  it.each([[0, 0], [1.5, 0], [NaN, 0], [1, 1], [1, -0.1], [1, NaN]])('%d failures with the lot %d is refused', (failures, random) => {
    expect(() => backoffMs(failures, random)).toThrow(RangeError)
  })
})
