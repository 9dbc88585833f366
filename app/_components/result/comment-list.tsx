import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'

type Props = { readonly comments: readonly { readonly id: string; readonly body: string; readonly author: string; readonly when: string }[]; readonly locale: Locale }

/** Remarks on a coupon, oldest first. */
export function CommentList({ comments, locale }: Props) {
  if (comments.length === 0) return <p className="text-ink-2">{say(learn, locale, 'noComments')}</p>
  return (
    <ul className="grid gap-3">
      {comments.map((comment) => (
        <li key={comment.id} className="border-l-4 border-line pl-3">
          <p className="text-base text-ink-2">{comment.author}, {comment.when}</p>
          <p className="break-words whitespace-pre-wrap">{comment.body}</p>
        </li>
      ))}
    </ul>
  )
}
