import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { placeOf } from '@/lib/measure/photo-marks'
import type { PhotoMeasurement } from '@/lib/measure/photo-measurement'
import { uncertaintyText } from '@/lib/measure/uncertainty-text'
import { formatForReader } from '@/lib/units/display'
import { LineDrawing, MarkDrawing } from './mark-drawing'

export type ShownMarks = { readonly name: string; readonly own: boolean; readonly measurement: PhotoMeasurement }

type Props = {
  readonly locale: Locale
  readonly units: 'in' | 'mm'
  readonly photo: { readonly id: string; readonly widthPx: number; readonly heightPx: number }
  readonly alt: string
  /** Each person's marks get a picture of their own: drawn over each other nobody could tell them apart. */
  readonly marks: readonly ShownMarks[]
}

/** A photo as it is kept, and once for each person who measured on it: the marks over it, the widths in words below. */
export function MarksOnPhoto({ locale, units, photo, alt, marks }: Props) {
  // A private picture behind its own route, already sized: the framework's image component has nothing to add.
  const picture = <img src={`/api/photos/${photo.id}`} width={photo.widthPx} height={photo.heightPx} loading="lazy" alt={alt} className="h-auto w-full" />
  if (marks.length === 0) return picture
  return (
    <div className="grid content-start gap-3">
      {marks.map(({ name, own, measurement }, index) => (
        <figure key={index} className="grid gap-1">
          <div className="relative">
            {picture}
            <MarksDrawing measurement={measurement} />
          </div>
          <figcaption>
            <span className="font-bold">{own ? say(photoGauge, locale, 'marksOwn') : say(photoGauge, locale, 'marksBy', { name })}</span>{'. '}
            {captionOf(measurement, locale, units)}
          </figcaption>
        </figure>
      ))}
    </div>
  )
}

/** The marks count pixels of the picture they were set on; the drawing stretches with the photo. */
function MarksDrawing({ measurement: { marks } }: { readonly measurement: PhotoMeasurement }) {
  const { widthPx, heightPx } = marks.picture
  const scale = widthPx / 700
  return (
    <svg viewBox={`-0.5 -0.5 ${widthPx} ${heightPx}`} aria-hidden="true" className="absolute inset-0 size-full">
      <LineDrawing from={placeOf(marks.ends[0])} to={placeOf(marks.ends[1])} scale={scale} dashed />
      {marks.scale.marks.map((mark, index) => <MarkDrawing key={`scale${index}`} at={placeOf(mark)} shape="corner" scale={scale} />)}
      {marks.ends.map((mark, index) => <MarkDrawing key={`end${index}`} at={placeOf(mark)} shape="end" scale={scale} />)}
      {marks.pairs.map(({ a, b }, index) => (
        <g key={index}>
          <LineDrawing from={placeOf(a)} to={placeOf(b)} scale={scale} />
          <MarkDrawing at={placeOf(a)} shape="toe" scale={scale} />
          <MarkDrawing at={placeOf(b)} shape="toe" scale={scale} />
        </g>
      ))}
    </svg>
  )
}

function captionOf({ marks: { scale }, widths }: PhotoMeasurement, locale: Locale, units: 'in' | 'mm'): string {
  const shown = (mm: number): string => formatForReader(mm, units)
  const list = widths.map(({ widthMm, widthSdMm }) => say(photoGauge, locale, 'plusMinus', { width: shown(widthMm), error: uncertaintyText(widthSdMm, units) })).join('; ')
  const size = scale.kind === 'rectangle' ? scale.sidesMm.map(shown).join(' × ') : shown(scale.distanceMm)
  return `${say(photoGauge, locale, 'marksShown', { n: widths.length, list })}. ${say(photoGauge, locale, 'marksScale', { scale: say(photoGauge, locale, `scaleShown-${scale.kind}`, { size }) })}.`
}
