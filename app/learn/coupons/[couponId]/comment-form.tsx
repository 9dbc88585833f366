'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { door } from '@/lib/language/door'
import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { TextArea } from '@/app/_components/ui/text-area'
import { useSentForm } from '@/app/_components/use-sent-form'
import { sendComment } from '@/app/learn/actions'

/** A remark on a coupon. */
export function CommentForm({ locale, couponId }: { readonly locale: Locale; readonly couponId: string }) {
  const router = useRouter()
  const [body, setBody] = useState('')
  const { onSubmit, busy, refused, error } = useSentForm(() => sendComment({ couponId, body }), () => {
    setBody('')
    router.refresh()
  }, say(door, locale, 'failed'))
  return (
    <form method="post" noValidate onSubmit={onSubmit} className="grid gap-3">
      {refused && <Notice kind="problem" word={say(learn, locale, 'notSent')} live>{refused.message}</Notice>}
      <TextArea label={say(learn, locale, 'commentLabel')} value={body} onChange={(event) => setBody(event.target.value)} error={error('body')} />
      <div><SendButton busy={busy}>{say(learn, locale, busy ? 'commentSending' : 'addComment')}</SendButton></div>
    </form>
  )
}
