import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { lengthField, textField, uuid, type Reader } from './field'
import { MOST_BENDS, MOST_INDICATIONS, type RecordedAttempt, type TestParts } from './test-attempt'

/** Answers as the form holds them: '' is "not looked at". */
export const ANSWERS = ['yes', 'no', ''] as const
export type FormAnswer = (typeof ANSWERS)[number]

/** The parts of a test as typed. A part that is null was not examined on the test day. */
export type TestPartsForm = {
  readonly visual: 'accept' | 'reject' | ''
  readonly bends: readonly BendForm[] | null
  readonly filletBreak: { readonly foldedFlat: FormAnswer; readonly rootFused: FormAnswer; readonly inclusions: readonly string[] } | null
  readonly macroetch: {
    readonly crackSeen: FormAnswer
    readonly rootFused: FormAnswer
    readonly fusionComplete: FormAnswer
    readonly profileAcceptable: FormAnswer
    readonly undercut: string
    readonly legA: string
    readonly legB: string
  } | null
}
/** `seen`: whether the bent face showed anything open; '' while nobody has looked at it. */
export type BendForm = { readonly face: 'face' | 'root' | 'side'; readonly seen: 'none' | 'some' | ''; readonly indications: readonly BendIndicationForm[] }
export type BendIndicationForm = { readonly size: string; readonly corner: boolean; readonly fromSlagOrFusion: boolean }

const MOST_NOTE = 2000
const MOST_IDENTITY = 120
/** Longer than any test specimen is wide: catches a slipped decimal point. */
const MOST_SIZE_MM = 60

const answer = z.enum(ANSWERS)
const saidOrNot = answer.transform((text) => (text === '' ? null : text === 'yes'))

/**
 * A test as typed by its witness, in the reader's language and units: lengths as text, answers that may be missing.
 * A size box left empty beside a thing that was seen, a bend nobody looked at, or a question of the fillet break without an answer is a
 * sentence at its field: a specimen not looked at is never one without faults.
 */
export function testFormSchema(reader: Reader) {
  const required = say(problems, reader.locale, 'required')
  const choose = say(problems, reader.locale, 'choose')
  const size = lengthField(reader, MOST_SIZE_MM)
  const sizeGiven = size.transform((value, context): number => {
    if (value !== null) return value
    context.addIssue({ code: 'custom', message: required })
    return z.NEVER
  })
  const said = saidOrNot.transform((value, context): boolean => {
    if (value !== null) return value
    context.addIssue({ code: 'custom', message: choose })
    return z.NEVER
  })
  const parts = z.strictObject({
    visual: z.enum(['accept', 'reject', '']).transform((text) => text || null),
    bends: z.array(z.strictObject({
      face: z.enum(['face', 'root', 'side'], { error: choose }),
      seen: z.enum(['none', 'some'], { error: choose }),
      indications: z.array(z.strictObject({ size: sizeGiven, corner: z.boolean(), fromSlagOrFusion: z.boolean() })).max(MOST_INDICATIONS),
    }).refine(({ seen, indications }) => (seen === 'some') === (indications.length > 0), { error: choose, path: ['seen'] })).max(MOST_BENDS).nullable(),
    filletBreak: z.strictObject({ foldedFlat: said, rootFused: said, inclusions: z.array(sizeGiven).max(MOST_INDICATIONS) }).nullable(),
    macroetch: z.strictObject({
      crackSeen: saidOrNot, rootFused: saidOrNot, fusionComplete: saidOrNot, profileAcceptable: saidOrNot, undercut: size, legA: size, legB: size,
    }).nullable(),
  }).transform((typed): TestParts => ({
    visual: typed.visual,
    bends: typed.bends?.map(({ face, indications }) => ({
      face, indications: indications.map(({ size: sizeMm, corner, fromSlagOrFusion }) => ({ sizeMm, corner, fromSlagOrFusion })),
    })) ?? null,
    filletBreak: typed.filletBreak && { foldedFlat: typed.filletBreak.foldedFlat, rootFused: typed.filletBreak.rootFused, inclusionsMm: typed.filletBreak.inclusions },
    macroetch: typed.macroetch && {
      crackSeen: typed.macroetch.crackSeen, rootFused: typed.macroetch.rootFused, fusionComplete: typed.macroetch.fusionComplete,
      profileAcceptable: typed.macroetch.profileAcceptable, undercutMm: typed.macroetch.undercut, legAMm: typed.macroetch.legA, legBMm: typed.macroetch.legB,
    },
  }))
  return z.strictObject({
    id: uuid, classId: uuid, studentId: uuid, exerciseId: uuid,
    testedOn: z.iso.date(required).transform((text) => new Date(`${text}T00:00:00Z`)),
    parts,
    plateIdentity: textField(reader, MOST_IDENTITY),
    wireIdentity: textField(reader, MOST_IDENTITY),
    note: textField(reader, MOST_NOTE),
  }) satisfies z.ZodType<RecordedAttempt>
}
