/** How many readers have a shape of their own; those after them begin anew. */
const SHAPES = 6

/** A reader's shape as a point of a chart, `r` from its middle to its edge: told apart by shape alone, so also in black and white. */
export function ReaderPoint({ reader, x, y, r }: { readonly reader: number; readonly x: number; readonly y: number; readonly r: number }) {
  const open = { className: 'fill-plate stroke-ink', strokeWidth: 1.75 } as const
  const line = { className: 'stroke-ink', fill: 'none', strokeWidth: 2 } as const
  switch (reader % SHAPES) {
    case 0:
      return <circle cx={x} cy={y} r={r} className="fill-ink stroke-plate" strokeWidth={1} />
    case 1:
      return <rect x={x - r * 0.9} y={y - r * 0.9} width={r * 1.8} height={r * 1.8} {...open} />
    case 2:
      return <path d={`M${x} ${y - r * 1.15}l${r * 1.1} ${r * 2}h${-r * 2.2}z`} className="fill-ink stroke-plate" strokeWidth={1} />
    case 3:
      return <path d={`M${x} ${y - r * 1.25}l${r * 1.25} ${r * 1.25}l${-r * 1.25} ${r * 1.25}l${-r * 1.25} ${-r * 1.25}z`} {...open} />
    case 4:
      return <path d={`M${x - r} ${y - r}l${r * 2} ${r * 2}M${x + r} ${y - r}l${-r * 2} ${r * 2}`} {...line} />
    default:
      return <path d={`M${x} ${y - r * 1.2}v${r * 2.4}M${x - r * 1.2} ${y}h${r * 2.4}`} {...line} />
  }
}
