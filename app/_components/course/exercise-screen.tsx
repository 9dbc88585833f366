import { LinkButton } from '../ui/link-button'
import { PageHead } from '../ui/page-head'
import { ExerciseForm, type ExerciseFormProps } from './exercise-form'

type Props = Omit<ExerciseFormProps, 'versions'> & {
  readonly title: string
  readonly otherClasses: number
  /** The address of the class's list. */
  readonly list: string
  /** Where its criteria are read in words, and all of them listed. */
  readonly criteriaAddress: string
  readonly allCriteria: string
}

/** An exercise with its booth card, to be saved as its next version. */
export function ExerciseScreen({ title, otherClasses, list, criteriaAddress, allCriteria, ...form }: Props) {
  const versions = `${list}/${form.exerciseId}/versions`
  const shared = otherClasses === 0 ? '' : ` It is also on the list of ${otherClasses} other ${otherClasses === 1 ? 'class' : 'classes'}, which will see the change too.`
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={`Version ${form.version}`} title={title} lead={`Saving makes the next version; coupons keep the one they were welded to.${shared}`}
        aside={<><LinkButton href={criteriaAddress}>Its criteria</LinkButton><LinkButton href={allCriteria}>All criteria</LinkButton><LinkButton href={versions}>Versions</LinkButton><LinkButton href={list}>Back to the list</LinkButton></>}
      />
      <ExerciseForm {...form} versions={versions} />
      <p className="max-w-prose text-base text-ink-2">A practice record. The governing code edition, the local authority and a qualified inspector decide.</p>
    </div>
  )
}
