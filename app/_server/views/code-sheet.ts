import 'server-only'
import type { Locale } from '@/lib/language/say'
import { printedText } from '@/lib/reports/dates'
import { drawQr, type QrDrawing } from '@/lib/reports/qr-drawing'
import { sheetLanguages } from '@/lib/reports/sheet-languages'
import { writeCode } from '@/lib/schemas/person'
import { programBySlug } from '../auth/sign-in'
import type { Viewer } from '../auth/viewer'
import { findStaffClass } from '../data/classes'
import { findClassCode, listClassLanguages } from '../data/people'
import { findProgram } from '../data/program'
import { env } from '../env'

export type CodeSheet = {
  readonly classId: string
  /** Whether the viewer teaches the class, and so makes its code. */
  readonly taught: boolean
  readonly className: string
  readonly term: string
  readonly programName: string
  /** What has to be typed as the program; null where the server has only one. */
  readonly programSlug: string | null
  /** null: no code opens the class now. */
  readonly code: { readonly text: string; readonly address: string; readonly qr: QrDrawing } | null
  /** Where the code is typed: 'weld.example.org/join'. */
  readonly typedAddress: string
  /** The words on the sheet, once for each language its class reads. */
  readonly languages: readonly { readonly locale: Locale; readonly until: string | null }[]
  readonly printedAt: string
}

/** The code of a class for its board; null when the viewer does not keep the class. `asked`: see sheetLanguages. */
export async function codeSheet(viewer: Viewer, classId: string, asked: string | undefined, asOf: Date): Promise<CodeSheet | null> {
  const kept = await findStaffClass(viewer, classId)
  if (!kept) return null
  const [code, read, program, only] = await Promise.all([findClassCode(viewer, classId), listClassLanguages(viewer, classId), findProgram(viewer), programBySlug(null)])
  const page = new URL('/join', env().NEXTAUTH_URL)
  const typedAddress = `${page.host}${page.pathname}`
  return {
    classId, taught: kept.instructors.some(({ id }) => id === viewer.personId), className: kept.name, term: kept.term.name, programName: program.name, programSlug: only ? null : program.slug,
    code: code && codeOf(page, program.slug, writeCode(code.code)), typedAddress,
    languages: sheetLanguages(asked, read).map((locale) => ({ locale, until: code && printedText(code.expiresAt, locale, program.timeZone) })),
    printedAt: printedText(asOf, viewer.locale, program.timeZone),
  }
}

function codeOf(page: URL, program: string, text: string): NonNullable<CodeSheet['code']> {
  const address = new URL(page)
  address.search = new URLSearchParams({ program, code: text }).toString()
  return { text, address: address.href, qr: drawQr(address.href) }
}
