'use client'

import { later } from '@/app/_components/later'

/** Only a shared tablet fetches the code that counts its idle minutes. */
export const TabletIdleLater = later(() => import('./tablet-idle').then((module) => module.TabletIdle))
