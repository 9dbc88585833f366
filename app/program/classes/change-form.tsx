import type { ReactNode } from 'react'
import { SendButton } from '@/app/_components/send-button'
import type { useSaved } from './use-saved'

type ChangeFormProps = { readonly name: string; readonly form: Pick<ReturnType<typeof useSaved>, 'onSubmit' | 'busy' | 'said'>; readonly children: ReactNode }

/** The form that changes one line of a list, folded away: most lines are only read. */
export function ChangeForm({ name, form, children }: ChangeFormProps) {
  return (
    <details>
      <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">Change {name}</summary>
      <form method="post" onSubmit={form.onSubmit} noValidate className="grid max-w-2xl gap-4 py-2">
        {children}
        {form.said}
        <div><SendButton busy={form.busy}>{form.busy ? 'Saving' : 'Save'}</SendButton></div>
      </form>
    </details>
  )
}
