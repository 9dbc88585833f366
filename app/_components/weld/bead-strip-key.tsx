import type { ReactNode } from 'react'
import type { StripWords } from '@/lib/reports/bead-strip-words'
import { IndicationGlyph } from './indication-glyph'

/** What each sign on the strip means: only those that are there. */
export function BeadStripKey({ words }: { readonly words: StripWords }) {
  return (
    <ul className="mt-2 grid gap-x-6 gap-y-1 @xl:grid-cols-2">
      {words.rejected.map((text, i) => (
        <Entry key={`rejected-${i}`} text={text}>
          <rect x={9} y={3} width={14} height={16} fill="none" className="stroke-reject" strokeWidth={2} />
          <text x={16} y={15.5} textAnchor="middle" className="figures fill-ink text-[13px]">
            {i + 1}
          </text>
        </Entry>
      ))}
      {words.key.map(({ kind, text }) => (
        <li key={kind} className="flex items-start gap-2">
          <IndicationGlyph kind={kind} />
          <span>{text}</span>
        </li>
      ))}
      {words.outOfBand && (
        <Entry text={words.outOfBand}>
          <path d="M1 11h30" className="stroke-ink" strokeWidth={2} />
          <rect x={12} y={7} width={8} height={8} className="fill-plate stroke-reject" strokeWidth={2} />
        </Entry>
      )}
      {words.notMeasured && (
        <Entry text={words.notMeasured}>
          <circle cx={16} cy={11} r={6} fill="none" className="stroke-open" strokeWidth={2} strokeDasharray="3.1 3.1" />
        </Entry>
      )}
      {words.openEnds && (
        <Entry text={words.openEnds}>
          <path d="M1 11h30" className="stroke-open" strokeWidth={1.5} strokeDasharray="2 4" />
        </Entry>
      )}
      {words.restart && (
        <Entry text={words.restart}>
          <path d="M16 2V21" className="stroke-ink" strokeWidth={1.25} strokeDasharray="4 3" />
          <path d="M12 1h8l-4 6z" className="fill-ink" />
        </Entry>
      )}
      {words.band && (
        <Entry text={words.band}>
          <rect x={1} y={5} width={30} height={12} className="fill-band" />
          <path d="M1 5h30M1 17h30" className="stroke-accept" strokeWidth={0.75} strokeDasharray="4 3" />
        </Entry>
      )}
    </ul>
  )
}

function Entry({ text, children }: { readonly text: string; readonly children: ReactNode }) {
  return (
    <li className="flex items-start gap-2">
      <svg viewBox="0 0 32 22" aria-hidden="true" className="h-[22px] w-8 shrink-0">
        {children}
      </svg>
      <span>{text}</span>
    </li>
  )
}
