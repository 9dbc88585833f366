import { myProgress } from '../language/my-progress'
import { say, type Locale } from '../language/say'
import { formatForReader } from '../units/display'
import type { LengthUnit } from '../units/length'
import type { EyeOverTime } from './eye-over-time'
import { shareText } from './share-text'

/** How well a student sees their own welds, in two or three sentences spoken to them: verdicts first, then widths. */
export function explainEye(eye: EyeOverTime, reader: { readonly locale: Locale; readonly units: LengthUnit }): readonly string[] {
  return [verdictSentence(eye, reader.locale), ...differences(eye, reader.locale), widthSentence(eye, reader)]
}

function verdictSentence({ agreement, agreed, compared, least }: EyeOverTime, locale: Locale): string {
  if (!agreement) return say(myProgress, locale, 'eyeNotYet', { compared, least })
  return say(myProgress, locale, 'eyeAgree', { agreed, compared, share: shareText(agreement.share), low: shareText(agreement.low), high: shareText(agreement.high) })
}

function differences({ agreement, tooKind, tooStrict }: EyeOverTime, locale: Locale): string[] {
  if (!agreement || tooKind + tooStrict === 0) return []
  return [say(myProgress, locale, tooKind > tooStrict ? 'eyeKind' : tooStrict > tooKind ? 'eyeStrict' : 'eyeBoth')]
}

/** The direction is named only where the interval leaves no difference outside. */
function widthSentence({ widthBias, widthCoupons, least }: EyeOverTime, { locale, units }: { readonly locale: Locale; readonly units: LengthUnit }): string {
  if (!widthBias) return say(myProgress, locale, 'widthNotYet', { n: widthCoupons, least })
  const { mean, low, high } = widthBias
  const size = (mm: number): string => formatForReader(mm, units)
  if (low > 0) return say(myProgress, locale, 'widthOver', { off: size(mean), low: size(low), high: size(high) })
  if (high < 0) return say(myProgress, locale, 'widthUnder', { off: size(-mean), low: size(-high), high: size(-low) })
  return say(myProgress, locale, 'widthEven', { off: size(mean), low: size(low), high: size(high) })
}
