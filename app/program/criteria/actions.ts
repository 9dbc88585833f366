'use server'

import { dropCriteriaSchema, newCriteriaSchema, nextVersionSchema, previewCriteriaSchema, retireCriteriaSchema, savedCriteriaSchema, tryLimitsSchema } from '@/lib/schemas/criteria-form'
import { action } from '@/app/_server/action'
import { dropDraft, publishDraft, saveDraft, startDraft, startNextVersion } from '@/app/_server/data/criteria-drafts'
import { setRetired } from '@/app/_server/data/criteria-retirement'
import { criteriaChange } from '@/app/_server/views/criteria-change'
import { criteriaPreview } from '@/app/_server/views/criteria-preview'

/** Begins a set of the program's own. */
export const beginCriteria = action({ roles: ['coordinator'], input: newCriteriaSchema }, (viewer, input) => startDraft(viewer, input))

/** Begins the next version of one of the program's own sets, or opens the one being written. */
export const beginNextVersion = action({ roles: ['coordinator'], input: nextVersionSchema }, (viewer, input) => startNextVersion(viewer, input))

/** Keeps a draft as typed. */
export const saveCriteria = action({ roles: ['coordinator'], input: savedCriteriaSchema }, async (viewer, input) => {
  const { seen } = await saveDraft(viewer, input)
  return { seen }
})

/** Throws a draft away. */
export const dropCriteria = action({ roles: ['coordinator'], input: dropCriteriaSchema }, async (viewer, input) => {
  await dropDraft(viewer, input)
  return {}
})

/** Publishes what stands in the boxes as the next version of its set. */
export const publishCriteria = action({ roles: ['coordinator'], input: savedCriteriaSchema }, (viewer, input) => publishDraft(viewer, input))

/** Takes a published version from choice, or offers it again. */
export const retireCriteria = action({ roles: ['coordinator'], input: retireCriteriaSchema }, async (viewer, input) => {
  await setRetired(viewer, input)
  return {}
})

/** What the boxes would make of a sample coupon. Changes nothing. */
export const previewCriteria = action({ roles: ['coordinator'], input: previewCriteriaSchema }, (_viewer, { document, sample, readings }) => Promise.resolve(criteriaPreview(document, sample, readings)))

/** Which of the last coupons would change verdict by what stands in the boxes. Changes nothing. */
export const tryLimits = action({ roles: ['coordinator'], input: tryLimitsSchema }, (viewer, { document, of }) => criteriaChange(viewer, document, of))
