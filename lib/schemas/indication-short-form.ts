import { INDICATION_SIZES, ON_A_TOE } from '../scoring/indication-sizes'
import { INDICATION_KINDS, type IndicationKind } from '../scoring/types'
import type { TypedIndication } from './readings'

/** What the short form says, as the boxes of a form would hold it; or a sentence that says what is wrong with it. */
export type ShortForm =
  | { readonly kind: 'indications'; readonly indications: readonly TypedIndication[] }
  | { readonly kind: 'problem'; readonly message: string }

const TOES: Readonly<Record<string, 'A' | 'B'>> = { upper: 'A', left: 'A', lower: 'B', right: 'B' }
const problem = (message: string): ShortForm => ({ kind: 'problem', message })
const plain = (text: string): string => text.toLowerCase().replaceAll('-', ' ').replaceAll(/\s+/g, ' ').trim()

/** The kind whose name begins so, when only one does; 'pores' and 'cracks' are names too. */
function kindOf(text: string): IndicationKind | null {
  const name = plain(text)
  if (name === '') return null
  const exact = INDICATION_KINDS.find((kind) => plain(kind) === name || `${plain(kind)}s` === name)
  const begun = INDICATION_KINDS.filter((kind) => plain(kind).startsWith(name))
  return exact ?? (begun.length === 1 ? begun[0]! : null)
}

/**
 * Reads indications as one line of text: each with its kind, its place from the start of the weld and its sizes, parted by commas;
 * several parted by semicolons. 'undercut, 3, 1/64, 1/2, lower; pore, 5, 1/16'.
 * A kind may be shortened as long as no other begins so; sizes come in the order of INDICATION_SIZES and may be left out from the end.
 * A comma between two digits stays a decimal comma. Lengths stay text: whoever reads the form reads them in its units.
 */
export function readShortForm(text: string): ShortForm {
  const indications: TypedIndication[] = []
  for (const part of text.split(';').map((each) => each.trim()).filter(Boolean)) {
    const read = readOne(part)
    if (typeof read === 'string') return problem(read)
    indications.push(read)
  }
  return { kind: 'indications', indications }
}

function readOne(part: string): TypedIndication | string {
  const [name = '', ...fields] = part.split(/(?<!\d),|,(?!\d)/).map((each) => each.trim())
  const kind = kindOf(name)
  if (kind === null) return `“${name}” is not one kind of indication. Write one of: ${INDICATION_KINDS.map(plain).join(', ')}.`
  const last = plain(fields.at(-1) ?? '')
  const toe = ON_A_TOE.includes(kind) ? (TOES[last] ?? null) : null
  const [at = '', ...sizes] = toe === null ? fields : fields.slice(0, -1)
  const boxes = INDICATION_SIZES[kind]
  if (at === '') return `Say where: “${plain(kind)}, ” and its place from the start of the weld.`
  if (sizes.length > boxes.length) return `“${part}” has more sizes than ${['its place', ...boxes].join(', ')}. Part two indications with a semicolon.`
  const typed = { length: '', depth: '', diameter: '', height: '' }
  boxes.forEach((box, index) => { typed[box] = sizes[index] ?? '' })
  return { kind, toe, at, ...typed }
}
