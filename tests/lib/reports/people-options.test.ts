import { describe, expect, it } from 'vitest'
import { narrows, PEOPLE_DEFAULTS, peopleAddress, readPeopleOptions } from '@/lib/reports/people-options'

const ID = '019cf917-9c00-74fd-a058-11c1356a0000'

describe('the settings of a list of people', () => {
  it('come back from the address they make', () => {
    const options = { ...PEOPLE_DEFAULTS, search: 'ines & co', role: 'student', classId: ID, state: 'no-password', after: ID } as const
    const address = peopleAddress('/people', options)
    expect(readPeopleOptions(Object.fromEntries(new URL(address, 'http://x').searchParams))).toEqual(options)
    expect(peopleAddress('/people', PEOPLE_DEFAULTS)).toBe('/people')
  })

  it('are as if not there when the address names them wrongly', () => {
    expect(readPeopleOptions({ role: 'admin', state: 'gone', class: "1' or '1", after: 'x', before: '1', q: '\u0000 ' })).toEqual(PEOPLE_DEFAULTS)
  })

  it('keep one way to page, and a search of a bearable length', () => {
    expect(readPeopleOptions({ after: ID, before: ID })).toMatchObject({ after: ID, before: null })
    expect(readPeopleOptions({ q: 'a'.repeat(500) }).search).toHaveLength(80)
    expect(readPeopleOptions({ q: ['first', 'second'] }).search).toBe('first')
  })

  it('narrow the list by what is asked, not by the page', () => {
    expect(narrows({ ...PEOPLE_DEFAULTS, after: ID })).toBe(false)
    expect(narrows({ ...PEOPLE_DEFAULTS, state: 'disabled' })).toBe(true)
  })
})
