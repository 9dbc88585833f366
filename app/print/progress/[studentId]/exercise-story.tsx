import type { ReactNode } from 'react'
import { drawings } from '@/lib/language/drawings'
import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'
import type { SummaryRoom } from '@/lib/reports/progress-summary'
import { drawReadinessTrack } from '@/lib/reports/readiness-track'
import { MarksOverTimeDrawing } from '@/app/_components/charts/marks-over-time-svg'
import { ReadinessTrackDrawing } from '@/app/_components/charts/readiness-track-drawing'
import { readinessTrackWords } from '@/app/_components/charts/readiness-track-words'
import { PaperTable } from '@/app/print/_parts/paper-table'
import { columnFrame } from '@/app/print/_parts/print-frame'
import { StripList } from '@/app/print/_parts/strip-list'
import type { SummaryDefects } from '@/app/_server/views/progress-story'
import type { SummaryExercise } from '@/app/_server/views/progress-summary'

type StoryProps = { readonly exercise: SummaryExercise; readonly room: SummaryRoom; readonly locale: Locale }

/** One exercise as it went: the beads on the left, the chance, the marks and the defects on the right. */
export function ExerciseStory({ exercise, room, locale }: StoryProps) {
  const told = (key: keyof typeof print.en, values?: Record<string, string | number>): string => say(print, locale, key, values)
  const { track, marks, defects, level } = exercise
  const words = track && readinessTrackWords({ ...track, level, locale })
  return (
    <section className="grid gap-x-[6mm] gap-y-4 md:grid-cols-[8fr_9fr] print:grid-cols-[8fr_9fr]">
      <h2 className="col-span-full text-2xl leading-none">{exercise.title}</h2>
      <div className="grid content-start gap-3 print:gap-2">
        <h3 className="text-xl leading-none">{exercise.stripsTitle}</h3>
        <StripList strips={exercise.strips} compact={room.compact} locale={locale} />
        {exercise.ownLooks && <p className="text-sm leading-snug">{exercise.ownLooks}</p>}
        {exercise.decided && <p className="text-sm leading-snug">{exercise.decided}</p>}
        {room.crowded && <Defects defects={defects} locale={locale} />}
      </div>
      <div className="grid content-start gap-3 print:gap-2">
        {track && words && (
          <Part title={told('trackTitle')}><ReadinessTrackDrawing track={drawReadinessTrack(track, columnFrame(room.trackHeight))} words={words} /></Part>
        )}
        {marks.length > 0 && (
          <Part title={told('marksTitle')}>
            <MarksOverTimeDrawing coupons={marks} frame={columnFrame(room.marksHeight)} label={told('marksTitle')} word={say(drawings, locale, 'coupon')} />
          </Part>
        )}
        {!room.crowded && <Defects defects={defects} locale={locale} />}
      </div>
    </section>
  )
}

function Defects({ defects, locale }: { readonly defects: SummaryDefects; readonly locale: Locale }) {
  const title = say(print, locale, 'defects')
  if (defects === null || defects.rows.length === 0) return <Part title={title}><p className="leading-snug">{say(print, locale, defects ? 'defectsNone' : 'defectsFew')}</p></Part>
  return (
    <PaperTable
      caption={title}
      columns={[
        { key: 'name', head: say(print, locale, 'defect') }, { key: 'first', head: say(print, locale, 'first', { n: defects.each }), numeric: true },
        { key: 'last', head: say(print, locale, 'last', { n: defects.each }), numeric: true },
      ]}
      rows={defects.rows.map((row) => ({ key: row.name, cells: [row.name, row.first, row.last] }))}
    />
  )
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section>
      <h3 className="pb-1 text-xl leading-tight">{title}</h3>
      {children}
    </section>
  )
}
