import { LinkButton } from '../ui/link-button'
import { PageHead } from '../ui/page-head'

type Props = {
  readonly classId: string
  readonly className: string
  readonly exercises: readonly { readonly id: string; readonly title: string }[]
  readonly back: { readonly href: string; readonly label: string }
}

/** What can be printed for a class, in one place. */
export function ClassPaperScreen({ classId, className, exercises, back }: Props) {
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={className} title="Paper for the class" lead="Laid out for Letter or A4, in black and white." aside={<LinkButton href={back.href}>{back.label}</LinkButton>} />
      <div className="flex flex-wrap gap-2">
        <LinkButton href={`/print/class-sheet/${classId}`}>Class sheet</LinkButton>
        <LinkButton href={`/print/code-sheet/${classId}`}>Class code for the board</LinkButton>
        <LinkButton href={`/print/class/${classId}`}>Progress summary of every student</LinkButton>
      </div>
      <section className="grid gap-3" aria-labelledby="by-exercise">
        <h2 id="by-exercise" className="text-2xl">By exercise</h2>
        {exercises.length === 0 ? <p>No exercises in this class yet.</p> : (
          <ul className="divide-y divide-line border-y border-line">
            {exercises.map(({ id, title }) => (
              <li key={id} className="flex flex-wrap items-center justify-between gap-2 py-2">
                <strong>{title}</strong>
                <span className="flex flex-wrap gap-2">
                  <LinkButton href={`/print/tags/${classId}/${id}`} aria-label={`Coupon tags, ${title}`}>Coupon tags</LinkButton>
                  <LinkButton href={`/print/blank-sheet/${classId}/${id}`} aria-label={`Blank inspection sheet, ${title}`}>Blank inspection sheet</LinkButton>
                  <LinkButton href={`/print/booth-card/${id}`} aria-label={`Booth card, ${title}`}>Booth card</LinkButton>
                </span>
              </li>
            ))}
          </ul>
        )}
      </section>
    </div>
  )
}
