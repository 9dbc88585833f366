// The class code for the board: its symbol opens the join page with the code, in the languages of the class, for its staff alone.
import { beforeAll, describe, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { readQr } from '../support/read-qr'
import { buildSchool, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { joinAsNewStudent, makeClassCode } from '@/app/_server/data/people'
import { db } from '@/app/_server/db'
import { codeSheet } from '@/app/_server/views/code-sheet'
import { joinSchema, writeCode } from '@/lib/schemas/person'

let school: School
let instructor: Viewer
const asOf = new Date()
beforeAll(async () => {
  await testDatabase()
  school = await buildSchool('north')
  instructor = await viewerOf(school, 'instructor')
})

describe('the class code sheet', () => {
  it('says so when no code opens the class', async () => {
    expect(await codeSheet(instructor, school.classId, undefined, asOf)).toMatchObject({ code: null, languages: [{ locale: 'en', until: null }] })
  })

  it('has a symbol that opens the join page with this code and program, and the code lets somebody join', async () => {
    const { code } = await makeClassCode(instructor, { classId: school.classId })
    const sheet = await codeSheet(instructor, school.classId, undefined, asOf)
    if (!sheet?.code) throw new Error('The sheet has no code.')
    const address = new URL(readQr(sheet.code.qr))
    expect(address.pathname).toBe('/join')
    expect(address.href).toBe(sheet.code.address)
    expect(sheet.code.text).toBe(writeCode(code))
    expect(sheet.typedAddress).toBe('localhost:3000/join')
    const typed = joinSchema({ locale: 'en', units: 'in' }).parse({
      code: address.searchParams.get('code'), program: address.searchParams.get('program'), locale: 'es', givenName: 'Ada', familyName: 'Quint', signInName: 'a.quint', password: 'barn-owl-over-nine-fields',
    })
    expect(typed.program).toBe('north')
    await expect(joinAsNewStudent({ id: school.programId, units: 'us' }, typed)).resolves.toMatchObject({ personId: expect.any(String) as string })
  })

  it('is written in every language its active students read, with the day and hour the code ends in each', async () => {
    const sheet = await codeSheet(instructor, school.classId, undefined, asOf)
    expect(sheet?.languages.map(({ locale }) => locale)).toEqual(['en', 'es'])
    expect(sheet?.languages[0]?.until).toMatch(/^[A-Z][a-z]{2} \d{1,2}, \d{4}, \d{1,2}:\d\d [AP]M C[DS]T$/)
    expect(sheet?.languages[1]?.until).toMatch(/^\d{1,2} \w+ \d{4}, /)
    await db().enrolment.updateMany({ where: { classId: school.classId, person: { locale: 'es' } }, data: { withdrawnAt: new Date() } })
    expect((await codeSheet(instructor, school.classId, undefined, asOf))?.languages.map(({ locale }) => locale)).toEqual(['en'])
    expect((await codeSheet(instructor, school.classId, 'both', asOf))?.languages).toHaveLength(2)
  })

  it('names the program to type only where the server has several', async () => {
    expect(await codeSheet(instructor, school.classId, undefined, asOf)).toMatchObject({ programSlug: null })
    await buildSchool('south')
    expect(await codeSheet(instructor, school.classId, undefined, asOf)).toMatchObject({ programSlug: 'north' })
  })

  it('is there for the coordinator too, who does not make the code', async () => {
    const sheet = await codeSheet(await viewerOf(school, 'coordinator'), school.classId, undefined, asOf)
    expect(sheet).toMatchObject({ taught: false, code: { text: expect.any(String) as string } })
    expect(await codeSheet(instructor, school.classId, undefined, asOf)).toMatchObject({ taught: true })
  })

  it.each(['student', 'classmate', 'otherInstructor'] as const)('is not there for the %s', async (who) => {
    expect(await codeSheet(await viewerOf(school, who), school.classId, undefined, asOf)).toBeNull()
  })
})
