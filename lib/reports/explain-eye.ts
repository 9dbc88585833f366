import { myProgress } from '../language/my-progress'
import { studentEye } from '../language/student-eye'
import { say, type Locale } from '../language/say'
import { formatForReader } from '../units/display'
import type { LengthUnit } from '../units/length'
import type { EyeOverTime } from './eye-over-time'
import { shareText } from './share-text'

/** `who`: the student themselves, or their staff. */
type Reader = { readonly locale: Locale; readonly units: LengthUnit; readonly who?: 'student' | 'other' }

/** How well a student sees their own welds, in two or three sentences spoken to them or to their staff: verdicts first, then widths. */
export function explainEye(eye: EyeOverTime, reader: Reader): readonly string[] {
  const tell = (key: keyof typeof studentEye.en, values: Record<string, string | number> = {}): string =>
    say(reader.who === 'other' ? studentEye : myProgress, reader.locale, key, values)
  return [verdictSentence(eye, tell), ...differences(eye, tell), widthSentence(eye, reader.units, tell)]
}

type Tell = (key: keyof typeof studentEye.en, values?: Record<string, string | number>) => string

function verdictSentence({ agreement, agreed, compared, least }: EyeOverTime, tell: Tell): string {
  if (!agreement) return tell('eyeNotYet', { compared, least })
  return tell('eyeAgree', { agreed, compared, share: shareText(agreement.share), low: shareText(agreement.low), high: shareText(agreement.high) })
}

function differences({ agreement, tooKind, tooStrict }: EyeOverTime, tell: Tell): string[] {
  if (!agreement || tooKind + tooStrict === 0) return []
  return [tell(tooKind > tooStrict ? 'eyeKind' : tooStrict > tooKind ? 'eyeStrict' : 'eyeBoth')]
}

/** The direction is named only where the interval leaves no difference outside. */
function widthSentence({ widthBias, widthCoupons, least }: EyeOverTime, units: LengthUnit, tell: Tell): string {
  if (!widthBias) return tell('widthNotYet', { n: widthCoupons, least })
  const { mean, low, high } = widthBias
  const size = (mm: number): string => formatForReader(mm, units)
  if (low > 0) return tell('widthOver', { off: size(mean), low: size(low), high: size(high) })
  if (high < 0) return tell('widthUnder', { off: size(-mean), low: size(-high), high: size(-low) })
  return tell('widthEven', { off: size(mean), low: size(low), high: size(high) })
}
