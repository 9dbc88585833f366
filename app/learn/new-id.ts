import { uuidV7 } from '@/lib/interchange/uuid-v7'

/** An id made on this device, so that sending a thing twice records it once. */
export const newId = (): string => uuidV7(Date.now(), crypto.getRandomValues(new Uint8Array(10)))
