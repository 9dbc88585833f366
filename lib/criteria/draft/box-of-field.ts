/** Fields of a rule, and the boxes of its form that fill them; what is not here goes by the same name. */
const BOXES: readonly (readonly [field: RegExp, box: string])[] = [
  [/^allowed\.max/, 'allowed'],
  [/^allowed\.over/, 'over'],
  [/^countFromMm$/, 'countFrom'],
  [/^windowMm$/, 'window'],
  [/^readiness\.scale$/, 'scale'],
  [/^(when|unless)\.thickness.*$/, '$1.low'],
]
const PARTS: readonly (readonly [part: RegExp, box: string])[] = [
  [/\[(\d+)\]/g, '.$1'],
  [/\.steps\.(\d+)\.mm$/, '.steps.$1.value'],
  [/\.steps\.(\d+)(\.upTo|\.below)?$/, '.steps.$1.at'],
  [/\.mm$|\.degrees$/, '.value'],
  [/\.lengthMm$/, '.length'],
  [/\.windowMm$/, '.window'],
]

/** The box of a rule's form for a field of the rule: 'allowed.over.lengthMm' is typed into 'over.length'. */
export function boxOf(field: string): string {
  const parts = PARTS.reduce((text, [from, to]) => text.replace(from, to), field)
  return BOXES.reduce((text, [from, to]) => text.replace(from, to), parts)
}
