'use server'

import * as z from 'zod'
import { uuid } from '@/lib/schemas/field'
import { instructorFormSchema } from '@/lib/schemas/instructor-form'
import { changedNamesSchema } from '@/lib/schemas/person-form'
import { rosterImportSchema, rosterSchema } from '@/lib/schemas/roster'
import { action } from '@/app/_server/action'
import { changeNames, endSessions, makeInstructor, resetPassword, setDisabled, setRole } from '@/app/_server/data/accounts'
import { addInstructor, removeInstructor } from '@/app/_server/data/class-instructors'
import { moveStudent, readmitStudent, withdrawStudent } from '@/app/_server/data/enrolments'
import { setStudentPin } from '@/app/_server/data/pins'
import { dryRunRoster, importRoster } from '@/app/_server/data/roster'

const place = z.strictObject({ classId: uuid, studentId: uuid })
const who = z.strictObject({ personId: uuid })
const teaching = z.strictObject({ classId: uuid, instructorId: uuid })

/** What a roster would do; writes nothing. */
export const checkRoster = action({ roles: ['coordinator'], input: rosterSchema }, dryRunRoster)

/** Brings in the roster that was checked. */
export const bringRoster = action({ roles: ['coordinator'], input: rosterImportSchema }, importRoster)

/** Takes a student out of a class. */
export const withdraw = action({ roles: ['coordinator'], input: place }, withdrawStudent)

/** Takes a withdrawn student back. */
export const readmit = action({ roles: ['coordinator'], input: place }, readmitStudent)

/** Moves a student to another class. */
export const move = action({ roles: ['coordinator'], input: place.extend({ toClassId: uuid }) }, moveStudent)

/** One more instructor for a class. */
export const addTeacher = action({ roles: ['coordinator'], input: teaching }, addInstructor)

/** One instructor fewer. */
export const removeTeacher = action({ roles: ['coordinator'], input: teaching }, removeInstructor)

/** A new instructor, whose first password is shown once. */
export const addStaff = action({ roles: ['coordinator'], input: instructorFormSchema }, makeInstructor)

/** Disables an account, or enables it again. */
export const disableAccount = action({ roles: ['coordinator'], input: who.extend({ disabled: z.boolean() }) }, setDisabled)

/** A new first password for anyone but oneself, shown once. */
export const newPassword = action({ roles: ['coordinator'], input: who }, resetPassword)

/** A new PIN for a student, shown once. */
export const newPin = action({ roles: ['coordinator'], input: who }, (viewer, { personId }) => setStudentPin(viewer, { studentId: personId }))

/** Signs a person out everywhere. */
export const signOutEverywhere = action({ roles: ['coordinator'], input: who }, endSessions)

/** Gives somebody one of the staff's roles, or takes it. */
export const changeRole = action({ roles: ['coordinator'], input: who.extend({ role: z.enum(['instructor', 'coordinator']), held: z.boolean() }) }, setRole)

/** Other names for an account. */
export const saveNames = action({ roles: ['coordinator'], input: changedNamesSchema }, async (viewer, input) => {
  await changeNames(viewer, input)
  return {}
})
