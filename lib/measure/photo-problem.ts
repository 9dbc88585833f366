/** Why a photo cannot be measured as it was picked: a key for the screen's own words. */
export type PhotoProblemReason =
  | 'point-not-finite' | 'size-not-possible' | 'picking-error-not-possible' | 'corner-repeated' | 'corners-on-a-line' | 'corners-not-a-rectangle'
  | 'sides-look-alike' | 'points-too-close' | 'reference-too-small' | 'beyond-horizon' | 'axis-too-short' | 'axis-unclear' | 'too-few-pairs'
  | 'length-not-possible' | 'window-not-possible' | 'direction-not-possible'

/** A broken precondition of a measurement: the message is a sentence that says what to do, `reason` lets a screen say it in its own language. */
export class PhotoProblem extends RangeError {
  override readonly name = 'PhotoProblem'

  constructor(readonly reason: PhotoProblemReason, sentence: string) {
    super(sentence)
  }
}
