import { EmptyState } from '../ui/empty-state'
import { LinkButton } from '../ui/link-button'
import { Notice } from '../ui/notice'
import { PageHead } from '../ui/page-head'
import type { Choice } from '../ui/select'
import { AddForms } from './add-forms'
import type { CourseActions } from './course-actions'
import { ListRow } from './list-row'

type Props = {
  readonly course: {
    readonly classId: string
    readonly className: string
    readonly archived: boolean
    readonly list: readonly { readonly exerciseId: string; readonly title: string; readonly opensAfterId: string | null }[]
    readonly program: readonly Choice[]
    readonly library: readonly Choice[]
    readonly classes: readonly Choice[]
  }
  /** The address of this screen, with those of its exercises below it. */
  readonly here: string
  readonly back: { readonly href: string; readonly label: string }
  readonly actions: CourseActions
}

/** The exercises of a class in their order, what opens what, and where more come from. An archived class's are only read. */
export function CourseScreen({ course: { classId, className, archived, list, program, library, classes }, here, back, actions }: Props) {
  const titles = list.map(({ exerciseId, title }) => ({ value: exerciseId, label: title }))
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={className} title="Exercises of the class" lead={archived ? 'In the order students saw them.' : 'In the order students see them. Taking one off keeps it and every coupon of it.'}
        aside={<LinkButton href={back.href}>{back.label}</LinkButton>}
      />
      {archived && <Notice kind="info" word="This class is archived">Its list stays as it is until the coordinator takes the class back.</Notice>}
      <section aria-labelledby="list" className="grid gap-3">
        <h2 id="list" tabIndex={-1} className="text-2xl">The list</h2>
        {list.length === 0 ? <EmptyState title="No exercises yet">{!archived && <p>Add some below, or copy another class’s list.</p>}</EmptyState> : (
          <ol className="divide-y divide-line border-y border-line">
            {list.map(({ exerciseId, title, opensAfterId }, index) => archived ? <li key={exerciseId} className="py-3 font-head text-xl leading-tight font-semibold">{index + 1}. {title}</li> : (
              <ListRow
                key={exerciseId} classId={classId} exerciseId={exerciseId} title={title} place={index + 1} of={list.length}
                opensAfterId={opensAfterId ?? ''} others={titles.filter(({ value }) => value !== exerciseId)} here={here} listId="list" actions={actions}
              />
            ))}
          </ol>
        )}
      </section>
      {!archived && (
        <section aria-labelledby="more" className="grid gap-4">
          <h2 id="more" className="text-2xl">Add exercises</h2>
          <AddForms classId={classId} program={program} library={library} classes={classes} actions={actions} />
        </section>
      )}
    </div>
  )
}
