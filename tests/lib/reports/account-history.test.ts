import { expect, it } from 'vitest'
import { ACCOUNT_ACTIONS, accountEventText } from '@/lib/reports/account-history'

it.each([
  ['person.role.give', { role: 'instructor' }, 'Role given: instructor'],
  ['roster.changed', { classId: 'x', what: 'booth 2 → 9' }, 'Changed by a roster: booth 2 → 9'],
  ['person.disable', null, 'Account disabled'],
  ['session.end-all', { ended: 2 }, 'Signed out everywhere'],
])('%s is said in words', (action, after, text) => {
  expect(accountEventText(action, after)).toBe(text)
})

it('says every action it names, and refuses others', () => {
  for (const action of ACCOUNT_ACTIONS) expect(accountEventText(action, undefined)).toMatch(/^[A-Z]/)
  expect(() => accountEventText('coupon.log', null)).toThrow(RangeError)
})
