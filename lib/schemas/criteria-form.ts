import * as z from 'zod'
import { draftSchema } from '../criteria/draft/draft-schema'
import { tidyText, uuid } from './field'

const MOST_TITLE = 120
const criteriaId = z.string().min(1).max(61)

/** 'shop-bead 1': a set and its version as a list's choice sends it; '' is "with nothing". */
const copied = z.string().max(80).transform((text, context) => {
  if (text === '') return null
  const found = /^(\S+) (\d+)$/.exec(text)
  if (found?.[1] !== undefined) return { id: found[1], version: Number(found[2]) }
  context.addIssue({ code: 'custom', message: 'Choose a set from the list.' })
  return z.NEVER
})

/** A set to begin: its title, what it is copied from, and the unit of one that begins with nothing. */
export const newCriteriaSchema = z.strictObject({
  title: z.string().transform(tidyText).pipe(z.string().min(1, 'Type a title.').max(MOST_TITLE, `Keep it to ${MOST_TITLE} characters.`)),
  from: copied,
  system: z.enum(['us', 'si'], { error: 'Choose inches or millimetres.' }),
})

export const nextVersionSchema = z.strictObject({ criteriaId })
/** A published version to take from choice, or to offer again. */
export const retireCriteriaSchema = z.strictObject({ criteriaId, version: z.int().min(1), retired: z.boolean() })
export const dropCriteriaSchema = z.strictObject({ draftId: uuid })

/** A draft as it stands in the boxes, and when it was saved that the form was opened with. */
export const savedCriteriaSchema = z.strictObject({ draftId: uuid, seen: z.iso.datetime(), document: draftSchema })

const typedReading = z.string().max(40)
/** `readings` are typed over the sample's own. */
export const previewCriteriaSchema = z.strictObject({
  document: draftSchema, sample: z.string().max(40),
  readings: z.strictObject({ width: typedReading, undercut: typedReading, pore: typedReading }).optional(),
})

/** Whose coupons to judge again: an exercise's, or those of a set's exercises. */
export const tryLimitsSchema = z.strictObject({
  document: draftSchema,
  of: z.union([z.strictObject({ exerciseId: uuid }), z.strictObject({ criteriaId })], { error: 'Choose whose coupons to judge again.' }),
})
