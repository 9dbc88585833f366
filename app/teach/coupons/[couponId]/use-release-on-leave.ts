'use client'

import { useEffect, useRef } from 'react'
import { readDraft } from '@/app/_components/use-draft'
import { releaseRow } from '@/app/teach/coupons/actions'

/**
 * Lets go of a coupon when its form is left with nothing typed, so that others see it free at once. What is typed is kept on this device to
 * be gone on with: then the coupon stays taken until its time is up. So it does where the page is closed rather than left.
 */
export function useReleaseOnLeave(couponId: string, draftKey: string, sent: () => boolean): void {
  const leaving = useRef(0)
  const done = useRef(sent)
  useEffect(() => { done.current = sent }, [sent])
  useEffect(() => {
    // Taken down and put up again at once, the form was not left.
    window.clearTimeout(leaving.current)
    return () => {
      leaving.current = window.setTimeout(() => {
        if (!done.current() && readDraft(draftKey) === null) void releaseRow({ couponId }).catch(() => undefined)
      })
    }
  }, [couponId, draftKey])
}
