// Rosters as registers and spreadsheets write them. Delimiters, quotes and line ends: RFC 4180; byte-order marks: WHATWG Encoding Standard.
import { describe, expect, it } from 'vitest'
import { readRoster } from '@/lib/interchange/roster'
import { planRoster, type KnownPerson } from '@/lib/interchange/roster-plan'
import { rosterRecords, rosterText } from '@/lib/interchange/roster-text'
import { checkRosterNames } from '@/lib/schemas/roster'

const read = (text: string) => readRoster(text, checkRosterNames)
const HEAD = 'sign-in name,given name,family name,booth'

describe('the bytes of a file', () => {
  const NAME = 'Peña'
  it.each([
    ['UTF-8', new Uint8Array([0x50, 0x65, 0xc3, 0xb1, 0x61])],
    ['UTF-8 with its mark', new Uint8Array([0xef, 0xbb, 0xbf, 0x50, 0x65, 0xc3, 0xb1, 0x61])],
    ['Windows-1252', new Uint8Array([0x50, 0x65, 0xf1, 0x61])],
    ['UTF-16, little end first', new Uint8Array([0xff, 0xfe, 0x50, 0, 0x65, 0, 0xf1, 0, 0x61, 0])],
    ['UTF-16, big end first', new Uint8Array([0xfe, 0xff, 0, 0x50, 0, 0x65, 0, 0xf1, 0, 0x61])],
  ])('are read as %s', (_encoding, bytes) => expect(rosterText(bytes)).toBe(NAME))
})

describe('the records of a text', () => {
  it.each([['commas', ','], ['semicolons', ';'], ['tabs', '\t']])('are cut at %s', (_name, sign) =>
    expect(rosterRecords(`a${sign}b\r\n1${sign}2\r\n`)).toEqual([{ line: 1, cells: ['a', 'b'] }, { line: 2, cells: ['1', '2'] }]))

  it('keep delimiters, quotes and line ends inside quotes, and count the lines on', () =>
    expect(rosterRecords('a,b\n"x, ""y""\nz",1\nlast,2')).toEqual([
      { line: 1, cells: ['a', 'b'] }, { line: 2, cells: ['x, "y"\nz', '1'] }, { line: 4, cells: ['last', '2'] },
    ]))

  it('leave blank lines out without losing count', () =>
    expect(rosterRecords('\n\na,b\n , \n1,2\r3,4').map(({ line }) => line)).toEqual([3, 5, 6]))

  it('name the line of a quote that is never closed', () => expect(() => rosterRecords('a,b\n1,"2\n3,4')).toThrow('opened on line 2'))
})

describe('a roster', () => {
  it('takes the column names of OneRoster users.csv in any order, and says which columns it left', () =>
    expect(read('sourcedId,role,familyName,givenName,username\n77,student,Quint,Ada,A.Quint')).toEqual({
      lines: [{ line: 2, student: { signInName: 'a.quint', givenName: 'Ada', familyName: 'Quint', booth: null } }], ignoredColumns: ['sourcedId'],
    }))

  it.each([
    ['nothing', ' \n\n', 'nothing in this file'],
    ['missing columns', 'username,booth\na.b,1', 'no column for: given name, family name'],
    ['a column twice', 'username,sign-in name,given name,family name\n', '“username” and “sign-in name” mean the same'],
    ['too many lines', `${HEAD}\n${'a.b,A,B,1\n'.repeat(5001)}`, '5001 lines'],
  ])('is refused whole for %s', (_what, text, reason) => expect(() => read(text)).toThrow(reason))

  it('rejects a line with its number and the reason, and takes the others', () => {
    const { lines } = read([HEAD, 'a.quint,Ada,Quint,4', 'b.ryder,,Ryder,5', 'c.stow,Cy,Stow,0', 'A.QUINT,Ada,Quint,6', 'no spaces here,Di,Tern,7', 'e.umber,Ed,Umber,8,9'].join('\n'))
    expect(lines.map((line) => [line.line, 'rejected' in line ? line.rejected : line.student.signInName])).toEqual([
      [2, 'a.quint'],
      [3, expect.stringContaining('Given name:')],
      [4, expect.stringContaining('The booth is “0”')],
      [5, '“a.quint” is on line 2 already.'],
      [6, expect.stringContaining('Sign-in name:')],
      [7, 'This line has 5 cells where the header has 4.'],
    ])
  })

  it('brings students only', () => expect(read('username,givenName,familyName,role\na.b,A,B,administrator').lines[0]).toMatchObject({ rejected: expect.stringContaining('students only') }))
  it('does not take a word every object knows for a column', () => expect(read(`${HEAD},constructor\na.b,A,B,,x`).ignoredColumns).toEqual(['constructor']))
})

describe('the plan of a roster', () => {
  const person = (given: Partial<KnownPerson> = {}): KnownPerson =>
    ({ id: 'p1', givenName: 'Ada', familyName: 'Quint', staff: false, disabled: false, enrolment: { booth: 4, withdrawn: false }, ...given })
  const planned = (known: KnownPerson | null, line = 'a.quint,Ada,Quint,4') =>
    planRoster(read(`${HEAD}\n${line}`).lines, new Map(known ? [['a.quint', known]] : []))[0]

  it('adds who is new', () => expect(planned(null)).toMatchObject({ outcome: 'added', personId: null, reason: 'new account' }))
  it('adds who is in another class', () => expect(planned(person({ enrolment: null }))).toMatchObject({ outcome: 'added', personId: 'p1', reason: 'has an account, joins this class' }))
  it('leaves who stands as the file says', () => expect(planned(person())).toMatchObject({ outcome: 'unchanged' }))
  it('keeps a booth the file does not name', () => expect(planned(person(), 'a.quint,Ada,Quint,')).toMatchObject({ outcome: 'unchanged' }))
  it('says each change', () => expect(planned(person({ givenName: 'Aida', enrolment: { booth: null, withdrawn: true } }))).toMatchObject({
    outcome: 'changed', reason: 'readmitted; name Aida Quint → Ada Quint; booth none → 4',
  }))
  it('touches no instructor', () => expect(planned(person({ staff: true }))).toMatchObject({ outcome: 'rejected', reason: expect.stringContaining('instructor or coordinator') }))
  it('touches no disabled account', () => expect(planned(person({ disabled: true }))).toMatchObject({ outcome: 'rejected', reason: expect.stringContaining('disabled') }))
})
