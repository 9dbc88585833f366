'use server'

import * as z from 'zod'
import { uuid } from '@/lib/schemas/field'
import { rosterImportSchema, rosterSchema } from '@/lib/schemas/roster'
import { action } from '@/app/_server/action'
import { addInstructor, removeInstructor } from '@/app/_server/data/class-instructors'
import { moveStudent, readmitStudent, withdrawStudent } from '@/app/_server/data/enrolments'
import { dryRunRoster, importRoster } from '@/app/_server/data/roster'

const place = z.strictObject({ classId: uuid, studentId: uuid })
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
