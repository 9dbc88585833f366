import type { LimitCase } from './limits-case'
import { isoCases } from './limits-iso'
import { qualificationVisualCases } from './limits-qualification'
import { shopCases } from './limits-shop'
import { structuralCases } from './limits-structural'

/** Welds on both sides of every limit of every built-in set, written by hand from outside sources. */
export const limitCases: readonly LimitCase[] = [...shopCases, ...structuralCases, ...qualificationVisualCases, ...isoCases]
