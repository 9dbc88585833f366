import 'server-only'
import { notFound } from 'next/navigation'
import { uuid } from '@/lib/schemas/field'

/** An id from a page's address. What is no id at all gets the same page as an id nobody has; the database would refuse to compare it. */
export function pageId(raw: string): string {
  return uuid.safeParse(raw).success ? raw : notFound()
}
