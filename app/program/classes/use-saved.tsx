'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Notice } from '@/app/_components/ui/notice'
import { useSentForm, type Answer } from '@/app/_components/use-sent-form'

const FAILED = 'It did not get through. Check the connection and try again.'

/** Sends a form, reads the page again and says what came of it. `tell`: what to add to "saved" once it is. */
export function useSaved<T extends object>(send: (fields: Record<string, string>) => Promise<Answer<T>>, tell: (value: T) => string = () => 'It is in the list.') {
  const router = useRouter()
  const [saved, setSaved] = useState<readonly string[]>([])
  const form = useSentForm<T>(send, (value) => {
    setSaved([...saved, tell(value)])
    router.refresh()
  }, FAILED)
  const latest = saved.at(-1)
  const said = form.refused ? <Notice kind="problem" word="Not saved" live>{form.refused.message}</Notice> : latest !== undefined ? <Notice kind="ok" word="Saved" live>{latest}</Notice> : null
  return { ...form, times: saved.length, said }
}
