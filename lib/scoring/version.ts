/**
 * The version of the judging itself, kept with every stored scorecard. It changes whenever the same inspection under the same
 * criteria could give another verdict, margin or mark.
 */
export const SCORING_VERSION = '2'
