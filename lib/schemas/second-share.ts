import * as z from 'zod'

const WHOLE = /^\d{1,3}$/

/** The share of coupons read twice, as typed into the form: a whole percent from 0 to 100, with or without the sign; kept as a part of one. */
export const secondShareSchema = z.strictObject({
  percent: z.string().transform((text, context): number => {
    const typed = text.trim().replace(/\s*%$/, '')
    const percent = WHOLE.test(typed) ? Number(typed) : Number.NaN
    if (percent >= 0 && percent <= 100) return percent / 100
    context.addIssue({ code: 'custom', message: 'Type a whole number from 0 to 100.' })
    return z.NEVER
  }),
})
