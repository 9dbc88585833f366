'use client'

import { useSyncExternalStore } from 'react'
import { EMPTY, outboxState, watchOutbox, type OutboxState } from './outbox'

/** The device's queue as it stands; empty in the page as the server sent it. */
export const useOutbox = (): OutboxState => useSyncExternalStore(watchOutbox, outboxState, () => EMPTY)
