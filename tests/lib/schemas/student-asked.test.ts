import { describe, expect, it } from 'vitest'
import { readStudentAsked } from '@/lib/schemas/student-asked'

const ID = '019cf917-9c00-74fd-a058-11c1356a0000'

describe('the address of a student’s page', () => {
  it('names an exercise and where the remarks begin', () => {
    expect(readStudentAsked({ exercise: ID, remarks: ID })).toEqual({ exerciseId: ID, remarksAfter: ID })
    expect(readStudentAsked({})).toEqual({ exerciseId: null, remarksAfter: null })
  })
  it('asks for nothing where it names what is no id, or names it twice', () => {
    expect(readStudentAsked({ exercise: 'lap', remarks: [ID, ID] })).toEqual({ exerciseId: null, remarksAfter: null })
  })
})
