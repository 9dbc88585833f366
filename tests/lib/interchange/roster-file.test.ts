// A roster written and read again is the same roster. RFC 4180 for the file; OWASP, "CSV Injection", for what no cell may begin with.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readRoster, type RosterStudent } from '@/lib/interchange/roster'
import { rosterFile } from '@/lib/interchange/roster-file'
import { checkRosterNames } from '@/lib/schemas/roster'

const sign = fc.constantFrom('a', 'Z', 'ñ', '’', "'", '"', ',', ';', '=', '+', '-', '@', '.', ' ', '1', '|')
const name = fc.string({ unit: sign, minLength: 1, maxLength: 12 })
const student: fc.Arbitrary<RosterStudent> = fc.tuple(name, name, fc.nat(999_999), fc.option(fc.integer({ min: 1, max: 999 }), { nil: null }))
  // Names are kept as the forms tidy them; a roster holds nothing else.
  .map(([givenName, familyName, n, booth]) => ({ given: checkRosterNames({ signInName: `s${n}x`, givenName, familyName }), booth }))
  .filter(({ given }) => given.ok)
  .map(({ given, booth }) => (given.ok ? { ...given.names, booth } : { signInName: '', givenName: '', familyName: '', booth: null }))

describe('a roster file', () => {
  it('reads back as it was written, whatever the names hold', () => {
    fc.assert(fc.property(fc.uniqueArray(student, { selector: ({ signInName }) => signInName, maxLength: 8 }), (students) => {
      const file = readRoster(rosterFile(students), checkRosterNames)
      expect(file.ignoredColumns).toEqual([])
      expect(file.lines.map((line) => ('student' in line ? line.student : line.rejected))).toEqual(students)
    }))
  })

  it('guards what a spreadsheet would run, and only that', () => {
    const written = rosterFile([{ signInName: 'a.quint', givenName: '=1+1', familyName: "'t Hooft", booth: null }])
    expect(written).toBe("username,givenName,familyName,booth\r\na.quint,'=1+1,'t Hooft,\r\n")
  })
})
