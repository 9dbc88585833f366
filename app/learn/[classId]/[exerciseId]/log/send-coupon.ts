import { uuidV7 } from '@/lib/interchange/uuid-v7'
import type { Answer } from '@/app/_components/use-sent-form'

export const newId = (): string => uuidV7(Date.now(), crypto.getRandomValues(new Uint8Array(10)))

/** Sends a coupon to the intake; throws only when the request did not get through. */
export async function sendToIntake(coupon: unknown): Promise<Answer<{ id: string; number: number }>> {
  const response = await fetch('/api/intake/coupons', {
    method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(coupon),
  })
  return (await response.json()) as Answer<{ id: string; number: number }>
}

/** Sends the photo of a logged coupon; returns what went wrong, or null. The id makes a second sending harmless. */
export async function sendPhoto(couponId: string, id: string, photo: File): Promise<string | null> {
  try {
    const response = await fetch(`/api/photos?coupon=${couponId}&id=${id}`, { method: 'POST', headers: { 'Content-Type': photo.type }, body: photo })
    const answer = (await response.json()) as Answer<unknown>
    return answer.ok ? null : answer.message
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  }
}
