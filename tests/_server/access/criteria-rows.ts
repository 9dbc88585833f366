import { randomUUID } from 'node:crypto'
import * as criteria from '@/app/_server/data/criteria'
import * as drafts from '@/app/_server/data/criteria-drafts'
import * as retirement from '@/app/_server/data/criteria-retirement'
import * as judged from '@/app/_server/data/judged-coupons'
import * as criteriaActions from '@/app/program/criteria/actions'
import { db } from '@/app/_server/db'
import { criteriaById } from '@/lib/criteria/catalogue'
import { draftOf } from '@/lib/criteria/draft/to-draft'
import type { ActionRow } from './action-rows'
import { SEES_COUPON, type DataRow, type Fixture, type Person } from './fixture'

const COORDINATORS = ['coordinator', 'foreign coordinator'] as const satisfies readonly Person[]
const STAFF_ANYWHERE = ['instructor', 'otherInstructor', 'coordinator', 'foreign instructor', 'foreign coordinator'] as const satisfies readonly Person[]
const SHOP = { id: 'shop-bead', version: 1 }

/** A draft of the fixture's coordinator, as its form sends it. */
async function draft({ viewers }: Fixture): Promise<drafts.SavedDraft> {
  const title = randomUUID()
  const { draftId } = await drafts.startDraft(viewers.coordinator, { title, system: 'us', from: SHOP })
  const { updatedAt } = await db().criteriaDraft.findFirstOrThrow({ where: { id: draftId }, select: { updatedAt: true } })
  return { draftId, seen: updatedAt.toISOString(), document: { ...draftOf(criteriaById('shop-bead')), title } }
}

async function published(fixture: Fixture): Promise<{ criteriaId: string }> {
  return { criteriaId: (await drafts.publishDraft(fixture.viewers.coordinator, await draft(fixture))).id }
}

export const CRITERIA_DATA_ROWS: Readonly<Record<string, DataRow>> = {
  'criteria.listCriteria': { seenBy: STAFF_ANYWHERE, call: (viewer) => criteria.listCriteria(viewer) },
  'criteria.findCriteria': { seenBy: STAFF_ANYWHERE, call: (viewer) => criteria.findCriteria(viewer, 'shop-bead', 1) },
  'criteria-drafts.listDrafts': {
    seenBy: ['coordinator'],
    call: async (viewer, fixture) => {
      await draft(fixture)
      return drafts.listDrafts(viewer)
    },
  },
  'criteria-drafts.findDraft': { seenBy: ['coordinator'], call: async (viewer, fixture) => drafts.findDraft(viewer, (await draft(fixture)).draftId) },
  'criteria-drafts.startDraft': { seenBy: COORDINATORS, call: (viewer) => drafts.startDraft(viewer, { title: randomUUID(), system: 'us', from: SHOP }) },
  'criteria-drafts.startNextVersion': { seenBy: ['coordinator'], call: async (viewer, fixture) => drafts.startNextVersion(viewer, await published(fixture)) },
  'criteria-drafts.saveDraft': { seenBy: ['coordinator'], call: async (viewer, fixture) => drafts.saveDraft(viewer, await draft(fixture)) },
  'criteria-drafts.dropDraft': { seenBy: ['coordinator'], call: async (viewer, fixture) => drafts.dropDraft(viewer, await draft(fixture)).then(() => true) },
  'criteria-drafts.publishDraft': { seenBy: ['coordinator'], call: async (viewer, fixture) => drafts.publishDraft(viewer, await draft(fixture)) },
  'criteria-retirement.setRetired': {
    seenBy: ['coordinator'],
    call: async (viewer, fixture) => retirement.setRetired(viewer, { ...(await published(fixture)), version: 1, retired: true }).then(() => true),
  },
  'judged-coupons.listJudgedCoupons': {
    seenBy: SEES_COUPON.filter((who) => who !== 'student'),
    call: async (viewer, { school, couponId }) => {
      // What waits for the viewer's own look is blind, and left out.
      await db().coupon.updateMany({ where: { id: couponId }, data: { waitingSince: null } })
      const found = await judged.listJudgedCoupons(viewer, { exerciseId: school.exerciseId }, 80)
      await db().coupon.updateMany({ where: { id: couponId }, data: { waitingSince: new Date() } })
      return found
    },
  },
}

export const CRITERIA_ACTION_ROWS: Readonly<Record<string, ActionRow>> = {
  'program/criteria.beginCriteria': { allowed: COORDINATORS, call: () => criteriaActions.beginCriteria({ title: randomUUID(), from: 'shop-bead 1', system: 'us' }) },
  'program/criteria.beginNextVersion': { allowed: ['coordinator'], call: async (fixture) => criteriaActions.beginNextVersion(await published(fixture)) },
  'program/criteria.saveCriteria': { allowed: ['coordinator'], call: async (fixture) => criteriaActions.saveCriteria(await draft(fixture)) },
  'program/criteria.dropCriteria': { allowed: ['coordinator'], call: async (fixture) => criteriaActions.dropCriteria({ draftId: (await draft(fixture)).draftId }) },
  'program/criteria.publishCriteria': { allowed: ['coordinator'], call: async (fixture) => criteriaActions.publishCriteria(await draft(fixture)) },
  'program/criteria.retireCriteria': { allowed: ['coordinator'], call: async (fixture) => criteriaActions.retireCriteria({ ...(await published(fixture)), version: 1, retired: true }) },
  // These two change nothing and read only what the coordinator sees anyway: of another program's set, no coupon.
  'program/criteria.previewCriteria': { allowed: COORDINATORS, call: async (fixture) => criteriaActions.previewCriteria({ document: (await draft(fixture)).document, sample: 'clean' }) },
  'program/criteria.tryLimits': { allowed: COORDINATORS, call: async (fixture) => criteriaActions.tryLimits({ document: (await draft(fixture)).document, of: { criteriaId: 'shop-bead' } }) },
}
