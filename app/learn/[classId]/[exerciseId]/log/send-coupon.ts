import type { Answer } from '@/app/_components/use-sent-form'

/** Sends a coupon to the intake; throws only when the request did not get through. */
export async function sendToIntake(coupon: unknown): Promise<Answer<{ id: string; number: number }>> {
  const response = await fetch('/api/intake/coupons', {
    method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(coupon),
  })
  return (await response.json()) as Answer<{ id: string; number: number }>
}
