import { drawFilletSection, type FilletSection as Section, type FilletSectionInput } from '@/lib/reports/fillet-section'

type FilletSectionProps = FilletSectionInput & {
  /** Which station it is: 'Station 5'. */
  readonly where?: string
}

/** The fillet in section, beside what was read: legs, throat and convexity over the nominal size. */
export function FilletSection({ where, ...input }: FilletSectionProps) {
  const section = drawFilletSection(input)
  const { words } = section
  return (
    <figure className="@container">
      <div className={`grid items-center gap-x-6 gap-y-2 ${section.kind === 'drawn' ? '@md:grid-cols-[minmax(0,20rem)_1fr]' : ''}`}>
        {section.kind === 'drawn' && <Drawing section={section} />}
        <figcaption>
          <span className="eyebrow block">{where ? `${words.title} · ${where}` : words.title}</span>
          {words.sentences.map((sentence) => (
            <span key={sentence} className="block text-lg">
              {sentence}
            </span>
          ))}
          {words.scale && <span className="mt-1 block text-base text-ink-2">{words.scale}</span>}
        </figcaption>
      </div>
    </figure>
  )
}

function Drawing({ section }: { readonly section: Extract<Section, { kind: 'drawn' }> }) {
  return (
    <svg viewBox={`0 0 ${section.width} ${section.height}`} role="img" aria-label={section.words.description} className="block h-auto w-full">
      {section.plates.map((plate) => (
        <rect key={`${plate.x} ${plate.y}`} {...plate} className="fill-plate-2 stroke-open" strokeWidth={1} />
      ))}
      <path d={section.weld} className="fill-bead" />
      <path d={section.legs} fill="none" className="stroke-ink" strokeWidth={1} />
      {section.nominal && <path d={section.nominal} className="stroke-accept" strokeWidth={2} strokeDasharray="6 4" />}
      <path d={section.face.d} fill="none" className="stroke-ink" strokeWidth={2.5} strokeLinecap="round" strokeDasharray={section.face.measured ? undefined : '0.5 6'} />
      {section.throat && (
        <>
          <line x1={section.throat.x1} y1={section.throat.y1} x2={section.throat.x2} y2={section.throat.y2} className="stroke-ink" strokeWidth={1.25} />
          <Label x={section.throat.labelX} y={section.throat.labelY} anchor="start" text={section.throat.label} overLines />
        </>
      )}
      {section.dimensions.map((dimension) => (
        <g key={dimension.anchor}>
          <path d={dimensionLine(dimension)} fill="none" className="stroke-ink" strokeWidth={1.25} />
          <Label x={dimension.labelX} y={dimension.labelY} anchor={dimension.anchor} text={dimension.label} />
        </g>
      ))}
    </svg>
  )
}

/** The line with a short stop at each end. */
function dimensionLine({ x1, y1, x2, y2 }: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }): string {
  const stop = x1 === x2 ? 'm-5,0h10' : 'm0,-5v10'
  return `M${x1},${y1}L${x2},${y2}M${x1},${y1}${stop}M${x2},${y2}${stop}`
}

type LabelProps = { readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end'; readonly text: string; readonly overLines?: boolean }

function Label({ x, y, anchor, text, overLines = false }: LabelProps) {
  return (
    <text x={x} y={y} textAnchor={anchor} strokeWidth={5} strokeLinejoin="round" className={`figures fill-ink text-[17px] ${overLines ? 'stroke-plate [paint-order:stroke]' : ''}`}>
      {text}
    </text>
  )
}
