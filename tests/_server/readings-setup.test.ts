// What an inspection form asks for and what it only offers, by the criteria of the exercise.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool, viewerOf, type School } from '../support/school'
import { findExercise } from '@/app/_server/data/exercises'
import { readingsSetup } from '@/app/_server/views/log-view'
import { criteriaById } from '@/lib/criteria/catalogue'
import { db } from '@/app/_server/db'

let school: School
beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
})

async function setupUnder(criteriaId: string) {
  const set = criteriaById(criteriaId)
  const { programId } = school
  await db().criteriaSet.createMany({ data: [{ programId, id: set.id, version: set.version, title: set.title, document: JSON.parse(JSON.stringify(set)) }], skipDuplicates: true })
  const viewer = await viewerOf(school, 'instructor')
  const exercise = (await findExercise(viewer, school.exerciseId))!
  return readingsSetup(viewer, { ...exercise, criteria: { id: set.id, version: set.version } })
}

it('asks for what the set cannot judge without, and offers the rest', async () => {
  const { boxes, frame, blank } = await setupUnder('iso5817-c')
  expect(frame.offered).toEqual(expect.arrayContaining(['toeAngle', 'rootGap']))
  expect(frame.offered.filter((box) => boxes.includes(box))).toEqual([])
  expect(frame.offered.every((box) => blank.stations.every((station) => !station[box]))).toBe(true)
})

it('offers nothing under a set without such rules', async () => {
  expect((await setupUnder('shop-bead')).frame.offered).toEqual([])
})
