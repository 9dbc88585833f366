import { scorecardWords } from '../language/scorecard'
import { say, type Locale } from '../language/say'
import type { Source } from '../source'

/** 'AWS D1.1, clause 6.10' in the reader's language; the title alone where the source names no clause. */
export const citation = ({ title, clause }: Pick<Source, 'title' | 'clause'>, locale: Locale): string =>
  clause === null ? title : say(scorecardWords, locale, 'clause', { title, clause })
