import { blankSheet as words } from '@/lib/language/blank-sheet'
import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import type { BlankSheet } from '@/app/_server/views/blank-sheet'

type Props = BlankSheet['languages'][number] & { readonly sheet: BlankSheet }

/** Rows for what was seen: more than that on one coupon is a coupon to start again. */
const SEEN_ROWS = 4
const CELL = 'h-8 border border-ink px-1.5 text-left align-middle print:h-[6.2mm]'
const HEAD = `${CELL} font-head leading-none font-semibold`

/** The sheet in one language: who and what, the bead to draw on, a box for every size, what was looked for, and the limits that decide. */
export function BlankBody({ sheet, locale, sizes, kinds, rules }: Props) {
  const told = (key: keyof typeof words.en): string => say(words, locale, key)
  const asked = (key: keyof typeof readingsWords.en, values?: Record<string, number>): string => say(readingsWords, locale, key, values)
  return (
    <div lang={locale} className="grid gap-3 text-base leading-tight print:gap-2 print:text-[9.5pt]">
      <header className="border-b-2 border-ink pb-1">
        <p className="eyebrow">{told('title')}, {sheet.className}</p>
        <h1 className="text-2xl leading-none">{sheet.title}</h1>
      </header>
      <p className="flex flex-wrap gap-x-4 gap-y-3 pt-1">
        {(['student', 'booth', 'number', 'date'] as const).map((key) => <Line key={key} label={told(key)} wide={key === 'student'} />)}
      </p>
      <p className="flex flex-wrap gap-x-4 gap-y-3">
        <Line label={told('by')} wide />
        <Tick label={told('own')} /><Tick label={told('instructor')} />
      </p>
      <BlankBead sheet={sheet} label={told('onBead')} />
      <div className="max-w-full overflow-x-auto print:overflow-visible" tabIndex={0} role="region" aria-label={asked('stations')}>
        <table className="w-full min-w-xl table-fixed border-collapse print:min-w-0">
          <caption className="pb-1 text-left">{told(sheet.units === 'in' ? 'sizesIn' : 'sizesMm')}</caption>
          <thead><tr><th scope="col" className={`${HEAD} w-[24%]`}>{asked('at')}</th>{sheet.places.map((place) => <th key={place} scope="col" className={HEAD}>{place}</th>)}</tr></thead>
          <tbody>{sizes.map((size) => <tr key={size}><th scope="row" className={HEAD}>{size}</th>{sheet.places.map((place) => <td key={place} className={CELL} />)}</tr>)}</tbody>
        </table>
      </div>
      <div className="grid gap-x-4 gap-y-3 sm:grid-cols-[3fr_2fr] print:grid-cols-[3fr_2fr]">
        <div className="grid content-start gap-2">
          <table className="w-full table-fixed border-collapse">
            <caption className="pb-1 text-left font-head text-lg font-semibold">{told('seen')}</caption>
            <thead><tr>{(['kind', 'at', 'length', 'depth', 'diameter'] as const).map((key) => <th key={key} scope="col" className={`${HEAD} ${key === 'kind' ? 'w-[32%]' : ''}`}>{asked(key)}</th>)}</tr></thead>
            <tbody>{Array.from({ length: SEEN_ROWS }, (_, row) => <tr key={row}>{Array.from({ length: 5 }, (_each, at) => <td key={at} className={CELL} />)}</tr>)}</tbody>
          </table>
          {([['craters', asked('craters')], ['fusion', asked('fusion')]] as const).map(([key, question]) => <p key={key} className="flex flex-wrap gap-x-3">{question} <Tick label={asked('yes')} /> <Tick label={asked('no')} /></p>)}
        </div>
        <div className="grid content-start gap-1">
          <p className="font-head text-lg font-semibold">{told('looked')}</p>
          <ul className="grid grid-cols-2 gap-x-3 gap-y-1">{kinds.map((kind) => <li key={kind}><Tick label={kind} /></li>)}</ul>
          <p>{told('notLooked')}</p>
        </div>
      </div>
      <table className="w-full border-collapse">
        <caption className="pb-1 text-left font-head text-lg font-semibold">{told('rules')}</caption>
        <thead><tr className="border-b border-ink text-left"><th scope="col" className="font-head font-semibold">{told('limit')}</th><th scope="col" className="w-20 font-head font-semibold">{told('accept')}</th><th scope="col" className="w-20 font-head font-semibold">{told('reject')}</th></tr></thead>
        <tbody>
          {rules.map(({ key, name, limit, source }) => (
            <tr key={key} className="border-b border-line">
              <th scope="row" className="py-0.5 pr-2 text-left font-normal"><strong>{name}:</strong> {limit ?? told('depends')} <span className="text-sm print:text-[7pt]">({source})</span></th>
              <td><Tick label="" /></td><td><Tick label="" /></td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="flex flex-wrap gap-x-4 gap-y-3 pt-1"><Line label={told('comment')} wide /><Line label={told('signature')} /></p>
      <p>{told('later')}</p>
    </div>
  )
}

function Line({ label, wide = false }: { readonly label: string; readonly wide?: boolean }) {
  return <span className={`flex items-end gap-1 ${wide ? 'min-w-64 flex-[3] print:min-w-0' : 'min-w-28 flex-1 print:min-w-0'}`}>{label}<span className="min-w-8 flex-1 border-b border-ink" /></span>
}

/** A box for a pencil, and what it stands for. */
function Tick({ label }: { readonly label: string }) {
  return <span className="inline-flex items-center gap-1.5"><span aria-hidden="true" className="inline-block size-4 shrink-0 border border-ink print:size-[3.4mm]" />{label}</span>
}

/** The bead as a strip to draw on, its stations marked. */
function BlankBead({ sheet, label }: { readonly sheet: BlankSheet; readonly label: string }) {
  return (
    <figure className="grid gap-1">
      <svg viewBox="0 0 1000 92" className="w-full text-ink" role="img" aria-label={label} fill="none" stroke="currentColor">
        <rect x="1" y="1" width="998" height="56" strokeWidth="1.5" />
        {sheet.along.map((part, at) => (
          <g key={part}>
            <line x1={part * 1000} y1="1" x2={part * 1000} y2="64" strokeWidth="1" strokeDasharray="3 4" />
            <text x={part * 1000} y="84" textAnchor="middle" fontSize="18" fill="currentColor" stroke="none">{sheet.places[at]}</text>
          </g>
        ))}
        <text x="2" y="84" fontSize="18" fill="currentColor" stroke="none">0</text>
        <text x="998" y="84" textAnchor="end" fontSize="18" fill="currentColor" stroke="none">{sheet.length}</text>
      </svg>
      <figcaption>{label}</figcaption>
    </figure>
  )
}
